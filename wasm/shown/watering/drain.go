package watering

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/dose"
	"evenrow/wasm/year/drain"
	"evenrow/wasm/year/shots"
)

// Advice says what to give next, after a log, and returns its first sentence to
// be read aloud. The sheet may be nil, where the plan has errors.
func Advice(s *sheet.Sheet, p *plan.Plan, log []drain.Entry, slips []drain.Slip) (html, aloud string) {
	sc := part{scene.Bare(s, p.Units)}
	if len(slips) > 0 {
		sc.HTML(`<ul class="field__error">`)
		for _, e := range Slips(slips) {
			sc.HTML(`<li><a`).Attr("href", "#f-"+e.Path).HTML(`>`).Text(e.Text).HTML(`</a></li>`)
		}
		sc.HTML(`</ul>`)
	}
	a := drain.Advise(log, func(e *drain.Entry) (wanted, run float64) { return sc.noted(p, e) })
	if a.Days == 0 {
		aloud = "Note the drain of a few days, and the next setting stands here."
		sc.Tag("p", aloud)
		return sc.String(), ""
	}
	aloud = sc.next(p, &a)
	why := sc.reasons(&a)
	if hot := p.Timer.DrainHot; a.Last.Sky == drain.Untold {
		why += " No weather is noted, so a typical day is assumed."
		if a.Reasons&drain.TooMuch != 0 && a.Out <= hot+drain.Close {
			why += " If those were hot days, " + sc.Amount(unit.Share, hot) + " is right: leave it then."
		}
	}
	sc.Tag("p", aloud+" "+why)
	sc.Tag("p", "Change one thing at a time, by no more than "+sc.Amount(unit.Share, drain.Most)+" as far as the timer can be set so finely, and measure "+strconv.Itoa(drain.Days)+" days before you change it again. Those figures are common practice.")
	sc.logged(log, &a)
	if a.Change != 0 && a.Reasons&drain.Nothing == 0 {
		sc.Working(func() {
			given := 1e-3
			if _, set := sc.set(a.Last); set != nil {
				given = set.Beds[set.Lead].Bed.Least * a.Run
			}
			sc.Formula(dose.NextFormula, given, max(0, a.Drains), a.Wanted)
		})
	}
	return sc.String(), aloud
}

// Hints say, below the rows of a log, what the timer is taken to have been set
// to where it was not typed. The sheet may be nil.
func Hints(s *sheet.Sheet, p *plan.Plan, log []drain.Entry) func(row int) string {
	sc := part{scene.Bare(s, p.Units)}
	return func(row int) string {
		for i := range log {
			e := &log[i]
			if _, set := sc.set(e); set != nil && e.Row == row && !(wording.Finite(e.Shots) && wording.Finite(e.Long)) {
				return "Assumed from the card for " + onSky(e) + ": " + shotsOf(set) + ". Type what the timer was set to, if it was not that."
			}
		}
		return ""
	}
}

// onSky is the kind of day that an entry was, in words.
func onSky(e *drain.Entry) string { return words.Say(skies[skyOf(e)]) }

// skyOf is the kind of day of the card that a day of the log was.
func skyOf(e *drain.Entry) shots.Sky { return shots.Sky(e.Sky.Taken() - drain.Dull) }

// set returns the card's line for the day of an entry, that of greatest need
// where it has no date, and its setting of the zone that runs longest; nil where
// the card has none.
func (sc part) set(e *drain.Entry) (*shots.Line, *shots.Setting) {
	if sc.S == nil || !sc.S.Shots.Ready() {
		return nil, nil
	}
	c := sc.S.Shots
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
	return line, d.Longest()
}

// noted returns the share that is to drain on the day of an entry, and for how
// many seconds the timer gave water: as it is noted, else as the card has it.
func (sc part) noted(p *plan.Plan, e *drain.Entry) (wanted, run float64) {
	line, set := sc.set(e)
	wanted = [...]float64{drain.Dull: p.Timer.DrainLow, drain.Typical: p.Timer.Drain, drain.Hot: p.Timer.DrainHot}[e.Sky.Taken()]
	if line != nil && allYoung(line) {
		wanted = p.Timer.DrainLow
	}
	n, long := e.Shots, e.Long
	if set != nil {
		if !wording.Finite(n) {
			n = float64(len(set.Shots))
		}
		if !wording.Finite(long) {
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
func (sc part) next(p *plan.Plan, a *drain.Advice) string {
	e := a.Last
	on := onSky(e)
	percent := func(change float64) string {
		more := "more"
		if change < 0 {
			more = "less"
		}
		return strconv.Itoa(int(math.Round(math.Abs(change)*100))) + "\u00a0% " + more
	}
	leave := "Leave the timer as it was on " + on
	line, card := sc.set(e)
	if a.Change == 0 || card == nil || !wording.Finite(a.Run) {
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
	if wording.Finite(e.Shots) || wording.Finite(e.Long) {
		was = wording.Shot(a.Run) + " in all"
	}
	rest := ""
	if set.Off > 0 && len(set.Shots) > 1 {
		rest = ", off " + wording.Shot(set.Off) + " between them"
	}
	words := "Give " + percent(set.Given/a.Run-1) + " on " + on + sc.zoneWords(card.Zone, "", ", in zone ") + why + ": " + shotsOf(&set) + rest + ", " + wording.Shot(set.Given) + " in all, instead of " + was + "."
	if set.Notes&shots.Few != 0 {
		words += " The timer holds " + strconv.Itoa(p.Timer.Programmes) + " start times, so each shot is longer than is best."
	}
	return words
}

// reasons says why.
func (sc part) reasons(a *drain.Advice) string {
	over := "On the one such day that was measured"
	if a.Days > 1 {
		over = "Over the last " + strconv.Itoa(a.Days) + " such days that were measured"
	}
	out, now := sc.Amount(unit.Share, a.Out), sc.Amount(unit.Share, max(0, a.Drains))
	words := over + ", " + out + " drained, and " + sc.Amount(unit.Share, a.Wanted) + " should."
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
	if wording.Finite(a.Above) {
		above = wording.Minus(strconv.FormatFloat(math.Abs(a.Above), 'f', 1, 64)) + "\u00a0mS/cm"
	}
	add(drain.SaltUp, "The drain's EC is "+above+" above the feed's, so salt builds up: let more drain than usual for some days. Weaker feed helps too, but do one at a time.")
	add(drain.SaltHigh, "The drain's EC is "+above+" above the feed's, a little high: watch it.")
	add(drain.Weak, "The drain is weaker than the feed, by "+above+": the feed is too weak, or there is too much water.")
	add(drain.TooSour, "The drain's pH is low, "+strconv.FormatFloat(a.PH, 'f', 1, 64)+": use less acid in the feed.")
	add(drain.TooSweet, "The drain's pH is high, "+strconv.FormatFloat(a.PH, 'f', 1, 64)+": iron and phosphorus are locked up. Look at the feed's pH first.")
	add(drain.NoEC, "Measure the EC of drain and feed as well: they tell whether salt builds up.")
	return words
}
