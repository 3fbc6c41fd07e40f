package catalogue

import "math"

// Meets says whether one fitting holds tubing of two sizes. Else a thread stands between
// them, with an adapter behind it: they are held by fittings of two kinds, or are of two
// families of sizes. Measured tubing is of no family: barbs go by the bore.
func (t *Tube) Meets(o *Tube) bool {
	return t.Takes == o.Takes && (t.Outside == 0 || o.Outside == 0 || t.Metric() == o.Metric())
}

// Metric says whether tubing is sold by its outside diameter in whole
// millimetres. Other tubing is sold by inches, and fittings of the two
// families do not mix.
func (t *Tube) Metric() bool {
	mm := t.Outside * 1000
	return t.Outside > 0 && math.Abs(mm-math.Round(mm)) < 1e-6
}
