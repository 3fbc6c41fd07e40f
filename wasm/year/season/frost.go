package season

import (
	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
)

// drained is how many days before the typed first frost the system is drained
// at the latest: that frost is an average (common practice, no source).
const drained = 14

// Cleared returns the day on which the rows are clear, so that the system can
// be flushed, treated and drained on the next one, before a first frost.
func Cleared(first day.Day) day.Day { return first - drained - 1 }

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
