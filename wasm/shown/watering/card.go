package watering

import (
	"math"
	"slices"
	"strconv"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/year/shots"
)

// Timer is the card that hangs by the timer.
func Timer(the *scene.Scene) {
	sc := part{the}
	c := sc.S.Shots
	if !c.Ready() {
		sc.Say("p", TimerWaits)
		return
	}
	sc.CardName(c.Lines[0].From)
	if said := sc.corrected(); said != "" {
		sc.Tag("p", said)
		sc.asks(plan.CorrectBack, words.Say("Take that reading back"))
	}
	if c.Hand != nil {
		sc.Say("p", "The start times stay as they are all season. A line says how many shots of how many minutes: for 8 × 6 min switch on starts 1 to 8 of the list, and give each 6 min. Change it on the eve of the next line, and of a hot or a dull day.")
		sc.starts(c.Hand)
		sc.card(c)
		return
	}
	told := "What to set the timer to, and when. Change it on the day of the next line, and on the eve of a hot or a dull day."
	if sc.S.Plan.Timer.Kind == plan.StartTimes {
		told += " Where shots have two lengths, the longer ones are those about noon. On a dull day switch off some start times, spread over the day."
	}
	sc.Tag("p", told)
	sc.card(c)
}

// starts lists the start times of a card by hand, in the order in which they are
// switched on.
func (sc part) starts(h *shots.Hand) {
	if zones := sc.S.Layout.Zones; len(zones) > 1 {
		columns := []string{words.Say("Start")}
		for _, zone := range zones {
			columns = append(columns, "#"+words.Say("Zone {n}", words.N(zone)))
		}
		sc.Table(words.Say("Start times of the whole season, in the order in which they are switched on"), columns...).Rows(func(t *block.Table) {
			for k, at := range h.Starts {
				cells := []string{words.N(k + 1)}
				for _, zone := range zones {
					cells = append(cells, sc.clock(at+h.Lag[zone]))
				}
				t.Row(cells...)
			}
		})
		return
	}
	var list []string
	for k, at := range h.Starts {
		list = append(list, words.Say("{n} at {time}", words.N(k+1), sc.clock(at)))
	}
	sc.Say("p", "Start times of the whole season, in the order in which they are switched on: {starts}.", words.List(list...))
}

// used says which starts a setting uses where they are not the first of the list;
// else it is empty.
func used(h *shots.Hand, s *shots.Setting) string {
	on, last := map[int]bool{}, 0
	for _, shot := range s.Shots {
		k := h.Start(s.Zone, shot) + 1
		on[k] = true
		last = max(last, k)
	}
	if last <= len(s.Shots) {
		return ""
	}
	var without []string
	for k := 1; k < last; k++ {
		if !on[k] {
			without = append(without, words.N(k))
		}
	}
	return words.Say("starts 1 to {last} without {starts}", words.N(last), words.And(without))
}

// uses says which starts a line uses where they are not the first of the list.
func (sc part) uses(h *shots.Hand, l *shots.Line, zone int) string {
	var said []string
	for _, sky := range [...]shots.Sky{shots.Typical, shots.Hot, shots.Dull} {
		if s := l.Sets[sky].Zone(zone); s != nil {
			if which := used(h, s); which != "" {
				said = append(said, words.Say("On {day}: {starts}.", words.Say(skies[sky]), which))
			}
		}
	}
	return words.Sentences(said...)
}

// cellOf is a setting as a cell: "9 × 5 min + 3 × 4 min".
func cellOf(s *shots.Setting) string {
	told := s.Told()
	return told.String()
}

// card is the table of the settings.
func (sc part) card(c *shots.Card) {
	for _, zone := range sc.S.Layout.Zones {
		name := "Settings of the timer"
		if len(sc.S.Layout.Zones) > 1 {
			name += ", zone " + strconv.Itoa(zone)
			sc.Tag("h3", "Zone "+strconv.Itoa(zone))
		}
		if !slices.ContainsFunc(c.Lines, func(l shots.Line) bool { return l.Sets[shots.Typical].Zone(zone) != nil }) {
			sc.Tag("p", "Nothing to set: nothing grows here, or some emitters stay shut.")
			continue
		}
		sc.Table(name, "Days", "#Typical day", "#Hot day", "#Dull day", "#Drains then").Rows(func(t *block.Table) {
			for _, span := range c.Spans(zone) {
				l := &c.Lines[span.First]
				s := l.Sets[shots.Typical].Zone(zone)
				if s == nil {
					continue
				}
				cells := [3]string{cellOf(s), "–", "–"}
				when := "At " + sc.times(s)
				if hot := l.Sets[shots.Hot].Zone(zone); hot != nil {
					cells[1] = cellOf(hot)
					when += " Hot day: " + sc.times(hot)
				}
				if dull := l.Sets[shots.Dull].Zone(zone); dull != nil {
					cells[2] = cellOf(dull)
				}
				t.Row(spanned(span), cells[0], cells[1], cells[2], sc.drains(c.Lines[span.First:span.Last+1], zone))
				if c.Hand != nil {
					when = sc.uses(c.Hand, l, zone)
				}
				if when != "" {
					t.Across(when)
				}
			}
		})
	}
}

// times are those of the shots: all where the timer wants them, else the window
// from the first to the end of the last.
func (sc part) times(s *shots.Setting) string {
	if last := s.Shots[len(s.Shots)-1]; sc.S.Plan.Timer.Kind == plan.OnAndOff {
		return sc.clock(s.Shots[0].At) + " to " + sc.clock(math.Ceil((last.At+last.For)/60)*60) + "."
	}
	words := ""
	for i, shot := range s.Shots {
		if i > 0 {
			words += ", "
		}
		words += sc.clock(shot.At)
	}
	return words + "."
}

// spanned is the days of a setting, in a few letters.
func spanned(s shots.Span) string {
	return words.Say("{from} to {to}", shortDate(s.From.Date()), shortDate((s.From + day.Day(s.Days-1)).Date()))
}

// drains is the share that drains of each bed of a zone on a typical day, in
// lines that are set alike: "20 %", "20 to 38 %".
func (sc part) drains(lines []shots.Line, zone int) string {
	lo, hi := math.Inf(1), 0.0
	for i := range lines {
		for _, f := range lines[i].Sets[shots.Typical].Zone(zone).Beds {
			lo, hi = min(lo, f.Drain), max(hi, f.Drain)
		}
	}
	least, most := wording.Percent(lo), wording.Percent(hi)
	if least == most {
		return most + "\u00a0%"
	}
	return least + " to " + most + "\u00a0%"
}
