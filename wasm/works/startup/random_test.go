package startup

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenrow/wasm/grower/plan"
)

// random returns a valid plan with whatever the form takes: layouts, supplies,
// slopes, heights, zones, mixed emitters.
func random(r *rand.Rand) *plan.Plan {
	examples := plan.Examples()
	for {
		p := examples[r.IntN(len(examples))].Plan.Clone()
		p.Supply.Kind, p.Supply.Regulator = [...]int{plan.PumpPoints, plan.PumpTwo, plan.GravityTank, plan.Mains}[r.IntN(4)], 0
		p.Supply.ShutOff = 3 + 40*r.Float64()
		p.Supply.MaxFlow = (10 + 100*r.Float64()) / 6e4
		p.Supply.Static = 5e4 + 4e5*r.Float64()
		p.Header.Layout, p.Header.Feed = r.IntN(3), r.IntN(2)
		p.Filter.Present = r.IntN(2)
		p.Runs[0].Rise = 6*r.Float64() - 3
		p.Runs[0].Checks = r.IntN(2)
		plan.SectionNamed("emitters").Resize(p, 1+r.IntN(3))
		for i := range p.Emitters {
			e := &p.Emitters[i]
			e.Kind = r.IntN(2)
			e.Exponent = 0.5 * float64(e.Kind)
			e.Closes = e.Opens * r.Float64()
			e.Flushes = r.IntN(2)
			e.Regulates = e.Lowest * (0.05 + 0.95*r.Float64())
		}
		plan.SectionNamed("rows").Resize(p, 1+r.IntN(10))
		for i := range p.Rows {
			w := &p.Rows[i]
			w.Plants = 1 + r.IntN(40)
			w.PerPiece = 1
			w.Emitter = r.IntN(len(p.Emitters))
			w.Height = 4*r.Float64() - 2
			w.Slope = 0.2*r.Float64() - 0.1
			w.First = 3 * r.Float64() * float64(r.IntN(2))
			w.Gap *= float64(r.IntN(2))
			w.Zone = 1 + r.IntN(4)
			if r.IntN(2) == 0 {
				w.Zone = 1
			}
		}
		if len(p.Check()) == 0 {
			return p
		}
	}
}

// Whatever the plan, everything is worked out, no number is missing, and what
// is reckoned in two ways is the same.
func TestRandomPlans(t *testing.T) {
	for seed := range uint64(40) {
		p := random(rand.New(rand.NewPCG(seed, 3)))
		l, s := of(t, p)
		for i := range s.Zones {
			z := &s.Zones[i]
			d := &z.Drain
			for _, v := range []float64{z.Holds, z.Filled, z.Lead, z.Swell, d.Volume, d.Back, d.Level, d.Refill, d.Prevents} {
				if math.IsNaN(v) || v < 0 {
					t.Errorf("seed %d: %+v", seed, z)
				}
			}
			sum := 0.0
			for _, v := range d.Extra {
				if math.IsNaN(v) || v < 0 {
					t.Errorf("seed %d: a plant lets out %g", seed, v)
				}
				sum += v
			}
			// To the rounding of a sum of some thousand lengths.
			if math.Abs(sum-d.Volume) > 1e-9*(d.Volume+1e-6) {
				t.Errorf("seed %d: %g m³ runs out, and the plants let out %g", seed, d.Volume, sum)
			}
			if d.Volume+d.Back+d.Level > z.Holds*(1+1e-9) && len(l.Zones) == 1 {
				t.Errorf("seed %d: %g, %g and %g m³ of %g", seed, d.Volume, d.Back, d.Level, z.Holds)
			}
			if len(z.Rows) == 0 {
				t.Errorf("seed %d: the filling does not settle", seed)
			}
			if z.full && z.Filled < z.Bound(l) {
				t.Errorf("seed %d: full after %g s, bound %g s", seed, z.Filled, z.Bound(l))
			}
		}
	}
}
