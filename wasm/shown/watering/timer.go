// Package watering says what to set the timer to, what the tank holds, what the
// drain tells and how long plants last without water.
package watering

import (
	"math"
	"slices"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/dose"
	"evenrow/wasm/year/shots"
)

// TimerWaits stands where there is no card.
const TimerWaits = "This is worked out as soon as every plant gets water and something is planted."

// Shots says what the timer is set to when it matters most, and what it cannot
// do.
func Shots(the *scene.Scene) {
	sc := part{the}
	c := sc.S.Shots
	if !c.Ready() {
		sc.Tag("p", TimerWaits)
		return
	}
	l := &c.Lines[c.Peak]
	s := l.Sets[shots.Typical].Longest()
	words := "In the " + sc.lineWord() + " of greatest need, from " + l.From.Short() + "," + sc.zoneWords(s.Zone, "", " in zone ") + " give " + shotsOf(s)
	if n := len(s.Shots); n > 1 {
		words += ", the first at " + sc.clock(s.Shots[0].At) + ", the last at " + sc.clock(s.Shots[n-1].At)
	}
	if h := l.Sets[shots.Hot].Zone(s.Zone); h != nil {
		words += ". On a hot day give " + shotsOf(h)
	}
	sc.Tag("p", words+". The card for the timer, below, has every "+sc.lineWord()+" of the season.")
	sc.limits(c)
	sc.shared(c)
	closer := " Shots stand closer when there is more sun between them."
	if sc.S.Plan.Timer.Kind == plan.OnAndOff {
		closer = " Such a timer spreads them evenly, whatever the sun does."
	}
	sc.Picture("Each line is a "+sc.lineWord()+", each stroke a shot of a typical day"+sc.zoneWords(s.Zone, "", " in zone ")+". The thin lines are sunrise and sunset."+closer, func(class block.Markup, width float64) {
		sc.clockFace(class, width, c, s.Zone)
	})
	sc.SameAsTable(func() {
		t := sc.Table("When the shots are, through the season", "From", "#Shots", "#First", "#Last", "#Sunrise", "#Sunset")
		for i := range c.Lines {
			l := &c.Lines[i]
			if s := l.Sets[shots.Typical].Zone(s.Zone); s != nil {
				n := len(s.Shots)
				rise, set := sc.clock(l.Lit.Rise), sc.clock(l.Lit.Set)
				if long := l.Lit.Set - l.Lit.Rise; long >= 24*hour || long <= hour { // the sun hardly crosses the horizon, or not at all
					rise, set = "–", "–"
				}
				t.Row(shortDate(l.From.Date()), strconv.Itoa(n), sc.clock(s.Shots[0].At), sc.clock(s.Shots[n-1].At), rise, set)
			}
		}
		t.End()
	})
	sc.Working(func() {
		b := s.Beds[s.Lead].Bed
		sc.Tag("p", "Typical day in the "+sc.lineWord()+" from "+l.From.Short()+", a plant of "+sc.bedName(b)+" at the least flow there:")
		wanted := sc.S.Plan.Timer.Drain
		if b.Young {
			wanted = sc.S.Plan.Timer.DrainLow
		}
		given := dose.Applied(s.Beds[s.Lead].Use, wanted)
		sc.Formula(dose.AppliedFormula, s.Beds[s.Lead].Use, wanted)
		if dose.Count(given, s.Most*b.Least) == s.Wanted { // else they would be too short, and are fewer
			sc.Formula(dose.CountFormula, given, s.Most*b.Least)
		}
		sc.Formula(dose.MinutesFormula, given/float64(len(s.Shots)), b.Least)
	})
	sc.HTML(`<p>How to set a timer, and when to reset it: <a href="timer.html">Setting the timer</a>.</p>`)
}

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

// lineWord is what a line of the card is for.
func (sc part) lineWord() string {
	if sc.S.Plan.Timer.Every == plan.Week {
		return "week"
	}
	return "fortnight"
}

// zoneWords is one where there is one zone, else many with the zone's number.
func (sc part) zoneWords(zone int, one, many string) string {
	if len(sc.S.Layout.Zones) < 2 {
		return one
	}
	return many + strconv.Itoa(zone)
}

// clock is a time of day.
func (sc part) clock(s float64) string { return unit.Clock(sc.Sys, s) }

// Minutes is the time of a shot: "5 min", "4 min 40 s".
func Minutes(s float64) string {
	n := int(math.Round(s))
	m, rest := n/60, n%60
	switch {
	case rest == 0:
		return strconv.Itoa(m) + "\u00a0min"
	case m == 0:
		return strconv.Itoa(rest) + "\u00a0s"
	}
	return strconv.Itoa(m) + "\u00a0min " + strconv.Itoa(rest) + "\u00a0s"
}

// shotsOf is a setting in words: "12 shots of 5 min".
func shotsOf(s *shots.Setting) string {
	many, few, long, short := s.Lengths()
	words := wording.Count(many, "shot", "shots") + " of " + Minutes(long)
	if few > 0 {
		words += " and " + strconv.Itoa(few) + " of " + Minutes(short)
	}
	return words
}

// cellOf is a setting as a cell: "9 × 5 + 3 × 4 min".
func cellOf(s *shots.Setting) string {
	many, few, long, short := s.Lengths()
	const times = "\u00a0×\u00a0" // a narrow column breaks at the plus only
	cell := strconv.Itoa(many) + times + Minutes(long)
	if few > 0 {
		cell += " + " + strconv.Itoa(few) + times + Minutes(short)
	}
	if s.Off > 0 && many > 1 {
		cell += ", off " + Minutes(s.Off)
	}
	return cell
}

// bedName names plants: "tomato in row 3".
func (sc part) bedName(b *shots.Bed) string {
	return words.Say("{planting} in {rows}", sc.S.Season.Name(sc.S.Plan, b.Planting), wording.Rows(b.Rows))
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
		t := sc.Table(name, "From", "#Typical day", "#Hot day", "#Dull day", "#Drains then")
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
		t.End()
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
	least, most := sc.whole(lo), sc.whole(hi)
	if least == most {
		return most + "\u00a0%"
	}
	return least + " to " + most + "\u00a0%"
}

// whole is a share in whole per cent, without its unit.
func (sc part) whole(v float64) string { return strconv.Itoa(int(math.Round(v * 100))) }

// clockFace draws a stroke for each shot of a zone: lines of the card down the
// picture, hours across.
func (sc part) clockFace(class block.Markup, width float64, c *shots.Card, zone int) {
	room := 22.0
	if len(c.Lines) > 16 {
		room = 13
	}
	p := block.Plot{Left: 84, Right: width - 20, Top: 8, X0: math.Inf(1)}
	for i := range c.Lines {
		l := &c.Lines[i]
		p.X0, p.X1 = block.Span(p.X0, p.X1, l.Lit.Rise, l.Lit.Set)
		if s := l.Sets[shots.Typical].Zone(zone); s != nil {
			p.X0, p.X1 = block.Span(p.X0, p.X1, s.Shots[0].At, s.Shots[len(s.Shots)-1].At)
		}
	}
	p.X0, p.X1 = math.Floor(p.X0/hour)*hour, math.Ceil(p.X1/hour)*hour
	p.Bottom = p.Top + room*float64(len(c.Lines))
	sc.SVG(class, width, p.Bottom+40, "When the shots are, through the season", func() {
		var grid, rise, set, strokes block.Path
		every := 2.0
		if width < 400 || p.X1-p.X0 > 20*hour {
			every = 4
		}
		for p.X1-p.X0 > 24*every*hour { // shots that do not fit into the day
			every *= 2
		}
		for h := math.Ceil(p.X0/hour/every) * every; h*hour <= p.X1; h += every {
			grid.Move(p.X(h*hour), p.Top)
			grid.Line(p.X(h*hour), p.Bottom)
			sc.Label(p.X(h*hour), p.Bottom+16, "middle", sc.hourName(h))
		}
		last := -room
		for i := range c.Lines {
			l := &c.Lines[i]
			y := p.Top + room*(float64(i)+0.5)
			rise.To(p.X(l.Lit.Rise), y)
			set.To(p.X(l.Lit.Set), y)
			if y-last >= 18 {
				sc.Label(p.Left-8, y+4, "end", shortDate(l.From.Date()))
				last = y
			}
			s := l.Sets[shots.Typical].Zone(zone)
			if s == nil {
				continue
			}
			for _, shot := range s.Shots {
				strokes.Move(p.X(shot.At), y-room*0.36)
				strokes.Add('v', room*0.72)
			}
		}
		sc.Draw("grid", &grid).Draw("ground", &rise).Draw("ground", &set).Draw("line", &strokes)
		sc.Label(p.Right, p.Bottom+34, "end", "time of day")
	})
}

// hourName is a full hour, short.
func (sc part) hourName(h float64) string {
	n := (int(h)%24 + 24) % 24
	if sc.Sys == unit.US {
		half := " am"
		if n == 12 {
			return "noon"
		}
		if n > 12 {
			half = " pm"
		}
		return strconv.Itoa((n+11)%12+1) + half
	}
	return strconv.Itoa(n) + ":00"
}

var monthLetters = "JanFebMarAprMayJunJulAugSepOctNovDec"

// shortDate is a date in a few letters.
func shortDate(_, month, dom int) string {
	return strconv.Itoa(dom) + "\u00a0" + monthLetters[3*month-3:3*month]
}
