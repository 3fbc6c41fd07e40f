package shots

import (
	"slices"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
)

// A Fine compares a card by hand with a finer one, over all days of the season
// as if each were a typical one.
type Fine struct {
	Drained         float64 // m³ that drain by hand
	Saves           float64 // m³ less that the finer card gives; all of that drains
	Settings, Finer int     // how many settings each has, one after another
}

// Little says whether a finer card saves next to nothing: less than is told in
// whole per cent of what drains.
func (f *Fine) Little() bool { return !(f.Share() >= leastShare) }

// Share is what the finer card saves of what drains by hand.
func (f *Fine) Share() float64 { return f.Saves / f.Drained }

// leastShare is the least share that is one, as it is told in whole per cent.
const leastShare = 0.005

// fineOf compares the card of lines with the other kind.
func fineOf(t *plan.Timer, lines []Line) *Fine {
	if t.Kind != plan.StartTimes {
		return nil
	}
	other := *t
	other.Card = plan.ByHand + plan.Finer - t.Card
	rest := slices.Clone(lines)
	setLines(&other, rest)
	hand, finer := lines, rest
	if t.Card == plan.Finer {
		hand, finer = rest, lines
	}
	given, taken := overall(hand)
	least, _ := overall(finer)
	return &Fine{given - taken, given - least, len((&Card{Lines: hand}).Spans(0)), len((&Card{Lines: finer}).Spans(0))}
}

// overall is what all plants of the lines are given, and take up, on the days on
// which they stand in their rows, in m³.
func overall(lines []Line) (given, taken float64) {
	for i := range lines {
		zones := lines[i].Sets[Typical].Zones
		for k := range zones {
			for _, f := range zones[k].Beds {
				n := float64(f.Bed.Plants)
				given += n * f.Given * float64(f.Bed.days)
				taken += n * f.Bed.taken
			}
		}
	}
	return given, taken
}

// A Span is days on which the timer stays as it is.
type Span struct {
	From        day.Day
	Days        int
	First, Last int // lines of the card
}

// On returns the line of a day; nil where the card has none.
func (c *Card) On(d day.Day) *Line {
	if !c.Ready() {
		return nil
	}
	for i := range c.Lines {
		if l := &c.Lines[i]; d >= l.From && int(d-l.From) < l.Days {
			return l
		}
	}
	return nil
}

// Spans are the settings of a zone one after another, those of all zones for 0:
// lines that follow each other and are set alike on each kind of day that is on
// the card are one.
func (c *Card) Spans(zone int) (list []Span) {
	for i := range c.Lines {
		l := &c.Lines[i]
		if len(list) > 0 {
			if s := &list[len(list)-1]; s.From+day.Day(s.Days) == l.From && c.Lines[i-1].alike(l, zone) {
				s.Days += l.Days
				s.Last = i
				continue
			}
		}
		list = append(list, Span{l.From, l.Days, i, i})
	}
	return list
}

// alike says whether a zone, each for 0, is set the same in two lines.
func (l *Line) alike(other *Line, zone int) bool {
	for sky := Dull; sky <= Hot; sky++ {
		for z := range plan.MaxZones + 1 {
			if zone > 0 && z != zone {
				continue
			}
			a, b := l.Sets[sky].Zone(z), other.Sets[sky].Zone(z)
			if (a == nil) != (b == nil) || a != nil && (a.Off != b.Off || !slices.Equal(a.Shots, b.Shots)) {
				return false
			}
		}
	}
	return true
}
