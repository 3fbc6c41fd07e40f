package fault

import (
	"testing"

	"evenrow/wasm/grower/plan"
)

// A gauge shows 5 kPa, half of a mark of 10 kPa, and a meter a twentieth of the
// flow: both are common practice.
func TestWhatAFaultIsNoticedBy(t *testing.T) {
	for _, c := range []struct {
		name                string
		dry                 int
		before, after, head float64 // Pa, by which the gauges fall
		flow                float64 // of 1 m³/s
		want, tank          Sign
	}{
		{"no plant is short", 0, 9e3, 9e3, 9e3, 0.5, NobodyShort, NobodyShort},
		{"all gauges", 1, 5e3, 5e3, 5e3, 1, OnGauge, OnGauge},
		{"the gauge before the filter alone", 1, 5e3, 0, 0, 1, OnGauge, OnFoot},
		{"the gauge behind it alone, which rises", 1, 0, -5e3, 0, 1, OnGauge, OnFoot},
		{"the header's alone", 1, 0, 0, 5e3, 0.95, OnMeter, OnGauge},
		{"half a mark less a little", 1, 4999, 4999, 4999, 1.05, OnMeter, OnMeter},
		{"nothing", 1, 4999, 4999, 4999, 0.951, OnFoot, OnFoot},
	} {
		const weight = 1e4 // Pa of a metre
		s := Sudden{Dry: c.dry, Was: Reading{Before: 10, After: 9, Header: 8, Flow: 1}}
		s.Now = Reading{Before: 10 - c.before/weight, After: 9 - c.after/weight, Header: 8 - c.head/weight, Flow: c.flow}
		// Half a millionth of a mark, because metres are subtracted.
		if got := s.sign(s.moved(false)*weight + 1e-6); got != c.want {
			t.Errorf("%s: sign %d, want %d", c.name, got, c.want)
		}
		if got := s.sign(s.moved(true)*weight + 1e-6); got != c.tank {
			t.Errorf("%s, from a tank: sign %d, want %d", c.name, got, c.tank)
		}
	}
}

func TestHarmedCountsAllThatLackWater(t *testing.T) {
	s := Sudden{Cut: 1, Dry: 2, Below: 4, Above: 8}
	if s.Harmed() != 15 {
		t.Errorf("%d plants", s.Harmed())
	}
	for sign, hidden := range map[Sign]bool{NobodyShort: false, OnGauge: false, OnMeter: true, OnFoot: true} {
		if s.Sign = sign; s.Hidden() != hidden {
			t.Errorf("sign %d: hidden %t", sign, s.Hidden())
		}
	}
}

func TestCleaning(t *testing.T) {
	for _, c := range []struct {
		before bool
		across float64
		want   Cleaning
	}{{true, 5e3, InTime}, {true, 4999, Unread}, {false, 5e3, TooLate}, {false, 0, TooLate}} {
		if got := cleaning(c.before, c.across); got != c.want {
			t.Errorf("before %t, %g Pa: %d, want %d", c.before, c.across, got, c.want)
		}
	}
}

// With less dirt than an emitter bears the filter is cleaned in time, with more
// too late, and without a filter there is nothing to say.
func TestCleaningOfAPlan(t *testing.T) {
	p := plan.Default()
	p.Filter.Rated = 5.0 / 6e4 // near to what flows, so that the gauges show the dirt
	l, _, f := of(t, p)
	bears := l.Network.Water.PressureHead(f.find(Dirt).Amount)
	for _, c := range []struct {
		share float64
		want  Cleaning
	}{{0.9, InTime}, {1.1, TooLate}} {
		p.Filter.Fouling = c.share * bears
		if _, _, f := of(t, p); f.Clean != c.want {
			t.Errorf("cleaned at %.1f of what is borne: %d, want %d", c.share, f.Clean, c.want)
		}
	}
	p.Filter.Clean, p.Filter.Fouling = 1e3, 3e3 // together less than half a mark at the rated flow, and the flow is less
	if _, _, f := of(t, p); f.Clean != Unread {
		t.Errorf("cleaned at 4 kPa: %d", f.Clean)
	}
	p.Filter.Present = 0
	if _, _, f := of(t, p); f.Clean != NoMatter {
		t.Errorf("without a filter: %d", f.Clean)
	}
	for _, s := range f.Sudden {
		if s.Plants != len(l.Plants) { // of the only zone
			t.Errorf("fault %d: %d plants of %d", s.Kind, s.Plants, len(l.Plants))
		}
	}
}
