package sheet

import (
	"slices"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/limit"
)

func TestEveryKindHasItsRow(t *testing.T) {
	named, breaks := map[string]FindingKind{}, limit.Set(0)
	for k := range FindingKind(FindingKinds) {
		name := Kinds[k].Name
		if name == "" {
			t.Errorf("kind %d, after %q, has no row in Kinds", k, Kinds[max(k, 1)-1].Name)
		}
		if other, there := named[name]; there {
			t.Errorf("kinds %d and %d are both called %q", other, k, name)
		}
		named[name] = k
		if Kinds[k].Low && Kinds[k].High {
			t.Errorf("%v is of too little head and of too much", k)
		}
		breaks |= Kinds[k].Breaks
		// What designs are not held to: each with the reason.
		apart := map[FindingKind]string{
			PowerOnly: "nothing is worked out", Unsolved: "nothing is worked out", Unlike: "no tubing changes what emitters are made to give",
		}
		if free := Kinds[k].Verdict == Yes || apart[k] != ""; (Kinds[k].Breaks == 0) != free {
			t.Errorf("%v breaks %b of the limits, and designs are held to it: %v", k, Kinds[k].Breaks, !free)
		}
	}
	for l := range limit.Limit(limit.Limits) {
		if l != limit.Flushing && !breaks.Has(l) { // which has an answer of its own, see Sheet.Flush
			t.Errorf("designs are held to %q, and no finding breaks it", limit.Names[l])
		}
	}
}

// What a zone is held to is found where it is broken, with the figures that it
// was compared by, and leaves nothing to the headroom then.
func TestMeasuresAreFound(t *testing.T) {
	tried := map[FindingKind]int{}
	for _, change := range []func(p *plan.Plan){
		func(p *plan.Plan) { p.Limits.Reserve = 30 },
		func(p *plan.Plan) { p.Limits.Speed = 0.1 },
		func(p *plan.Plan) { p.Emitters[0].CV = 0.3 },
		func(p *plan.Plan) { p.Filter.Fouling, p.Filter.Rated = 2e5, p.Filter.Rated/6 },
		func(p *plan.Plan) {
			p.Supply.Kind, p.Supply.Points = plan.PumpPoints, []plan.Point{{Flow: 0, Head: 40}, {Flow: 1e-6, Head: 39.99}}
		},
	} {
		p := plan.Default()
		change(p)
		s := Answer(p)
		for k := range FindingKind(FindingKinds) {
			if Kinds[k].Held == nil {
				continue
			}
			broken := false
			for i := range s.Zones {
				m := Kinds[k].Held(s, &s.Zones[i])
				broken = broken || m.Bound.Broken(m.Value)
				if left := s.slack().Slack; left > m.Bound.Slack(m.Value) {
					t.Errorf("%v: %g is left of all limits, and %g of this one", k, left, m.Bound.Slack(m.Value))
				}
			}
			at := slices.IndexFunc(s.Findings, func(f Finding) bool { return f.Kind == k })
			if broken != (at >= 0) {
				t.Errorf("%v is broken: %v, and %+v is found", k, broken, s.Findings)
			}
			if broken {
				tried[k]++
			}
		}
	}
	for k := range FindingKind(FindingKinds) {
		if Kinds[k].Held != nil && tried[k] == 0 {
			t.Errorf("%v is broken in no plan here", k)
		}
	}
}

func TestEveryFixHasItsRow(t *testing.T) {
	named := map[string]FixKind{}
	for k := range FixKind(FixKinds) {
		row := &FixesOf[k]
		if row.Name == "" {
			t.Errorf("fix %d, after %q, has no row in FixesOf", k, FixesOf[max(k, 1)-1].Name)
		}
		if other, there := named[row.Name]; there {
			t.Errorf("fixes %d and %d are both called %q", other, k, row.Name)
		}
		named[row.Name] = k
		if row.Drives && !row.Unpriced {
			t.Errorf("%q takes another supply, which no plan has a price for", row.Name)
		}
	}
}

// Each kind is found in a plan that is made for it.
func TestEveryKindIsFound(t *testing.T) {
	makes := [FindingKinds]func(p *plan.Plan){
		PowerOnly: func(p *plan.Plan) { p.Supply.Kind, p.Supply.Power = plan.PumpPower, 50 },
		LabelFigures: func(p *plan.Plan) {
			p.Supply.Kind, p.Supply.ShutOff, p.Supply.MaxFlow, p.Supply.Label = plan.PumpTwo, 3, 800/6e4, 10
		},
		LabelShort: func(p *plan.Plan) { p.Supply.Kind, p.Supply.Power = plan.PumpPower, 5 },
		NeverOpen:  func(p *plan.Plan) { *p = *hump(0.2, 5) },
		// Enough for an emitter by itself, and not for all of a long row together.
		Unsteady: func(p *plan.Plan) {
			p.Supply.Kind, p.Supply.Static, p.Supply.TapFlow = plan.Mains, 0.9e5, 2e-3
			p.Rows, p.Place.Length = p.Rows[:2], 130
			for i := range p.Rows {
				p.Rows[i].Plants = 367
			}
		},
		Suction:      func(p *plan.Plan) { *p = *hump(19.95, 20) },
		BelowRange:   func(p *plan.Plan) { p.Emitters[0].Lowest = 2.5e5 },
		AboveRange:   func(p *plan.Plan) { p.Supply.Regulator, p.Emitters[0].Highest = 0, 1.2e5 },
		Uneven:       func(p *plan.Plan) { p.Emitters[0].CV = 0.3 },
		Unlike:       func(p *plan.Plan) { p.Rows[0].PerPlant = 4 },
		ShortReserve: func(p *plan.Plan) { p.Limits.Reserve = 30 },
		FastLead:     func(p *plan.Plan) { p.Limits.Speed = 0.1 },
		OffCurve: func(p *plan.Plan) {
			p.Supply.Kind, p.Supply.Points = plan.PumpPoints, []plan.Point{{Flow: 0, Head: 40}, {Flow: 1e-6, Head: 39.99}}
		},
		// Emitters whose range is hardly wider than what heads differ by.
		NarrowPump:   func(p *plan.Plan) { *p = *weak(31); p.Supply.Kind = plan.PumpWanted },
		CoarseFilter: func(p *plan.Plan) { p.Filter.Opening = 1e-3 },
		NoFilter:     func(p *plan.Plan) { p.Filter.Present = 0 },
		OverRating:   func(p *plan.Plan) { p.Supply.Regulator, p.Supply.ShutOff = 0, 90 },
		OutsidePlace: func(p *plan.Plan) { p.Place.Length = 3 },
		SmallTank:    func(p *plan.Plan) { p.Supply.Tank = 0.001 },
		Fouled:       func(p *plan.Plan) { p.Filter.Fouling, p.Filter.Rated = 2e5, p.Filter.Rated/6 },
		TooHigh:      func(p *plan.Plan) { *p = *hump(22, 20) },
		NoBackflow:   func(p *plan.Plan) { p.Supply.Kind, p.Supply.Devices = plan.Mains, 0 },
		NarrowPath:   func(p *plan.Plan) { p.Place.Path = 1 },
		NearWall:     func(p *plan.Plan) { p.Place.Margin = 0.1 },
		NoChain:      func(p *plan.Plan) { p.Ends.Out[plan.AtOutlet] = 3 }, // NPT, before fittings for tubing in mm
		WeakJoint:    func(p *plan.Plan) { p.Supply.Kind, p.Supply.Static = plan.Mains, 12e5 },
		InTheDoor:    func(p *plan.Plan) { p.Place.Door = 1.2 },
	}
	for k, make := range makes {
		kind := FindingKind(k)
		if kind == Unsolved { // no plan is known whose flows do not settle
			continue
		}
		if make == nil {
			t.Errorf("kind %d, %v: no plan is made for it here", kind, kind)
			continue
		}
		p := plan.Default()
		make(p)
		if s := Answer(p); !slices.ContainsFunc(s.Findings, func(f Finding) bool { return f.Kind == kind }) {
			t.Errorf("%v is not found, but %+v", kind, s.Findings)
		}
	}
}
