package sheet

import (
	"math/rand/v2"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/design"
)

// sought returns a plan whose pump is yet to be bought, or known by its power.
func sought(seed uint64) *plan.Plan {
	p := weak(seed)
	p.Supply.Kind = []int{plan.PumpWanted, plan.PumpPower}[seed%2]
	return p
}

// withPump is a plan with a pump of its own, and a regulator behind it or none.
func withPump(p *plan.Plan, c plan.Supply, regulator float64) *Sheet {
	q := p.Clone()
	q.Supply.Kind, q.Supply.Points, q.Supply.ShutOff, q.Supply.MaxFlow = c.Kind, c.Points, c.ShutOff, c.MaxFlow
	q.Supply.Regulator, q.Supply.Devices = regulator, 0
	return assess(q, nil)
}

// but says whether the answer is Yes but for rows whose emitters do not belong
// together, which no pump mends.
func but(s *Sheet) bool {
	for _, f := range s.Findings {
		if f.Kind != Unlike && Kinds[f.Kind].Verdict != Yes {
			return false
		}
	}
	return true
}

// holding is a pump that gives a head in m at any flow.
func holding(head float64) plan.Supply {
	return plan.Supply{Kind: plan.PumpPoints, Points: []plan.Point{{Head: head + 1e-4}, {Flow: 5, Head: head}, {Flow: 10, Head: head - 1e-4}}}
}

// The pump to ask for is any that gives so much at a flow and no more than so much
// with everything shut, as the page prints it: the answer is Yes with each of them.
// With one that gives less it is not, but where less is asked for than the form takes.
func TestEveryPumpThatIsWantedWillDo(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 22))
	does, regulated, capped, tight := 0, 0, 0, 0
	for seed := range uint64(120) {
		p := sought(seed)
		if errs := p.Check(); len(errs) > 0 {
			t.Fatalf("seed %d: %v", seed, errs[0])
		}
		s := Answer(p)
		w := s.Wanted
		if w == nil || w.Does != but(s) {
			t.Fatalf("seed %d: verdict %d with %+v, %+v", seed, s.Verdict, w, s.Findings)
		}
		if !w.Does {
			continue
		}
		does++
		if w.Regulator > 0 {
			regulated++
		}
		if w.Most < design.MostHead {
			capped++
		}
		water, sys := s.Layout.Network.Water, p.Units
		head := min(w.Least, printed(unit.Head, sys, w.Least), water.HeadOf(printed(unit.Pressure, sys, water.PressureHead(w.Least))))
		top := min(design.MostHead, max(w.Most, printed(unit.Head, sys, w.Most), water.HeadOf(printed(unit.Pressure, sys, water.PressureHead(w.Most)))))
		flow := min(w.Flow, printed(unit.Flow, sys, w.Flow))
		for _, c := range curves(r, head, flow, top) {
			if a := withPump(p, c, w.Regulator); !but(a) || a.Verdict != s.Verdict {
				t.Errorf("seed %d: %+v is wanted; %+v gives %+v", seed, *w, c, a.Findings[0])
				break
			}
		}
		// A tenth of a metre is what figures are rounded up by, and a little what the
		// search for the head ends at; a printed pressure is rounded by more in psi.
		if less := w.Least - 0.5; less > leastPump() {
			tight++
			if but(withPump(p, holding(less), w.Regulator)) {
				t.Errorf("seed %d: %+v is wanted, and one that gives %g m will do", seed, *w, less)
			}
		}
		own := s.Layout.Plan.Supply
		if own.Kind != plan.PumpTwo || own.ShutOff > w.Most || own.Regulator != w.Regulator {
			t.Errorf("seed %d: worked out with %+v, which is not %+v", seed, own, *w)
		}
		if h, _ := s.Layout.Curve.Head(w.Flow); w.Regulator == 0 && h < w.Least-1e-9 {
			t.Errorf("seed %d: worked out with one that gives %g m of %+v", seed, h, *w)
		}
	}
	if does < 60 || regulated < 5 || capped < 40 || tight < 60 {
		t.Errorf("%d plans for which a pump will do, %d behind a regulator, %d with a greatest head, %d with a least", does, regulated, capped, tight)
	}
}

// Where none is named no pump will do that a grower could be sent for: of those that
// hold a head, at no two that lie half a metre apart is the answer Yes.
func TestWhereNoPumpIsWantedNoneWillDo(t *testing.T) {
	none, narrow := 0, 0
	for seed := range uint64(120) {
		p := sought(seed)
		s := Answer(p)
		// A change that helps leads to a plan whose pump is sought in its turn.
		for i := range s.Fixes {
			f := &s.Fixes[i]
			if f.Flow > 0 || f.Regulator > 0 || f.Kind == NewPump {
				t.Errorf("seed %d: a pump is sought, and %v asks for one", seed, FixesOf[f.Kind].Name)
			}
			if f.Plan == nil || f.Plan.Supply.Kind != p.Supply.Kind {
				t.Errorf("seed %d: %v leads to no plan that seeks a pump", seed, FixesOf[f.Kind].Name)
			} else if a := Answer(f.Plan); f.Solves != (a.Verdict == Yes && a.Wanted.Does) {
				t.Errorf("seed %d: with %v the answer is %d, and it solves: %t", seed, FixesOf[f.Kind].Name, a.Verdict, f.Solves)
			}
		}
		if s.Wanted.Does {
			continue
		}
		if none++; s.Findings[0].Kind == NarrowPump {
			narrow++
		}
		for head := 1.0; head < 60; head *= 1.04 {
			if but(withPump(p, holding(head), 0)) && but(withPump(p, holding(head+0.5), 0)) {
				t.Errorf("seed %d: none is named, but %+v, and %g m will do", seed, s.Findings[0], head)
				break
			}
		}
	}
	if none < 15 || narrow < 1 {
		t.Errorf("%d plans without a pump that will do, of them %d narrow", none, narrow)
	}
}

// What another kind of supply had is no matter: the form does not show it. And a
// row that does not fit the place needs no other pump.
func TestOnlyTheTankIsAskedFor(t *testing.T) {
	p := plan.Default()
	p.Supply.Kind = plan.PumpWanted
	want := *Answer(p).Wanted
	q := p.Clone()
	q.Supply.Regulator, q.Supply.Devices, q.Supply.Points, q.Supply.ShutOff, q.Supply.Power = 1e5, 2e5, nil, -1, -7
	if got := *Answer(q).Wanted; got != want {
		t.Errorf("%+v, without what a tap had %+v", got, want)
	}
	q = p.Clone()
	q.Place.Length = 5
	if s := Answer(q); *s.Wanted != want || s.Verdict != Nearly || s.Findings[0].Kind != OutsidePlace {
		t.Errorf("in a short place %+v, verdict %d; in a long one %+v", *s.Wanted, s.Verdict, want)
	}
	q.Supply.Tank = 5e-3
	if s := Answer(q); s.Findings[len(s.Findings)-1].Kind != SmallTank {
		t.Errorf("a tank of 5 L: %+v", s.Findings)
	}
}

// By hand: nothing but a rise of 20 m on the way to plain emitters that want 1 m, and
// a metre of margin, which is 22 m and the little that is lost on the way.
func TestWantedByHand(t *testing.T) {
	p := example(t, "balcony").Clone()
	p.Supply.Kind = plan.PumpWanted
	p.Runs[0].Rise, p.Filter.Present, p.Limits.Reserve = 20, 0, 1
	p.Emitters[0].Lowest = 9790 // Pa, which are 1.000 m at 20 °C
	s := Answer(p)
	if w := s.Wanted; !w.Does || w.Least < 22 || w.Least > 22.3 {
		t.Errorf("%+v, want 22 m and a little", *w)
	}
	// Eight emitters of 2 L/h at 0.1 bar, which is 1.02 m, give as the root of the head:
	// at 2 m 2.8 L/h, 0.37 L/min in all, and a quarter more at the most.
	if f := s.Wanted.Flow * 6e4; f < 0.37 || f > 0.37*1.25+0.1 {
		t.Errorf("%g L/min", f)
	}
	// The form takes no pump of more than 150 m.
	p.Runs[0].Rise = 60
	p.Emitters[0].Lowest, p.Emitters[0].Highest = 9.5e5, 10e5
	if s := Answer(p); s.Wanted.Does || s.Wanted.Least != 0 || s.Verdict == Yes {
		t.Errorf("more than the form takes: %+v, verdict %d", *s.Wanted, s.Verdict)
	}
}

// Each design that serves takes a pump of its own, which is that of the plan that its
// link opens.
func TestDesignsOfASoughtPump(t *testing.T) {
	for _, kind := range []int{plan.PumpPower, plan.PumpWanted} {
		p := plan.Default()
		p.Supply.Kind = kind
		s := Answer(p)
		s.Explore(Searching)
		if len(s.Designs.Best) < 2 {
			t.Fatalf("%d designs", len(s.Designs.Best))
		}
		for i := range s.Designs.Best {
			b := &s.Designs.Best[i]
			if b.Take.Supply.Kind != kind || b.Wanted == nil || *b.Wanted != *Answer(b.Take).Wanted || b.Head != b.Wanted.Least || b.Flow != b.Wanted.Flow {
				t.Errorf("design %d: %+v, and its plan seeks %+v", i+1, b.Wanted, *Answer(b.Take).Wanted)
			}
		}
	}
}
