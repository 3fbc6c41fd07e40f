package shots

import (
	"math"
	"testing"

	"evenrow/wasm/trade/dose"
)

// A day from six to six on which plants take up 1 mL a second as in the hour
// about noon, and 0.15 mL in the dark.
func steady() (lit dose.Sunlit, use float64) {
	lit = dose.Of(6*hour, 18*hour)
	return lit, 1e-6 / lit.Peak()
}

// By hand, in hours of noon's use: six to sunset from noon on, 1.8 through a
// night, twelve through a day.
func TestLastsByHand(t *testing.T) {
	lit, use := steady()
	const noon = 1e-6 * hour // m³ in an hour of noon's use
	for _, c := range []struct{ at, easy, want float64 }{
		{12, 3, 3}, {12, 6, 6}, // to sunset
		{12, 6 + 0.9, 12}, {12, 6 + 1.8, 18}, // half the night, and all of it
		{12, 6 + 1.8 + 4, 22}, {12, 6 + 1.8 + 12 + 0.15, 31},
		{2, 0.3, 2}, {2, 0.6 + 1, 5}, {20, 0.15, 1}, {20, 1.5 + 2, 12},
		{6, 1, 1}, {18, 0.15, 1},
		{12, 0, 0}, {2, 0, 0}, {12, -5, 0}, {2, -5, 0},
		{12, 7 * 13.8, 7 * 24}, // a week empties it
		{0, 7 * 13.8, 7 * 24},
	} {
		if got := Lasts(lit, c.at*hour, c.easy*noon, use) / hour; math.Abs(got-c.want) > 1e-6 {
			t.Errorf("%g hours' use at %g h last %g h, want %g", c.easy, c.at, got, c.want)
		}
	}
	// More than a week, to the sunrise of the eighth day, is for ever.
	for _, easy := range []float64{8 * 13.8, 20 * 13.8} {
		if got := Lasts(lit, 12*hour, easy*noon, use); !math.IsInf(got, 1) {
			t.Errorf("%g hours' use at noon last %g h, want for ever", easy, got/hour)
		}
	}
	for _, use := range []float64{0, -1, math.NaN()} {
		if got := Lasts(lit, 12*hour, 0, use); !math.IsInf(got, 1) {
			t.Errorf("a use of %g lasts %g s, want for ever", use, got)
		}
	}
}

// When a shot is due, what the plants have taken up since the one before is
// missing: a share of the day's use.
func TestLeftByHand(t *testing.T) {
	b := &Bed{Easy: 2}
	for _, c := range []struct {
		use  float64
		n    int
		want float64
	}{{3, 3, 1}, {3, 2, 0.5}, {1, 1, 1}, {1, 0, 1}, {9, 2, 0}, {0, 5, 2}} {
		if got := Left(b, c.use, c.n); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("of 2 m³, with %d shots for %g m³ a day, %g are left, want %g", c.n, c.use, got, c.want)
		}
	}
}

// A bed in a zone that is set has lost what is taken up between two shots; one
// in a zone that is not set may be full. The worst of a line is the one that is
// dry first on a hot morning.
func TestLineLastsAndItsWorst(t *testing.T) {
	lit, use := steady()
	const noon = 1e-6 * hour
	day := use // m³, by which a shot of four brings a quarter
	bed := func(zone int, easy float64) Bed {
		return Bed{Zone: zone, Easy: easy, Use: [Skies]float64{0, use / 2, use, use}}
	}
	l := &Line{Lit: lit, Beds: []Bed{bed(1, 2*noon+day/4), bed(2, 3*noon), bed(1, 1*noon+day/4), bed(1, 1*noon+day/4)}}
	l.Sets[Hot].Zones = []Setting{{Zone: 3}, {Zone: 1, Shots: make([]Shot, 4)}}
	if s := l.Sets[Hot].Zone(1); s != &l.Sets[Hot].Zones[1] {
		t.Errorf("zone 1 is %+v", s)
	}
	if s := l.Sets[Hot].Zone(2); s != nil {
		t.Errorf("zone 2, which is not set, is %+v", s)
	}
	for i, want := range []float64{2, 3, 1, 1} {
		if got := l.Lasts(&l.Beds[i], Hot, 9*hour) / hour; math.Abs(got-want) > 1e-6 {
			t.Errorf("bed %d lasts %g h, want %g", i, got, want)
		}
	}
	// On a typical day no zone is set, and half as much is used: all that is easy lasts, twice as long.
	if got, want := l.Lasts(&l.Beds[1], Typical, 9*hour)/hour, 6.0; math.Abs(got-want) > 1e-6 {
		t.Errorf("on a typical day bed 1 lasts %g h, want %g", got, want)
	}
	if got := l.Worst(); got != &l.Beds[2] {
		t.Errorf("the worst is %+v, want the first of those that last an hour", got)
	}
	// At nine in the morning, nine hours are left of this day: what is more than
	// that lasts into the night, where a bed of little use is the better.
	if Morning != 9*hour {
		t.Errorf("it is told for %g h, want 9", Morning/hour)
	}
}

// By hand: 1 mL a second is 3.6 L an hour, and 0.6 L, half of what is easy, last ten minutes.
func TestByHandByHand(t *testing.T) {
	lit, use := steady()
	r := ByHand(lit, &Bed{Easy: 1.2e-3}, use)
	if math.Abs(r.Hour-3.6e-3) > 1e-15 || r.Each != 0.6e-3 || math.Abs(r.Every-600) > 1e-9 {
		t.Errorf("%+v, want 3.6 L an hour, 0.6 L every ten minutes", r)
	}
}
