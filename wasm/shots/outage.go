package shots

import (
	"math"

	"evenrow/wasm/dose"
)

// Lasts returns how long plants have easily available water, in s from the time
// at when nothing is given any more: easy m³ then, and use m³ taken up a day,
// in step with the radiation and none at night. It is infinite where a week's
// use does not empty the medium, or there is no use.
func Lasts(lit dose.Sunlit, at, easy, use float64) float64 {
	share := max(0, easy) / use // of a day's radiation
	if !(share <= 7) {
		return math.Inf(1)
	}
	total := lit.Share(at) + share
	days := math.Floor(total)
	return max(0, days*24*60*60+lit.Time(total-days)-at)
}

// Left returns the easily available water of a bed when a shot is due that does
// not come, with n shots a day, in m³ a plant.
func Left(b *Bed, use float64, n int) float64 {
	return max(0, b.Easy-use/float64(max(n, 1)))
}

// A Rescue is how to water by hand meanwhile.
type Rescue struct {
	Each  float64 // m³ a plant at a time: half of what the medium gives easily, so that it is taken in
	Every float64 // s from one time to the next about noon
	Hour  float64 // m³ that a plant takes up in the hour about noon
}

// ByHand returns how to water a bed by hand on a day.
func ByHand(lit dose.Sunlit, b *Bed, use float64) Rescue {
	r := Rescue{Each: b.Easy / 2, Hour: use * lit.Peak() * 3600}
	if r.Hour > 0 {
		r.Every = r.Each / r.Hour * 3600
	}
	return r
}
