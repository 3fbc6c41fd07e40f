package numeric

import (
	"math"
	"testing"
)

func TestPow(t *testing.T) {
	for _, x := range []float64{1e-6, 0.3, 1, 1.7, 20, 1e9} {
		for _, y := range []float64{-40, -1.9, 0, 0.05, 0.5, 1, 1.852, 4.8655} {
			got, want := Pow(x, y), math.Pow(x, y)
			if math.Abs(got-want) > want*(1e-15+1e-16*math.Abs(y*math.Log2(x))) {
				t.Errorf("Pow(%g, %g) = %.17g, want %.17g", x, y, got, want)
			}
		}
	}
	if Pow(0, 2) != 0 || Pow(0, 0) != 1 {
		t.Errorf("Pow(0, 2) = %g and Pow(0, 0) = %g, want 0 and 1", Pow(0, 2), Pow(0, 0))
	}
}

func TestRoot(t *testing.T) {
	tests := []struct {
		name   string
		f      func(float64) float64
		lo, hi float64
		want   float64
	}{
		{"square root of two", func(x float64) float64 { return x*x - 2 }, 0, 2, math.Sqrt2},
		{"falling", func(x float64) float64 { return 2 - x*x }, 0, 2, math.Sqrt2},
		{"at the lower end", func(x float64) float64 { return x }, 0, 1, 0},
		{"at the upper end", func(x float64) float64 { return x - 1 }, 0, 1, 1},
		{"flat, then steep", func(x float64) float64 { return math.Pow(x, 25) - 0.5 }, 0, 10, math.Pow(0.5, 1.0/25)},
		{"a step", func(x float64) float64 {
			if x < 0.3 {
				return -1
			}
			return 1e9
		}, 0, 1, 0.3},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := Root(tt.f, tt.lo, tt.hi); !(math.Abs(got-tt.want) <= 1e-14) {
				t.Errorf("Root between %g and %g = %.17g, want %.17g", tt.lo, tt.hi, got, tt.want)
			}
		})
	}
	if got := Root(func(x float64) float64 { return x*x + 1 }, -1, 1); !math.IsNaN(got) {
		t.Errorf("Root without a change of sign = %g, want NaN", got)
	}
}

// falling returns a curve of n points from four seeds, with chords that differ
// by a factor of a thousand.
func falling(a, b, c, d uint16) (x, y []float64, curve *Curve) {
	x, y = []float64{0}, []float64{30}
	for _, s := range []uint16{a, b, c, d} {
		x = append(x, x[len(x)-1]+0.01+float64(s%97))
		y = append(y, y[len(y)-1]-0.01-float64(s/97%89))
	}
	return x, y, NewCurve(x, y)
}

func FuzzCurve(f *testing.F) {
	f.Add(uint16(0), uint16(1), uint16(2), uint16(3))
	f.Add(uint16(9000), uint16(1), uint16(9000), uint16(1)) // steep and flat by turns
	f.Add(uint16(96), uint16(97), uint16(65535), uint16(8000))
	f.Fuzz(func(t *testing.T, a, b, c, d uint16) {
		x, y, curve := falling(a, b, c, d)
		for i := range x {
			if got, _ := curve.At(x[i]); math.Abs(got-y[i]) > 1e-12 {
				t.Fatalf("the curve through %v, %v is %.15g at %g", x, y, got, x[i])
			}
		}
		last := math.Inf(1)
		for i := range x {
			if i == len(x)-1 {
				break
			}
			h := x[i+1] - x[i]
			// The slope is nowhere less than a twentieth of the flattest chord
			// that has a say in it: this one and its neighbours.
			flattest := math.Inf(-1)
			for k := max(i-1, 0); k <= min(i+1, len(x)-2); k++ {
				flattest = max(flattest, (y[k+1]-y[k])/(x[k+1]-x[k]))
			}
			for k := range 50 {
				at := x[i] + h*(float64(k)+0.5)/50
				v, slope := curve.At(at)
				if !(v < last) || !(slope <= 0.0499*flattest) {
					t.Fatalf("the curve through %v, %v does not fall at %g: %g after %g, slope %g", x, y, at, v, last, slope)
				}
				last = v
				e := h * 1e-4
				lo, _ := curve.At(at - e)
				hi, _ := curve.At(at + e)
				if want := (hi - lo) / (2 * e); math.Abs(slope-want) > 1e-5*math.Abs(y[i+1]-y[i])/h {
					t.Fatalf("slope at %g is %g, by differences %g", at, slope, want)
				}
			}
		}
	})
}

func TestCurveGoesOnStraight(t *testing.T) {
	curve := NewCurve([]float64{0, 1, 3}, []float64{5, 4, 0})
	for _, end := range []float64{0, 3} {
		at, slope := curve.At(end)
		for _, by := range []float64{0.5, 2} {
			if end == 0 {
				by = -by
			}
			got, s := curve.At(end + by)
			if math.Abs(got-(at+slope*by)) > 1e-14 || s != slope {
				t.Errorf("at %g the curve is %g with slope %g, want %g with %g", end+by, got, s, at+slope*by, slope)
			}
		}
	}
}

func TestCurveOfTwoPointsIsStraight(t *testing.T) {
	curve := NewCurve([]float64{0, 4}, []float64{8, 0})
	if y, slope := curve.At(1); y != 6 || slope != -2 {
		t.Errorf("got %g with slope %g, want 6 with -2", y, slope)
	}
}

func TestCurveOfStraightPointsIsStraight(t *testing.T) {
	curve := NewCurve([]float64{0, 1, 4, 5}, []float64{10, 8, 2, 0})
	for x := -1.0; x < 7; x += 0.25 {
		if y, slope := curve.At(x); math.Abs(y-(10-2*x)) > 1e-12 || math.Abs(slope+2) > 1e-12 {
			t.Errorf("at %g: got %g with slope %g, want %g with -2", x, y, slope, 10-2*x)
		}
	}
}
