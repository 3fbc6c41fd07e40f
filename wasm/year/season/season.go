// Package season dates the life of every planting of a plan, and what has to
// be done for the plants and for the system.
//
// The days between two stages do not depend on the date, so counting forwards
// from a sowing and back from what it led to gives the same dates.
package season

import (
	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
)

// A Stage is a turning point in the life of a planting.
type Stage int

const (
	Sow     Stage  = iota // a seed in a plug; the day of planting out for crops that are bought as plants
	Emerge                // it shows
	Block                 // the plug is set into a block; the same as Slab for crops without one
	Slab                  // planted out: the plant stands in its row from here on
	Train                 // the first time that it is tied up; the same as Slab for crops that are not
	Harvest               // first harvest
	End                   // the row is cleared, or frost kills; this day no longer belongs to the planting
	Stages  = iota        // how many there are
)

// A Planting is one sowing of one crop in some rows.
type Planting struct {
	Record  int             // index into Plan.Plantings; -1 when the plan lists none for this crop
	Turn    int             // which of its successions, from 0
	Number  int             // which planting of this crop, from 0
	Crop    int             // index into catalogue.Crops
	Rows    []int           // indices into Plan.Rows, rising; may be empty
	Plants  int             // in those rows
	Mode    int             // plan.FromFrost and so on
	Dates   [Stages]day.Day // rising, some equal
	Cut     int             // days by which frost, or draining the system before it, brings End forward
	Killed  bool            // frost ends it before the first harvest, which never comes: Harvest is not before End
	Sprouts Sprouts         // how sure the days to emergence are
	Tied    bool            // it is trained up
}

// Sprouts says how sure the days to emergence are.
type Sprouts uint8

const (
	Sure     Sprouts = iota
	Untested         // the seedbed's temperature lies beyond those that were tested
	Dead             // no seed came up at such a temperature
)

// A Season is the calendar of a plan.
type Season struct {
	Plantings []Planting // in the order of the plan's rows, then of its list of plantings
	Tasks     []Task     // by day, then by kind
	Conflicts []Conflict // the gravest first
	First     day.Day    // the first day of anything
	Last      day.Day    // the last
	MostPlace int        // most blocks that stand at the same time
	MostOn    day.Day    // the first day on which they do
}

// Of returns the calendar of a plan that has been checked.
func Of(p *plan.Plan) *Season {
	s := &Season{}
	s.plantings(p)
	s.tasks(p)
	s.conflicts(p)
	s.bounds()
	return s
}

// bounds notes the first and the last day of anything.
func (s *Season) bounds() {
	for i := range s.Plantings {
		g := &s.Plantings[i]
		if i == 0 || g.Dates[Sow] < s.First {
			s.First = g.Dates[Sow]
		}
		s.Last = max(s.Last, g.Dates[End])
		if i == 0 {
			s.Last = g.Dates[End]
		}
	}
	for i := range s.Tasks {
		t := &s.Tasks[i]
		s.First = min(s.First, t.Day)
		s.Last = max(s.Last, t.Last())
	}
}

// A Course is how a season goes: the plantings that are the first, as indices
// into Season.Plantings, of the same day the one that stands first; -1 for none.
type Course struct {
	Sown   int // of those that are raised from seed
	Out    int // planted out
	Picked int // of those that frost does not kill before
	End    day.Day
}

// Course returns how the season goes, by the plantings that grow in a row.
func (s *Season) Course() Course {
	c := Course{Sown: -1, Out: -1, Picked: -1}
	for i := range s.Plantings {
		g := &s.Plantings[i]
		if !g.Grows() {
			continue
		}
		first := func(at *int, stage Stage) {
			if *at < 0 || g.Dates[stage] < s.Plantings[*at].Dates[stage] {
				*at = i
			}
		}
		if g.Dates[Sow] < g.Dates[Slab] {
			first(&c.Sown, Sow)
		}
		first(&c.Out, Slab)
		if !g.Killed {
			first(&c.Picked, Harvest)
		}
		c.End = max(c.End, g.Dates[End])
	}
	return c
}

// At returns the planting that stands in a row on a day, planted out, or nil.
// Where two do, the one that was planted last counts.
func (s *Season) At(row int, d day.Day) *Planting {
	var found *Planting
	for i := range s.Plantings {
		g := &s.Plantings[i]
		if g.Dates[Slab] > d || d >= g.Dates[End] || found != nil && g.Dates[Slab] < found.Dates[Slab] {
			continue
		}
		for _, r := range g.Rows {
			if r == row {
				found = g
			}
		}
	}
	return found
}
