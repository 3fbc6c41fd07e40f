package numeric

import "math"

// Root returns an x between lo and hi where f is zero, to about the precision
// of float64. f must be continuous and have opposite signs at lo and hi, or be
// zero at one of them; otherwise Root returns NaN.
//
// Each pass takes the secant of a [Bracket], and bisects when three passes have
// not halved it.
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
	b := Bracket{Lo: lo, Hi: hi, AtLo: flo, AtHi: fhi}
	width := hi - lo
	for pass := 1; pass <= 400; pass++ {
		// The secant seen from Hi, not Lo: another last bit of every root otherwise.
		x := b.Hi - b.AtHi*(b.Hi-b.Lo)/(b.AtHi-b.AtLo)
		if pass%4 == 0 {
			if math.Abs(b.Hi-b.Lo) > math.Abs(width)/2 {
				x = b.middle()
			}
			width = b.Hi - b.Lo
		}
		if !((x-b.Lo)*(x-b.Hi) < 0) {
			x = b.middle()
			if x == b.Lo || x == b.Hi {
				return x
			}
		}
		fx := f(x)
		if fx == 0 {
			return x
		}
		b.Narrow(x, fx)
	}
	return b.middle()
}
