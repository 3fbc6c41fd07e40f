package headroom_test

import (
	"math/rand/v2"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/headroom"
)

// random is a small plan, often one whose answer is yes.
func random(r *rand.Rand) *plan.Plan {
	p := plan.Default()
	p.Supply.Kind, p.Supply.Regulator = plan.PumpTwo, 0
	p.Supply.ShutOff, p.Supply.MaxFlow = 15+15*r.Float64(), (4+20*r.Float64())/6e4
	p.Filter.Fouling = 1e4 * r.Float64()
	p.Limits.Reserve = r.Float64()
	p.Limits.Evenness = 0.7 + 0.26*r.Float64()
	p.Limits.Speed = 0.3 + 0.7*r.Float64()
	p.Rows = p.Rows[:1+r.IntN(3)]
	for i := range p.Rows {
		row := &p.Rows[i]
		row.Plants, row.Spacing = 3+r.IntN(12), 0.2+r.Float64()
		row.Slope = 0.04*r.Float64() - 0.02
	}
	e := &p.Emitters[0]
	e.Flow = (2 + 20*r.Float64()) / 3.6e6
	if r.IntN(2) == 0 {
		top, last := p.Supply.ShutOff, p.Supply.MaxFlow/2
		p.Supply.Kind, p.Supply.Regulator = plan.PumpPoints, 0
		p.Supply.Points = []plan.Point{{Flow: 0, Head: top}, {Flow: last / 2, Head: 0.95 * top}, {Flow: last, Head: 0.8 * top}}
	}
	if r.IntN(2) == 0 {
		e.Kind, e.Nominal, e.Exponent, e.Lowest = plan.NonCompensating, 1e5, 0.5, 7e4
	}
	return p
}

// The answer is yes all the way to the bound, and no from there on: the search
// may go by halving, because more of anything only makes matters worse.
func TestTheAnswerTurnsOnce(t *testing.T) {
	tried := map[headroom.Kind]int{}
	named := map[headroom.End]int{}
	yes := func(p *plan.Plan) bool { return len(p.Check()) == 0 && sheet.Answer(p).Verdict == sheet.Yes }
	for seed := range uint64(50) {
		p := random(rand.New(rand.NewPCG(seed, 6)))
		if len(p.Check()) > 0 {
			continue
		}
		s := sheet.Answer(p)
		s.Explore(sheet.Carrying)
		if s.Verdict != sheet.Yes {
			if len(s.Headroom) > 0 {
				t.Errorf("seed %d: headroom without a yes", seed)
			}
			continue
		}
		for _, r := range s.Headroom {
			tried[r.Kind]++
			named[r.Why]++
			for i := range 5 {
				if n := r.Most * i / 4; !yes(r.Plan(p, n)) {
					t.Errorf("seed %d: %+v, and the answer to %d more is not yes", seed, r, n)
				}
			}
			if r.Why.Limit == headroom.Enough {
				continue
			}
			for _, n := range []int{r.Fails, r.Fails + 1, r.Fails + 3, 2*r.Fails + 5} {
				if yes(r.Plan(p, n)) {
					t.Errorf("seed %d: %+v, and the answer to %d more is yes", seed, r, n)
				}
			}
			if r.Why.Limit == headroom.Refused {
				continue
			}
			if f := sheet.Answer(r.Plan(p, r.Fails)).Findings[0]; r.Why != sheet.EndOf(f.Kind) {
				t.Errorf("seed %d: %+v, and what it fails by is %d", seed, r, f.Kind)
			}
		}
	}
	t.Log(tried, named)
	if len(tried) != 4 || len(named) < 4 {
		t.Errorf("too little was tried: %v, ended by %v", tried, named)
	}
}
