package shots

import (
	"slices"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/year/season"
)

// TooMuch is by how much more than wanted must drain before it is said that
// plants share a valve, as a share of what is given.
const TooMuch = 0.05

// A Sharing is plants that get more than they should because those that share
// their valve need more, in the line where that is most.
type Sharing struct {
	Line   *Line
	Lead   *Bed    // decides
	Other  *Bed    // gets more than it should
	Drain  float64 // share of what Other is given that drains on a typical day
	Valves int     // with so many each bed has its own
	Cure   Cure
}

// A Cure is how each bed could have a valve of its own.
type Cure uint8

const (
	NeedsHeader Cure   = iota // the layout lets no row be shut alone
	GroupAlike                // there are more beds than zones
	OwnZone                   // a zone for each, and a timer with as many valves
	Cures       = iota        // how many there are
)

// sharing finds it; nil where no bed drains much more than is wanted.
func (c *Card) sharing(p *plan.Plan) *Sharing {
	var most *Sharing
	valves := 0
	for i := range c.Lines {
		l := &c.Lines[i]
		zones := l.Sets[Typical].Zones
		beds := 0
		for k := range zones {
			s := &zones[k]
			for j := range s.Beds {
				f := &s.Beds[j]
				if !follows(s.Beds[:j], f.Bed) { // what stands where another stood shares its valve
					beds++
				}
				least := p.Timer.Drain + TooMuch
				if most != nil {
					least = most.Drain
				}
				if j != s.Lead && !follows(s.Beds[s.Lead:s.Lead+1], f.Bed) && f.Drain > least {
					most = &Sharing{Line: l, Lead: s.Beds[s.Lead].Bed, Other: f.Bed, Drain: f.Drain}
				}
			}
		}
		valves = max(valves, beds)
	}
	if most == nil {
		return nil
	}
	most.Valves = valves
	switch {
	case p.Header.Layout != plan.HeaderAndRows:
		most.Cure = NeedsHeader
	case valves > plan.MaxZones:
		most.Cure = GroupAlike
	default:
		most.Cure = OwnZone
	}
	return most
}

// follows says whether a bed has a row that another bed of the line has too,
// before or after it.
func follows(others []Fare, b *Bed) bool {
	for i := range others {
		for _, r := range others[i].Bed.Rows {
			if slices.Contains(b.Rows, r) {
				return true
			}
		}
	}
	return false
}

// An Empty is rows that are watered with nothing in them, each for the first
// time that it is so.
type Empty struct {
	Rows []int   // from 0, rising
	From day.Day // after the last clearing where there was one
	To   day.Day // the day of the next planting; 0 where nothing follows
}

// empty lists the rows that are watered with nothing in them, those with the
// same days together.
func (y *Year) empty(c *Card) (list []Empty) {
	for r := range y.Flows {
		from, to := y.emptied(c, r)
		if from == 0 {
			continue
		}
		at := slices.IndexFunc(list, func(e Empty) bool { return e.From == from && e.To == to })
		if at < 0 {
			at = len(list)
			list = append(list, Empty{From: from, To: to})
		}
		list[at].Rows = append(list[at].Rows, r)
	}
	return list
}

// emptied returns when a row is first watered with nothing in it, and when it is
// planted again; 0 where that is never.
func (y *Year) emptied(c *Card, row int) (from, to day.Day) {
	before := day.Day(0) // when the line before begins
	for i := range c.Lines {
		l := &c.Lines[i]
		is := slices.Contains(l.Bare, row) && l.Sets[Typical].Zones != nil
		if is && from == 0 {
			// Cleared in the line before, it is bare from then on.
			from = y.turn(row, season.End, before, l.From, l.From)
		}
		if !is && from > 0 {
			return from, y.turn(row, season.Slab, l.From, l.From+day.Day(l.Days-1), l.From)
		}
		before = l.From
	}
	return from, 0
}

// turn returns the last day from from to to on which a stage of one of a row's
// plantings comes; otherwise where none does.
func (y *Year) turn(row int, stage season.Stage, from, to, otherwise day.Day) day.Day {
	at := day.Day(0)
	for i := range y.Season.Plantings {
		g := &y.Season.Plantings[i]
		if d := g.Dates[stage]; g.In(row) && d >= from && d <= to {
			at = max(at, d)
		}
	}
	if at == 0 {
		return otherwise
	}
	return at
}
