package watering

import (
	"slices"
	"strconv"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/year/season"
	"evenrow/wasm/year/shots"
)

// taken is the largest shot that a medium takes in, as a share of it: the upper
// end of what is usual on coco (from memory).
const taken = 0.06

// limitsOfTimer says what the timer cannot do, and what helps.
func (sc part) limitsOfTimer(c *shots.Card) {
	t := &sc.S.Plan.Timer
	if zones := len(sc.S.Layout.Zones); t.Kind == plan.StartTimes && zones > t.Channels {
		sc.Tag("p", "The plan has "+strconv.Itoa(zones)+" zones and the timer switches "+wording.Count(t.Channels, "valve", "valves")+". Take a timer that switches "+strconv.Itoa(zones)+", or turn the others by hand at every shot.")
	}
	if zones := len(sc.S.Layout.Zones); t.Kind != plan.StartTimes && zones > 1 {
		sc.Tag("p", "The plan has "+strconv.Itoa(zones)+" zones, watered in turn. Such a timer switches one valve, and one for each zone would open several at once, for which the flows here are not worked out. Take a timer with start times that switches "+strconv.Itoa(zones)+" valves.")
	}
	l := &c.Lines[c.Peak]
	if t.Kind == plan.Dial {
		words, fate := "This timer cannot give short shots: a pin is a quarter of an hour", "Most of it runs through, and there are few shots."
		if s := &l.Sets[shots.Typical].Zones[thirsty(&l.Sets[shots.Typical])]; len(s.Beds) > 0 {
			b := s.Beds[s.Lead].Bed
			share := shots.Quarter * b.Mean / b.Root
			words += ", which brings each plant " + sc.Amount(unit.Dose, shots.Quarter*b.Mean) + ", " + sc.Amount(unit.Share, share) + " of its medium"
			if share <= taken {
				fate = "The medium takes that in, but there are few shots, and little to set."
			}
		}
		sc.Tag("p", words+". "+fate+" Get a timer with a list of start times and steps of a minute, or one that counts seconds on and minutes off.")
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
			sc.Tag("p", "On "+day+" the shots do not fit between the first and the last: emitters of more flow help, or two to a plant.")
		case d.Over > 0:
			sc.Tag("p", "On "+day+" the rounds do not fit into the day: the last one begins "+unit.HoursMinutes(d.Over)+" too late, because a round of all zones takes "+Minutes(d.Round)+". Water zones together if the supply carries it, or take emitters of more flow.")
		case s.Notes&shots.Dry != 0:
			sc.Tag("p", "On "+day+" plants may lack water between two shots: "+sc.dryest(s)+". "+sc.moreShots(s)+" More medium for each plant helps as well.")
		case s.Notes&shots.Few != 0:
			sc.Tag("p", "On "+day+" "+strconv.Itoa(s.Wanted)+" shots would be right, and the timer holds "+strconv.Itoa(t.Programmes)+" start times. So each is longer, "+Minutes(longest(s))+" at most. The medium holds that, but more of it runs through. "+sc.moreShots(s))
		case s.Notes&shots.Long != 0 && t.Kind != plan.Dial:
			sc.Tag("p", "On "+day+" shots are longer than six minutes, because "+sc.whyLong()+".")
		default:
			continue
		}
		break
	}
	if hasShort(c) {
		sc.Tag("p", "While plants are small, shots are shorter than two minutes, because they need no more. Emitters fill and open meanwhile, so look whether the far plants get theirs; or give two days' water every other day.")
	}
	if t.Kind == plan.OnAndOff && t.Window == plan.ByLight {
		sc.Tag("p", "The light switch lets the first shot come at sunrise and the last near sunset, earlier and later than plants like. A timer before it, or a cover over its eye, narrows that.")
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
func (sc part) dryest(s *shots.Setting) string {
	worst := &s.Beds[0]
	for i := range s.Beds {
		if f := &s.Beds[i]; f.Gap/f.Bed.Easy > worst.Gap/worst.Bed.Easy {
			worst = f
		}
	}
	return "a plant of " + sc.bedName(worst.Bed) + " takes up " + sc.Amount(unit.Dose, worst.Gap) + " from one to the next, and its medium gives up " + sc.Amount(unit.Dose, worst.Bed.Easy) + " easily"
}

func (sc part) moreShots(s *shots.Setting) string {
	if s.Notes&shots.Few != 0 {
		return "A timer with " + strconv.Itoa(s.Wanted) + " start times, or one that goes on and off by itself, gives them."
	}
	return "Move the first shot earlier or the last one later."
}

func (sc part) whyLong() string {
	if sc.S.Plan.Timer.Kind == plan.OnAndOff {
		return "the day is too short for more of them"
	}
	return "the timer counts in steps of " + Minutes(float64(sc.S.Plan.Timer.Step))
}

// shared says who gets more than is wanted because a valve is shared, in the
// line where that is most, and which rows are watered bare.
func (sc part) shared(c *shots.Card) {
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
			for j := range s.Beds {
				f := &s.Beds[j]
				if !follows(s.Beds[:j], f.Bed) { // what stands where another stood shares its valve
					beds++
				}
				if j != s.Lead && !follows(s.Beds[s.Lead:s.Lead+1], f.Bed) && (most == nil && f.Drain > sc.S.Plan.Timer.Drain+0.05 || most != nil && f.Drain > most.Drain) {
					at, most, lead = l, f, s.Beds[s.Lead].Bed
				}
			}
		}
		valves = max(valves, beds)
	}
	if most != nil {
		sc.Tag("p", "Plants that need different amounts share a valve. Those that need most decide, so that no plant lacks water, and the others drain more. In the "+sc.lineWord()+" from "+at.From.Short()+" that is most: "+sc.bedName(lead)+" decides, and "+sc.bedName(most.Bed)+" drains "+sc.whole(most.Drain)+"\u00a0% on a typical day, where "+sc.whole(sc.S.Plan.Timer.Drain)+"\u00a0% would do. "+sc.ownValves(valves))
	}
	sc.bareRows(c)
}

// follows reports whether a bed has a row that another bed of the line has too,
// before or after it.
func follows(others []shots.Fare, b *shots.Bed) bool {
	for i := range others {
		for _, r := range others[i].Bed.Rows {
			if slices.Contains(b.Rows, r) {
				return true
			}
		}
	}
	return false
}

// bareRows says which rows are watered with nothing in them, each for the first
// time that it is so.
func (sc part) bareRows(c *shots.Card) {
	type span struct{ from, to day.Day } // to is 0 where it lasts
	var spans []span
	var rows [][]int
	for r := range sc.S.Plan.Rows {
		s := span{}
		before := day.Day(0) // when the line before begins
		for i := range c.Lines {
			l := &c.Lines[i]
			is := slices.Contains(l.Bare, r) && l.Sets[shots.Typical].Zones != nil
			if is && s.from == 0 {
				// Cleared in the line before, it is bare from then on.
				s.from = sc.turn(r, season.End, before, l.From, l.From)
			}
			if !is && s.from > 0 {
				s.to = sc.turn(r, season.Slab, l.From, l.From+day.Day(l.Days-1), l.From)
				break
			}
			before = l.From
		}
		if s.from == 0 {
			continue
		}
		at := slices.Index(spans, s)
		if at < 0 {
			at = len(spans)
			spans, rows = append(spans, s), append(rows, nil)
		}
		rows[at] = append(rows[at], r)
	}
	for i, s := range spans {
		if i == scene.MostWords {
			sc.Tag("p", "Other rows are watered empty for a time as well.")
			break
		}
		who, n, from := wording.RowsBegin(rows[i]), words.N(len(rows[i])), s.from.Short()
		switch valves := sc.S.Plan.Header.Layout == plan.HeaderAndRows; {
		case valves && s.to > 0:
			sc.Say("p", "{rows} would be watered with nothing in {n|it|them} from {from} to {to}. Shut {n|it|them} off for so long.", who, n, from, s.to.Short())
		case valves:
			sc.Say("p", "{rows} would be watered with nothing in {n|it|them} from {from} on. Shut {n|it|them} off.", who, n, from)
		case s.to > 0:
			sc.Say("p", "{rows} would be watered with nothing in {n|it|them} from {from} to {to}. No valve can shut {n|it|them} off here: plug the emitters there for so long.", who, n, from, s.to.Short())
		default:
			sc.Say("p", "{rows} would be watered with nothing in {n|it|them} from {from} on. No valve can shut {n|it|them} off here: plug the emitters there.", who, n, from)
		}
	}
}

// turn returns the last day from from to to on which a stage of one of a row's
// plantings comes; otherwise where none does.
func (sc part) turn(row int, stage season.Stage, from, to, otherwise day.Day) day.Day {
	at := day.Day(0)
	for i := range sc.S.Season.Plantings {
		g := &sc.S.Season.Plantings[i]
		if d := g.Dates[stage]; g.In(row) && d >= from && d <= to {
			at = max(at, d)
		}
	}
	if at == 0 {
		return otherwise
	}
	return at
}

// ownValves says how a valve for each planting could be had.
func (sc part) ownValves(valves int) string {
	switch {
	case sc.S.Plan.Header.Layout != plan.HeaderAndRows:
		return "In this layout rows cannot be shut alone; a header with rows could give each crop a valve."
	case valves > plan.MaxZones:
		return "Give rows that drink alike a zone of their own."
	}
	return "A zone for each, and a timer that switches " + wording.Count(valves, "valve", "valves") + ", gives each its own."
}
