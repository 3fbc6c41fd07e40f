package day_test

import (
	"testing"
	"time"

	"evenrow/wasm/ground/day"
)

func TestMoment(t *testing.T) {
	for _, c := range []struct {
		text  string
		known bool
		timed bool
		at    int
	}{
		{"2027-07-15T14:05", true, true, 14*3600 + 5*60},
		{"2027-07-15T00:00", true, true, 0},
		{"2027-07-15T23:59", true, true, 86340},
		{"2027-07-15", true, false, 0},
		{"", false, false, 0}, {"today", false, false, 0}, {"2027-02-29", false, false, 0}, {"2027-07-15T24:00", false, false, 0},
		{"2027-07-15T12:60", false, false, 0}, {"2027-07-15T1:05", false, false, 0}, {"2027-07-15T14:05:00", false, false, 0}, {"2027-07-15T", false, false, 0},
		{"1970-01-01", false, false, 0}, {"0001-01-01", false, false, 0},
	} {
		m := day.ParseMoment(c.text)
		if m.Known() != c.known || m.Timed != c.timed || m.Second != c.at || c.known && m.Day != day.Of(2027, 7, 15) {
			t.Errorf("%q is read as %+v", c.text, m)
		}
	}
}

// A year on is the same date, but for leap days; Go's time package knows where
// there is none.
func TestYears(t *testing.T) {
	for d := day.Of(1996, 1, 1); d < day.Of(2005, 1, 1); d += 1 {
		y, m, dom := d.Date()
		for n := -5; n <= 5; n++ {
			want := time.Date(y+n, time.Month(m), dom, 0, 0, 0, 0, time.UTC)
			if want.Month() != time.Month(m) {
				want = want.AddDate(0, 0, -1)
			}
			if got := d.Years(n); int64(got)*86400 != want.Unix() {
				t.Fatalf("%d years from %s is %s, want %s", n, d.ISO(), got.ISO(), want.Format(time.DateOnly))
			}
		}
	}
}
