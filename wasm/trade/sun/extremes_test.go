package sun

import (
	"math/rand/v2"
	"testing"

	"evenrow/wasm/ground/day"
)

// The longest and the shortest day are those that looking at each day finds, and
// in the latitudes where people grow things not half of the days are looked at.
func TestExtremes(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 7))
	for n := range 600 {
		lat, lon := 180*r.Float64()-90, 360*r.Float64()-180
		if n%3 == 0 {
			lat = 35 + 25*r.Float64()
		}
		from := day.Of(2020+r.IntN(12), 1+r.IntN(12), 1+r.IntN(28))
		to := from + 1 + day.Day(r.IntN(500))
		asked := 0
		long, short := Extremes(from, to, func(d day.Day) float64 { asked++; return Of(d, lat, lon).Length })
		first, last := from, from
		for d := from; d < to; d++ {
			if Of(d, lat, lon).Length > Of(first, lat, lon).Length {
				first = d
			}
			if Of(d, lat, lon).Length < Of(last, lat, lon).Length {
				last = d
			}
		}
		if long != first || short != last {
			t.Errorf("at %.2f, %.2f, %s to %s: %s and %s, want %s and %s", lat, lon, from.ISO(), to.ISO(), long.ISO(), short.ISO(), first.ISO(), last.ISO())
		}
		if n%3 == 0 && to-from > 150 && asked > int(to-from)/2 {
			t.Errorf("at %.2f, %s to %s: asked for %d days of %d", lat, from.ISO(), to.ISO(), asked, to-from)
		}
	}
}
