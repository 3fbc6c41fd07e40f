package wording

import (
	"math"
	"testing"

	"evenrow/wasm/ground/unit"
)

// Each as a reader would say it, by hand; what is not known is a dash.
func TestAmounts(t *testing.T) {
	metric, us := Units{Sys: unit.Metric}, Units{Sys: unit.US}
	for _, c := range []struct{ got, want string }{
		{metric.Days(1), "1\u00a0day"}, {metric.Days(0.96), "1\u00a0day"}, {metric.Days(1.5), "1.5\u00a0days"}, {metric.Days(12), "12\u00a0days"}, {metric.Days(math.Inf(1)), "–\u00a0days"},
		// 5 °C are 9 °F apart, in either direction.
		{metric.Warmer(5), "5\u00a0°C"}, {metric.Warmer(-5), "5\u00a0°C"}, {us.Warmer(5), "9\u00a0°F"}, {us.Warmer(-5), "9\u00a0°F"},
		{Percent(0.2), "20"}, {Percent(0.004), "0"}, {Percent(0.996), "100"},
		{Watts(12.34), "12.3"}, {Watts(0), "0.0"}, {Watts(math.NaN()), "–"},
		{Odds(0.05), "1 in 20 plants gets"}, {Odds(0.3), "1 in 3 plants gets"}, {Odds(0.31), "31 in 100 plants get"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}
