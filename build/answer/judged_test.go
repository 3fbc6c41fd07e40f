package answer

import (
	"encoding/json"
	"slices"
	"testing"

	"evenrow/wasm/grower/plan"
)

// What the page says of the default plan: the timer holds fewer start times than
// there should be shots on a hot day, the cucumber in row 4 decides for the
// peppers in rows 1 and 2, and row 4 is empty from 11 September on.
func TestJudgementsAreInTheFile(t *testing.T) {
	text, err := JSON(plan.Default())
	if err != nil {
		t.Fatal(err)
	}
	var d document
	if err := json.Unmarshal(text, &d); err != nil {
		t.Fatal(err)
	}
	if d.Judged == nil || !slices.Contains(d.Judged.Limits, cannot{"few-starts", "hot", 1}) {
		t.Fatalf("%+v", d.Judged)
	}
	if s := d.Judged.Shared; s == nil || !slices.Equal(s.Lead, []int{4}) || !slices.Equal(s.Other, []int{1, 2}) || s.Cure != "zone-each" || s.Valves != 3 {
		t.Errorf("%+v", s)
	}
	if e := d.Judged.Empty; len(e) != 1 || !slices.Equal(e[0].Rows, []int{4}) || e[0].From[5:] != "09-11" || e[0].To != "" {
		t.Errorf("%+v", e)
	}
	if d.Flush.Verdict == "" || d.Chance[0].Remedy == "" {
		t.Errorf("flush %q, chance %q", d.Flush.Verdict, d.Chance[0].Remedy)
	}
	for _, f := range d.Faults {
		if (f.Kind == "dirty-filter") != (f.Cleaned != "") || (f.Kind == "emitter-out") && f.By == "" {
			t.Errorf("%+v", f)
		}
	}
}
