package answer

import (
	"encoding/json"
	"math"
	"slices"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/climate"
	"evenrow/wasm/works/fault"
)

// What is explored after the answer is in the file too, whole.
func TestWhatIsExploredIsThere(t *testing.T) {
	if len(faults) != int(fault.End)+1 || climate.Kinds != 4 {
		t.Fatal("a kind of fault or of day has no name")
	}
	for _, e := range plan.Examples() {
		text, err := JSON(e.Plan)
		if err != nil {
			t.Fatal(err)
		}
		var d document
		if err := json.Unmarshal(text, &d); err != nil {
			t.Fatal(err)
		}
		if len(d.Starts) != len(d.Zones) {
			t.Errorf("%s: %d starts of %d zones", e.Key, len(d.Starts), len(d.Zones))
		}
		if d.Verdict == "no" {
			continue // nothing fails, and no timer is set, where no water flows
		}
		for _, z := range d.Starts {
			if len(z.Rows) == 0 || !(z.Holds > 0) || !z.Checked {
				t.Errorf("%s: the start of zone %d is %+v", e.Key, z.Zone, z)
			}
		}
		if i := slices.IndexFunc(d.Faults, func(f failing) bool { return f.Kind == "emitter-out" }); i < 0 || !(d.Faults[i].Lost > 0) {
			t.Errorf("%s: no emitter is out in %+v", e.Key, d.Faults)
		}
		if len(d.Chance) == 0 || d.Chance[0].Draws == 0 || math.Abs(float64(d.Chance[0].EU-d.Chance[0].Formula)) > 0.05 {
			t.Errorf("%s: chance %+v", e.Key, d.Chance)
		}
		if len(d.Water) < 60 || !(d.Water[30].Hot >= d.Water[30].Typical) {
			t.Errorf("%s: water of %d days", e.Key, len(d.Water))
		}
		if len(d.Timer) == 0 {
			t.Fatalf("%s: no timer", e.Key)
		}
		for _, l := range d.Timer {
			for _, day := range l.Set {
				for _, z := range day.Zones {
					sum := 0.0
					for _, s := range z.Shots {
						sum += float64(s.For)
					}
					// As added in the file, in seconds.
					if math.Abs(sum-float64(z.Given)) > 1e-6 || z.Given < z.Run-1e-6 {
						t.Errorf("%s from %s, a %s day: shots of %g s, given %g, needed %g", e.Key, l.From, day.Sky, sum, z.Given, z.Run)
					}
				}
			}
		}
	}
}
