package network

import (
	"math"
	"testing"

	"evenrow/wasm/trade/pipe"
)

// What a link loses, by the formulas of package pipe that published values hold:
// friction over its length and over what stands for other losses, its
// coefficients, and the least resistance; in laminar flow, between the regimes
// and in turbulent flow, rough and smooth, forwards and back. The slope is that
// of the differences.
func TestLinkLosesWhatPipesDo(t *testing.T) {
	for _, l := range []Link{
		{Length: 10, Bore: 0.0136},
		{Length: 10, Bore: 0.0136, Roughness: 7e-6, K: 3, Extra: 2.5},
		{Length: 0.3, Bore: 0.004, K: 8},
		{Length: 40, Bore: 0.025, Roughness: 1e-3, Extra: 4},
		{Length: 0, Bore: 0.02, K: 5},
		{Length: 0, Bore: 0.02, Extra: 1},
	} {
		d := NewDrag(l, water20)
		for _, re := range []float64{0, 1, 500, 1999.9, 2000.1, 2500, 3000, 3999.9, 4000.1, 1e4, 1e5} {
			q := re * water20.Kinematic / l.Bore * pipe.Area(l.Bore)
			want := pipe.Head(q, l.Length+l.Extra, l.Bore, l.Roughness, water20.Kinematic) + pipe.LocalHead(l.K, pipe.Velocity(q, l.Bore)) + leastSlope*q
			got, slope := d.Loss(q)
			if math.Abs(got-want) > 1e-12*want {
				t.Errorf("%+v at Re %g loses %.15g m, want %.15g", l, re, got, want)
			}
			if back, s := d.Loss(-q); back != -got || s != slope {
				t.Errorf("%+v at Re %g loses %g m back, slope %g, want %g, %g", l, re, back, s, -got, slope)
			}
			if once := l.Loss(q, water20); once != got {
				t.Errorf("%+v at Re %g loses %g m once and %g again", l, re, once, got)
			}
			if re == 0 {
				continue
			}
			const step = 1e-6 // of the flow: no kink lies within it
			less, _ := d.Loss(q * (1 - step))
			more, _ := d.Loss(q * (1 + step))
			if want := (more - less) / (2 * step * q); math.Abs(slope-want) > 1e-7*want {
				t.Errorf("%+v at Re %g has the slope %.9g, by differences %.9g", l, re, slope, want)
			}
		}
		// Still water's slope is the laminar one.
		_, still := d.Loss(0)
		if _, slow := d.Loss(1e-20); math.Abs(still-slow) > 1e-9*still || still < leastSlope {
			t.Errorf("%+v: in still water the slope is %g, in slow %g", l, still, slow)
		}
		// The regimes meet.
		for _, re := range []float64{pipe.LaminarMax, pipe.TurbulentMin} {
			q := re * water20.Kinematic / l.Bore * pipe.Area(l.Bore)
			a, _ := d.Loss(q * (1 - 1e-12))
			b, _ := d.Loss(q * (1 + 1e-12))
			if math.Abs(a-b) > 1e-10*b {
				t.Errorf("%+v: at Re %g the loss jumps from %g to %g m", l, re, a, b)
			}
		}
	}
}

// A link with a law of its own loses what that says, and the least resistance.
func TestLinkWithALaw(t *testing.T) {
	l := Link{Law: quadratic(2e6), Length: 9, Bore: 0.01, K: 4} // what tubing it would have does not count
	loss, slope := NewDrag(l, water20).Loss(1e-3)
	if math.Abs(loss-(2+1e-6)) > 1e-12 || math.Abs(slope-(4000+1e-3)) > 1e-9 {
		t.Errorf("%.12g m, slope %.12g, want 2.000001 and 4000.001", loss, slope)
	}
}

// The drop takes its head from water that flows, and from nothing else.
func TestDropTakesFromFlow(t *testing.T) {
	for q, want := range map[float64]float64{-1e-3: 0, 0: 0, 1e-15: 5, 1e-3: 5} {
		if loss, slope := Drop(5).Loss(q); loss != want || slope != 0 {
			t.Errorf("of %g m³/s it takes %g m, slope %g, want %g", q, loss, slope, want)
		}
	}
}

// Links are alike where every one of their sizes is.
func TestAlike(t *testing.T) {
	a := Link{From: 1, To: 2, Length: 1, Bore: 2, Roughness: 3, K: 4, Extra: 5}
	b := a
	if b.From, b.To = 7, 8; !a.like(&b) {
		t.Error("two of one size elsewhere are not alike")
	}
	for i, change := range []func(l *Link){
		func(l *Link) { l.Length = 9 }, func(l *Link) { l.Bore = 9 }, func(l *Link) { l.Roughness = 9 }, func(l *Link) { l.K = 9 }, func(l *Link) { l.Extra = 9 }, func(l *Link) { l.Law = Drop(1) },
	} {
		c := a
		if change(&c); a.like(&c) || c.like(&a) {
			t.Errorf("change %d makes no difference", i)
		}
	}
}
