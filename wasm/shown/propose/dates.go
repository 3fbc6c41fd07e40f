package propose

import (
	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/year/season"
)

// date moves a season whose dates nobody has said to this year, or where it is too late in it
// to the next. A plan as it starts has a year of its own, which is nobody's.
func (o *Outcome) date(p *plan.Plan, k kept, today day.Day) *plan.Plan {
	if o.Dated = k.dated(); o.Dated || today <= 0 {
		return p
	}
	years := today.Year() - p.SeasonYear()
	q := p.SeasonMoved(years)
	if len(q.Check()) == 0 && late(q, today) {
		o.Late = true
		q = p.SeasonMoved(years + 1)
	}
	if len(q.Check()) > 0 {
		return p
	}
	return q
}

// late reports whether what is planted on a day comes to no harvest before its season ends,
// whatever it is.
func late(p *plan.Plan, on day.Day) bool {
	for _, g := range season.Of(p).Plantings {
		if g.Grows() && on+g.Dates[season.Harvest]-g.Dates[season.Slab] < g.Dates[season.End] {
			return false
		}
	}
	return true
}
