package sheet

import (
	"slices"
	"testing"

	"evenrow/wasm/grower/plan"
)

func TestEveryKindHasItsRow(t *testing.T) {
	named := map[string]FindingKind{}
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
	}
}

// Each kind is found in a plan that is made for it.
func TestEveryKindIsFound(t *testing.T) {
	makes := [FindingKinds]func(p *plan.Plan){
		PowerOnly: func(p *plan.Plan) { p.Supply.Kind, p.Supply.Power = plan.PumpPower, 50 },
		NeverOpen: func(p *plan.Plan) { *p = *hump(0.2, 5) },
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
		CoarseFilter: func(p *plan.Plan) { p.Filter.Opening = 1e-3 },
		NoFilter:     func(p *plan.Plan) { p.Filter.Present = 0 },
		OverRating:   func(p *plan.Plan) { p.Supply.Regulator, p.Supply.ShutOff = 0, 90 },
		OutsidePlace: func(p *plan.Plan) { p.Place.Length = 3 },
		SmallTank:    func(p *plan.Plan) { p.Supply.Tank = 0.001 },
		Fouled:       func(p *plan.Plan) { p.Filter.Fouling, p.Filter.Rated = 2e5, p.Filter.Rated/6 },
		TooHigh:      func(p *plan.Plan) { *p = *hump(22, 20) },
		NoBackflow:   func(p *plan.Plan) { p.Supply.Kind, p.Supply.Devices = plan.Mains, 0 },
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
