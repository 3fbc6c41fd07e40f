package sheet

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenrow/build/hostile"
	"evenrow/wasm/grower/plan"
)

func zonedAndLooped(p *plan.Plan) *Sheet {
	s := Answer(p)
	s.Explore(Looping)
	return s
}

func TestFewestZones(t *testing.T) {
	if z := zonedAndLooped(example(t, "long-field")).Zoning; z.Fewest != 2 || z.Plan == nil || assess(z.Plan, nil).Verdict != Yes {
		t.Errorf("the long field: %+v", z)
	}
	if z := zonedAndLooped(plan.Default()).Zoning; z.Fewest != 1 || z.Plan != nil {
		t.Errorf("the tunnel: %+v", z)
	}
	p := plan.Default()
	split(p, 3)
	if z := zonedAndLooped(p).Zoning; z.Fewest != 1 || z.Plan == nil || z.Plan.Rows[3].Zone != 1 {
		t.Errorf("the tunnel in three zones: %+v", z)
	}
	if z := zonedAndLooped(example(t, "ring")).Zoning; !z.Alone || z.Fewest != 1 {
		t.Errorf("the ring: %+v", z)
	}
	if z := zonedAndLooped(example(t, "wrong-pump")).Zoning; z.Fewest != 0 || z.Tried != 4 {
		t.Errorf("the wrong pump: %+v", z)
	}
	// With a pump that is sought fewer zones do too, with another pump.
	for _, kind := range []int{plan.PumpPower, plan.PumpWanted} {
		p.Supply.Kind = kind
		if z := zonedAndLooped(p).Zoning; z.Fewest != 1 || z.Plan == nil || z.Plan.Supply.Kind != kind {
			t.Errorf("supply %d: %+v", kind, z)
		}
	}
}

// With fewer zones than the fewest the answer is not Yes, tried one by one.
func TestNoFewerZonesDo(t *testing.T) {
	more := 0
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 21))
		p := small(r)
		p.Supply.Kind, p.Header.Layout, p.Supply.Regulator = plan.PumpTwo, plan.HeaderAndRows, 0
		p.Supply.ShutOff, p.Supply.MaxFlow = 14, 8e-5
		s := zonedAndLooped(p)
		z := s.Zoning
		now := len(s.Zones)
		if s.Verdict == Yes && z.Fewest == now {
			z.Fewest--
		} else if z.Fewest == 0 {
			z.Fewest = len(p.Rows)
			if s.Verdict == Yes {
				t.Errorf("seed %d: yes with %d zones, and no number does", seed, now)
			}
		} else {
			if assess(z.Plan, nil).Verdict != Yes || len(assess(z.Plan, nil).Zones) != z.Fewest {
				t.Errorf("seed %d: not yes with %d zones", seed, z.Fewest)
			}
			if z.Fewest > 1 {
				more++
			}
			z.Fewest--
		}
		for n := 1; n <= z.Fewest; n++ {
			q := p.Clone()
			split(q, n)
			if assess(q, nil).Verdict == Yes {
				t.Errorf("seed %d: yes with %d zones", seed, n)
			}
		}
	}
	if more == 0 {
		t.Error("no plan needs several zones")
	}
}

// One litre to each plant: 60 plants of 2 L/h a zone take half an hour each.
func TestRound(t *testing.T) {
	p := plan.Default()
	split(p, 2)
	round, each := Answer(p).Round()
	if len(each) != 2 || math.Abs(each[0]-1800) > 1e-6 || math.Abs(round-3600) > 1e-6 {
		t.Errorf("%g s in all, %v by zone, want 1800 each", round, each)
	}
}

// The ring example with and without its far header, each worked out by itself.
// Its rows are 1.2 m apart, so the far header takes five gaps and two ends.
func TestLoop(t *testing.T) {
	p := example(t, "ring")
	l := zonedAndLooped(p).Loop
	tied, untied := assess(p, nil), p.Clone()
	untied.Header.Layout = plan.HeaderAndRows
	other := zonedAndLooped(untied)
	if l.Now != Tied || l.Side[Tied].Zone.Margin != tied.Zones[0].Margin || l.Side[Untied].Zone.Margin != other.Zones[0].Margin {
		t.Errorf("margins %g and %g, want %g and %g", l.Side[Tied].Zone.Margin, l.Side[Untied].Zone.Margin, tied.Zones[0].Margin, other.Zones[0].Margin)
	}
	if l.Side[Tied].High-l.Side[Tied].Low >= l.Side[Untied].High-l.Side[Untied].Low {
		t.Error("the ring does not bring the heads together")
	}
	if want := 5*1.2 + 2*plan.Tail; math.Abs(l.More-want) > 1e-9 {
		t.Errorf("%g m more tubing, want %g", l.More, want)
	}
	if back := other.Loop; back.Now != Untied || back.Side[Tied].Zone.Margin != l.Side[Tied].Zone.Margin || back.Plan.Header.Layout != plan.Ring {
		t.Errorf("from the other side: %+v", back)
	}
	for side, layout := range [...]int{Untied: plan.HeaderAndRows, Tied: plan.Ring} {
		s := &l.Side[side]
		if !s.Sought || s.Bounded {
			t.Errorf("side %d: %d plants more, sought %v, bounded %v", side, s.Longer, s.Sought, s.Bounded)
			continue
		}
		for more, want := range map[int]bool{s.Longer: true, s.Longer + 1: false} {
			q := p.Clone()
			q.Header.Layout = layout
			for i := range q.Rows {
				q.Rows[i].Plants += more
			}
			if got := allOpen(q, nil) >= q.Limits.Reserve; got != want {
				t.Errorf("side %d with %d plants more: %v", side, more, got)
			}
		}
	}
	if l.Side[Tied].Longer <= l.Side[Untied].Longer {
		t.Errorf("rows of the ring may have %d plants more, without it %d", l.Side[Tied].Longer, l.Side[Untied].Longer)
	}
	for _, none := range []func(p *plan.Plan){
		func(p *plan.Plan) { p.Rows = p.Rows[:1] },
		func(p *plan.Plan) { p.Header.Layout = plan.OneLine },
		func(p *plan.Plan) { p.Header.Layout = plan.HeaderAndRows; split(p, 2) },
	} {
		q := p.Clone()
		none(q)
		if l := zonedAndLooped(q).Loop; l != nil {
			t.Errorf("compared although it makes no sense: %+v", q.Header)
		}
	}
	// Where the pump is sought both sides have the same one, and the link leads to a
	// plan that still seeks it.
	q := p.Clone()
	q.Supply.Kind = plan.PumpWanted
	w := zonedAndLooped(q)
	same := w.Loop.Side[Tied].Layout.Plan.Supply
	if other := w.Loop.Side[Untied].Layout.Plan.Supply; same.Kind != plan.PumpTwo || same.ShutOff != other.ShutOff || same.MaxFlow != other.MaxFlow || w.Loop.Plan.Supply.Kind != plan.PumpWanted {
		t.Errorf("a loop with %+v, without it %+v, and the link to kind %d", same, other, w.Loop.Plan.Supply.Kind)
	}
}

// Whatever the plan, the rows have as many plants more as still get their water,
// and one more each does not; where none would do, none are told.
func TestHowLongRowsMayBe(t *testing.T) {
	told := map[string]int{}
	for n := range 240 {
		p := hostile.Uneven(hostile.Numbered(14, n))
		if n%2 == 0 {
			p = hostile.Ordinary(hostile.Numbered(14, n))
		}
		least := math.MaxInt
		for i := range p.Rows {
			least = min(least, p.Rows[i].Plants)
		}
		l := zonedAndLooped(p).Loop
		if l == nil {
			continue
		}
		for side := range l.Side {
			s := &l.Side[side]
			fits := func(more int) bool {
				q := p
				if l.Now != side {
					q = l.Plan
				}
				q = q.Clone()
				q.Supply = s.Layout.Plan.Supply // that of both sides, where the pump is sought
				for i := range q.Rows {
					r := &q.Rows[i]
					r.Plants += more
					r.PerPiece = min(r.PerPiece, max(1, r.Plants))
				}
				return len(q.Check()) == 0 && allOpen(q, nil) >= q.Limits.Reserve
			}
			switch {
			case len(s.Layout.Plants) > longest:
				continue
			case !s.Sought:
				told["none"]++
				if fits(1 - least) {
					t.Errorf("plan %d, side %d: rows that are %d shorter would do, and none are told", n, side, least-1)
				}
				continue
			case s.Longer < 0:
				told["fewer"]++
			case s.Longer == least:
				told["twice"]++
			default:
				told["more"]++
			}
			if !fits(s.Longer) || s.Longer < least && fits(s.Longer+1) {
				t.Errorf("plan %d, side %d: %d plants more are told: %v, one more: %v", n, side, s.Longer, fits(s.Longer), fits(s.Longer+1))
			}
			if s.Longer == least && !s.Bounded {
				t.Errorf("plan %d, side %d: nothing more than twice the plants was tried, and that is not said", n, side)
			}
		}
	}
	t.Log(told)
	for _, kind := range []string{"none", "fewer", "twice", "more"} {
		if told[kind] < 5 {
			t.Errorf("%s is told %d times", kind, told[kind])
		}
	}
}
