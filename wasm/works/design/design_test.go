package design

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"evenrow/wasm/grower/plan"
)

// split puts rows that stand together into n zones of as many rows.
func split(p *plan.Plan, n int) {
	for i := range p.Rows {
		p.Rows[i].Zone = 1 + i*n/len(p.Rows)
	}
}

func longField(t testing.TB) *plan.Plan {
	for _, e := range plan.Examples() {
		if e.Key == "long-field" {
			return e.Plan
		}
	}
	t.Fatal("no long field")
	return nil
}

// BenchmarkSearch searches designs of the long field: 1560 plants, in US units,
// of which there are most sizes.
func BenchmarkSearch(b *testing.B) {
	p := longField(b)
	n := 0
	for b.Loop() {
		n = Of(p, split, nil).Counted
	}
	b.ReportMetric(float64(n), "designs")
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/design")
}

// anything is a plan with every value anywhere in its range.
func anything(t *testing.T, seed uint64) *plan.Plan {
	rnd := rand.New(rand.NewPCG(seed, 3))
	p := plan.Default()
	for _, s := range plan.Sections() {
		if s.Name == "points" || s.ID > 9 && s.Name != "prices" {
			continue
		}
		if s.List {
			s.Resize(p, s.Min+rnd.IntN(min(s.Max, 8)-s.Min+1))
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
	for i, roll := range p.Prices.Rolls {
		if roll < plan.ShortestRoll {
			p.Prices.Rolls[i] = 0 // sold by the metre
		}
	}
	for i := range p.Emitters {
		e := &p.Emitters[i]
		e.Lowest, e.Closes = e.Opens+1e4, e.Opens/2
		e.Highest, e.Flushes = e.Lowest*2, 0
		e.Exponent = []float64{0.1 * float64(seed%2), 0.5}[e.Kind]
		e.Micro = 0 // whose loss is bounded
	}
	for i := range p.Rows {
		r := &p.Rows[i]
		r.Plants = 1 + r.Plants%20
		r.Tube %= 3
		r.PerPiece, r.Emitter = min(r.PerPiece, r.Plants), r.Emitter%len(p.Emitters)
	}
	if seed%2 == 0 { // within reach of some supply
		p.Limits.Reserve, p.Limits.Evenness, p.Limits.Speed = 1, 0.5, 3
		p.Prices.Flush = 0
		for i := range p.Runs {
			p.Runs[i].Rise, p.Runs[i].Elbows, p.Runs[i].Checks = p.Runs[i].Rise/20, 1, 0
			p.Runs[i].Length, p.Runs[i].Valves, p.Runs[i].Tees = p.Runs[i].Length/10, 1, 0
		}
		for i := range p.Emitters {
			e := &p.Emitters[i]
			e.CV, e.Flow = 0.03, 1e-7+e.Flow/20
			e.Opens, e.Closes = e.Opens/4, e.Closes/4
			e.Lowest, e.Highest = e.Lowest/4, 1e6
		}
		for i := range p.Rows {
			p.Rows[i].Slope, p.Rows[i].Height = p.Rows[i].Slope/10, p.Rows[i].Height/10
		}
	}
	for _, e := range p.Check() {
		if e.Path != "emitters" {
			t.Fatalf("seed %d: %s", seed, e.Error())
		}
	}
	return p
}

func TestAnyPlanIsSearched(t *testing.T) {
	served := 0
	for seed := range uint64(60) {
		p := anything(t, seed)
		r := Of(p, split, nil)
		if r.Solved+r.Pruned > r.Counted || len(r.List) > r.Counted {
			t.Errorf("seed %d: %+v", seed, r)
		}
		if len(r.List) > 0 {
			served++
		} else if r.Counted > 0 && r.Forbids == 0 && r.Failures == [Limits]int{} {
			t.Errorf("seed %d: nothing serves, and nothing is to blame", seed)
		}
		before := Design{Cost: -1, Head: math.Inf(1), Power: math.Inf(1)}
		for i, d := range r.List {
			if !(d.Cost > before.Cost) || !(d.Head < before.Head || d.Power < before.Power) || d.Flow <= 0 || d.Flow-d.Flow != 0 || d.Head-d.Head != 0 {
				t.Errorf("seed %d: design %d is %+v after %+v", seed, i, d, before)
			}
			before = d
			for _, e := range d.Plan.Check() {
				if e.Path != "emitters" {
					t.Errorf("seed %d: %s", seed, e.Error())
				}
			}
		}
	}
	if served < 5 {
		t.Errorf("only %d plans have designs", served)
	}
	t.Log(served, "plans have designs")
}

// The largest plans take no longer than the bounds of the work allow, and say
// so when that ended the search.
func TestLargePlansAreBounded(t *testing.T) {
	for _, exponent := range []float64{0, 0.05} {
		for _, layout := range []int{plan.HeaderAndRows, plan.Ring, plan.OneLine} {
			p := longField(t)
			plan.SectionNamed("rows").Resize(p, plan.MaxRows)
			p.Header.Layout = layout
			p.Emitters[0].Exponent = exponent
			p.Runs = append(p.Runs, p.Runs[0])
			for i := range p.Rows {
				p.Rows[i].Plants = 66
			}
			s := newSearch(p, split, nil)
			start := time.Now()
			s.run()
			// One design more than the bound may have been begun.
			if room := 5000 * len(s.base.Points); s.work > mostWork+room {
				t.Errorf("exponent %g, layout %d: %d steps of nodes", exponent, layout, s.work)
			}
			t.Logf("exponent %g, layout %d: %v, %d designs, %d nodes, cut: %v", exponent, layout, time.Since(start), s.r.Counted, s.work, s.r.Cut)
			if exponent > 0 && layout == plan.HeaderAndRows && !s.r.Cut {
				t.Error("the search says that it looked at everything")
			}
		}
	}
}

// A supply whose curve passes a little above the duty carries it, and the form
// takes it.
func TestStrengthen(t *testing.T) {
	p := plan.Default()
	Strengthen(p, 12.34, 1e-4)
	if h := p.Supply.ShutOff * (1 - math.Pow(1e-4/p.Supply.MaxFlow, 2)); h < 12.34 || h > 12.34+0.2 {
		t.Errorf("the pump gives %g m at the duty", h)
	}
	// Up to the next tenth of a metre and of a litre a minute, in place of a tap
	// and of a regulator too.
	p.Supply.Kind, p.Supply.Regulator = plan.Mains, 1e5
	Strengthen(p, 12.34, 6.04/6e4)
	if math.Abs(p.Supply.ShutOff-12.4/0.8) > 1e-9 || math.Abs(p.Supply.MaxFlow-6.1/6e4/math.Sqrt(0.2)) > 1e-9 || p.Supply.Kind != plan.PumpTwo || p.Supply.Regulator != 0 {
		t.Errorf("12.34 m at 6.04 L/min take %+v", p.Supply)
	}
	Strengthen(p, 0.01, 1e-9)
	if errs := p.Check(); len(errs) > 0 {
		t.Error(errs[0])
	}
	p.Supply.Kind, p.Supply.Regulator = plan.GravityTank, 0
	was := p.Runs[0].Rise
	Strengthen(p, 1.23, 1e-4)
	if up := was - p.Runs[0].Rise; up < 1.23 || up > 1.29 || p.Supply.Kind != plan.GravityTank {
		t.Errorf("raised by %g m", up)
	}
}
