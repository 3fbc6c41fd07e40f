package wording

import (
	"math"
	"testing"

	"evenrow/wasm/ground/unit"
)

// Each as a reader would say it; a space that keeps figure and unit on a line is
// a no-break one.
func TestTimes(t *testing.T) {
	u := Units{Sys: unit.Metric}
	for _, c := range []struct {
		name string
		say  func(float64) string
		s    float64
		want string
	}{
		{"closing", Closing, 0, "at once"}, {"closing", Closing, 2.31, "2.4\u00a0s"}, {"closing", Closing, math.Inf(1), "–"},
		{"elapsed", u.Elapsed, 8.46, "8.5\u00a0s"}, {"elapsed", u.Elapsed, 95.4, "95\u00a0s"}, {"elapsed", u.Elapsed, math.Inf(1), "never"},
		{"elapsed", u.Elapsed, 180, u.Amount(unit.Duration, 180)},
		{"shot", Shot, 300, "5\u00a0min"}, {"shot", Shot, 282, "4\u00a0min 42\u00a0s"}, {"shot", Shot, 45, "45\u00a0s"}, {"shot", Shot, 59.9, "1\u00a0min"}, {"shot", Shot, 119.7, "2\u00a0min"},
		{"lasting", Lasting, math.Inf(1), "more than a week"}, {"lasting", Lasting, 20 * 60, "20\u00a0min"}, {"lasting", Lasting, 50 * 3600, "2 days"},
		{"lasting", Lasting, 30 * 3600, "30 h 00 min"}, {"lasting", Lasting, 3*3600 + 100, "3 h 00 min"},
	} {
		if got := c.say(c.s); got != c.want {
			t.Errorf("%s: %g s is %q, want %q", c.name, c.s, got, c.want)
		}
	}
}
