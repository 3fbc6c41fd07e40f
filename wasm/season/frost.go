package season

import (
	"evenrow/wasm/day"
	"evenrow/wasm/plan"
)

// later returns the same date years later; 29 February becomes the 28th in a
// year without one.
func later(d day.Day, years int) day.Day {
	y, m, dom := d.Date()
	y += years
	return day.Of(y, m, min(dom, day.InMonth(y, m)))
}

// Frosts returns the last frost on or before d and the first after that, the
// plan's dates being taken for every year. There is frost on d itself when d is
// on or after first, or is last. ok is false where the place has none.
func Frosts(p *plan.Plan, d day.Day) (last, first day.Day, ok bool) {
	if p.Season.Frost == 0 {
		return 0, 0, false
	}
	last, first = day.Day(p.Season.LastFrost), day.Day(p.Season.FirstFrost)
	years := d.Year() - last.Year()
	if later(last, years) > d {
		years--
	}
	return later(last, years), later(first, years), true
}
