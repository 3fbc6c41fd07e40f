package dose_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/trade/dose"
	"evenrow/wasm/trade/sun"
)

// randomDay is a day of any length at any clock.
func randomDay(r *rand.Rand) dose.Sunlit {
	rise := 3e4*r.Float64() - 5e3
	return dose.Of(rise, rise+8.6e4*r.Float64())
}

// The share of radiation against the sine of the sun's altitude summed over
// the day in steps of a minute, for places and seasons. The altitude is that
// of package sun, which its own tests hold against almanacs.
func TestShareFollowsTheSun(t *testing.T) {
	for _, lat := range []float64{-35, 0, 30, 47.2, 60} {
		for _, d := range []day.Day{day.Of(2027, 3, 21), day.Of(2027, 6, 21), day.Of(2027, 12, 21)} {
			times := sun.Of(d, lat, 8)
			lit := dose.Of(times.Rise, times.Set)
			// Declination after the sunset: cos ωs = -tan φ tan δ.
			half := (times.Set - times.Rise) / 86400 * math.Pi
			var sums []float64
			sum := 0.0
			const step = 60.0
			for at := times.Rise + step/2; at < times.Set; at += step {
				w := (at - times.Noon) / 86400 * 2 * math.Pi
				sum += max(0, math.Cos(w)-math.Cos(half))
				sums = append(sums, sum)
			}
			for i, s := range sums {
				at := times.Rise + step*float64(i+1)
				// 0.003: the rule of a step of a minute, and noon some seconds off the middle.
				if got, want := lit.Share(at), s/sum; math.Abs(got-want) > 0.003 {
					t.Fatalf("%g° on %s: share %.4f after %.0f s, want %.4f", lat, d.ISO(), got, at-times.Rise, want)
				}
			}
		}
	}
}

func TestShareIsACurve(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		d := randomDay(r)
		if d.Share(d.Rise-1) != 0 || d.Share(d.Set+1) != 1 {
			t.Fatalf("%+v: not 0 before and 1 after", d)
		}
		was := 0.0
		for i := 1; i <= 100; i++ {
			at := d.Rise + (d.Set-d.Rise)*float64(i)/100
			s := d.Share(at)
			// Symmetric about noon, to the rounding of a sum of sines.
			if m := d.Share(d.Rise + d.Set - at); s < was || math.Abs(s+m-1) > 1e-7 {
				t.Fatalf("%+v at %g: %g after %g, mirrored %g", d, at, s, was, m)
			}
			was = s
			if back := d.Time(s); s > 1e-6 && s < 1-1e-6 && math.Abs(d.Share(back)-s) > 1e-5 {
				t.Fatalf("%+v: Time(%g) is %g and not %g", d, s, back, at)
			}
		}
		// No second of the day has more than that of noon.
		if p := d.Peak(); p <= 0 || d.Share(d.Rise+7200)-d.Share(d.Rise+3600) > 3600*p*(1+1e-6) {
			t.Fatalf("%+v: peak %g", d, p)
		}
	}
}

// Days without a sunrise, or numbers that are none, give a day all the same.
func TestDaysNearAPole(t *testing.T) {
	for _, c := range [][2]float64{{0, 0}, {0, 86400}, {43200, 43210}, {-1e5, 2e5}, {math.NaN(), 0}, {5e4, 4e4}} {
		d := dose.Of(c[0], c[1])
		if !(d.Set > d.Rise) || d.Set-d.Rise > 86400 || math.Abs(d.Share((d.Rise+d.Set)/2)-0.5) > 1e-9 {
			t.Errorf("Of(%v) is %+v", c, d)
		}
	}
}

// Equal sums of radiation from shot to shot, all within the window.
func TestSpreadIsEven(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 2000 {
		d := randomDay(r)
		long := d.Set - d.Rise
		first := d.Rise + 0.3*long*r.Float64()
		last := d.Set - 0.3*long*r.Float64()
		n := 1 + r.IntN(30)
		times := d.Spread(n, first, last)
		if len(times) != n || times[0] != first {
			t.Fatalf("%d shots: %v", n, times)
		}
		step := 0.0
		for k := 1; k < n; k++ {
			s := d.Share(times[k]) - d.Share(times[k-1])
			if k == 1 {
				step = s
			}
			// Times are found to 0.01 s, at most 4e-6 of a day of an hour.
			if math.Abs(s-step) > 1e-5 || times[k] > last+0.1 {
				t.Fatalf("%+v, %d shots from %g to %g: %v", d, n, first, last, times)
			}
		}
		// The night's gap is a step as well, or longer where the window ends early.
		if night := 1 - (d.Share(times[n-1]) - d.Share(times[0])); n > 1 && night < step-1e-5 {
			t.Fatalf("%d shots: %g over night, %g by day", n, night, step)
		}
	}
	d := dose.Of(6*3600, 18*3600)
	if got := d.Spread(2, 6*3600, 18*3600); math.Abs(got[1]-12*3600) > 1 {
		t.Errorf("two shots from sunrise on: the second at %g, want noon", got[1])
	}
	if got := d.Spread(3, 8*3600, 7*3600); got[2] != 8*3600 && math.Abs(got[2]-8*3600) > 1 {
		t.Errorf("a window that ends before it begins: %v", got)
	}
}

// The drain that comes of what is given is the drain that was wanted, and what
// is measured leads to it.
func TestDrainComesBack(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 1000 {
		use, wanted := 1e-5+4e-3*r.Float64(), 0.6*r.Float64()
		w := dose.Applied(use, wanted)
		if got := dose.Drain(use, w); math.Abs(got-wanted) > 1e-12 {
			t.Fatalf("drain %g, want %g", got, wanted)
		}
		given := use * (1 + 2*r.Float64())
		if got := dose.Next(given, dose.Drain(use, given), wanted); math.Abs(got-w) > 1e-12*w+1e-15 {
			t.Fatalf("next %g, want %g", got, w)
		}
	}
	if dose.Drain(2, 1) != 0 || dose.Drain(1, 0) != 0 {
		t.Error("less than the plant takes up leaves no drain")
	}
}

func TestCount(t *testing.T) {
	for _, c := range []struct {
		given, shot float64
		want        int
	}{{2, 0.1, 20}, {2.01, 0.1, 21}, {0.05, 0.1, 1}, {0, 0.1, 0}, {1, 0, 1e6}, {math.NaN(), 1, 0}, {0.3, 0.1, 3}} {
		if got := dose.Count(c.given, c.shot); got != c.want {
			t.Errorf("Count(%g, %g) = %d, want %d", c.given, c.shot, got, c.want)
		}
	}
}
