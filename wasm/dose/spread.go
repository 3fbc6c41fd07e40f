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
	if last < first {
		last = first
	}
	s, step := d.Share(first), d.step(n, first, last)
	times := make([]float64, n)
	for k := range times {
		times[k] = d.Time(s + step*float64(k))
	}
	if n > 0 {
		times[0] = first
	}
	return times
}

// step is the radiation from one of n shots to the next, as a share of the
// day's.
func (d Sunlit) step(n int, first, last float64) float64 {
	step := 1 / float64(n)
	if n > 1 {
		step = min(step, (d.Share(last)-d.Share(first))/float64(n-1))
	}
	return step
}

// Gap returns the greatest share of the day's radiation between one of n shots
// and the next, the night being one of the gaps.
func (d Sunlit) Gap(n int, first, last float64) float64 {
	step := d.step(n, first, last)
	return max(step, 1-step*float64(n-1))
}
