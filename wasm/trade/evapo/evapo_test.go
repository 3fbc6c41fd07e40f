package evapo

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenrow/wasm/trade/sun"
)

const (
	mm = 1e-3
	mj = 1e6
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s is %.5g, want %g ± %g", what, got, want, tol)
	}
}

// The examples of FAO-56 through the functions that the page uses.
func TestExamples(t *testing.T) {
	// ET-01: example 17, Bangkok in April. The ground takes up 0.14 MJ/m², which
	// a day of our year leaves out; 0.05 mm of it remains.
	b := Weather{Latitude: 13.73, OfYear: 105, Height: 2, Low: 25.6, High: 34.8,
		More: true, Humidity: 2.85e3 / MeanSaturation(25.6, 34.8), Wind: 2, Sunshine: 8.5 / 12.31}
	near(t, "ET-01: Ra", b.Above()/mj, 38.06, 0.06)
	near(t, "ET-01: Rs", b.Ground()/mj, 22.65, 0.06)
	near(t, "ET-01: Rn", b.Net()/mj, 14.33, 0.06)
	near(t, "ET-01: ETo", Penman(b.Low, b.High, b.Vapour(), b.Net(), 0.14*mj, b.Wind, b.Height)/mm, 5.72, 0.06)
	near(t, "ET-01: ETo without heat into the ground", b.Reference()/mm, 5.72, 0.06)

	// ET-03: example 20, Lyon in July, nothing known but temperatures. All three
	// of what else is known is said to be unknown.
	l := Weather{Latitude: 45.72, OfYear: 196, Height: 200, Low: 14.8, High: 26.6, More: true, Humidity: -1, Wind: -1, Sunshine: -1}
	near(t, "ET-03: Ra", l.Above()/mj, 40.55, 0.07)
	near(t, "ET-03: Rs", l.Ground()/mj, 22.29, 0.07)
	near(t, "ET-03: ETo", l.Reference()/mm, 4.56, 0.07)
	l.Wind = 1
	near(t, "ET-03: ETo at 1 m/s", l.Reference()/mm, 4.2, 0.07)
	l.Wind = 3
	near(t, "ET-03: ETo at 3 m/s", l.Reference()/mm, 4.8, 0.07)
	l.More = false
	near(t, "ET-04: ETo by temperatures alone", l.Reference()/mm, 5.0, 0.06)
}

// any is weather that a grower may type.
func anyWeather(r *rand.Rand) Weather {
	w := Weather{Latitude: 180*r.Float64() - 90, OfYear: 1 + r.IntN(366), Height: 3000 * r.Float64(),
		Low: 55*r.Float64() - 25, More: r.IntN(2) == 0, Humidity: -1, Wind: -1, Sunshine: -1}
	w.High = w.Low + 25*r.Float64()
	if r.IntN(2) == 0 {
		w.Humidity = 0.05 + 0.95*r.Float64()
	}
	if r.IntN(2) == 0 {
		w.Wind = 10 * r.Float64()
	}
	if r.IntN(2) == 0 {
		w.Sunshine = r.Float64()
	}
	return w
}

func TestReferenceIsANumber(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 20000 {
		w := anyWeather(r)
		// 30 mm a day is twice the most that was ever measured.
		if e := w.Reference(); !(e >= 0 && e < 30*mm) {
			t.Fatalf("%+v gives %g m", w, e)
		}
	}
}

// A day that is warmer by the same at its lowest and highest, or by more at
// its highest, never takes less water while the sun is well up. In winter a
// warmer night can make a day of less evaporation by the same equations: warm
// ground sends more heat to a clear sky.
func TestAWarmerDayTakesNoLess(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 20000 {
		w := anyWeather(r)
		if w.Above() < 20*mj || w.Low < 0 || w.High-w.Low < 4 {
			continue // nights as warm as days say, by equation 50, that there is no sun at all
		}
		cool := w.Reference()
		low, high := 5*r.Float64(), 8*r.Float64()
		hot := w
		hot.Low += low
		hot.High += max(low, high)
		if e := hot.Reference(); e < cool-1e-12 {
			t.Fatalf("%+v takes %g m, and %+v %g m", w, cool, hot, e)
		}
	}
}

// More sunshine never means less water while the sun is well up; below some
// 20 MJ/m² above the air a clear sky takes more heat from the ground than the
// sun brings.
func TestMoreSunshineTakesNoLess(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 20000 {
		w := anyWeather(r)
		w.More, w.Sunshine = true, r.Float64()
		if w.Above() < 20*mj || w.Humidity >= 0 && w.Humidity < 0.3 {
			continue // drier air than that of deserts lets so much heat through that a clear sky cools
		}
		dull := w.Reference()
		w.Sunshine += (1 - w.Sunshine) * r.Float64()
		if e := w.Reference(); e < dull-1e-12 {
			t.Fatalf("%+v takes %g m, less sunshine %g", w, e, dull)
		}
	}
	// By temperatures alone, more radiation above the air takes more.
	for lat := -60.0; lat < 60; lat += 5 {
		for j := 1; j < 366; j++ {
			a, b := Hargreaves(12, 25, sun.Extraterrestrial(lat, float64(j))), Hargreaves(12, 25, 1.01*sun.Extraterrestrial(lat, float64(j)))
			if b < a {
				t.Fatalf("at %g on day %d: %g and %g", lat, j, a, b)
			}
		}
	}
}

func TestKcHasNoSteps(t *testing.T) {
	s := Stages{30, 35, 40, 20, 0.6, 1.15, 0.9}
	if s.Total() != 125 {
		t.Errorf("the stages last %g days", s.Total())
	}
	was := s.Kc(-10)
	for d := -10.0; d < 200; d += 0.125 {
		k := s.Kc(d)
		if math.Abs(k-was) > 0.003 || k < 0.6 || k > 1.15 {
			t.Fatalf("after %g days %g, before %g", d, k, was)
		}
		was = k
	}
	if was != 0.9 || s.Kc(0) != 0.6 || s.Kc(80) != 1.15 {
		t.Errorf("%g, %g and %g", s.Kc(0), s.Kc(80), was)
	}
}
