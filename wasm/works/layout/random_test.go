package layout

import (
	"math/rand/v2"
	"testing"

	"evenrow/wasm/grower/plan"
)

// randomPlan returns a plan with every value anywhere in its range, of which
// Check finds nothing wrong, with at most 40 plants to a row.
func randomPlan(t testing.TB, seed uint64) *plan.Plan {
	t.Helper()
	rnd := rand.New(rand.NewPCG(seed, 1))
	p := plan.Default()
	for _, s := range plan.Sections() {
		if s.Name == "points" || s.ID > 9 {
			continue // the default's: flows, heads and dates must stay in order, and nothing is laid out by the season
		}
		if s.List {
			s.Resize(p, s.Min+rnd.IntN(min(s.Max, 12)-s.Min+1))
		}
		for i := range s.Records(p) {
			for _, f := range s.Fields() {
				if f.Type == plan.Text {
					continue
				}
				v := f.Min + rnd.Float64()*(f.Max-f.Min)
				if f.Type != plan.Number {
					v = float64(int(f.Min) + rnd.IntN(int(f.Max-f.Min)+1))
				}
				f.SetValue(p, i, v)
			}
		}
	}
	for i := range p.Emitters {
		e := &p.Emitters[i]
		e.Lowest = e.Opens + 1e4
		e.Closes = e.Opens / 2
		e.Regulates = e.Lowest / 2
		e.Highest = e.Lowest * 2
		e.Exponent = []float64{0.1, 0.5}[e.Kind]
		e.Micro = 0
	}
	for i := range p.Rows {
		r := &p.Rows[i]
		r.Plants = 1 + r.Plants%40
		r.PerPiece = min(r.PerPiece, r.Plants)
		r.Emitter %= len(p.Emitters)
		r.Tube %= 3
		r.Zone = 1 + r.Zone%3
		// An equal gap now and then brings a row's tee to the middle.
		if seed%3 == 0 && i > 0 {
			r.Gap = p.Rows[0].Gap
		}
	}
	for _, e := range p.Check() {
		if e.Path != "emitters" {
			t.Fatalf("seed %d: %s", seed, e.Error())
		}
	}
	return p
}

// forRandom runs a check on many random plans.
func forRandom(t *testing.T, check func(t *testing.T, seed uint64, l *Layout)) {
	t.Helper()
	for seed := range uint64(400) {
		check(t, seed, New(randomPlan(t, seed)))
		if t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
}
