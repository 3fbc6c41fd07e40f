package startup

import (
	"math"
	"testing"

	"evenrow/wasm/grower/plan"
)

// thirsty is the default plan with emitters that flush below a pressure in bar
// with so many times their flow, and a pump that just serves them otherwise.
func thirsty(times, bar float64) *plan.Plan {
	p := plan.Default()
	e := &p.Emitters[0]
	e.Flushes, e.Gush, e.Regulates = plan.WhenLow, times*e.Flow, bar*1e5
	return p
}

// The pump gives 50 L/min at 12 m and the plan takes 4: it gets past a flush
// of twice that, and not past one of twenty times, which runs 40 L/min at the
// lowest pressure. Where it is stuck, the flow is that of orifices at the head
// they see.
func TestStrongFlushHoldsThePressureDown(t *testing.T) {
	_, s := of(t, thirsty(2, 0.3))
	if f := s.Zones[0].Flood; f == nil || f.Stuck != 0 || s.Stuck || f.Emitters != 120 {
		t.Errorf("a weak flush: %+v", f)
	}
	l, s := of(t, thirsty(60, 0.9))
	f := s.Zones[0].Flood
	if f.Stuck != 120 || !s.Stuck {
		t.Fatalf("a strong flush: %+v", f)
	}
	e := &l.Plan.Emitters[0]
	hi := 120 * e.Gush * math.Sqrt(f.Most/f.Stops)
	lo := 120 * e.Gush * math.Sqrt(f.Least/f.Stops)
	if f.Total < lo*0.999999 || f.Total > hi*1.000001 {
		t.Errorf("%g m³/s in all, by the heads %g to %g", f.Total, lo, hi)
	}
	if h, _ := l.Curve.Head(f.Total); f.Most > h {
		t.Errorf("%g m at an emitter, and the pump gives %g m", f.Most, h)
	}
	if f.Most >= f.Stops {
		t.Errorf("one sees %g m and would stop at %g m", f.Most, f.Stops)
	}
}

// Fewer at once get past it: with the zones that are named none is stuck, and
// with one fewer some are.
func TestZonesGetPastAFlush(t *testing.T) {
	for _, times := range []float64{20, 25, 30, 40} {
		p := thirsty(times, 0.9)
		_, s := of(t, p)
		f := s.Zones[0].Flood
		if f.Zones == 0 {
			continue
		}
		for zones := 1; zones <= f.Zones; zones++ {
			for r := range p.Rows {
				p.Rows[r].Zone = 1 + r*zones/len(p.Rows)
			}
			if _, s := of(t, p); s.Stuck != (zones < f.Zones) {
				t.Errorf("%g times the flow: %d zones are said to do, with %d it is stuck: %t", times, f.Zones, zones, s.Stuck)
			}
		}
	}
}

func TestNoFlushByDefault(t *testing.T) {
	for _, e := range plan.Examples() {
		if _, s := of(t, e.Plan); s.Zones[0].Flood != nil {
			t.Errorf("%s: emitters flush", e.Key)
		}
	}
}
