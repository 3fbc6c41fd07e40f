package view

import (
	"strconv"

	"evenrow/wasm/plan"
	"evenrow/wasm/shots"
	"evenrow/wasm/unit"
)

// limitsOfTimer says what the timer cannot do, and what helps.
func (sc *scene) limitsOfTimer(c *shots.Card) {
	t := &sc.s.Plan.Timer
	if zones := len(sc.s.Layout.Zones); t.Kind == plan.StartTimes && zones > t.Channels {
		sc.tag("p", "The plan has "+strconv.Itoa(zones)+" zones and the timer switches "+count(t.Channels, "valve", "valves")+". Take a timer that switches "+strconv.Itoa(zones)+", or turn the others by hand at every shot.")
	}
	if zones := len(sc.s.Layout.Zones); t.Kind != plan.StartTimes && zones > 1 {
		sc.tag("p", "The plan has "+strconv.Itoa(zones)+" zones, watered in turn. Such a timer switches one valve, and one for each zone would open several at once, for which the flows here are not worked out. Take a timer with start times that switches "+strconv.Itoa(zones)+" valves.")
	}
	l := &c.Lines[c.Peak]
	if t.Kind == plan.Dial {
		words := "This timer cannot give short shots: a pin is a quarter of an hour"
		if s := &l.Sets[shots.Typical].Zones[thirsty(&l.Sets[shots.Typical])]; len(s.Beds) > 0 {
			b := s.Beds[s.Lead].Bed
			words += ", which brings each plant " + sc.amount(unit.Dose, shots.Quarter*b.Mean) + ", " + sc.amount(unit.Share, shots.Quarter*b.Mean/b.Root) + " of its medium"
		}
		sc.tag("p", words+". Most of it runs through, and there are few shots. Get a timer with a list of start times and steps of a minute, or one that counts seconds on and minutes off.")
	}
	for _, sky := range [...]shots.Sky{shots.Hot, shots.Typical} {
		d := &l.Sets[sky]
		if len(d.Zones) == 0 {
			continue
		}
		s := &d.Zones[thirsty(d)]
		day := skies[sky]
		switch {
		case d.Over > 0 && t.Kind == plan.OnAndOff:
			sc.tag("p", "On "+day+" the shots do not fit between the first and the last: emitters of more flow help, or two to a plant.")
		case d.Over > 0:
			sc.tag("p", "On "+day+" the rounds do not fit into the day: the last one begins "+unit.HoursMinutes(d.Over)+" too late, because a round of all zones takes "+minutes(d.Round)+". Water zones together if the supply carries it, or take emitters of more flow.")
		case s.Notes&shots.Dry != 0:
			sc.tag("p", "On "+day+" plants may lack water between two shots: "+sc.dryest(s)+". "+sc.moreShots(s)+" More medium for each plant helps as well.")
		case s.Notes&shots.Few != 0:
			sc.tag("p", "On "+day+" "+strconv.Itoa(s.Wanted)+" shots would be right, and the timer holds "+strconv.Itoa(t.Programmes)+" start times. So each is longer, "+minutes(longest(s))+" at most. The medium holds that, but more of it runs through. "+sc.moreShots(s))
		case s.Notes&shots.Long != 0 && t.Kind != plan.Dial:
			sc.tag("p", "On "+day+" shots are longer than six minutes, because "+sc.whyLong()+".")
		default:
			continue
		}
		break
	}
	if hasShort(c) {
		sc.tag("p", "While plants are small, shots are shorter than two minutes, because they need no more. Emitters fill and open meanwhile, so look whether the far plants get theirs; or give two days' water every other day.")
	}
	if t.Kind == plan.OnAndOff && t.Window == plan.ByLight {
		sc.tag("p", "The light switch lets the first shot come at sunrise and the last near sunset, earlier and later than plants like. A timer before it, or a cover over its eye, narrows that.")
	}
}

// hasShort reports whether some line has shots that are shorter than they should
// be.
func hasShort(c *shots.Card) bool {
	for i := range c.Lines {
		zones := c.Lines[i].Sets[shots.Typical].Zones
		for k := range zones {
			if zones[k].Notes&shots.Short != 0 {
				return true
			}
		}
	}
	return false
}

// skies are kinds of day in words.
var skies = [shots.Skies]string{"a dull day", "a typical day", "a hot day", "a record-hot day"}

func longest(s *shots.Setting) float64 {
	_, _, long, _ := parted(s)
	return long
}

// dryest says whose medium is emptied between two shots.
func (sc *scene) dryest(s *shots.Setting) string {
	worst := &s.Beds[0]
	for i := range s.Beds {
		if f := &s.Beds[i]; f.Gap/f.Bed.Easy > worst.Gap/worst.Bed.Easy {
			worst = f
		}
	}
	return "a plant of " + sc.bedName(worst.Bed) + " takes up " + sc.amount(unit.Dose, worst.Gap) + " from one to the next, and its medium gives up " + sc.amount(unit.Dose, worst.Bed.Easy) + " easily"
}

func (sc *scene) moreShots(s *shots.Setting) string {
	if s.Notes&shots.Few != 0 {
		return "A timer with " + strconv.Itoa(s.Wanted) + " start times, or one that goes on and off by itself, gives them."
	}
	return "Move the first shot earlier or the last one later."
}

func (sc *scene) whyLong() string {
	if sc.s.Plan.Timer.Kind == plan.OnAndOff {
		return "there is not light for more of them"
	}
	return "the timer counts in steps of " + minutes(float64(sc.s.Plan.Timer.Step))
}

// shared says who gets more than is wanted because a valve is shared, in the
// line where that is most, and which rows are watered bare.
func (sc *scene) shared(c *shots.Card) {
	var at *shots.Line
	var most *shots.Fare
	var lead *shots.Bed
	valves := 0
	for i := range c.Lines {
		l := &c.Lines[i]
		zones := l.Sets[shots.Typical].Zones
		beds := 0
		for k := range zones {
			s := &zones[k]
			beds += len(s.Beds)
			for j := range s.Beds {
				f := &s.Beds[j]
				if j != s.Lead && (most == nil && f.Drain > sc.s.Plan.Timer.Drain+0.05 || most != nil && f.Drain > most.Drain) {
					at, most, lead = l, f, s.Beds[s.Lead].Bed
				}
			}
		}
		valves = max(valves, beds)
	}
	if most != nil {
		sc.tag("p", "Plants of different thirst share a valve. The thirstiest decide, so that no plant lacks water, and the others drain more. In the "+sc.lineWord()+" from "+at.From.Short()+" that is most: "+sc.bedName(lead)+" decides, and "+sc.bedName(most.Bed)+" drains "+sc.whole(most.Drain)+"\u00a0% on a typical day, where "+sc.whole(sc.s.Plan.Timer.Drain)+"\u00a0% would do. "+sc.ownValves(valves))
	}
	for i := range c.Lines {
		l := &c.Lines[i]
		if len(l.Bare) > 0 && l.Sets[shots.Typical].Zones != nil {
			name, them := "Row ", "it"
			if len(l.Bare) > 1 {
				name, them = "Rows ", "them"
			}
			sc.tag("p", name+listed(l.Bare)+" would be watered with nothing in "+them+" from "+l.From.Short()+" on. Shut "+them+" off.")
			return
		}
	}
}

// ownValves says how a valve for each planting could be had.
func (sc *scene) ownValves(valves int) string {
	switch {
	case sc.s.Plan.Header.Layout != plan.HeaderAndRows:
		return "In this layout rows cannot be shut alone; a header with rows could give each crop a valve."
	case valves > plan.MaxZones:
		return "Give rows that drink alike a zone of their own."
	}
	return "A zone for each, and a timer that switches " + count(valves, "valve", "valves") + ", gives each its own."
}
