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
	timer := timerOf(s, p)
	a := drain.Advise(log, timer.Noted)
	if a.Days == 0 {
		aloud = "Note the drain of a few days, and the next setting stands here."
		sc.Tag("p", aloud)
		return sc.String(), ""
	}
	aloud = sc.next(timer, &a)
	why := sc.reasons(&a)
	if a.Last.Sky == drain.Untold {
		why += " No weather is noted, so a typical day is assumed."
	}
	if timer.RightIfHot(&a) {
		why += " If those were hot days, " + sc.Amount(unit.Share, p.Timer.DrainHot) + " is right: leave it then."
	}
	sc.Tag("p", aloud+" "+why)
	sc.rewritten(timer, &a)
	sc.Tag("p", "Change one thing at a time, by no more than "+sc.Amount(unit.Share, drain.Most)+", rounded up to what the timer can be set to, and measure "+strconv.Itoa(drain.Days)+" days before you change it again. Those figures are common practice.")
	sc.logged(log, &a)
	if a.Change != 0 && a.Reasons&drain.Nothing == 0 {
		sc.Working(func() {
			given := 1e-3
			if _, set := timer.Set(a.Last); set != nil {
				given = set.Beds[set.Lead].Bed.Least * a.Run
			}
			sc.Formula(dose.NextFormula, given, max(0, a.Drains), a.Wanted)
		})
	}
	return sc.String(), aloud
}

// rewritten shows the rest of the card as the drain has it.
func (sc part) rewritten(t drain.Timer, a *drain.Advice) {
	r, ok := t.Rewrite(a)
	if !ok {
		if a.Last.Day == 0 {
			sc.Say("p", "Note the date as well, and the rest of the card is written anew here.")
		}
		return
	}
	counted := words.Say("The rest of the card, written anew from {date} on: plants are counted to take up {share} % more than before.", r.From.Short(), wording.Percent(r.Times-1))
	if r.Times < 1 {
		counted = words.Say("The rest of the card, written anew from {date} on: plants are counted to take up {share} % less than before.", r.From.Short(), wording.Percent(1-r.Times))
	}
	if r.Card.Hand != nil && r.Card.Hand == t.Card.Hand {
		counted = wording.Sentences(counted, words.Say("The start times stay."))
	}
	use := sc.S.Plan.Sky.CorrectTo(r.From, r.Adjust)
	switch {
	case r.Used:
		sc.Tag("p", wording.Sentences(counted, words.Say("The plan goes by this reading: its card, today's setting and its calendar.")))
		return
	case use == "":
		sc.Tag("p", counted)
	default:
		sc.Tag("p", wording.Sentences(counted, words.Say("When {days} days agree, use it: the plan's card, today's setting and the calendar then go by it from {date} on.", words.N(drain.Days), r.From.Short())))
		sc.asks(use, words.Say("Use this reading from {date} on", r.From.Short()))
	}
	if r.Card.Hand != nil && r.Card.Hand != t.Card.Hand {
		sc.starts(r.Card.Hand)
	}
	sc.card(r.Card)
}

// asks is a button of the plan's form, wherever it stands.
func (sc part) asks(action, name string) {
	sc.HTML(`<p><button class="button" form="plan"`).Attr("name", plan.ActionName).Attr("value", action).HTML(`>`).Text(name).HTML(`</button></p>`)
}

// corrected says by which reading of the drain the card goes; empty where it goes by none.
func (sc part) corrected() string {
	sky := &sc.S.Plan.Sky
	if !sky.Corrected() {
		return ""
	}
	from := day.Day(sky.Since).Words()
	switch more := sky.Adjust - 1; {
	case math.Abs(more) < leastMore:
		return words.Say("From {date} on the card goes by your drain reading: plants are counted to take up as much as is worked out.", from)
	case more < 0:
		return words.Say("From {date} on the card is corrected by your drain reading: plants are counted to take up {share} % less than is worked out.", from, wording.Percent(-more))
	default:
		return words.Say("From {date} on the card is corrected by your drain reading: plants are counted to take up {share} % more than is worked out.", from, wording.Percent(more))
	}
}

// leastMore is the least share that is one, as it is told in whole per cent.
const leastMore = 0.005

// Hints say, below the rows of a log, what the timer is taken to have been set
// to where it was not typed. The sheet may be nil.
func Hints(s *sheet.Sheet, p *plan.Plan, log []drain.Entry) func(row int) string {
	timer := timerOf(s, p)
	return func(row int) string {
		for i := range log {
			e := &log[i]
			if _, set := timer.Set(e); set != nil && e.Row == row && !(wording.Finite(e.Shots) && wording.Finite(e.Long)) {
				return "Assumed from the card for " + onSky(e) + ": " + shotsOf(set) + ". Type what else it was."
			}
		}
		return ""
	}
}

// timerOf is the timer of a plan, with its card where there is one.
func timerOf(s *sheet.Sheet, p *plan.Plan) drain.Timer {
	t := drain.Timer{Timer: &p.Timer, Sky: &p.Sky}
	if s != nil {
		t.Card = s.Shots
	}
	return t
}

// onSky is the kind of day that an entry was, in words.
func onSky(e *drain.Entry) string { return words.Say(skies[e.CardSky()]) }

// next says what to set the timer to on the next day of that weather.
func (sc part) next(t drain.Timer, a *drain.Advice) string {
	n := t.Next(a)
	on := onSky(a.Last)
	leave := "Leave the timer as it was on " + on
	more := "more"
	if n.Share < 0 {
		more = "less"
	}
	give := "Give " + strconv.Itoa(int(math.Round(math.Abs(n.Share)*100))) + "\u00a0% " + more + " on " + on
	switch n.Step {
	case drain.Leave:
		return leave + "."
	case drain.NoRoom:
		return leave + ": no more fits between the first shot of the day and the last."
	case drain.TooFine:
		return leave + ": it cannot be set so finely."
	case drain.ByShare:
		return give + "."
	case drain.SetTo:
		return sc.setTo(give, t, a, &n)
	}
	return ""
}

// setTo says what to set the timer to, so as to give more or less.
func (sc part) setTo(give string, t drain.Timer, a *drain.Advice, n *drain.Next) string {
	e := a.Last
	was := shotsOf(n.Was) + ", assumed from the card"
	if wording.Finite(e.Shots) || wording.Finite(e.Long) {
		was = wording.Shot(a.Run) + " in all"
	}
	why, rest := "", ""
	if n.AsCard {
		why = ", as the card has it"
	}
	if n.Set.Off > 0 && len(n.Set.Shots) > 1 {
		rest = ", off " + wording.Shot(n.Set.Off) + " between them"
	}
	words := give + sc.zoneWords(n.Was.Zone, "", ", in zone ") + why + ": " + shotsOf(&n.Set) + rest + ", " + wording.Shot(n.Set.Given) + " in all, instead of " + was + "."
	if n.Set.Notes&shots.Few != 0 {
		words += " The timer holds " + strconv.Itoa(t.Programmes) + " start times, so each shot is longer than is best."
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
