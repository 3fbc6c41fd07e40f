package sheet

import (
	"testing"
	"time"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/design"
	"evenrow/wasm/works/layout"
)

// thinRows is a plan whose rows are far too thin for their plain emitters: more
// head at the source hardly reaches the last of them.
func thinRows() *plan.Plan {
	p := plan.Default()
	p.Emitters[0] = plan.Emitter{Kind: plan.NonCompensating, Flow: 2 / 3.6e6, Nominal: 1e5, Exponent: 0.5,
		Lowest: 0.3e5, Highest: 4e5, CV: 0.03, Passage: 1e-3}
	p.Rows = p.Rows[:0]
	for range 10 {
		r := plan.Default().Rows[0]
		r.Plants, r.Spacing, r.Zone = 400, 0.3, 1
		p.Rows = append(p.Rows, r)
	}
	return p
}

// However little of the supply's head comes through, finding what helps takes
// no more than some dozens of times what the answer takes.
func TestHardPlansAreQuick(t *testing.T) {
	p := thinRows()
	if errs := p.Check(); len(errs) > 0 {
		t.Fatal(errs)
	}
	start := time.Now()
	s := assess(p, nil)
	answer := time.Since(start)
	start = time.Now()
	tr := trial{s: s}
	tr.duty()
	if took := time.Since(start); took > 40*answer+time.Second/10 {
		t.Errorf("the duty took %v, the answer %v", took, answer)
	}
}

// The duty is enough for every zone, and for one of them no more than enough.
func TestDutyIsTheLeast(t *testing.T) {
	found := 0
	for _, p := range variants(60) {
		s := assess(p, nil)
		if len(s.Zones) == 0 {
			continue
		}
		head, flow, ok := duty(s, 0, layout.Lead)
		if !ok {
			continue
		}
		found++
		least := 1e9
		for i := range s.Zones {
			zone := s.Zones[i].Zone
			for _, c := range []struct{ extra, reserve float64 }{
				{0, p.Limits.Reserve},
				{s.Layout.Network.Water.HeadOf(p.Filter.Fouling), 0},
			} {
				if _, q, ok := dutyWith(s, zone, c.extra, c.reserve, head+2e-3, layout.Lead); !ok || q > flow*1.001 {
					t.Errorf("%s: zone %d takes %g L/min at %g m, want at most %g", p.Name, zone, q*6e4, head, flow*6e4)
				}
				alone, _, _ := dutyWith(s, zone, c.extra, c.reserve, 0, layout.Lead)
				if alone > head+2e-3 {
					t.Errorf("%s: zone %d needs %g m, %g m is named", p.Name, zone, alone, head)
				}
				least = min(least, head-alone)
			}
		}
		if least > 2e-3 {
			t.Errorf("%s: %g m is named, and no zone needs so much by %g m", p.Name, head, least)
		}
	}
	if found < 30 {
		t.Errorf("a duty was found for %d plans only", found)
	}
}

// No pump of a thousand metres is named.
func TestNoPumpBeyondReach(t *testing.T) {
	p := plan.Default()
	p.Runs[0].Rise, p.Runs[0].Bore = 60, 0.004
	p.Runs[0].Tube, p.Runs[0].Length = 0, 100
	s := Answer(p)
	for _, f := range s.Fixes {
		if f.Kind == NewPump && f.Value > design.MostHead {
			t.Errorf("a pump of %g m is named", f.Value)
		}
	}
	if _, _, ok := duty(s, 0, layout.Lead); ok || layout.New(p).Curve == nil {
		t.Error("the plan is no test of it")
	}
}
