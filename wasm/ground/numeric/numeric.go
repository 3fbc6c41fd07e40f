// Package numeric holds the mathematics that belongs to no trade: powers,
// monotone curves, the root of a function, sorting and marks of texts.
package numeric

import "math"

// Pow returns x to the power y for x >= 0. It is 0 at x = 0 unless y is 0.
//
// It goes through base-2 logarithms because those are computed alike on every
// machine, which [math.Pow] is not: an answer must not change in its last
// digits between the browser and the command line. The result is good to
// about |y log₂ x| × 1e-16, relative.
func Pow(x, y float64) float64 {
	switch {
	case y == 0 || x == 1:
		return 1
	case x == 0 && y > 0:
		return 0
	}
	return math.Exp2(y * math.Log2(x))
}

// RoundUp returns the least multiple of step that is at least x, or less than
// a billionth of a step below it, which is what sums may be out by rounding.
func RoundUp(x, step float64) float64 { return math.Ceil(x/step-1e-9) * step }
