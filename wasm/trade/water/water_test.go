package water

import (
	"math"
	"testing"

	"evenrow/wasm/ground/source"
)

func TestDensityIsGreatestNearFourDegrees(t *testing.T) {
	best := 0.0
	for c := 0.0; c <= 60; c += 0.01 {
		if Density(c) > Density(best) {
			best = c
		}
	}
	if math.Abs(best-3.98) > 0.05 {
		t.Errorf("water is densest at %.2f °C, want 3.98", best)
	}
}

func TestDynamicAtTheEndsOfItsRange(t *testing.T) {
	handbook := source.Ref{Work: "CRC Handbook of Chemistry and Physics, table of the viscosity of water", Standing: source.Memory}
	for c, want := range map[float64]float64{0: 1.793, 10: 1.307, 40: 0.6532, 50: 0.5470, 60: 0.4665} {
		// The editions differ by a tenth of a percent.
		if got := Dynamic(c) * 1e3; math.Abs(got-want) > 0.0015*want {
			t.Errorf("at %g °C: %.5g mPa s, want %g from %s", c, got, want, handbook)
		}
	}
}

func TestViscosityFallsAsWaterWarms(t *testing.T) {
	for c := 0.0; c < 60; c += 0.5 {
		a, b := At(c), At(c+0.5)
		if !(b.Kinematic < a.Kinematic) || b.Celsius != c+0.5 {
			t.Errorf("from %g to %g °C the viscosity goes from %g to %g", c, b.Celsius, a.Kinematic, b.Kinematic)
		}
	}
}

func TestHeadAndPressureAreInverse(t *testing.T) {
	w := At(17)
	for _, h := range []float64{-3, 0, 0.4, 34} {
		if got := w.HeadOf(w.PressureHead(h)); math.Abs(got-h) > 1e-14*math.Abs(h) {
			t.Errorf("%g m of head came back as %g", h, got)
		}
	}
	// 1 bar is about 10.2 m of water.
	if h := At(20).HeadOf(1e5); math.Abs(h-10.2) > 0.05 {
		t.Errorf("1 bar holds up %g m, want about 10.2", h)
	}
}
