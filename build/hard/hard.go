// Package hard draws plans for tests and benchmarks: ordinary ones, rings of
// uneven rows, and whatever else the form takes, up to every limit.
//
// The same source of random numbers gives the same plans. All of them pass
// [plan.Plan.Check].
package hard

import (
	"math"
	"math/rand/v2"

	"evenrow/wasm/catalogue"
	"evenrow/wasm/plan"
)

// Ordinary draws a plan as most growers have one: an example with other rows,
// another supply and other crops.
func Ordinary(r *rand.Rand) *plan.Plan {
	for {
		p := example(r)
		supplied(r, p)
		plan.SectionNamed("rows").Resize(p, 1+r.IntN(10))
		zones := 1 + r.IntN(3)
		for i := range p.Rows {
			w := &p.Rows[i]
			w.Plants, w.PerPiece = 4+r.IntN(40), 1
			w.Emitter = r.IntN(len(p.Emitters))
			w.Gap = 0.8 + r.Float64()
			w.Zone = 1 + i*zones/len(p.Rows)
			w.Slope = 0.02 * (r.Float64() - 0.5)
		}
		p.Place.Length, p.Place.Width = 60, 40
		if len(p.Check()) == 0 {
			return p
		}
	}
}

// Ring draws forty to sixty uneven rows between two headers, of up to so many
// plants, with one kind of emitter or several.
func Ring(r *rand.Rand, plants int) *plan.Plan {
	for {
		p := example(r)
		supplied(r, p)
		p.Header.Layout, p.Header.Feed = plan.Ring, r.IntN(2)
		p.Place.Length, p.Place.Width = 300, 200
		plan.SectionNamed("emitters").Resize(p, 1+r.IntN(2))
		for i := range p.Emitters {
			e := &p.Emitters[i]
			e.Kind = r.IntN(2)
			e.Exponent = 0.5 * float64(e.Kind)
		}
		rows(r, p, 40+r.IntN(plan.MaxRows-39), plants)
		if len(p.Check()) == 0 {
			return p
		}
	}
}

// Hostile draws a plan of any layout and any supply, with so many plants at the
// most, and any fields at their limits or between them.
func Hostile(r *rand.Rand, plants int) *plan.Plan {
	for {
		p := example(r)
		supplied(r, p)
		p.Header.Layout = r.IntN(3)
		plan.SectionNamed("emitters").Resize(p, 1+r.IntN(plan.MaxEmitters))
		plan.SectionNamed("runs").Resize(p, 1+r.IntN(plan.MaxRuns))
		rows(r, p, 1+r.IntN(plan.MaxRows), plants)
		for _, list := range []string{"plantings", "crops"} {
			s := plan.SectionNamed(list)
			was := s.Records(p)
			s.Resize(p, r.IntN(s.Max+1))
			for i := was; i < s.Records(p); i++ {
				s.SetDefaults(p, i)
			}
		}
		before := p.Clone()
		often := [...]float64{0.02, 0.1, 0.5}[r.IntN(3)]
		each(p, func(f *plan.Field, i int) {
			if r.Float64() >= often || f.Section == "rows" && f.Name == "plants" || f.Section == "header" && f.Name == "layout" {
				return
			}
			switch v := f.Min + (f.Max-f.Min)*math.Pow(r.Float64(), 3); {
			case f.Type == plan.Text:
			case f.Type != plan.Number:
				f.SetValue(p, i, f.Min+float64(r.IntN(1+int(f.Max-f.Min))))
			case r.IntN(3) == 0:
				f.SetValue(p, i, f.Min)
			case r.IntN(2) == 0:
				f.SetValue(p, i, f.Max)
			default:
				f.SetValue(p, i, v)
			}
		})
		if mended(p, before) {
			return p
		}
	}
}

// example is one of the examples, as a plan of one's own.
func example(r *rand.Rand) *plan.Plan {
	all := plan.Examples()
	p := all[r.IntN(len(all))].Plan
	if len(p.Supply.Points) < 3 {
		p.Supply.Points = plan.Default().Supply.Points
	}
	return p
}

// supplied gives it a supply of any kind that can be worked out.
func supplied(r *rand.Rand, p *plan.Plan) {
	s := &p.Supply
	s.Kind, s.Regulator = [...]int{plan.PumpPoints, plan.PumpTwo, plan.GravityTank, plan.Mains}[r.IntN(4)], 0
	s.ShutOff = 5 + 60*r.Float64()
	s.MaxFlow = (10 + 500*r.Float64()) / 6e4
	s.Static = 1e5 + 5e5*r.Float64()
	s.TapFlow = (5 + 100*r.Float64()) / 6e4
	if s.Kind == plan.GravityTank {
		p.Runs[0].Rise = -20 * r.Float64()
	}
}

// rows gives a plan so many rows, uneven, and up to so many plants in all.
func rows(r *rand.Rand, p *plan.Plan, n, plants int) {
	plan.SectionNamed("rows").Resize(p, n)
	p.Place.Length, p.Place.Width = 300, 200
	left := min(plants, plan.MaxPlants)
	even, zones := r.IntN(4) == 0, 1+r.IntN(plan.MaxZones)
	for i := range p.Rows {
		w := &p.Rows[i]
		most := min(400, left-(n-i-1), 1+2*left/(n-i))
		if w.Plants = max(1, min(most, left/(n-i))); !even {
			w.Plants = 1 + r.IntN(max(1, most))
		}
		left -= w.Plants
		w.PerPiece = 1
		w.Spacing = 0.1 + 0.4*r.Float64()
		w.First, w.Gap = 2*r.Float64(), 0.5+r.Float64()
		w.Emitter = r.IntN(len(p.Emitters))
		w.PerPlant = 1 + r.IntN(2)
		w.Slope = 0.04 * (r.Float64() - 0.5)
		w.Height = r.Float64() - 0.5
		if w.Zone = 1 + r.IntN(zones); even {
			w.Zone = 1 + i*zones/n
		}
		if tube := r.IntN(len(catalogue.Tubes)); catalogue.Tubes[tube].Row {
			w.Tube = tube
		}
	}
}

// each calls do for every field of every record that applies.
func each(p *plan.Plan, do func(f *plan.Field, i int)) {
	for _, s := range plan.Sections() {
		if !s.Applies(p) {
			continue
		}
		n := 1
		if s.List {
			n = s.Records(p)
		}
		for i := range n {
			for _, f := range s.Fields() {
				do(f, i)
			}
		}
	}
}

// mended takes the fields that are wrong back to what they were, and says
// whether the plan is right then.
func mended(p, before *plan.Plan) bool {
	for range 20 {
		wrong := map[string]bool{}
		for _, e := range p.Check() {
			wrong[e.Path] = true
		}
		if len(wrong) == 0 {
			return true
		}
		each(p, func(f *plan.Field, i int) {
			if s := plan.SectionNamed(f.Section); wrong[plan.Path(f, i)] && (!s.List || i < s.Records(before)) {
				f.Copy(p, i, before, i)
			}
		})
	}
	return false
}
