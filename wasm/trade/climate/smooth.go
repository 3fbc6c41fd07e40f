package climate

import "math"

// knots are the values in the middles of twelve equal months of a curve that
// goes round the year without a corner, and whose mean over each month is that
// of the place.
type knots [12]float64

// through returns the curve whose means are given.
//
// Between the middles of two months the curve is the cubic through four of them
// (Catmull and Rom 1974). A straight reading of the means would flatten summers
// and winters, because a month's mean lies below the top of a curve that is
// highest in it; so the values are raised until the means fit. Each pass
// leaves less than a seventh of the misfit.
func through(means [12]float64) knots {
	k := knots(means)
	for range 30 {
		for i, was := range k.means() {
			k[i] += means[i] - was
		}
	}
	return k
}

// at returns the value at so many months of the year, 0 to 12.
func (k *knots) at(months float64) float64 {
	x := months + 11.5
	i := math.Floor(x)
	return k.cubic(int(i), x-i)
}

// cubic returns the value at t, 0 to 1, between the middles of months i and
// i + 1.
func (k *knots) cubic(i int, t float64) float64 {
	a, b, c, d := k[(i+11)%12], k[i%12], k[(i+1)%12], k[(i+2)%12]
	return b + t/2*(c-a+t*(2*a-5*b+4*c-d+t*(3*(b-c)+d-a)))
}

// means returns the mean of the curve over each month: Simpson's rule over its
// two halves, which is exact for cubics.
func (k *knots) means() (m [12]float64) {
	for i := range m {
		first := k.cubic(i+11, 0.5) + 4*k.cubic(i+11, 0.75) + k.cubic(i+11, 1)
		second := k.cubic(i, 0) + 4*k.cubic(i, 0.25) + k.cubic(i, 0.5)
		m[i] = (first + second) / 12
	}
	return m
}
