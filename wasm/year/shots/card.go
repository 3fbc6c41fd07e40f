package shots

import (
	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/dose"
	"evenrow/wasm/year/season"
)

// Rooting is how many days after planting out a plant is taken to live on its
// block alone, and to be kept a little dry so that it roots into the medium
// (common practice, no source: one to three weeks).
const Rooting = 14

// A Flow is what the plants of one row get while their zone runs, in m³/s.
type Flow struct {
	Zone        int
	Least, Mean float64
}

// A Line is the settings of some days of the year.
type Line struct {
	From day.Day
	Days int
	Lit  dose.Sunlit
	Beds []Bed // in the order of their zones
	Sets [Skies]Day
	Bare []int // rows, from 0, in which nothing grows while their zone is watered
}

// A Card is the settings of a season.
type Card struct {
	Lines []Line
	Peak  int // the line that holds Year.Most

	Hand *Hand // of a card by hand; else nil
	Fine *Fine // what a finer card would save, or saves; nil where the timer takes only one kind

	// What follows from them; empty where the card is not [Card.Ready].
	Limits []Limit  // what the timer cannot do, in the order in which it is said
	Shared *Sharing // nil where no valve is shared by plants that need different amounts
	Empty  []Empty  // rows that are watered with nothing in them
	First  *Bed     // of the peak's line: out of water first when it stops
	Young  []Seedling
	Others []Choice // First in each medium
}

// Ready says whether the card has something to set the timer to when the need is
// greatest.
func (c *Card) Ready() bool {
	return c != nil && len(c.Lines) > 0 && len(c.Lines[c.Peak].Sets[Typical].Zones) > 0
}

// A Year is what a card is made for.
type Year struct {
	Plan   *plan.Plan
	Season *season.Season
	Flows  []Flow  // by row
	Most   day.Day // of greatest need; see demand.Demand.Most

	// Use returns what a plant of a planting, an index into
	// Season.Plantings, takes up on a day under each sky, in m³.
	Use func(planting int, d day.Day) [Skies]float64

	// Sun returns sunrise and sunset on the clock of the place.
	Sun func(d day.Day) dose.Sunlit
}

// Card works out a line for each week or fortnight from the first planting out
// to the last clearing; none where nothing is planted in a row. A line gives
// what is needed on the day of greatest use within it.
func (y *Year) Card() *Card {
	from, to := day.Day(0), day.Day(0)
	for i := range y.Season.Plantings {
		g := &y.Season.Plantings[i]
		if !g.Grows() {
			continue
		}
		if to == 0 || g.Dates[season.Slab] < from {
			from = g.Dates[season.Slab]
		}
		to = max(to, g.Dates[season.End])
	}
	days := 14
	if y.Plan.Timer.Every == plan.Week {
		days = 7
	}
	c := &Card{}
	for ; from < to; from += day.Day(days) {
		whole := Line{From: from, Days: min(days, int(to-from)), Lit: y.Sun(from + min(day.Day(days/2), to-from-1))}
		for _, l := range whole.split(y.corrected()) {
			if y.beds(&l); len(l.Beds) == 0 {
				continue
			}
			if y.Most >= l.From {
				c.Peak = len(c.Lines)
			}
			c.Lines = append(c.Lines, l)
		}
	}
	t := &y.Plan.Timer
	if on := y.corrected(); on > 0 {
		// By hand the starts are those of the card before the reading, as long as they do.
		sky := &y.Plan.Sky
		was := &Card{Lines: times(c.Lines, on, sky.Before/sky.Adjust)}
		was.Hand = setLines(t, was.Lines)
		c.Hand = was.reset(t, c.Lines)
	} else {
		c.Hand = setLines(t, c.Lines)
	}
	if c.Ready() {
		c.Fine = fineOf(t, c.Lines)
		y.judge(c)
	}
	return c
}

// corrected is the day from which a reading of the drain counts; 0 where none does.
func (y *Year) corrected() day.Day {
	if sky := &y.Plan.Sky; sky.Corrected() {
		return day.Day(sky.Since)
	}
	return 0
}

// split cuts a line in two where a day lies within it.
func (l Line) split(on day.Day) []Line {
	end := l.From + day.Day(l.Days)
	if on <= l.From || on >= end {
		return []Line{l}
	}
	after := l
	l.Days = int(on - l.From)
	after.From, after.Days = on, int(end-on)
	return []Line{l, after}
}

// setLines sets the timer in all lines; what stays the same by hand is nil where
// it is not set by hand.
func setLines(t *plan.Timer, lines []Line) *Hand {
	needLines(t, lines)
	if t.Kind == plan.StartTimes && t.Card == plan.ByHand {
		return byHand(t, lines)
	}
	for i := range lines {
		for sky := range lines[i].Sets {
			lines[i].Sets[sky].set(t, lines[i].Lit)
		}
	}
	return nil
}

// needLines works out what the plants of all lines need.
func needLines(t *plan.Timer, lines []Line) {
	for i := range lines {
		l := &lines[i]
		for sky := range l.Sets {
			l.Sets[sky] = needs(t, l.Beds, Sky(sky))
		}
	}
}

// judge says of a card what it means for the plants.
func (y *Year) judge(c *Card) {
	c.Limits = c.limits(&y.Plan.Timer, len(y.Plan.Zones()))
	c.Shared, c.Empty = c.sharing(y.Plan), y.empty(c)
	c.First, c.Young = c.Lines[c.Peak].Worst(), c.young()
	c.Others = y.choices(c.First)
}

// beds finds the plants that stand in their rows during a line.
func (y *Year) beds(l *Line) {
	for zone := 1; zone <= plan.MaxZones; zone++ {
		var planted [plan.MaxRows]bool
		start := len(l.Beds)
		for i := range y.Season.Plantings {
			g := &y.Season.Plantings[i]
			first := max(l.From, g.Dates[season.Slab])
			last := min(l.From+day.Day(l.Days), g.Dates[season.End])
			if first >= last {
				continue
			}
			b, ok := y.bed(zone, i, planted[:])
			if !ok {
				continue
			}
			b.days = int(last - first)
			for d := first; d < last; d++ {
				day := y.Use(i, d)
				b.taken += day[Typical]
				for sky, use := range day {
					b.Use[sky] = max(b.Use[sky], use)
				}
			}
			for sky := 1; sky < Skies; sky++ {
				b.Use[sky] = max(b.Use[sky], b.Use[sky-1])
			}
			if b.Young = last-g.Dates[season.Slab] <= Rooting; b.Young {
				b.Root = min(b.Root, catalogue.BlockVolume)
				b.Easy = min(b.Easy, catalogue.BlockEasy)
			}
			l.Beds = append(l.Beds, b)
		}
		if len(l.Beds) == start {
			continue
		}
		for r := range y.Flows {
			if y.Flows[r].Zone == zone && !planted[r] {
				l.Bare = append(l.Bare, r)
			}
		}
	}
}

// bed returns the part of a planting that stands in a zone, and notes its rows.
func (y *Year) bed(zone, planting int, planted []bool) (b Bed, ok bool) {
	g := &y.Season.Plantings[planting]
	b = Bed{Zone: zone, Planting: planting}
	flow := 0.0
	for _, r := range g.Rows {
		f := &y.Flows[r]
		if f.Zone != zone {
			continue
		}
		planted[r] = true
		row := &y.Plan.Rows[r]
		root := Root(row)
		if b.Plants == 0 || f.Least < b.Least {
			b.Least = f.Least
		}
		if b.Plants == 0 || root < b.Root { // the smallest, where rows differ
			b.Medium, b.Root, b.Easy = row.Medium, root, root*catalogue.Media[row.Medium].Easy
		}
		b.Rows = append(b.Rows, r)
		b.Plants += row.Plants
		flow += f.Mean * float64(row.Plants)
	}
	if b.Plants == 0 {
		return b, false
	}
	b.Mean = flow / float64(b.Plants)
	return b, true
}

// Root returns the medium that a plant of a row has, in m³.
func Root(row *plan.Row) float64 {
	return catalogue.Media[row.Medium].Volume / float64(row.PerPiece)
}
