package pump

import (
	"math"
	"testing"
)

func TestDutyLiesOnBothCurves(t *testing.T) {
	c := must(t)(ByPoints(surface))
	for _, static := range []float64{-2, 0, 5, 33} {
		for _, losses := range []float64{0, 1, 50} {
			p := Duty(c, static, losses, 30*lpm)
			given, _ := c.Head(p.Flow)
			wanted := static + losses*p.Flow/lpm/30*p.Flow/lpm/30
			if math.Abs(given-p.Head) > 1e-12 || math.Abs(given-wanted) > 1e-9 {
				t.Errorf("static %g m, losses %g m: at %g L/min the pump gives %g m and the system wants %g", static, losses, p.Flow/lpm, given, wanted)
			}
		}
	}
}

func TestDutyOfAPumpThatIsTooWeakIsNoFlow(t *testing.T) {
	c := must(t)(ByTwo(6.5, 90*lpm))
	if p := Duty(c, 10, 1, lpm); p.Flow != 0 || p.Head != 6.5 {
		t.Errorf("got %g m³/s at %g m, want none at 6.5", p.Flow, p.Head)
	}
}

// Where the system draws more than the pump's curve is known for, the curve
// goes on: 8 (1 - u²) is -24 at u = 2, -92 at u² = 12.5 and -0.5 at u² = 1.0625.
func TestDutyBeyondTheLastFlow(t *testing.T) {
	c := must(t)(ByTwo(8, 2))
	for static, want := range map[float64]float64{-24: 4, -92: 2 * math.Sqrt(12.5), -0.5: 2 * math.Sqrt(1.0625), 0: 2} {
		if p := Duty(c, static, 0, 1); !(math.Abs(p.Flow-want) <= 1e-9 && math.Abs(p.Head-static) <= 1e-9) {
			t.Errorf("static %g m: %g m³/s at %g m, want %g at %g", static, p.Flow, p.Head, want, static)
		}
	}
}

// A pump at another speed is similar to itself.
func TestSpeedAgreesWithSimilarity(t *testing.T) {
	const cq, ch, d, w, ratio = 0.06, 0.19, 0.2, 150.0, 1.2
	p := AtSpeed(Point{FlowOf(cq, w, d), HeadOf(ch, w, d)}, ratio)
	if want := FlowOf(cq, w*ratio, d); math.Abs(p.Flow-want) > 1e-15 {
		t.Errorf("flow %g, want %g", p.Flow, want)
	}
	if want := HeadOf(ch, w*ratio, d); math.Abs(p.Head-want) > 1e-12 {
		t.Errorf("head %g, want %g", p.Head, want)
	}
}

func TestShaftPowerIsMoreThanTheWaters(t *testing.T) {
	if got, want := ShaftPower(1000, 0.001, 10, 0.5), 2*HydraulicPower(1000, 0.001, 10); got != want {
		t.Errorf("at half efficiency %g W, want %g", got, want)
	}
}

// The most that a pump of two figures puts into the water is the greatest product of
// flow and head on its parabola, looked for step by step; and 3 m and 800 L/min are at
// most 0.3849 x 3 m x 13.33 L/s x 9789 N/m³, 151 W.
func TestBestOfTwo(t *testing.T) {
	for _, tt := range []struct{ shut, most float64 }{{3, 800 * lpm}, {34, 60 * lpm}, {0.5, lpm}, {150, 2000 * lpm}} {
		c := must(t)(ByTwo(tt.shut, tt.most))
		best := 0.0
		for i := range 10001 {
			q := tt.most * float64(i) / 1e4
			h, _ := c.Head(q)
			best = max(best, HydraulicPower(998.2, q, h))
		}
		// Steps of a ten-thousandth miss the summit by less than their square.
		if got := BestOfTwo(998.2, tt.shut, tt.most); got < best || got > best*(1+1e-7) {
			t.Errorf("%g m and %g L/min: %g W, step by step %g", tt.shut, tt.most/lpm, got, best)
		}
		if straight := HydraulicPower(998.2, tt.most/2, tt.shut/2); straight < BestOfTwo(998.2, tt.shut, tt.most)*5/8 {
			t.Errorf("%g m and %g L/min: a straight curve puts %g W into the water", tt.shut, tt.most/lpm, straight)
		}
	}
	if got := BestOfTwo(998.2, 3, 800*lpm); math.Abs(got-150.7) > 0.05 {
		t.Errorf("3 m and 800 L/min: %g W", got)
	}
}
