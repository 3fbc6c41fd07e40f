package pipe

import (
	"math"
	"testing"
)

// residual puts f back into Colebrook's equation.
func residual(f, re, rough float64) float64 {
	s := math.Sqrt(f)
	return 1/s + 2*math.Log10(rough/3.7+2.51/(re*s))
}

// bisected solves Colebrook's equation the slow, plain way.
func bisected(re, rough float64) float64 {
	lo, hi := 1e-4, 10.0
	for range 200 {
		f := (lo + hi) / 2
		if residual(f, re, rough) > 0 {
			lo = f
		} else {
			hi = f
		}
	}
	return (lo + hi) / 2
}

func TestFrictionAgreesWithBisection(t *testing.T) {
	for _, rough := range []float64{0, 1e-7, 1e-5, 5e-4, 1e-2, 0.05} {
		for re := 4000.0; re < 1.1e8; re *= 1.7 {
			got, _ := Friction(re, rough)
			if want := bisected(re, rough); math.Abs(got-want) > 1e-14*want*10 {
				t.Errorf("Friction(%g, %g) = %.16g, want %.16g by bisection", re, rough, got, want)
			}
		}
	}
}

func TestFrictionByRegime(t *testing.T) {
	tests := []struct {
		name             string
		re, rough, f, df float64
		tol              float64
	}{
		{"laminar is 64/Re", 1000, 0, 0.064, -6.4e-5, 1e-18},
		{"laminar ignores roughness", 2000, 0.05, 0.032, -1.6e-5, 1e-18},
		{"halfway is the mean of the ends", 3000, 0, (0.032 + bisected(4000, 0)) / 2, (bisected(4000, 0) - 0.032) / 2000, 1e-15},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			f, df := Friction(tt.re, tt.rough)
			if math.Abs(f-tt.f) > tt.tol || math.Abs(df-tt.df) > tt.tol {
				t.Errorf("Friction(%g, %g) = %.16g, %.16g, want %.16g, %.16g", tt.re, tt.rough, f, df, tt.f, tt.df)
			}
		})
	}
}

func TestFrictionIsContinuousAtTheEndsOfTheRegimes(t *testing.T) {
	for _, re := range []float64{LaminarMax, TurbulentMin} {
		for _, rough := range []float64{0, 1e-3, 0.05} {
			a, _ := Friction(math.Nextafter(re, 0), rough)
			b, _ := Friction(math.Nextafter(re, 1e9), rough)
			if math.Abs(a-b) > 1e-14 {
				t.Errorf("at Re %g, ε/D %g the factor jumps from %.16g to %.16g", re, rough, a, b)
			}
		}
	}
}

// From TurbulentMin on the slope is that of Colebrook's equation, and up to
// LaminarMax that of Poiseuille's.
func TestSlopeAtTheEndsOfTheRegimes(t *testing.T) {
	if _, slope := Friction(LaminarMax, 0.01); slope != -0.032/2000 {
		t.Errorf("at Re 2000 the slope is %g, want %g", slope, -0.032/2000)
	}
	const step = 1e-3
	f, slope := Friction(TurbulentMin, 0.01)
	after, _ := Friction(TurbulentMin+step, 0.01)
	if want := (after - f) / step; math.Abs(slope-want) > 1e-4*math.Abs(want) {
		t.Errorf("at Re 4000 the slope is %g, and %g to the next", slope, want)
	}
}

// within returns v where it lies from lo to hi, else a number between them
// that depends on v, evenly by ratio, so that no try of the fuzzer is wasted.
func within(v, lo, hi float64) float64 {
	if v >= lo && v <= hi {
		return v
	}
	_, part := math.Modf(math.Abs(v))
	if !(part >= 0 && part < 1) {
		part = 0
	}
	return lo * math.Pow(hi/lo, part)
}

func FuzzFriction(f *testing.F) {
	f.Add(4000.0, 0.0)
	f.Add(1e8, 0.05)
	f.Add(2000.0, 0.0)    // the last laminar one
	f.Add(3999.999, 0.01) // the end of the line
	f.Add(1.0, 0.0)
	f.Add(1e5, 1e-300) // a roughness that adds nothing
	f.Fuzz(func(t *testing.T, re, rough float64) {
		re = within(re, 1, 1e8)
		if rough != 0 {
			rough = within(rough, 1e-12, 0.05)
		}
		got, slope := Friction(re, rough)
		if !(got > 0 && got <= 64) {
			t.Fatalf("Friction(%g, %g) = %g, not in (0, 64]", re, rough, got)
		}
		if re >= TurbulentMin {
			if r := residual(got, re, rough); math.Abs(r) > 1e-12 {
				t.Errorf("Friction(%g, %g) = %g leaves a residual of %g", re, rough, got, r)
			}
		}
		// The slope, unless a kink lies between.
		h := re * 1e-5
		for _, kink := range []float64{LaminarMax, TurbulentMin} {
			if math.Abs(re-kink) <= 2*h {
				return
			}
		}
		a, _ := Friction(re-h, rough)
		b, _ := Friction(re+h, rough)
		if want := (b - a) / (2 * h); math.Abs(slope-want) > 1e-6*got/re {
			t.Errorf("slope of Friction(%g, %g) is %g, by differences %g", re, rough, slope, want)
		}
	})
}

var sink float64

func benchmark(b *testing.B, re, step float64) {
	b.ReportAllocs()
	for i := range b.N {
		f, df := Friction(re+step*float64(i%1000), 1e-4)
		sink += f + df
	}
}

func BenchmarkFrictionLaminar(b *testing.B)   { benchmark(b, 100, 1.5) }
func BenchmarkFrictionBetween(b *testing.B)   { benchmark(b, 2001, 1.9) }
func BenchmarkFrictionTurbulent(b *testing.B) { benchmark(b, 4000, 50) }
