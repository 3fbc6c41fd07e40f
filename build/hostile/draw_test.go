package hostile

import (
	"reflect"
	"testing"

	"evenrow/wasm/grower/plan"
)

// What is drawn is taken by the form, is the same each time, and is what it is
// drawn for.
func TestPlansAreDrawn(t *testing.T) {
	for _, c := range []struct {
		name         string
		draw         func(*Source) *plan.Plan
		fewest, most int // plants, of which one plan comes near the most
	}{
		{"ordinary", Ordinary, 4, 430},
		{"uneven", Uneven, 1, 20 * plan.MaxRows},
		{"small ring", func(s *Source) *plan.Plan { return Ring(s, 120) }, 40, 120},
		{"large ring", func(s *Source) *plan.Plan { return Ring(s, plan.MaxPlants) }, 40, plan.MaxPlants},
	} {
		most, layouts, supplies := 0, map[int]bool{}, map[int]bool{}
		for n := range 60 {
			p := c.draw(Numbered(6, n))
			if errs := p.Check(); len(errs) > 0 || !reflect.DeepEqual(p, c.draw(Numbered(6, n))) {
				t.Fatalf("%s, plan %d: %v", c.name, n, errs)
			}
			plants := 0
			for i := range p.Rows {
				plants += p.Rows[i].Plants
			}
			if plants < c.fewest || plants > c.most {
				t.Errorf("%s, plan %d has %d plants", c.name, n, plants)
			}
			most = max(most, plants)
			layouts[p.Header.Layout], supplies[p.Supply.Kind] = true, true
		}
		t.Logf("%s: at most %d plants, layouts %v, supplies %v", c.name, most, layouts, supplies)
		if len(supplies) < 4 || c.name == "large ring" && most < plan.MaxPlants*9/10 {
			t.Errorf("%s: at most %d plants, layouts %v, supplies %v", c.name, most, layouts, supplies)
		}
	}
}
