package dose

import "math"

// near is how far a quotient may lie above a whole number, by rounding, and
// still be that number.
const near = 1e-9

// Count returns how many shots of a volume make up what is given, rounded up,
// at least one where anything is given. Times serve as well as volumes.
func Count(given, shot float64) int {
	n := math.Ceil(given/shot - near)
	if !(n > 0) {
		return 0
	}
	return int(min(n, 1e6))
}

// Spread returns the times of n shots, the first at first and none after last,
// with equal sums of radiation from each to the next; also from the last over
// the night to the first of the next day, unless that would be after last.
// What the plant has taken up since the shot before is then the same at each.
// first is not before sunrise, last not after sunset.
func (d Sunlit) Spread(n int, first, last float64) []float64 {
	last = max(first, last)
	s, step := d.Share(first), 1/float64(n)
	if n > 1 {
		step = min(step, (d.Share(last)-s)/float64(n-1))
	}
	times := make([]float64, n)
	for k := range times {
		times[k] = d.Time(s + step*float64(k))
	}
	if n > 0 {
		times[0] = first
	}
	return times
}
