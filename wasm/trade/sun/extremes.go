package sun

import "evenrow/wasm/ground/day"

// Extremes returns the first longest and the first shortest of the days from
// from to before to, of which there must be one at least. length is that of one
// day; it has to rise and fall no faster than the seasons do, and is asked for
// once a week and each day about the longest and the shortest of those.
func Extremes(from, to day.Day, length func(day.Day) float64) (longest, shortest day.Day) {
	const week = 7
	var days []day.Day
	var lengths []float64
	ask := func(at day.Day) {
		days, lengths = append(days, at), append(lengths, length(at))
	}
	for at := from; at < to-1; at += week {
		ask(at)
	}
	ask(to - 1)

	extreme := func(sign float64) day.Day {
		best, most := from, sign*lengths[0]
		for i, at := range days {
			v := sign * lengths[i]
			first, after := at, at+1
			if i > 0 {
				if v < sign*lengths[i-1] {
					continue
				}
				first = days[i-1] + 1
			}
			if i+1 < len(days) {
				if v < sign*lengths[i+1] {
					continue
				}
				after = days[i+1]
			}
			for d := first; d < after; d++ {
				u := v
				if d != at {
					u = sign * length(d)
				}
				if u > most {
					best, most = d, u
				}
			}
		}
		return best
	}
	return extreme(1), extreme(-1)
}
