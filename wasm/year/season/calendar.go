package season

import (
	"strconv"

	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/year/ical"
)

// eve is how many hours before the day on which the timer is set anew an alarm
// rings: at six in the evening, since the first shots may come before anybody is
// up (our own choice).
const eve = 6

// Calendar returns every task as an event of whole days.
//
// An event is known by the plan's name, its kind, and which planting of which
// crop it is for, never by its date: a file of the same plan with other dates
// moves the events of the one before. The stamp is the season's first day, as
// nothing here knows what day it is; the plan's edition says which file is the
// newer.
func (s *Season) Calendar(p *plan.Plan) *ical.Calendar {
	c := &ical.Calendar{Name: p.Name, Product: "-//Evenrow//Season//EN", Stamp: s.First, Edition: p.Season.Edition}
	mark := strconv.FormatUint(uint64(numeric.HashOf(p.Name)), 36)
	for i := range s.Tasks {
		t := &s.Tasks[i]
		e := ical.Event{
			UID:   mark + "-" + strconv.Itoa(int(t.Kind)) + "-" + strconv.Itoa(t.Number),
			First: t.Day, Days: t.Days, Every: t.Every, Times: t.Times,
			Summary: s.Title(p, t), Description: s.How(p, t), Category: words.Say("System"),
		}
		if t.Kind.ForPlants() {
			e.Category = words.Say("Plants")
		}
		if t.Kind == Resetting {
			e.Alarm = eve
		}
		if t.Planting >= 0 {
			g := &s.Plantings[t.Planting]
			e.UID += "-" + strconv.Itoa(g.Crop) + "-" + strconv.Itoa(g.Number)
		}
		e.UID += "@evenrow.invalid" // a name that is nobody's (RFC 2606)
		c.Events = append(c.Events, e)
	}
	return c
}
