package numeric

import "math"

// Exp returns e to the power x. It goes through base 2 for the reason that
// [Pow] gives, and is good to about |x| × 2e-16, relative.
func Exp(x float64) float64 { return math.Exp2(x * math.Log2E) }
