package climate

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenrow/wasm/ground/day"
)

// sample is any year: monthly highs from -30 to 45 °C, lows up to 25 below.
func sample(r *rand.Rand) (high, low [12]float64) {
	for i := range high {
		high[i] = -30 + 75*r.Float64()
		low[i] = high[i] - 25*r.Float64()
	}
	return high, low
}

func TestMeansOfMonthsAreKept(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 300 {
		high, low := sample(r)
		c := New(high, low)
		for i, m := range c.high.means() {
			if math.Abs(m-high[i]) > 1e-9 {
				t.Fatalf("month %d of %v has the mean %g", i, high, m)
			}
		}
		for i, m := range c.low.means() {
			if math.Abs(m-low[i]) > 1e-9 {
				t.Fatalf("month %d of %v has the mean %g", i, low, m)
			}
		}
	}
}

// The days themselves have the mean too, to what a sum over days can differ
// from the curve's: a hundredth of the year's swing of some 25 °C at most.
func TestMeansOfDaysAreKept(t *testing.T) {
	high := [12]float64{3, 5, 10, 15, 19, 23, 25, 25, 20, 14, 7, 4}
	low := [12]float64{-3, -2, 1, 4, 9, 12, 14, 14, 10, 6, 1, -2}
	c := New(high, low)
	for _, year := range []int{2027, 2028} { // the second leaps
		for m := 1; m <= 12; m++ {
			sum, n := 0.0, day.InMonth(year, m)
			for dom := 1; dom <= n; dom++ {
				h, _ := c.At(day.Of(year, m, dom), Typical)
				sum += h
			}
			if mean := sum / float64(n); math.Abs(mean-high[m-1]) > 0.02 {
				t.Errorf("days of month %d of %d have the mean %g, want %g", m, year, mean, high[m-1])
			}
		}
	}
}

func TestTheYearGoesRoundWithoutAStep(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 50 {
		high, low := sample(r)
		c := New(high, low)
		for _, k := range []*knots{&c.high, &c.low} {
			if a, b := k.at(0), k.at(12); math.Abs(a-b) > 1e-9 {
				t.Fatalf("the year ends at %g and begins at %g", b, a)
			}
			const e = 1e-6
			for m := 0.0; m < 12; m += 0.25 {
				before, at, after := k.at(math.Mod(m+12-e, 12)), k.at(m), k.at(m+e)
				if math.Abs((at-before)-(after-at)) > 1e-6 { // slopes of up to some 100 °C a month, over e
					t.Fatalf("a corner at %g months: %g, %g, %g", m, before, at, after)
				}
			}
		}
	}
}

func TestKindsAreInOrder(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 100 {
		high, low := sample(r)
		c := New(high, low)
		for n := range 366 {
			d := day.Of(2027, 7, 1) + day.Day(n)
			wasHigh, wasLow := math.Inf(-1), math.Inf(-1)
			for k := range Kind(Kinds) {
				h, l := c.At(d, k)
				if h < wasHigh || l < wasLow || l > h || h-l < 0 {
					t.Fatalf("on %s %s is %g and %g after %g and %g", d.ISO(), k, h, l, wasHigh, wasLow)
				}
				wasHigh, wasLow = h, l
			}
		}
	}
}

// A constant year has constant days.
func TestAnEvenYear(t *testing.T) {
	var high, low [12]float64
	for i := range high {
		high[i], low[i] = 30, 24
	}
	c := New(high, low)
	for n := range 366 {
		if h, l := c.At(day.Day(n), Typical); math.Abs(h-30) > 1e-12 || math.Abs(l-24) > 1e-12 {
			t.Fatalf("day %d: %g and %g", n, h, l)
		}
	}
	if h, l := c.At(0, Cool); h != 24 || l != 22 {
		t.Errorf("a cool day: %g and %g, want 24 and 22", h, l)
	}
}
