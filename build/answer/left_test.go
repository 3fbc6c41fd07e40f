package answer

import (
	"encoding/json"
	"reflect"
	"slices"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
)

// What is cut is named, whatever the bound, and what is not is not.
func TestWhatIsCutIsNamed(t *testing.T) {
	for _, e := range plan.Examples() {
		for _, units := range []int{0, 1, 2, 4, 8, 16, 1 << 8, 1 << 12, 1 << 16, 1 << 40} {
			s := sheet.AnswerWithin(units, e.Plan, nil)
			want := []string{}
			if s.Untried {
				want = append(want, "fixes")
			}
			for which := range sheet.Exploration(sheet.Explorations) {
				if s.ExploreWithin(units, which); s.Left[which] {
					want = append(want, which.Name())
				}
			}
			text, err := written(s)
			var got struct {
				Left []string `json:"left_out"`
			}
			if err == nil {
				err = json.Unmarshal(text, &got)
			}
			if err != nil || !reflect.DeepEqual(got.Left, want) {
				t.Errorf("%s, %d units: %q, want %q: %v", e.Key, units, got.Left, want, err)
			}
			if units == 0 && !slices.Contains(want, "starts") || units == 1<<40 && len(want) > 0 {
				t.Errorf("%s, %d units: %q left out", e.Key, units, want)
			}
		}
	}
}

// A start in which it was given up to follow the water is named too: that it takes
// for ever is said of others in the same way.
func TestAFillingThatIsGivenUpIsNamed(t *testing.T) {
	s := sheet.Work(plan.Default())
	if left := leftOut(s); len(left) > 0 {
		t.Errorf("%q left out", left)
	}
	s.Startup.Zones[0].Rows = nil
	if left := leftOut(s); !slices.Equal(left, []string{"starts"}) {
		t.Errorf("%q left out, want starts", left)
	}
}
