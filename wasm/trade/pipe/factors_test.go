package pipe

import (
	"math"
	"testing"
)

// Churchill's equation written out again with math.Pow, where it turns from
// laminar to turbulent and all its terms count.
func TestChurchillInTheTransition(t *testing.T) {
	for _, re := range []float64{2100, 2600, 3000, 4000} {
		for _, rough := range []float64{0, 1e-3, 0.01} {
			a := math.Pow(2.457*math.Log(1/(math.Pow(7/re, 0.9)+0.27*rough)), 16)
			b := math.Pow(37530/re, 16)
			want := 8 * math.Pow(math.Pow(8/re, 12)+math.Pow(a+b, -1.5), 1.0/12)
			if got := Churchill(re, rough); math.Abs(got-want) > 1e-13*want {
				t.Errorf("Churchill(%g, %g) = %.16g, want %.16g", re, rough, got, want)
			}
		}
	}
}

// The explicit fits claim to lie within a few percent of Colebrook's equation.
func TestExplicitFitsAreCloseToColebrook(t *testing.T) {
	for re := 5000.0; re < 1e8; re *= 2 {
		for _, rough := range []float64{1e-6, 1e-4, 1e-2} {
			f, _ := Friction(re, rough)
			for name, got := range map[string]float64{
				"Swamee and Jain": SwameeJain(re, rough),
				"Haaland":         Haaland(re, rough),
				"Churchill":       Churchill(re, rough),
			} {
				if math.Abs(got-f) > 0.035*f {
					t.Errorf("%s at Re %g, ε/D %g: %.5g, Colebrook %.5g", name, re, rough, got, f)
				}
			}
		}
	}
}

func TestSmoothIsTheGreaterOfTheTwoLaws(t *testing.T) {
	if got := Smooth(1000); got != 0.064 {
		t.Errorf("at Re 1000: %g, want 0.064", got)
	}
	if got, want := Smooth(1200), 0.3164/math.Pow(1200, 0.25); math.Abs(got-want) > 1e-15 {
		t.Errorf("at Re 1200: %g, want %g", got, want)
	}
}
