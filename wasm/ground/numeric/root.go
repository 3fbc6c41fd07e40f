package numeric

import "math"

// Root returns an x between lo and hi where f is zero, to about the precision
// of float64. f must be continuous and have opposite signs at lo and hi, or be
// zero at one of them; otherwise Root returns NaN.
//
// Each pass takes the secant between the two ends, with the value at an end
// that stays halved each time (the Illinois rule), and bisects when three
// passes have not halved the bracket.
func Root(f func(float64) float64, lo, hi float64) float64 {
	flo, fhi := f(lo), f(hi)
	if flo == 0 {
		return lo
	}
	if fhi == 0 {
		return hi
	}
	if !(flo*fhi < 0) {
		return math.NaN()
	}
	width, side := hi-lo, 0
	for pass := 1; pass <= 400; pass++ {
		x := hi - fhi*(hi-lo)/(fhi-flo)
		if pass%4 == 0 {
			if math.Abs(hi-lo) > math.Abs(width)/2 {
				x = lo + (hi-lo)/2
			}
			width = hi - lo
		}
		if !((x-lo)*(x-hi) < 0) {
			x = lo + (hi-lo)/2
			if x == lo || x == hi {
				return x
			}
		}
		fx := f(x)
		switch {
		case fx == 0:
			return x
		case (fx < 0) == (flo < 0):
			lo, flo = x, fx
			if side == -1 {
				fhi /= 2
			}
			side = -1
		default:
			hi, fhi = x, fx
			if side == 1 {
				flo /= 2
			}
			side = 1
		}
	}
	return lo + (hi-lo)/2
}
