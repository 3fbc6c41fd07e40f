package sheet

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/design"
	"evenrow/wasm/works/layout"
)

// weak returns a plan that a pump or a tap, too weak for it or not, drives: in
// all layouts, in either system, with emitters of two kinds side by side.
func weak(seed uint64) *plan.Plan {
	r := rand.New(rand.NewPCG(seed, 21))
	p := small(r)
	p.Supply.Kind = plan.PumpTwo
	p.Supply.ShutOff, p.Supply.MaxFlow = 3+12*r.Float64(), (2+20*r.Float64())/6e4
	p.Limits.Speed, p.Limits.Evenness = 0.8+r.Float64(), 0.8
	p.Runs[0].Rise = 2 * r.Float64()
	if r.IntN(3) == 0 {
		p.Supply.Kind, p.Supply.Static, p.Supply.TapFlow = plan.Mains, (0.3+r.Float64())*1e5, 15.0/6e4
	}
	if r.IntN(5) == 0 {
		p.Supply.Regulator = (0.5 + 2*r.Float64()) * 1e5
	}
	if r.IntN(4) == 0 {
		p.Supply.Devices = 3e4 * r.Float64()
	}
	if r.IntN(2) == 0 {
		p.Units = unit.US
	}
	if r.IntN(3) == 0 {
		e := p.Emitters[0]
		e.Flow *= 1 + 2*r.Float64()
		p.Emitters = append(p.Emitters, e)
		p.Rows[1].Emitter = 1
	}
	if r.IntN(4) == 0 {
		for i := range p.Emitters {
			p.Emitters[i].Highest = p.Emitters[i].Lowest * (1.05 + 0.2*r.Float64())
		}
	}
	return p
}

// curves are pumps that give head m or more at a flow, and top m or less with
// everything shut: straight, flat and then steep, steep and then flat, through
// the point and above it, with the last point at the flow and beyond, and
// parabolas.
func curves(r *rand.Rand, head, flow, top float64) []plan.Supply {
	points := func(v ...float64) plan.Supply {
		s := plan.Supply{Kind: plan.PumpPoints}
		for i := 0; i < len(v); i += 2 {
			s.Points = append(s.Points, plan.Point{Flow: v[i], Head: v[i+1]})
		}
		return s
	}
	parabola := func(shut, over float64) plan.Supply {
		return plan.Supply{Kind: plan.PumpTwo, ShutOff: shut, MaxFlow: over * flow / math.Sqrt(1-head/shut)}
	}
	between := func(share float64) float64 { return head + share*(top-head) }
	const hair = 1e-3 // m
	list := []plan.Supply{
		points(0, top, flow, head),
		points(0, top, flow, head, 2*flow, head/2),
		points(0, top, 0.9*flow, top-hair, flow, head),
		points(0, top, 0.05*flow, head+hair, flow, head),
		points(0, top, flow, top-hair),
		points(0, top, 3*flow, top-hair),
		points(0, head+hair, flow, head),
		parabola(top, 1), parabola(top, 1.5),
	}
	for range 4 {
		shut, mid, end := between(r.Float64()), r.Float64(), r.Float64()
		q := flow * (0.1 + 0.8*r.Float64())
		list = append(list,
			points(0, shut+hair*3, q, head+mid*(shut-head)+hair*2, flow, head+end*mid*(shut-head)+hair/2),
			points(0, shut+hair*3, 0.5*flow, head+0.9*(shut-head)+hair*2, flow*(1+2*mid), head+hair),
			parabola(shut+hair, 1+mid))
	}
	return list
}

// asked returns what a remedy asks of a supply, as the page prints it: the least
// head, the flow, and the highest head with everything shut.
func asked(s *Sheet, f *Fix) (head, flow, top float64) {
	w, sys := s.Layout.Network.Water, s.Plan.Units
	head, pressure := f.Value, w.PressureHead(f.Value)
	if f.Kind == MorePressure {
		head, pressure = w.HeadOf(f.Value), f.Value
	}
	head = min(head, printed(unit.Head, sys, head), w.HeadOf(printed(unit.Pressure, sys, pressure)))
	top = max(f.Most, printed(unit.Head, sys, f.Most), w.HeadOf(printed(unit.Pressure, sys, w.PressureHead(f.Most))))
	return head, min(f.Flow, printed(unit.Flow, sys, f.Flow)), min(top, design.MostHead)
}

// A pump or a tap that a remedy names is any that gives so much at a flow and no
// more than so much with everything shut: with each of them the answer is Yes,
// and with one that gives a little more shut it need not be.
func TestEveryPumpThatIsNamedWillDo(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 22))
	plans, tried, kinds, capped, regulated, bounded := 0, 0, map[FixKind]int{}, 0, 0, 0
	for seed := range uint64(160) {
		p := weak(seed)
		if errs := p.Check(); len(errs) > 0 {
			t.Fatalf("seed %d: %v", seed, errs[0])
		}
		s := Answer(p)
		for i := range s.Fixes {
			f := &s.Fixes[i]
			if f.Kind != NewPump && f.Kind != MorePressure || !f.Solves {
				continue
			}
			plans++
			kinds[f.Kind]++
			if Answer(f.Plan).Verdict != Yes {
				t.Errorf("seed %d: the plan with such a supply is not Yes", seed)
			}
			head, flow, top := asked(s, f)
			with := func(c plan.Supply) *Sheet {
				q := p.Clone()
				q.Supply.Kind, q.Supply.Points, q.Supply.ShutOff, q.Supply.MaxFlow = c.Kind, c.Points, c.ShutOff, c.MaxFlow
				q.Supply.Regulator = f.Regulator
				return Answer(q)
			}
			for _, c := range curves(r, head, flow, top) {
				tried++
				if a := with(c); a.Verdict != Yes {
					t.Errorf("seed %d: %g m at %g L/min and at most %g m is named, regulator %g; %+v gives %+v", seed, head, flow*6e4, top, f.Regulator, c, a.Findings[0])
					break
				}
			}
			switch {
			case f.Regulator > 0:
				regulated++
			case f.Most > design.MostHead-0.5:
				capped++
			default:
				// One that holds the head of a step more at any flow.
				step := 0.25 + f.Most*0.02
				if f.Kind == MorePressure {
					step += 1
				}
				above := level(nil, p, f.Most+step)
				thirsty := above.drawn() > thirst*level(nil, p, head).drawn()
				if above.Verdict == Yes && !thirsty {
					t.Errorf("seed %d: at most %g m are named, and with %g m at any flow the answer is Yes", seed, f.Most, f.Most+step)
				}
				bounded++
			}
		}
	}
	t.Logf("%d remedies of %v, %d curves; %d with a regulator, %d up to what the form takes, %d bounded", plans, kinds, tried, regulated, capped, bounded)
	if plans < 60 || kinds[MorePressure] < 10 || regulated < 5 || bounded < 30 {
		t.Errorf("%d remedies of %v, %d with a regulator, %d bounded", plans, kinds, regulated, bounded)
	}
}

// Where a pump's curve that is a little steeper would burst something, the
// figures say so: the emitters' highest pressure bounds the head at shut-off.
func TestHighestHeadOfAPump(t *testing.T) {
	p := example(t, "wrong-pump")
	for i := range p.Emitters {
		p.Emitters[i].Highest = 2e5
	}
	s := Answer(p)
	f := fix(s, NewPump)
	// 2 bar are 20.43 m at 998.2 kg/m³; the header stands 0.4 m up, and friction
	// is little: by hand.
	if f == nil || !f.Solves || f.Regulator != 0 || f.Most < 20.4 || f.Most > 21.5 {
		t.Fatalf("fixes %+v", s.Fixes)
	}
	if !slices.Contains(kinds(level(nil, p, f.Most+0.5).Findings), AboveRange) {
		t.Error("no emitter is above its range with half a metre more")
	}
}

// narrow is a plan of thin tubing, with a supply that is strong enough for wider.
func narrow(seed uint64) *plan.Plan {
	r := rand.New(rand.NewPCG(seed, 23))
	p := weak(seed)
	p.Supply.Kind, p.Supply.Regulator = plan.PumpTwo, 0
	p.Supply.ShutOff, p.Supply.MaxFlow = 13+10*r.Float64(), 30.0/6e4
	p.Limits.Speed = 0.3 + 0.4*r.Float64()
	for i := range p.Prices.Tubes {
		if i > 0 {
			p.Prices.Tubes[i] = 0.3 * float64(1+i)
		}
	}
	thin, row := 1, 1
	if p.Units == unit.US {
		thin = 7
		row = 7
	}
	for i := range p.Rows {
		p.Rows[i].Tube = row
	}
	for i := range p.Runs {
		p.Runs[i].Tube = thin
	}
	p.Header.Tube = thin
	return p
}

// tooFast is a plan whose water runs too fast in the lead and in the header, of
// rings, which have no zones.
func tooFast() *plan.Plan {
	p := plan.Default()
	p.Limits.Speed = 0.3
	p.Runs[0].Tube, p.Header.Tube = 1, 1 // 16 mm
	p.Header.Layout = plan.Ring
	for i := range p.Rows {
		p.Rows[i].PerPlant = 2
	}
	return p
}

// What no single change mends two together do, and the answer says so with one
// plan for both.
func TestPairs(t *testing.T) {
	p := tooFast()
	s := Answer(p)
	if s.Verdict != Nearly || s.Findings[0].Kind != FastLead || len(s.Zones) != 1 || s.Zones[0].HeaderSpeed <= p.Limits.Speed || s.Zones[0].LeadSpeed <= p.Limits.Speed {
		t.Fatalf("no test of pairs: verdict %d, findings %+v, %g and %g m/s", s.Verdict, s.Findings, s.Zones[0].LeadSpeed, s.Zones[0].HeaderSpeed)
	}
	found := false
	for _, f := range s.Fixes {
		if f.Kind == WiderLead && f.And != nil && f.And.Kind == WiderHeader {
			found = true
			if a := Answer(f.Plan); !f.Solves || a.Verdict != Yes || f.Plan.Runs[0].Tube != f.Index || f.Plan.Header.Tube != f.And.Index {
				t.Errorf("the pair %+v %+v gives verdict %d", f.Change, f.And, a.Verdict)
			}
			lead, header := p.Clone(), p.Clone()
			lead.Runs[0].Tube, header.Header.Tube = f.Index, f.And.Index
			if Answer(lead).Verdict == Yes || Answer(header).Verdict == Yes {
				t.Error("one of the two is enough")
			}
		}
	}
	if !found {
		t.Errorf("wider lead and wider header are not offered: %+v", s.Fixes)
	}
}

// The remedies and the designs of a plan are one list: each remedy is Yes as a
// plan, they rise in cost, none that is offered costs more than what the designs
// know, and each that can be bought stands among the designs at the same cost.
// Of a pair, neither change alone is enough.
func TestRemediesAndDesignsAreOneList(t *testing.T) {
	var plans []*plan.Plan
	for seed := range uint64(80) {
		plans = append(plans, weak(seed), narrow(seed))
	}
	plans = append(plans, tooFast(), example(t, "wrong-pump"), example(t, "long-field"))
	needy, priced, pairs, helpless := 0, 0, 0, 0
	for n, p := range plans {
		s := Answer(p)
		if s.Verdict != Nearly && s.Verdict != No {
			continue
		}
		needy++
		s.Explore(Searching)
		d := s.Designs
		solved := slices.ContainsFunc(s.Fixes, func(f Fix) bool { return f.Solves })
		if !solved {
			helpless++
			if len(d.Best) > 0 {
				t.Errorf("plan %d: nothing helps, and the designs have %+v", n, d.Best[0].Design)
			}
		}
		if len(s.Fixes) > most {
			t.Errorf("plan %d: %d remedies", n, len(s.Fixes))
		}
		for i := range s.Fixes {
			f := &s.Fixes[i]
			if i > 0 && f.before(&s.Fixes[i-1]) {
				t.Errorf("plan %d: remedy %d comes after a dearer one", n, i+1)
			}
			if !f.Solves {
				continue
			}
			if len(f.Plan.Check()) > 0 || Answer(f.Plan).Verdict != Yes {
				t.Errorf("plan %d: remedy %d, %+v, is not Yes", n, i+1, f.Change)
			}
			if want := design.Cost(layout.New(f.Plan)) - design.Cost(s.Layout); math.Abs(f.Cost-want) > 1e-9 {
				t.Errorf("plan %d: remedy %d costs %g, want %g", n, i+1, f.Cost, want)
			}
			if f.And != nil {
				pairs++
			}
			if f.Unpriced {
				continue
			}
			priced++
			if !slices.ContainsFunc(d.Best, func(b Best) bool { return b.Present && same(b.Take, f.Plan) && math.Abs(b.Cost-d.Now-f.Cost) < 1e-9 }) {
				t.Errorf("plan %d: remedy %d, %+v at %g, is not among the designs", n, i+1, f.Change, f.Cost)
			}
		}
		for i, b := range d.Best {
			if i > 0 && (b.rank() < d.Best[i-1].rank() || b.rank() == d.Best[i-1].rank() && b.Cost < d.Best[i-1].Cost) {
				t.Errorf("plan %d: design %d comes after a dearer one", n, i+1)
			}
			if b.Present && (s.Fixes[0].Unpriced || s.Fixes[0].Cost > b.Cost-d.Now+1e-9) {
				t.Errorf("plan %d: a design costs %g more than the plan, and the first remedy %+v", n, b.Cost-d.Now, s.Fixes[0])
			}
		}
	}
	t.Logf("%d plans that need help, %d remedies with a price, %d pairs, %d without help", needy, priced, pairs, helpless)
	if needy < 100 || priced < 20 || pairs < 10 {
		t.Errorf("%d plans that need help, %d remedies with a price, %d pairs", needy, priced, pairs)
	}
}

// Where there is too much pressure and something else is amiss, a regulator and
// the cheapest change beside it are offered, set for the changed plan.
func TestARegulatorAndAnotherChange(t *testing.T) {
	mixed := plan.Default()
	mixed.Supply.Regulator, mixed.Supply.Tank = 0, 2
	e := mixed.Emitters[0]
	e.Flow *= 4
	mixed.Emitters = append(mixed.Emitters[:1], e)
	mixed.Rows[1].Emitter = 1
	loop := plan.Default()
	loop.Supply.Regulator = 0
	loop.Header.Layout = plan.Ring
	loop.Rows[2].PerPlant = 2
	fast := plan.Default()
	fast.Supply.Regulator, fast.Limits.Speed = 0, 0.3
	fast.Runs[0].Tube, fast.Header.Tube = 1, 1 // 16 mm
	for _, tt := range []struct {
		name string
		p    *plan.Plan
		kind FixKind
		cost float64
	}{
		// Two places at the timer and four valves: 2 × 25 + 4 × 8 = 82.
		{"own zones", mixed, OwnZones, 2*mixed.Prices.Zone + 4*mixed.Prices.Valve},
		{"one emitter", mixed, OneEmitter, 0},
		{"one emitter in a loop", loop, OneEmitter, 0},
		// 8 m of 20 mm in place of 16 mm, 0.20 a metre dearer, and a stub of the header.
		{"another feed", fast, Redesign, 1.67},
	} {
		s := Answer(tt.p)
		if s.Verdict != Nearly {
			t.Fatalf("%s: verdict %d", tt.name, s.Verdict)
		}
		found := false
		for i := range s.Fixes {
			f := &s.Fixes[i]
			if f.Kind != tt.kind || f.And == nil || f.And.Kind != AddRegulator {
				continue
			}
			found = true
			if math.Abs(f.Cost-tt.cost) > 0.005 || f.Plan.Supply.Regulator != f.And.Value || f.And.Value > 2e5 || Answer(f.Plan).Verdict != Yes {
				t.Errorf("%s: %+v %+v at %g, want %g", tt.name, f.Change, f.And, f.Cost, tt.cost)
			}
		}
		if !found {
			t.Errorf("%s: not offered with a regulator: %+v", tt.name, s.Fixes)
		}
	}
	// Both of a pair are needed: each alone is not enough.
	for _, p := range []*plan.Plan{mixed, loop, fast} {
		q := p.Clone()
		q.Supply.Regulator = 1.5e5
		if Answer(q).Verdict == Yes {
			t.Error("a regulator alone is enough")
		}
	}
}

// A search that ends at a bound of its own says so as well: of long rows few pairs
// of changes are tried, and where nothing was found there may be something.
func TestPairsThatAreNotTriedAreOwned(t *testing.T) {
	for _, seed := range []uint64{4, 7} {
		p := weak(seed)
		for len(p.Rows) < 6 {
			p.Rows = append(p.Rows, p.Rows[len(p.Rows)-1])
		}
		for i := range p.Rows {
			p.Rows[i].Plants, p.Rows[i].Spacing = 40+20*int(seed), 0.1
		}
		if errs := p.Check(); len(errs) > 0 {
			t.Fatal(errs)
		}
		if s := Answer(p); s.Verdict == Yes || !s.Untried {
			t.Errorf("seed %d: answer %d, %d fixes, untried %t", seed, s.Verdict, len(s.Fixes), s.Untried)
		}
		for i := range p.Rows { // so few plants that every pair is tried
			p.Rows[i].Plants = 4
		}
		if s := Answer(p); s.Untried {
			t.Errorf("seed %d, 24 plants: something was not tried", seed)
		}
	}
}
