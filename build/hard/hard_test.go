package hard

import (
	"math/rand/v2"
	"reflect"
	"testing"

	"evenrow/wasm/plan"
)

// What is drawn is taken by the form, is the same each time, and reaches the
// limits that it is drawn for.
func TestPlansAreDrawn(t *testing.T) {
	most, layouts, supplies := 0, map[int]bool{}, map[int]bool{}
	for _, draw := range []func(*rand.Rand) *plan.Plan{
		Ordinary,
		func(r *rand.Rand) *plan.Plan { return Ring(r, plan.MaxPlants) },
		func(r *rand.Rand) *plan.Plan { return Hostile(r, plan.MaxPlants) },
	} {
		for seed := range uint64(60) {
			p, q := draw(rand.New(rand.NewPCG(seed, 1))), draw(rand.New(rand.NewPCG(seed, 1)))
			if errs := p.Check(); len(errs) > 0 || !reflect.DeepEqual(p, q) {
				t.Fatalf("seed %d: %v", seed, errs)
			}
			plants := 0
			for i := range p.Rows {
				plants += p.Rows[i].Plants
			}
			most = max(most, plants)
			layouts[p.Header.Layout], supplies[p.Supply.Kind] = true, true
		}
	}
	if most < plan.MaxPlants*9/10 || len(layouts) < 3 || len(supplies) < 5 {
		t.Errorf("at most %d plants, layouts %v, supplies %v", most, layouts, supplies)
	}
}
