package catalogue

import "math"

// Metric says whether tubing is sold by its outside diameter in whole
// millimetres. Other tubing is sold by inches, and fittings of the two
// families do not mix.
func (t *Tube) Metric() bool {
	mm := t.Outside * 1000
	return t.Outside > 0 && math.Abs(mm-math.Round(mm)) < 1e-6
}
