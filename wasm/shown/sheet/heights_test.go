package sheet

import (
	"math"
	"slices"
	"testing"

	"evenrow/wasm/grower/plan"
)

// hump lays the default's lead over a height, and back down to the header.
func hump(over, shutOff float64) *plan.Plan {
	p := plan.Default()
	p.Supply.Kind, p.Supply.ShutOff, p.Supply.MaxFlow, p.Supply.Regulator = plan.PumpTwo, shutOff, 60.0/6e4, 0
	down := p.Runs[0]
	p.Runs[0].Rise = over
	down.Rise = 0.4 - over
	p.Runs = append(p.Runs, down)
	return p
}

// A pump of 20 m never pushes water over 22 m, though it would run by itself
// over them in tubing that was full.
func TestWaterMustGetOverEveryHeight(t *testing.T) {
	s := Answer(hump(22, 20))
	if s.Verdict != No || s.Findings[0].Kind != TooHigh || math.Abs(s.Findings[0].Value+2) > 1e-9 {
		t.Errorf("verdict %d, findings %+v", s.Verdict, s.Findings)
	}
	// 20 m at no flow, 20 (1 - (4/60)²) = 19.91 m at 4 L/min: 19.95 m is got
	// over at first and then lacks 0.04 m, and the losses of the lead.
	s = Answer(hump(19.95, 20))
	if s.Verdict != Nearly || s.Findings[0].Kind != Suction || s.Findings[0].Value > -0.04 || s.Findings[0].Value < -0.3 {
		t.Errorf("verdict %d, findings %+v", s.Verdict, s.Findings)
	}
	if !slices.ContainsFunc(s.Fixes, func(f Fix) bool { return f.Kind == NewPump && f.Solves }) {
		t.Errorf("fixes %+v", s.Fixes)
	}
	if s := Answer(hump(19, 20)); s.Verdict != Yes {
		t.Errorf("verdict %d, findings %+v", s.Verdict, s.Findings)
	}
}

// A tank with its rows far below it and its header above it stays dry.
func TestTankBelowItsHeader(t *testing.T) {
	p := plan.Default()
	p.Supply.Kind, p.Runs[0].Rise, p.Filter.Present, p.Limits.Reserve, p.Supply.Regulator = plan.GravityTank, 0.5, 0, 0.2, 0
	p.Emitters[0] = plan.Emitter{Kind: plan.NonCompensating, Flow: 2 / 3.6e6, Nominal: 1e5, Exponent: 0.5,
		Lowest: 0.1e5, Highest: 4e5, CV: 0.03, Passage: 1e-3}
	for i := range p.Rows {
		p.Rows[i].Height = -3
	}
	if s := Answer(p); s.Verdict != No || s.Findings[0].Kind != TooHigh {
		t.Errorf("verdict %d, findings %+v", s.Verdict, s.Findings)
	}
	p.Runs[0].Rise = -0.5
	if s := Answer(p); s.Verdict != Yes {
		t.Errorf("verdict %d, findings %+v", s.Verdict, s.Findings)
	}
}
