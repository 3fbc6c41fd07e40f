package watering

import (
	"math"
	"slices"
	"strconv"

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
		sc.Tag("p", TimerWaits)
		return
	}
	sc.CardName(c.Lines[0].From)
	words := "What to set the timer to, and when. Change it on the day of the next line, and on the eve of a hot or a dull day."
	if sc.S.Plan.Timer.Kind == plan.StartTimes {
		words += " Where shots have two lengths, the longer ones are those about noon. On a dull day switch off some start times, spread over the day."
	}
	sc.Tag("p", words)
	sc.card(c)
}

// cellOf is a setting as a cell: "9 × 5 + 3 × 4 min".
func cellOf(s *shots.Setting) string {
	many, few, long, short := s.Lengths()
	const times = "\u00a0×\u00a0" // a narrow column breaks at the plus only
	cell := strconv.Itoa(many) + times + wording.Shot(long)
	if few > 0 {
		cell += " + " + strconv.Itoa(few) + times + wording.Shot(short)
	}
	if s.Off > 0 && many > 1 {
		cell += ", off " + wording.Shot(s.Off)
	}
	return cell
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
		sc.Table(name, "From", "#Typical day", "#Hot day", "#Dull day", "#Drains then").Rows(func(t *block.Table) {
			for i := range c.Lines {
				l := &c.Lines[i]
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
				t.Row(shortDate(l.From.Date()), cells[0], cells[1], cells[2], sc.drains(s))
				t.Across(when)
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

// drains is the share that drains of each bed: "20 %", "20 to 38 %".
func (sc part) drains(s *shots.Setting) string {
	lo, hi := block.Span(math.Inf(1), 0, s.Beds[0].Drain)
	for i := range s.Beds {
		lo, hi = block.Span(lo, hi, s.Beds[i].Drain)
	}
	least, most := wording.Percent(lo), wording.Percent(hi)
	if least == most {
		return most + "\u00a0%"
	}
	return least + " to " + most + "\u00a0%"
}
