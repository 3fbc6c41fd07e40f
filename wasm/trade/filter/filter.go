// Package filter gives the head that a filter loses, clean and fouled, and how
// fine its mesh must be for an emitter.
package filter

// A Filter is a screen or disc filter. Its loss grows with the square of the
// flow, from one point of the maker's curve.
type Filter struct {
	Rated float64 // m³/s, the flow at which the losses were read, > 0
	Clean float64 // m, loss of the clean filter at that flow, >= 0
	Extra float64 // m, further loss of dirt at that flow, >= 0
}

// lowShare is the share of the rated flow below which the loss is a straight
// line, so that its slope does not vanish at no flow. It changes the loss by
// at most a quarter of its square, 2.5e-7 of the loss at the rated flow.
const lowShare = 1e-3

// Loss returns the head lost, in m, at flow q in m³/s, and its slope in m per
// m³/s:
//
//	loss = (Clean + Extra) (q/Rated)²
//
// and the opposite for water that runs back, a case only an iteration meets.
// The square holds for turbulent flow through a mesh (common practice, no
// source). The slope is never zero unless both losses are.
func (f Filter) Loss(q float64) (loss, slope float64) {
	h := f.Clean + f.Extra
	u := q / f.Rated
	a := max(u, -u)
	if a < lowShare {
		return h * lowShare * u, h * lowShare / f.Rated
	}
	return h * a * u, 2 * h * a / f.Rated
}
