package season

import (
	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
)

// A ConflictKind is what does not fit. Those before [Notes] cost plants or
// work; the others are worth knowing.
type ConflictKind int

const (
	NoRow         ConflictKind = iota // the planting stands in no row of the plan
	DeadSeed                          // no seed comes up at the seedbed's temperature
	FrostOut                          // planted out in the time of frost. Until: the last frost
	FrostKill                         // the system is drained before the first frost, and the first harvest comes later. Until: that frost
	TwoInRow                          // Other stands in Row at the same time. Until: when the earlier is cleared
	NotReady                          // the system is not tested when it is planted. Until: when it is
	NoPlace                           // Count blocks stand at the same time, from Until on: more than there are places
	Freezing                          // plants need the system on Count days of the time of frost, from Until on
	EarlyOpen                         // in the open, Count days after the last frost, when a late one is not rare
	Guessed                           // the seedbed's temperature lies beyond those that were tested
	Ended                             // the harvest ends Count days early, so that the system is drained before the frost of Until
	LateStore                         // the rows are clear only Count days before the frost of Until, and the system is drained after that
	Untold                            // a crop of the grower's own of which no number is told
	ConflictKinds = iota              // how many there are
)

// Notes is the first kind that is only worth knowing.
const Notes = EarlyOpen

// A Conflict is one thing that does not fit.
type Conflict struct {
	Kind     ConflictKind
	Planting int // index into Season.Plantings; -1 when it concerns the whole season
	Other    int // TwoInRow: the planting that was there before
	Row      int // TwoInRow: index into Plan.Rows
	Count    int
	Until    day.Day
}

// Days after the last frost within which a late one is not rare in the open
// (common practice, no source: warm crops go out one to two weeks after it).
const lateFrost = 7

// conflicts finds what does not fit.
func (s *Season) conflicts(p *plan.Plan) {
	add := func(c Conflict) { s.Conflicts = append(s.Conflicts, c) }
	order := s.byPlanting()
	for k, i := range order {
		g := &s.Plantings[i]
		if len(g.Rows) == 0 {
			add(Conflict{Kind: NoRow, Planting: i})
			continue
		}
		switch g.Sprouts {
		case Dead:
			add(Conflict{Kind: DeadSeed, Planting: i})
		case Untested:
			add(Conflict{Kind: Guessed, Planting: i})
		}
		if catalogue.Own(g.Crop) && !p.Told(g.Crop) {
			add(Conflict{Kind: Untold, Planting: i})
		}
		s.frosts(p, i)
		for _, j := range order[:k] {
			h := &s.Plantings[j]
			if row := shared(g, h); row >= 0 && g.Dates[Slab] < h.Dates[End] {
				add(Conflict{Kind: TwoInRow, Planting: i, Other: j, Row: row, Until: h.Dates[End]})
				break
			}
		}
	}
	for _, i := range order {
		g := &s.Plantings[i]
		if !g.Grows() {
			continue
		}
		if ready := day.Day(p.Season.Start + p.Season.Build + ahead); ready > g.Dates[Slab] {
			add(Conflict{Kind: NotReady, Planting: i, Until: ready})
		}
		break // the first says it
	}
	s.freezing(p)
	s.places()
	if p.Season.Places > 0 && s.MostPlace > p.Season.Places {
		add(Conflict{Kind: NoPlace, Planting: -1, Count: s.MostPlace, Until: s.MostOn})
	}
	list := s.Conflicts
	numeric.Sort(len(list), func(i, j int) bool {
		if list[i].Kind != list[j].Kind {
			return list[i].Kind < list[j].Kind
		}
		return list[i].Planting < list[j].Planting
	}, func(i, j int) { list[i], list[j] = list[j], list[i] })
}

// Grave returns how many conflicts cost plants or work.
func (s *Season) Grave() int {
	n := 0
	for n < len(s.Conflicts) && s.Conflicts[n].Kind < Notes {
		n++
	}
	return n
}

// frosts finds what frost does to a planting.
func (s *Season) frosts(p *plan.Plan, i int) {
	g := &s.Plantings[i]
	last, first, ok := Frosts(p, g.Dates[Slab])
	if !ok || p.Season.Shelter == plan.Heated || !Tender(p, g.Crop) {
		return
	}
	c := Conflict{Planting: i}
	switch since := int(g.Dates[Slab] - last); {
	case g.Dates[Slab] >= first || since == 0:
		c.Kind, c.Until = FrostOut, later(last, 1)
		if since == 0 {
			c.Until = last
		}
	case g.Killed:
		c.Kind, c.Until = FrostKill, first
	case g.Cut > 0:
		c.Kind, c.Count, c.Until = Ended, g.Cut, first
	case p.Season.Shelter == plan.OpenAir && since < lateFrost:
		c.Kind, c.Count = EarlyOpen, since
	default:
		return
	}
	s.Conflicts = append(s.Conflicts, c)
	if c.Kind == Ended && p.Season.Shelter == plan.OpenAir && int(g.Dates[Slab]-last) < lateFrost {
		s.Conflicts = append(s.Conflicts, Conflict{Kind: EarlyOpen, Planting: i, Count: int(g.Dates[Slab] - last)})
	}
}

// freezing finds the days of frost on which plants need a full system: nothing
// but heat, or draining it every such evening, keeps it whole then.
func (s *Season) freezing(p *plan.Plan) {
	if p.Season.Shelter == plan.Heated {
		return
	}
	c := Conflict{Kind: Freezing, Planting: -1}
	from, to := day.Day(0), day.Day(0) // from the first planting out to the last clearing
	for i := range s.Plantings {
		g := &s.Plantings[i]
		if !g.Grows() {
			continue
		}
		if to == 0 || g.Dates[Slab] < from {
			from = g.Dates[Slab]
		}
		to = max(to, g.Dates[End])
	}
	for d := from; d <= to && to > 0; { // it is stored on the next day
		last, first, ok := Frosts(p, d)
		if !ok {
			return
		}
		next := later(last, 1)
		if d == last {
			first, next = d, d
		}
		if n := int(min(next, to)-max(first, d)) + 1; n > 0 {
			if c.Count == 0 {
				c.Until = max(first, d)
			}
			c.Count += n
		} else if c.Count == 0 && to > Cleared(first) {
			c.Kind, c.Count, c.Until = LateStore, int(first-to), first
		}
		d = next + 1
	}
	if c.Count > 0 {
		s.Conflicts = append(s.Conflicts, c)
	}
}

// A Loss is how frost, or draining the system before it, takes a planting's
// harvest, and what would save that.
type Loss struct {
	Drained bool // the first harvest would come before the frost, when the system is drained already
	Short   int  // days by which the time without frost is too short; 0 where it is long enough
	Least   int  // days by which the planting has to be sown sooner, else: so many at the least
	Most    int  // and so many at the most, or it goes out before the last frost
}

// Loss returns that of a conflict that is FrostKill.
func (s *Season) Loss(p *plan.Plan, c *Conflict) Loss {
	g := &s.Plantings[c.Planting]
	last, _, _ := Frosts(p, g.Dates[Slab])
	l := Loss{Drained: g.Dates[Harvest] < c.Until}
	least, most := int(g.Dates[Harvest]-Cleared(c.Until))+1, int(g.Dates[Slab]-last)-1
	if least > most {
		l.Short = least - most
	} else {
		l.Least, l.Most = least, most
	}
	return l
}

// shared returns the first row that two plantings both stand in, or -1.
func shared(a, b *Planting) int {
	for _, r := range a.Rows {
		if b.In(r) {
			return r
		}
	}
	return -1
}

// places notes how many blocks stand at the same time at most.
func (s *Season) places() {
	for i := range s.Plantings {
		on := s.Plantings[i].Dates[Block]
		n := 0
		for k := range s.Plantings {
			if g := &s.Plantings[k]; g.Dates[Block] <= on && on < g.Dates[Slab] {
				n += g.Plants
			}
		}
		if n > s.MostPlace || n == s.MostPlace && n > 0 && on < s.MostOn {
			s.MostPlace, s.MostOn = n, on
		}
	}
}
