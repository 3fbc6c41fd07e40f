package shots

import "evenrow/wasm/grower/plan"

// Taken is the largest shot that a medium takes in, as a share of it: the upper
// end of what is usual on coco (from memory).
const Taken = 0.06

// A LimitKind is what a timer cannot do.
type LimitKind uint8

const (
	FewValves LimitKind = iota // it has fewer valves than there are zones
	OneValve                   // it has one valve, and zones are watered in turn
	Pins                       // it is set by pins of a quarter of an hour, far longer than a shot should be
	NoRoom                     // it goes on and off, and the shots do not fit between the first and the last
	LateRound                  // the rounds do not fit into the day
	Gaps                       // plants may lack water between two shots

	// What plants lack nothing for.
	FewStarts         // it holds fewer start times than there should be shots
	FewRounds         // no more rounds of all zones fit into the day, each at its quarter of an hour
	LongByDay         // shots are longer than they should be: it goes on and off, and the day has no room for more
	LongByStep        // likewise: it counts in coarse steps
	ShortShots        // while plants are small, shots are shorter than they should be
	LightHours        // a light switch lets shots come at sunrise and near sunset
	LimitKinds = iota // how many there are
)

// Slight says whether plants lack nothing for it: shots are longer or shorter than
// they should be, or begin earlier.
func (k LimitKind) Slight() bool { return k >= FewStarts }

// A Limit is one thing that a plan's timer cannot do.
type Limit struct {
	Kind LimitKind

	// NoRoom to LongByStep
	Sky   Sky      // on which day
	Set   *Setting // of the zone that runs longest then
	Free  int      // FewStarts, FewRounds: so many starts of a card by hand lie within the light of that day; else 0
	Over  float64  // s, by which the last round begins too late
	Round float64  // s, of the longest round; FewRounds: what one is given

	Dryest *Fare // Gaps: whose medium is emptied most between two shots

	// Pins: what one of them brings to a plant of those that need most time.
	Dose  float64 // m³
	Share float64 // of its medium
	Taken bool    // the medium takes it in
}

// limits lists what the timer cannot do, with the rest of the card as it is.
func (c *Card) limits(t *plan.Timer, zones int) (list []Limit) {
	switch {
	case zones <= 1:
	case t.Kind != plan.StartTimes:
		list = append(list, Limit{Kind: OneValve})
	case zones > t.Channels:
		list = append(list, Limit{Kind: FewValves})
	}
	l := &c.Lines[c.Peak]
	if t.Kind == plan.Dial {
		list = append(list, pin(l.Sets[Typical].Longest()))
	}
	// Of the hot day and the typical one the first that has a limit says it.
	for _, sky := range [...]Sky{Hot, Typical} {
		if d := &l.Sets[sky]; len(d.Zones) > 0 {
			if one, ok := d.limit(t); ok {
				if few := one.Kind == FewStarts || one.Kind == FewRounds; few && c.Hand != nil {
					one.Free = len(c.Hand.free(t, l, sky))
				}
				if one.Kind == FewRounds {
					one.Round = c.Hand.Round
				}
				list = append(list, one)
				break
			}
		}
	}
	if c.short() {
		list = append(list, Limit{Kind: ShortShots})
	}
	if t.Kind == plan.OnAndOff && t.Window == plan.ByLight {
		list = append(list, Limit{Kind: LightHours})
	}
	return list
}

// limit says what is gravest of what the timer cannot do on a day.
func (d *Day) limit(t *plan.Timer) (one Limit, ok bool) {
	s := d.Longest()
	one = Limit{Sky: d.Sky, Set: s, Over: d.Over, Round: d.Round}
	switch {
	case d.Over > 0 && t.Kind == plan.OnAndOff:
		one.Kind = NoRoom
	case d.Over > 0:
		one.Kind = LateRound
	case s.Notes&Dry != 0:
		one.Kind, one.Dryest = Gaps, s.dryest()
	case s.Notes&Few != 0:
		one.Kind = FewStarts
	case s.Notes&Crowded != 0:
		one.Kind = FewRounds
	case s.Notes&Long != 0 && t.Kind == plan.OnAndOff:
		one.Kind = LongByDay
	case s.Notes&Long != 0 && t.Kind == plan.StartTimes:
		one.Kind = LongByStep
	default:
		return one, false
	}
	return one, true
}

// Longest returns the zone that runs longest on a day; nil where none runs.
func (d *Day) Longest() *Setting {
	var most *Setting
	for i := range d.Zones {
		if s := &d.Zones[i]; most == nil || s.Run > most.Run {
			most = s
		}
	}
	return most
}

// pin is what a pin brings to the plants that need most time of a setting.
func pin(s *Setting) Limit {
	b := s.Beds[s.Lead].Bed
	given := Quarter * b.Mean
	share := given / b.Root
	return Limit{Kind: Pins, Dose: given, Share: share, Taken: share <= Taken}
}

// dryest returns the bed whose medium is emptied most between two shots, by what
// it gives easily.
func (s *Setting) dryest() *Fare {
	worst := &s.Beds[0]
	for i := range s.Beds {
		if f := &s.Beds[i]; f.Gap/f.Bed.Easy > worst.Gap/worst.Bed.Easy {
			worst = f
		}
	}
	return worst
}

// short says whether some line has shots that are shorter than they should be.
func (c *Card) short() bool {
	for i := range c.Lines {
		zones := c.Lines[i].Sets[Typical].Zones
		for k := range zones {
			if zones[k].Notes&Short != 0 {
				return true
			}
		}
	}
	return false
}
