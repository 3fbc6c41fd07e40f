package plan

import (
	"strconv"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/words"
)

// SeasonTo, with a year after it, is the action that moves the season to that
// year: "season-to.2028".
const SeasonTo = "season-to."

// SeasonYear is the year of the day that the season is counted from. Moved by the
// action [SeasonTo], it is another.
func (p *Plan) SeasonYear() int { return day.Day(p.anchor()).Year() }

// anchor is the day that the season is counted from.
func (p *Plan) anchor() int {
	if p.Season.Mode == FromFrost {
		return p.Season.LastFrost
	}
	return p.Season.Date
}

// SeasonMoved returns the plan with its season, and all plantings, so many years
// later; 29 February becomes the 28th where the year has none, and what may be no
// further from another date than a year or two stays within that.
func (p *Plan) SeasonMoved(years int) *Plan {
	q := *p
	s := &q.Season
	later := func(d int) int { return int(day.Day(d).Years(years)) }
	for _, at := range [...]*int{&s.Date, &s.LastFrost, &s.FirstFrost, &s.Start} {
		*at = later(*at)
	}
	if p.Season.FirstFrost <= p.Season.LastFrost+yearLong {
		s.FirstFrost = min(s.FirstFrost, s.LastFrost+yearLong)
	}
	q.Plantings = append([]Planting(nil), p.Plantings...)
	was, was2 := around(p)
	from, to := around(&q)
	for i := range q.Plantings {
		at := &q.Plantings[i].Date
		near := *at >= was && *at <= was2
		if *at = later(*at); near {
			*at = min(max(*at, from), to)
		}
	}
	return &q
}

// mostEditions is how often a calendar can be told anew.
const mostEditions = 9999

// yearLong is how many days the first frost comes after the last one at most.
const yearLong = 365

// moveSeason moves the dates that were typed to a year, and says whether it has.
// A date that cannot be read stays as it was typed; the one that the season is
// counted from must be readable, and all must stay within what a plan may hold. It is the next
// edition of the calendar, whose events keep their names: programs take the new dates.
func (d *Draft) moveSeason(year string) bool {
	to, err := strconv.Atoi(year)
	if err != nil {
		return false
	}
	p, errs := d.Read()
	wrong := map[string]bool{}
	for _, e := range errs {
		wrong[e.Path] = true
	}
	counted := "season.last-frost"
	if p.Season.Mode != FromFrost {
		counted = "season.date"
	}
	if wrong[counted] || to < day.Day(firstDate).Year() || to > day.Day(lastDate).Year() {
		return false
	}
	q := p.SeasonMoved(to - p.SeasonYear())
	ok := true
	d.dates(q, func(f *Field, i int) {
		ok = ok && (wrong[Path(f, i)] || *f.Int(q, i) >= firstDate && *f.Int(q, i) <= lastDate)
	})
	if ok {
		d.dates(q, func(f *Field, i int) {
			if !wrong[Path(f, i)] {
				d.Set(Path(f, i), f.Typed(q, i))
			}
		})
		if q.Season.Edition < mostEditions && to != p.SeasonYear() && !wrong["season.edition"] {
			d.Set("season.edition", words.N(q.Season.Edition+1))
		}
	}
	return ok
}

// dates calls do for every date of the season and the plantings of p.
func (d *Draft) dates(p *Plan, do func(f *Field, i int)) {
	for _, name := range [...]string{"season", "plantings"} {
		s := SectionNamed(name)
		for i := range s.Records(p) {
			for _, f := range s.Fields() {
				if f.Type == Date {
					do(f, i)
				}
			}
		}
	}
}
