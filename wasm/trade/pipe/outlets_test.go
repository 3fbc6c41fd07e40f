package pipe

import (
	"math"
	"testing"
)

// A friction factor of Re^(m-2) gives a loss that grows as the flow to the
// power m, so the sum over a row must be the plain pipe's loss times F.
func TestRowHeadIsThePlainPipesTimesF(t *testing.T) {
	for _, m := range []float64{1, 1.5, 1.75, 2} {
		for _, n := range []int{1, 2, 7, 100} {
			law := func(re float64) float64 { return math.Pow(re, m-2) }
			s, q, d := 0.3, 2*lph, 13.6*mm
			v := Velocity(float64(n)*q, d)
			plain := FrictionHead(law(Reynolds(v, d, nu)), s*float64(n), d, v)
			got, want := RowHead(law, n, s, q, d, nu), plain*Christiansen(n, m)
			if math.Abs(got-want) > 1e-12*want {
				t.Errorf("m %g, %d outlets: %.15g m summed, %.15g with F", m, n, got, want)
			}
		}
	}
}

func TestHalfSpacingIsCloseToItsSum(t *testing.T) {
	// The exact sum: half a stretch with all the flow, n - 1 whole ones.
	for _, m := range []float64{1.75, 1.852, 2} {
		for _, n := range []int{2, 4, 10, 60} {
			k := float64(n)
			exact := (powers(n, m)/math.Pow(k, m) - 0.5) / (k - 0.5)
			if got := HalfSpacing(n, m); math.Abs(got-exact) > 0.002 {
				t.Errorf("m %g, %d outlets: %g, exactly %g", m, n, got, exact)
			}
		}
	}
}

func TestFIsOneOverMPlusOneForManyOutlets(t *testing.T) {
	for _, f := range []func(int, float64) float64{Christiansen, ChristiansenShort, HalfSpacing, AtInlet} {
		if got := f(2000, 1.75); math.Abs(got-1/2.75) > 5e-4 {
			t.Errorf("with 2000 outlets F is %g, want %g", got, 1/2.75)
		}
	}
}
