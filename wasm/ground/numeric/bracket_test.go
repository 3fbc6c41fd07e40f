package numeric

import (
	"math"
	"testing"
)

// The root stays between the two ends, whichever way the function goes and
// whether or not the upper end is known, and secants come near it in few steps
// also where they would creep up from one side.
func TestBracket(t *testing.T) {
	for _, tt := range []struct {
		name string
		f    func(float64) float64
		root float64
	}{
		{"rising", func(x float64) float64 { return x - 3 }, 3},
		{"falling", func(x float64) float64 { return 3 - x }, 3},
		{"flat, then steep", func(x float64) float64 { return math.Pow(x/8, 9) - 1e-3 }, 8 * math.Pow(1e-3, 1.0/9)},
		{"steep, then flat", func(x float64) float64 { return math.Log(0.01+x) - 1 }, math.E - 0.01},
	} {
		for _, known := range []bool{true, false} {
			b := Bracket{Lo: 0, Hi: 10, AtLo: tt.f(0), AtHi: tt.f(10)}
			x := b.Secant()
			if !known {
				b.AtHi, x = math.NaN(), 9
			}
			steps := 0
			for ; math.Abs(x-tt.root) > 1e-9 && steps < 60; steps++ {
				b.Narrow(x, tt.f(x))
				if !(b.Lo <= tt.root && tt.root <= b.Hi) {
					t.Fatalf("%s: the root %g is not from %g to %g", tt.name, tt.root, b.Lo, b.Hi)
				}
				x = b.Secant()
			}
			// The steepest takes 28 steps; without the rule it is not there after 10,000.
			if steps > 30 {
				t.Errorf("%s: %d steps and still at %g", tt.name, steps, x)
			}
		}
	}
}

func TestRoundUp(t *testing.T) {
	for _, tt := range []struct{ x, step, want float64 }{
		{0, 0.1, 0}, {0.21, 0.1, 0.3}, {-0.21, 0.1, -0.2}, {7, 5, 10}, {10, 5, 10},
		{0.1 + 0.2, 0.1, 0.3}, // the sum is a little more than three tenths, by rounding alone
	} {
		if got := RoundUp(tt.x, tt.step); math.Abs(got-tt.want) > 1e-15 {
			t.Errorf("RoundUp(%g, %g) = %.17g, want %g", tt.x, tt.step, got, tt.want)
		}
	}
}
