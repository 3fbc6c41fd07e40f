package answer

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
)

// The designs of every example lead to plans whose answer is yes, and the ring
// has its comparison.
func TestDesigns(t *testing.T) {
	concluded := map[string]bool{}
	for _, e := range plan.Examples() {
		text, err := JSON(e.Plan)
		if err != nil {
			t.Fatal(err)
		}
		var d document
		if err := json.Unmarshal(text, &d); err != nil {
			t.Fatal(err)
		}
		if d.Designs == nil || len(d.Designs.List) == 0 || d.Designs.Compared < len(d.Designs.List) || d.Zoning == nil {
			t.Errorf("%s: designs %+v, zoning %+v", e.Key, d.Designs, d.Zoning)
			continue
		}
		// Of the figures beside it, in hundredths of the currency.
		first := d.Designs.List[0]
		dearer := math.Round(float64(first.Cost)*100) - math.Round(float64(d.Designs.Now)*100)
		want := map[bool]string{true: "some-cheaper", false: "none-cheaper"}[dearer < 0]
		switch {
		case !first.Carried:
			want = "another-supply"
		case d.Verdict != "yes":
			want = "some-serves"
		}
		concluded[want] = true
		if d.Designs.Conclusion != want {
			t.Errorf("%s: the designs come to %s, and their figures to %s", e.Key, d.Designs.Conclusion, want)
		}
		for i, one := range d.Designs.List {
			p, err := carry.ReadLink(strings.TrimPrefix(one.Link, "#"))
			if err != nil || sheet.Answer(p).Verdict != sheet.Yes {
				t.Errorf("%s: design %d opens as a plan that is not yes: %v", e.Key, i+1, err)
			}
		}
		if (d.Ring != nil) != (len(e.Plan.Rows) > 1) {
			t.Errorf("%s: ring %+v", e.Key, d.Ring)
		}
		if r := d.Ring; r != nil && (r.Gain.Head != r.With.Margin-r.Without.Margin || r.Gain.Longer != nil && *r.Gain.Longer != *r.With.Longer-*r.Without.Longer ||
			(r.Gain.Only != "") != ((r.With.Verdict == "yes") != (r.Without.Verdict == "yes"))) {
			t.Errorf("%s: the ring gains %+v of %+v and %+v", e.Key, r.Gain, r.With, r.Without)
		}
		// Zones are judged by their number, and by whether they are well as they are.
		if z := d.Zoning; z.Fewest > 0 && (z.Conclusion == "one-is-enough" || z.Conclusion == "one-does" || z.Conclusion == "all-needed") != (z.Fewest == len(d.Zones) && d.Verdict == "yes") {
			t.Errorf("%s: the answer is %s with %d zones, and %+v", e.Key, d.Verdict, len(d.Zones), *z)
		}
		if e.Key == "ring" && !(d.Ring.Tied && d.Ring.With.Margin > d.Ring.Without.Margin) {
			t.Errorf("the ring gains %+v", d.Ring)
		}
	}
	if len(concluded) < 4 {
		t.Errorf("the examples come to %v only", concluded)
	}
}
