package view

import (
	"math"
	"slices"
	"strconv"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/dose"
	"evenrow/wasm/year/shots"
)

// timerWaits stands where there is no card.
const timerWaits = "This is worked out as soon as every plant gets water and something is planted."

// shots says what the timer is set to when it matters most, and what it cannot
// do.
func (sc *scene) shots() {
	c := sc.s.Shots
	if !timed(c) {
		sc.tag("p", timerWaits)
		return
	}
	l := &c.Lines[c.Peak]
	typical, hot := &l.Sets[shots.Typical], &l.Sets[shots.Hot]
	s := &typical.Zones[thirsty(typical)]
	words := "In the " + sc.lineWord() + " of greatest need, from " + l.From.Short() + "," + sc.zoneWords(s.Zone, "", " in zone ") + " give " + shotsOf(s)
	if n := len(s.Shots); n > 1 {
		words += ", the first at " + sc.clock(s.Shots[0].At) + ", the last at " + sc.clock(s.Shots[n-1].At)
	}
	if h := setting(hot, s.Zone); h != nil {
		words += ". On a hot day give " + shotsOf(h)
	}
	sc.tag("p", words+". The card for the timer, below, has every "+sc.lineWord()+" of the season.")
	sc.limitsOfTimer(c)
	sc.shared(c)
	sc.html(`<figure>`)
	for _, w := range widths {
		sc.clockFace(w.class, w.width, c, s.Zone)
	}
	closer := " Shots stand closer when there is more sun between them."
	if sc.s.Plan.Timer.Kind == plan.OnAndOff {
		closer = " Such a timer spreads them evenly, whatever the sun does."
	}
	sc.tag("figcaption", "Each line is a "+sc.lineWord()+", each stroke a shot of a typical day"+sc.zoneWords(s.Zone, "", " in zone ")+". The thin lines are sunrise and sunset."+closer)
	sc.html(`</figure>`)
	sc.fold("The same as a table")
	t := sc.table("When the shots are, through the season", "From", "#Shots", "#First", "#Last", "#Sunrise", "#Sunset")
	for i := range c.Lines {
		l := &c.Lines[i]
		if s := setting(&l.Sets[shots.Typical], s.Zone); s != nil {
			n := len(s.Shots)
			rise, set := sc.clock(l.Lit.Rise), sc.clock(l.Lit.Set)
			if long := l.Lit.Set - l.Lit.Rise; long >= 24*hour || long <= hour { // the sun hardly crosses the horizon, or not at all
				rise, set = "–", "–"
			}
			t.row(shortDate(l.From.Date()), strconv.Itoa(n), sc.clock(s.Shots[0].At), sc.clock(s.Shots[n-1].At), rise, set)
		}
	}
	t.end()
	sc.html(`</details>`)
	sc.fold("Show the working")
	b := s.Beds[s.Lead].Bed
	sc.tag("p", "Typical day in the "+sc.lineWord()+" from "+l.From.Short()+", a plant of "+sc.bedName(b)+" at the least flow there:")
	wanted := sc.s.Plan.Timer.Drain
	if b.Young {
		wanted = sc.s.Plan.Timer.DrainLow
	}
	given := dose.Applied(s.Beds[s.Lead].Use, wanted)
	sc.formula(dose.AppliedFormula, s.Beds[s.Lead].Use, wanted)
	if dose.Count(given, s.Most*b.Least) == s.Wanted { // else they would be too short, and are fewer
		sc.formula(dose.CountFormula, given, s.Most*b.Least)
	}
	sc.formula(dose.MinutesFormula, given/float64(len(s.Shots)), b.Least)
	sc.html(`</details><p>How to set a timer, and when to reset it: <a href="timer.html">Setting the timer</a>.</p>`)
}

// timed reports whether a card says anything.
func timed(c *shots.Card) bool {
	return c != nil && len(c.Lines) > 0 && len(c.Lines[c.Peak].Sets[shots.Typical].Zones) > 0
}

// timer is the card that hangs by the timer.
func (sc *scene) timer() {
	c := sc.s.Shots
	if !timed(c) {
		sc.tag("p", timerWaits)
		return
	}
	sc.cardName(c.Lines[0].From)
	words := "What to set the timer to, and when. Change it on the day of the next line, and on the eve of a hot or a dull day."
	if sc.s.Plan.Timer.Kind == plan.StartTimes {
		words += " Where shots have two lengths, the longer ones are those about noon. On a dull day switch off some start times, spread over the day."
	}
	sc.tag("p", words)
	sc.card(c)
}

// cardName says on a card which plan and year it is for: it hangs alone.
func (sc *scene) cardName(first day.Day) {
	sc.html(`<p><b>`).text(Title(sc.s.Plan)).html(`</b>, `).text(strconv.Itoa(first.Year())).html(`</p>`)
}

// lineWord is what a line of the card is for.
func (sc *scene) lineWord() string {
	if sc.s.Plan.Timer.Every == plan.Week {
		return "week"
	}
	return "fortnight"
}

// zoneWords is one where there is one zone, else many with the zone's number.
func (sc *scene) zoneWords(zone int, one, many string) string {
	if len(sc.s.Layout.Zones) < 2 {
		return one
	}
	return many + strconv.Itoa(zone)
}

// clock is a time of day.
func (sc *scene) clock(s float64) string { return unit.Clock(sc.sys, s) }

// thirsty returns the zone that runs longest on a day.
func thirsty(d *shots.Day) int {
	most := 0
	for i := range d.Zones {
		if d.Zones[i].Run > d.Zones[most].Run {
			most = i
		}
	}
	return most
}

// minutes is the time of a shot: "5 min", "4 min 40 s".
func minutes(s float64) string {
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

// parted counts the shots of a setting by their length: the timer's step makes
// some longer than others.
func parted(s *shots.Setting) (many, few int, long, short float64) {
	for _, shot := range s.Shots {
		long = max(long, shot.For)
	}
	for _, shot := range s.Shots {
		if shot.For == long {
			many++
		} else {
			few++
			short = shot.For
		}
	}
	return many, few, long, short
}

// shotsOf is a setting in words: "12 shots of 5 min".
func shotsOf(s *shots.Setting) string {
	many, few, long, short := parted(s)
	words := count(many, "shot", "shots") + " of " + minutes(long)
	if few > 0 {
		words += " and " + strconv.Itoa(few) + " of " + minutes(short)
	}
	return words
}

// cellOf is a setting as a cell: "9 × 5 + 3 × 4 min".
func cellOf(s *shots.Setting) string {
	many, few, long, short := parted(s)
	const times = "\u00a0×\u00a0" // a narrow column breaks at the plus only
	cell := strconv.Itoa(many) + times + minutes(long)
	if few > 0 {
		cell += " + " + strconv.Itoa(few) + times + minutes(short)
	}
	if s.Off > 0 && many > 1 {
		cell += ", off " + minutes(s.Off)
	}
	return cell
}

// bedName names plants: "tomato in row 3".
func (sc *scene) bedName(b *shots.Bed) string {
	name := "row"
	if len(b.Rows) > 1 {
		name = "rows"
	}
	return sc.s.Season.Name(sc.s.Plan, b.Planting) + " in " + name + " " + listed(b.Rows)
}

// listed writes rows, counted from 0, as a person does: "1 to 3, 5".
func listed(rows []int) string {
	s := ""
	for i := 0; i < len(rows); {
		n := i
		for n+1 < len(rows) && rows[n+1] == rows[n]+1 {
			n++
		}
		if s != "" {
			s += ", "
		}
		s += strconv.Itoa(rows[i] + 1)
		if n > i {
			s += " to " + strconv.Itoa(rows[n]+1)
		}
		i = n + 1
	}
	return s
}

// card is the table of the settings.
func (sc *scene) card(c *shots.Card) {
	for _, zone := range sc.s.Layout.Zones {
		name := "Settings of the timer"
		if len(sc.s.Layout.Zones) > 1 {
			name += ", zone " + strconv.Itoa(zone)
			sc.tag("h3", "Zone "+strconv.Itoa(zone))
		}
		if !slices.ContainsFunc(c.Lines, func(l shots.Line) bool { return setting(&l.Sets[shots.Typical], zone) != nil }) {
			sc.tag("p", "Nothing to set: nothing grows here, or some emitters stay shut.")
			continue
		}
		t := sc.table(name, "From", "#Typical day", "#Hot day", "#Dull day", "#Drains then")
		for i := range c.Lines {
			l := &c.Lines[i]
			s := setting(&l.Sets[shots.Typical], zone)
			if s == nil {
				continue
			}
			cells := [3]string{cellOf(s), "–", "–"}
			when := "At " + sc.times(s)
			if hot := setting(&l.Sets[shots.Hot], zone); hot != nil {
				cells[1] = cellOf(hot)
				when += " Hot day: " + sc.times(hot)
			}
			if dull := setting(&l.Sets[shots.Dull], zone); dull != nil {
				cells[2] = cellOf(dull)
			}
			t.row(shortDate(l.From.Date()), cells[0], cells[1], cells[2], sc.drains(s))
			t.across(when)
		}
		t.end()
	}
}

// setting returns that of a zone, or nil.
func setting(d *shots.Day, zone int) *shots.Setting { return d.Zone(zone) }

// times are those of the shots: all where the timer wants them, else the window
// from the first to the end of the last.
func (sc *scene) times(s *shots.Setting) string {
	if last := s.Shots[len(s.Shots)-1]; sc.s.Plan.Timer.Kind == plan.OnAndOff {
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
func (sc *scene) drains(s *shots.Setting) string {
	lo, hi := span(math.Inf(1), 0, s.Beds[0].Drain)
	for i := range s.Beds {
		lo, hi = span(lo, hi, s.Beds[i].Drain)
	}
	least, most := sc.whole(lo), sc.whole(hi)
	if least == most {
		return most + "\u00a0%"
	}
	return least + " to " + most + "\u00a0%"
}

// whole is a share in whole per cent, without its unit.
func (sc *scene) whole(v float64) string { return strconv.Itoa(int(math.Round(v * 100))) }

// clockFace draws a stroke for each shot of a zone: lines of the card down the
// picture, hours across.
func (sc *scene) clockFace(class markup, width float64, c *shots.Card, zone int) {
	room := 22.0
	if len(c.Lines) > 16 {
		room = 13
	}
	p := plot{left: 84, right: width - 20, top: 8, x0: math.Inf(1)}
	for i := range c.Lines {
		l := &c.Lines[i]
		p.x0, p.x1 = span(p.x0, p.x1, l.Lit.Rise, l.Lit.Set)
		if s := setting(&l.Sets[shots.Typical], zone); s != nil {
			p.x0, p.x1 = span(p.x0, p.x1, s.Shots[0].At, s.Shots[len(s.Shots)-1].At)
		}
	}
	p.x0, p.x1 = math.Floor(p.x0/hour)*hour, math.Ceil(p.x1/hour)*hour
	p.bottom = p.top + room*float64(len(c.Lines))
	sc.svg(class, width, p.bottom+40, "When the shots are, through the season")
	var grid, rise, set, strokes path
	every := 2.0
	if width < 400 || p.x1-p.x0 > 20*hour {
		every = 4
	}
	for p.x1-p.x0 > 24*every*hour { // shots that do not fit into the day
		every *= 2
	}
	for h := math.Ceil(p.x0/hour/every) * every; h*hour <= p.x1; h += every {
		grid.move(p.x(h*hour), p.top)
		grid.line(p.x(h*hour), p.bottom)
		sc.label(p.x(h*hour), p.bottom+16, "middle", sc.hourName(h))
	}
	last := -room
	for i := range c.Lines {
		l := &c.Lines[i]
		y := p.top + room*(float64(i)+0.5)
		rise.to(p.x(l.Lit.Rise), y)
		set.to(p.x(l.Lit.Set), y)
		if y-last >= 18 {
			sc.label(p.left-8, y+4, "end", shortDate(l.From.Date()))
			last = y
		}
		s := setting(&l.Sets[shots.Typical], zone)
		if s == nil {
			continue
		}
		for _, shot := range s.Shots {
			strokes.move(p.x(shot.At), y-room*0.36)
			strokes.add('v', room*0.72)
		}
	}
	sc.draw("grid", &grid).draw("ground", &rise).draw("ground", &set).draw("line", &strokes)
	sc.label(p.right, p.bottom+34, "end", "time of day")
	sc.html(`</svg>`)
}

// hourName is a full hour, short.
func (sc *scene) hourName(h float64) string {
	n := (int(h)%24 + 24) % 24
	if sc.sys == unit.US {
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
