package view

import (
	"math"
	"strconv"

	"evenrow/wasm/dose"
	"evenrow/wasm/drain"
	"evenrow/wasm/plan"
	"evenrow/wasm/sheet"
	"evenrow/wasm/shots"
	"evenrow/wasm/unit"
)

// Buttons of the log, by what they send.
const (
	LogAdd    = "log-add"
	LogRemove = "log-remove." // and the row's number
	LogCSV    = "log-csv"
	LogOpen   = "log-open" // sent by the script for what the device has kept
)

// Log is the content of the form in which the drain is noted, with rows rows.
func Log(get func(path string) string, rows int) string {
	w := &writer{}
	w.html(`<p>One row a day: what drained of one slab, as a share of what its emitters gave, and its EC and pH. It is kept on this device, not in the link.</p>`)
	for row := 1; row <= rows; row++ {
		w.html(`<fieldset class="log"><legend>Day `).num(row).html(`</legend>`)
		w.box(drain.Path(row, drain.DayName), "Date", "", "numeric", get)
		for i := range drain.Columns {
			c := &drain.Columns[i]
			w.box(drain.Path(row, c.Name), c.Label, c.Unit, "decimal", get)
		}
		if !drain.Blank(get, row) {
			w.do(LogRemove+strconv.Itoa(row), "Remove", " day "+strconv.Itoa(row))
		}
		w.html(`</fieldset>`)
	}
	w.html(`<p class="record__do">`)
	if rows < drain.MaxRows {
		w.do(LogAdd, "Add a day", "")
	}
	w.do(LogCSV, "Save the log as a table", "")
	w.html(`</p>`)
	return w.String()
}

// do writes a button of the log.
func (w *writer) do(value, name, hidden string) {
	w.html(`<button class="button"`).attr("name", plan.ActionName).attr("value", value).html(`>`).text(name)
	if hidden != "" {
		w.html(`<span class="out">`).text(hidden).html(`</span>`)
	}
	w.html(`</button> `)
}

// box writes a box of the log.
func (w *writer) box(path, label, unit string, keyboard markup, get func(string) string) {
	w.html(`<label>`).text(label)
	if unit != "" {
		w.text(", " + unit)
	}
	if label == "Date" {
		keyboard = "text"
	}
	w.html(` <input`).attr("id", "f-"+path).attr("name", path).attr("value", get(path)).html(` inputmode="`).html(keyboard).html(`" autocomplete="off" spellcheck="false"`)
	if label == "Date" {
		w.html(` placeholder="2027-06-30"`)
	}
	w.html(`></label>`)
}

// Advice says what to give next, after a log, and returns its first sentence to
// be read aloud. The sheet may be nil, where the plan has errors.
func Advice(s *sheet.Sheet, p *plan.Plan, log []drain.Entry, slips []drain.Slip) (html, aloud string) {
	sc := &scene{writer: &writer{}, s: s, sys: p.Units}
	if len(slips) > 0 {
		sc.html(`<ul class="field__error">`)
		for _, e := range slips {
			sc.html(`<li><a`).attr("href", "#f-"+e.Path).html(`>`).text(slipName(e.Path) + " " + e.Problem + ".").html(`</a></li>`)
		}
		sc.html(`</ul>`)
	}
	wanted, line := p.Timer.Drain, sc.lineOf(log)
	if line != nil && allYoung(line) {
		wanted = p.Timer.DrainLow
	}
	a := drain.Advise(log, wanted)
	if a.Days == 0 {
		aloud = "Note the drain of a few days, and the next setting stands here."
		sc.tag("p", aloud)
		return sc.String(), ""
	}
	aloud = sc.next(&a, line)
	why := sc.reasons(&a)
	if hot := p.Timer.DrainHot; a.Reasons&drain.TooMuch != 0 && a.Out <= hot+drain.Close {
		why += " If those were hot days, " + sc.amount(unit.Share, hot) + " is right: leave it then."
	}
	sc.tag("p", aloud+" "+why)
	sc.tag("p", "Change one thing at a time, by no more than a sixth, and measure three days before you change it again. Those figures are common practice; how far drain EC should be above the feed is from memory.")
	sc.logged(log, &a)
	if a.Change != 0 && a.Reasons&drain.Nothing == 0 {
		sc.fold("Show the working")
		given := 1e-3
		if line != nil {
			if set := &line.Sets[shots.Typical]; len(set.Zones) > 0 {
				f := &set.Zones[thirsty(set)]
				given = f.Beds[f.Lead].Worst
			}
		}
		sc.formula(dose.NextFormula, given, a.Out, a.Wanted)
		sc.html(`</details>`)
	}
	return sc.String(), aloud
}

// slipName names a box of the log.
func slipName(path string) string {
	var row, name string
	for i := len("log."); i < len(path); i++ {
		if path[i] == '.' {
			row, name = path[len("log."):i], path[i+1:]
		}
	}
	label := "date"
	for i := range drain.Columns {
		if drain.Columns[i].Name == name {
			label = drain.Columns[i].Label
		}
	}
	return "Day " + row + ": " + label
}

// lineOf returns the card's line for the last day of a log, or that of greatest
// need where the log has no dates; nil without a card.
func (sc *scene) lineOf(log []drain.Entry) *shots.Line {
	if sc.s == nil || sc.s.Shots == nil || len(sc.s.Shots.Lines) == 0 {
		return nil
	}
	c := sc.s.Shots
	line := &c.Lines[c.Peak]
	if len(log) > 0 {
		for i := range c.Lines {
			if l := &c.Lines[i]; log[len(log)-1].Day >= l.From && int(log[len(log)-1].Day-l.From) < l.Days {
				line = l
			}
		}
	}
	return line
}

func allYoung(l *shots.Line) bool {
	for i := range l.Beds {
		if !l.Beds[i].Young {
			return false
		}
	}
	return true
}

// next says what to change.
func (sc *scene) next(a *drain.Advice, l *shots.Line) string {
	change := "Leave the timer as it is"
	if n := int(math.Round(math.Abs(a.Change) * 100)); n > 0 {
		more := "more"
		if a.Change < 0 {
			more = "less"
		}
		change = "Give " + strconv.Itoa(n) + "\u00a0% " + more
		if l != nil {
			if d := &l.Sets[shots.Typical]; len(d.Zones) > 0 {
				s := &d.Zones[thirsty(d)]
				each := s.Given / float64(len(s.Shots))
				if by := int(math.Round(a.Change * float64(len(s.Shots)))); by != 0 && len(s.Shots)+by > 0 {
					change += ": " + count(len(s.Shots)+by, "shot", "shots") + " of " + minutes(math.Round(each/60)*60) + " instead of " + strconv.Itoa(len(s.Shots))
				} else {
					change += ": the same shots, " + minutes(math.Round(each*(1+a.Change))) + " long instead of " + minutes(math.Round(each))
				}
				change += ", counted from the card"
			}
		}
	}
	return change + "."
}

// reasons says why.
func (sc *scene) reasons(a *drain.Advice) string {
	over := "On the one day that was measured"
	if a.Days > 1 {
		over = "Over the last " + strconv.Itoa(a.Days) + " days that were measured"
	}
	words := over + ", " + sc.amount(unit.Share, a.Out) + " drained, and " + sc.amount(unit.Share, a.Wanted) + " should."
	add := func(reason drain.Reason, s string) {
		if a.Reasons&reason != 0 {
			words += " " + s
		}
	}
	add(drain.Nothing, "No drain at all does not say how much is missing. Feel the medium, and look again tomorrow.")
	add(drain.Held, "More of a change would do it, but not in one day.")
	add(drain.Single, "One day may mislead: measure two more before you trust it.")
	above := ""
	if finite(a.Above) {
		above = minus(strconv.FormatFloat(math.Abs(a.Above), 'f', 1, 64)) + "\u00a0mS/cm"
	}
	add(drain.SaltUp, "The drain's EC is "+above+" above the feed's, so salt builds up: hence more should drain than usual, for some days. Weaker feed helps too, but do one at a time.")
	add(drain.SaltHigh, "The drain's EC is "+above+" above the feed's, a little high: watch it.")
	add(drain.Weak, "The drain is weaker than the feed, by "+above+": the feed is too weak, or there is too much water.")
	add(drain.TooSour, "The drain's pH is low, "+strconv.FormatFloat(a.PH, 'f', 1, 64)+": use less acid in the feed.")
	add(drain.TooSweet, "The drain's pH is high, "+strconv.FormatFloat(a.PH, 'f', 1, 64)+": iron and phosphorus are locked up. Look at the feed's pH first.")
	add(drain.NoEC, "Measure the EC of drain and feed as well: they tell whether salt builds up.")
	return words
}

// logged draws the drain, and the EC of drain and feed, day by day, and says
// the same as a table.
func (sc *scene) logged(log []drain.Entry, a *drain.Advice) {
	sc.html(`<figure>`)
	for _, w := range widths {
		p := plot{left: 56, right: w.width - 16, top: 14, bottom: 110, x1: float64(max(len(log)-1, 1)), y1: a.Wanted * 1.5}
		q := plot{left: p.left, right: p.right, top: 140, bottom: 236, x1: p.x1, y1: 2}
		for i := range log {
			_, p.y1 = span(0, p.y1, log[i].Out)
			_, q.y1 = span(0, q.y1, log[i].EC, log[i].Feed)
		}
		p.y1 = max(p.y1, 0.1)
		sc.svg(w.class, w.width, q.bottom+24, "Share that drained, and EC of drain and feed, day by day")
		sc.side(&p, unit.Share)
		sc.side(&q, unit.None)
		var out, ec, feed path
		series(&p, &out, log, func(e *drain.Entry) float64 { return e.Out })
		series(&q, &ec, log, func(e *drain.Entry) float64 { return e.EC })
		series(&q, &feed, log, func(e *drain.Entry) float64 { return e.Feed })
		sc.draw("line line--lead", &out).draw("line line--lead", &ec).draw("dash", &feed)
		sc.limits(&p, 0, limit{a.Wanted, "wanted"})
		sc.label(q.left, q.top-8, "start", "EC, mS/cm")
		sc.label(q.right, q.bottom+18, "end", "day by day")
		sc.html(`</svg>`)
	}
	sc.tag("figcaption", "Above, the share that drained. Below, EC: thick of the drain, dashed of the feed.")
	sc.html(`</figure>`)
	sc.fold("The same as a table")
	t := sc.table("The log", "Day", "#Drain", "#EC of the drain", "#pH of the drain", "#EC of the feed")
	plain := func(v float64) string { return sc.bare(unit.None, v) }
	for i := range log {
		e := &log[i]
		name := strconv.Itoa(i + 1)
		if e.Day != 0 {
			name = e.Day.Words()
		}
		t.row(name, sc.amount(unit.Share, e.Out), plain(e.EC), plain(e.PH), plain(e.Feed))
	}
	t.end()
	sc.html(`</details>`)
}

// series draws what was measured, with short strokes so that a single day
// shows.
func series(p *plot, line *path, log []drain.Entry, of func(*drain.Entry) float64) {
	open := false
	for i := range log {
		v := of(&log[i])
		if !finite(v) {
			continue
		}
		x, y := p.x(float64(i)), p.y(v)
		if open {
			line.line(x, y)
		} else {
			line.move(x-3, y)
			line.line(x, y)
		}
		open = true
	}
	if open {
		line.add('h', 3)
	}
}
