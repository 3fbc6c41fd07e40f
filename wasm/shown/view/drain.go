package view

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/dose"
	"evenrow/wasm/year/drain"
	"evenrow/wasm/year/shots"
)

// Buttons of the log, by what they send.
const (
	LogAdd    = "log-add"
	LogRemove = "log-remove." // and the row's number
	LogCSV    = "log-csv"
	LogOpen   = "log-open" // sent by the script for what the device has kept
)

// Log is the content of the form in which the drain is noted, with rows rows.
// hint is what stands below a row; see [Hints].
func Log(get func(path string) string, rows int, hint func(row int) string) string {
	w := &writer{}
	w.html(`<p>One row a day: what drained of one slab, as a share of what its emitters gave, and its EC and pH; what the weather was, and what the timer was set to. <span class="if-kept">It is kept on this device, with this plan, not in the link.</span><b class="if-lost">It is not kept on this device: save it as a table before you close the page.</b></p>`)
	for row := 1; row <= rows; row++ {
		w.html(`<fieldset class="log"><legend>Day `).num(row).html(`</legend>`)
		w.box(drain.Path(row, drain.DayName), "Date", "", "text", get)
		w.sky(drain.Path(row, drain.SkyName), get)
		for i := range drain.Columns {
			c := &drain.Columns[i]
			w.box(drain.Path(row, c.Name), c.Label, c.Unit, "decimal", get)
		}
		if !drain.Blank(get, row) {
			w.do(LogRemove+strconv.Itoa(row), "Remove", " day "+strconv.Itoa(row))
		}
		w.html(`<p class="log__note field__hint"`).attr("id", HintName(row)).html(`>`).text(hint(row)).html(`</p></fieldset>`)
	}
	w.html(`<p class="record__do">`)
	if rows < drain.MaxRows {
		w.do(LogAdd, "Add a day", "")
	}
	w.do(LogCSV, "Save the log as a table", "")
	w.html(`</p>`)
	return w.String()
}

// HintName is the id of what stands below a row of the log.
func HintName(row int) string { return "log-set-" + strconv.Itoa(row) }

// sky writes the choice of a day's weather.
func (w *writer) sky(path string, get func(string) string) {
	w.html(`<label>Weather <select`).attr("id", "f-"+path).attr("name", path).html(` autocomplete="off">`)
	for sky, code := range drain.SkyNames {
		w.html(`<option`).attr("value", code)
		if drain.SkyOf(get(path)) == drain.Sky(sky) {
			w.html(` selected`)
		}
		w.html(`>`).text(orNot(code)).html(`</option>`)
	}
	w.html(`</select></label>`)
}

func orNot(code string) string {
	if code == "" {
		return "not noted"
	}
	return code
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
	w.html(` <input`).attr("id", "f-"+path).attr("name", path).attr("value", get(path)).html(` inputmode="`).html(keyboard).html(`"`).attr("aria-describedby", "e-"+path).html(` autocomplete="off" spellcheck="false"`)
	if keyboard == "text" {
		w.html(` placeholder="15 July"`)
	}
	w.html(`></label><p class="field__error"`).attr("id", "e-"+path).html(` hidden></p>`)
}

// Advice says what to give next, after a log, and returns its first sentence to
// be read aloud. The sheet may be nil, where the plan has errors.
func Advice(s *sheet.Sheet, p *plan.Plan, log []drain.Entry, slips []drain.Slip) (html, aloud string) {
	sc := &scene{writer: &writer{}, s: s, sys: p.Units}
	if len(slips) > 0 {
		sc.html(`<ul class="field__error">`)
		for _, e := range Slips(slips) {
			sc.html(`<li><a`).attr("href", "#f-"+e.Path).html(`>`).text(e.Error() + ".").html(`</a></li>`)
		}
		sc.html(`</ul>`)
	}
	a := drain.Advise(log, func(e *drain.Entry) (wanted, run float64) { return sc.noted(p, e) })
	if a.Days == 0 {
		aloud = "Note the drain of a few days, and the next setting stands here."
		sc.tag("p", aloud)
		return sc.String(), ""
	}
	aloud = sc.next(p, &a)
	why := sc.reasons(&a)
	if hot := p.Timer.DrainHot; a.Last.Sky == drain.Untold {
		why += " No weather is noted, so a typical day is assumed."
		if a.Reasons&drain.TooMuch != 0 && a.Out <= hot+drain.Close {
			why += " If those were hot days, " + sc.amount(unit.Share, hot) + " is right: leave it then."
		}
	}
	sc.tag("p", aloud+" "+why)
	sc.tag("p", "Change one thing at a time, by no more than "+sc.amount(unit.Share, drain.Most)+" as far as the timer can be set so finely, and measure "+strconv.Itoa(drain.Days)+" days before you change it again. Those figures are common practice.")
	sc.logged(log, &a)
	if a.Change != 0 && a.Reasons&drain.Nothing == 0 {
		sc.fold("Show the working")
		given := 1e-3
		if _, set := sc.set(a.Last); set != nil {
			given = set.Beds[set.Lead].Bed.Least * a.Run
		}
		sc.formula(dose.NextFormula, given, max(0, a.Drains), a.Wanted)
		sc.html(`</details>`)
	}
	return sc.String(), aloud
}

// Slips are boxes of the log that cannot be read, as errors of a form.
func Slips(slips []drain.Slip) []plan.Error {
	var list []plan.Error
	for _, e := range slips {
		list = append(list, plan.Error{Path: e.Path, Label: slipName(e.Path), Problem: e.Problem})
	}
	return list
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

// Hints say, below the rows of a log, what the timer is taken to have been set
// to where it was not typed. The sheet may be nil.
func Hints(s *sheet.Sheet, p *plan.Plan, log []drain.Entry) func(row int) string {
	sc := &scene{writer: &writer{}, s: s, sys: p.Units}
	return func(row int) string {
		for i := range log {
			e := &log[i]
			if _, set := sc.set(e); set != nil && e.Row == row && !(finite(e.Shots) && finite(e.Long)) {
				return "Assumed from the card for " + onSky[e.Sky.Taken()] + ": " + shotsOf(set) + ". Type what the timer was set to, if it was not that."
			}
		}
		return ""
	}
}

// onSky are the kinds of day of a log, in words.
var onSky = [...]string{drain.Dull: skies[shots.Dull], drain.Typical: skies[shots.Typical], drain.Hot: skies[shots.Hot]}

// skyOf is the kind of day of the card that a day of the log was.
func skyOf(e *drain.Entry) shots.Sky { return shots.Sky(e.Sky.Taken() - drain.Dull) }

// set returns the card's line for the day of an entry, that of greatest need
// where it has no date, and its setting of the zone that runs longest; nil where
// the card has none.
func (sc *scene) set(e *drain.Entry) (*shots.Line, *shots.Setting) {
	if sc.s == nil || !timed(sc.s.Shots) {
		return nil, nil
	}
	c := sc.s.Shots
	line := &c.Lines[c.Peak]
	if e.Day != 0 {
		// The same date in the year of the plan.
		_, month, dom := e.Day.Date()
		on, _ := day.Near(month, dom, line.From)
		line = nil
		for i := range c.Lines {
			if l := &c.Lines[i]; on >= l.From && int(on-l.From) < l.Days {
				line = l
			}
		}
		if line == nil {
			return nil, nil
		}
	}
	d := &line.Sets[skyOf(e)]
	if len(d.Zones) == 0 {
		return line, nil
	}
	return line, &d.Zones[thirsty(d)]
}

// noted returns the share that is to drain on the day of an entry, and for how
// many seconds the timer gave water: as it is noted, else as the card has it.
func (sc *scene) noted(p *plan.Plan, e *drain.Entry) (wanted, run float64) {
	line, set := sc.set(e)
	wanted = [...]float64{drain.Dull: p.Timer.DrainLow, drain.Typical: p.Timer.Drain, drain.Hot: p.Timer.DrainHot}[e.Sky.Taken()]
	if line != nil && allYoung(line) {
		wanted = p.Timer.DrainLow
	}
	n, long := e.Shots, e.Long
	if set != nil {
		if !finite(n) {
			n = float64(len(set.Shots))
		}
		if !finite(long) {
			long = set.Given / float64(len(set.Shots))
		}
	}
	if run = n * long; run > drain.MostRun {
		run = math.NaN() // many shots, with the length on the card
	}
	return wanted, run
}

func allYoung(l *shots.Line) bool {
	for i := range l.Beds {
		if !l.Beds[i].Young {
			return false
		}
	}
	return true
}

// next says what to set the timer to on the next day of that weather: what it
// can be set to, and where too little drained never less than the card has.
func (sc *scene) next(p *plan.Plan, a *drain.Advice) string {
	e := a.Last
	on := onSky[e.Sky.Taken()]
	percent := func(change float64) string {
		more := "more"
		if change < 0 {
			more = "less"
		}
		return strconv.Itoa(int(math.Round(math.Abs(change)*100))) + "\u00a0% " + more
	}
	leave := "Leave the timer as it was on " + on
	line, card := sc.set(e)
	if a.Change == 0 || card == nil || !finite(a.Run) {
		if math.Round(a.Change*100) == 0 {
			return leave + "."
		}
		return "Give " + percent(a.Change) + " on " + on + "."
	}
	run, why := a.Run*(1+a.Change), ""
	if a.Reasons&drain.TooLittle != 0 && run <= card.Given {
		run, why = card.Run, ", as the card has it"
	}
	switch room := shots.Room(&p.Timer, line.Lit, skyOf(e)); {
	case run <= room:
	case a.Change > 0:
		return leave + ": no more fits between the first shot of the day and the last."
	default:
		run = room
	}
	var beds []shots.Bed
	for i := range line.Beds {
		if line.Beds[i].Zone == card.Zone {
			beds = append(beds, line.Beds[i])
		}
	}
	set, ok := shots.Fit(&p.Timer, beds, line.Lit, skyOf(e), run)
	if !ok || a.Change < 0 && set.Given >= a.Run {
		return leave + ": it cannot be set so finely."
	}
	was := shotsOf(card) + ", assumed from the card"
	if finite(e.Shots) || finite(e.Long) {
		was = minutes(a.Run) + " in all"
	}
	rest := ""
	if set.Off > 0 && len(set.Shots) > 1 {
		rest = ", off " + minutes(set.Off) + " between them"
	}
	words := "Give " + percent(set.Given/a.Run-1) + " on " + on + sc.zoneWords(card.Zone, "", ", in zone ") + why + ": " + shotsOf(&set) + rest + ", " + minutes(set.Given) + " in all, instead of " + was + "."
	if set.Notes&shots.Few != 0 {
		words += " The timer holds " + strconv.Itoa(p.Timer.Programmes) + " start times, so each shot is longer than is best."
	}
	return words
}

// reasons says why.
func (sc *scene) reasons(a *drain.Advice) string {
	over := "On the one such day that was measured"
	if a.Days > 1 {
		over = "Over the last " + strconv.Itoa(a.Days) + " such days that were measured"
	}
	out, now := sc.amount(unit.Share, a.Out), sc.amount(unit.Share, max(0, a.Drains))
	words := over + ", " + out + " drained, and " + sc.amount(unit.Share, a.Wanted) + " should."
	if now != out {
		words += " As the timer was last set, it would have been " + now + "."
	}
	add := func(reason drain.Reason, s string) {
		if a.Reasons&reason != 0 {
			words += " " + s
		}
	}
	add(drain.Nothing, "No drain at all does not say how much is missing. Feel the medium, and look again tomorrow.")
	add(drain.Held, "A larger change would do it, but not in one day.")
	add(drain.Single, "One day may mislead: measure two more before you trust it.")
	above := ""
	if finite(a.Above) {
		above = minus(strconv.FormatFloat(math.Abs(a.Above), 'f', 1, 64)) + "\u00a0mS/cm"
	}
	add(drain.SaltUp, "The drain's EC is "+above+" above the feed's, so salt builds up: let more drain than usual for some days. Weaker feed helps too, but do one at a time.")
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
	t := sc.table("The log", "Day", "Weather", "#Timer", "#Drain", "#EC of the drain", "#pH of the drain", "#EC of the feed")
	plain := func(v float64) string { return sc.bare(unit.None, v) }
	for i := range log {
		e := &log[i]
		name := strconv.Itoa(i + 1)
		if e.Day != 0 {
			name = e.Day.Words()
		}
		given := "–"
		if finite(e.Shots) && finite(e.Long) {
			given = plain(e.Shots) + "\u00a0×\u00a0" + minutes(e.Long)
		}
		t.row(name, orNot(drain.SkyNames[e.Sky]), given, sc.amount(unit.Share, e.Out), plain(e.EC), plain(e.PH), plain(e.Feed))
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
