package unit

import (
	"math"
	"testing"
	"time"
)

// Go's time package writes the same clocks.
func TestClock(t *testing.T) {
	for s := -90000; s < 180000; s += 29 {
		at := time.Unix(int64(s), 0).UTC().Add(30 * time.Second)
		if got, want := Clock(Metric, float64(s)), at.Format("15:04"); got != want {
			t.Fatalf("%d s is %s, want %s", s, got, want)
		}
		if got, want := Clock(US, float64(s)), at.Format("3:04 pm"); got != want {
			t.Fatalf("%d s is %s, want %s", s, got, want)
		}
	}
	if got := Clock(Metric, math.NaN()) + Clock(US, math.Inf(1)) + HoursMinutes(math.NaN()); got != "nonenonenone" {
		t.Errorf("what is no time is %s", got)
	}
	if got := HoursMinutes(50761); got != "14 h 06 min" {
		t.Errorf("14.1 h is %s", got)
	}
}
