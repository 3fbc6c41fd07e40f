// Package answer says whether every plant gets its water, what helps, and what
// stands around it: the rows, how much more there is room for, cheaper designs.
package answer

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/design"
)

// verdicts are the first words of the answer.
var verdicts [sheet.Verdicts]words.Text = [...]words.Text{sheet.Yes: "Yes.", sheet.Nearly: "Nearly.", sheet.No: "No.", sheet.Cannot: "Cannot say yet."}

// verdict is the answer: its first word, and a sentence.
func (sc part) verdict() (word, rest string) {
	if sc.S.Verdict == sheet.Yes {
		if sc.S.Wanted != nil {
			return sc.wanted(&yesWith), sc.sameness()
		}
		return sc.yes(), sc.sameness()
	}
	return words.Say(verdicts[sc.S.Verdict]), sc.headline(&sc.S.Findings[0])
}

// sameness says that every emitter opens, and how the water of one plant compares
// with another's.
func (sc part) sameness() string {
	all := sc.emitters()
	n, who := words.N(all), ""
	switch all {
	case 1:
		who = words.Say("The emitter")
	case 2:
		who = words.Say("Both emitters")
	default:
		who = words.Say("All {n} emitters", n)
	}
	if sc.S.Sameness == sheet.Same && len(sc.Plants) == 1 {
		return words.Say("{emitters} {n|opens|open}, and the plant gets its water.", who, n)
	}
	return words.Say(alike[sc.S.Sameness].line, who, n)
}

// alike is what is said of how the water of plants compares: in the answer, and
// where not all get about the same, of how much each gets.
var alike [sheet.Samenesses]struct {
	line  words.Text
	apart func(sc part) string
} = [...]struct {
	line  words.Text
	apart func(sc part) string
}{
	sheet.Differs:    {"{emitters} {n|opens|open}, but not every plant gets the same water.", part.spreadOut},
	sheet.Same:       {line: "{emitters} {n|opens|open}, and every plant gets the same water."},
	sheet.NearlySame: {line: "{emitters} {n|opens|open}, and every plant gets nearly the same water."},
	sheet.SameInZone: {"{emitters} {n|opens|open}, and every plant of a zone gets the same water.", part.zonesApart},
	sheet.NearInZone: {"{emitters} {n|opens|open}, and every plant of a zone gets nearly the same water.", part.zonesApart},
	sheet.AsNeeded:   {"{emitters} {n|opens|open}. Plants get different amounts of water, each row about in proportion to what its crop needs.", part.spreadOut},
}

// Head is the heading of the screen: the job, which the page writes, and the plan's name.
func Head(the *scene.Scene) {
	the.HTML(`<b>`).Text(scene.Title(the.S.Plan)).HTML(`</b>`)
}

// Line is the answer in a sentence, which stands above every job on a wide screen.
func Line(the *scene.Scene) {
	sc := part{the}
	word, rest := sc.verdict()
	sc.HTML(`<p class="answer__line"><strong class="word`).HTML(wordClass[sc.S.Verdict]).HTML(`">`).
		Text(word).HTML(`</strong> `).Text(rest).HTML(`</p>`)
}

// Answer says yes or no, why, and the five figures.
func Answer(the *scene.Scene) {
	sc := part{the}
	p := sc.S.Plan
	plants := 0
	for i := range p.Rows {
		plants += p.Rows[i].Plants
	}
	sc.HTML(`<p class="answer__plan">`).
		Text(words.Say("{rows} {rows|row|rows}, {plants} {plants|plant|plants}", words.N(len(p.Rows)), words.N(plants))).HTML(`</p>`)

	word, rest := sc.verdict()
	sc.HTML(`<p class="answer__line"><strong class="word`).HTML(wordClass[sc.S.Verdict]).HTML(`">`).
		Text(word).HTML(`</strong> `).Text(rest).HTML(`</p>`)
	if why := sc.why(); why != "" {
		sc.HTML(`<p class="answer__why">`).Text(why).HTML(`</p>`)
	}
	sc.figures()
}

var wordClass [sheet.Verdicts]block.Markup = [...]block.Markup{sheet.Yes: " word--yes", sheet.Nearly: " word--nearly", sheet.No: " word--no", sheet.Cannot: " word--nearly"}

// why explains the verdict in one or two sentences.
func (sc part) why() string {
	first, apart := "", ""
	if len(sc.S.Findings) > 0 {
		first = sc.explain(&sc.S.Findings[0])
	} else if z := sc.Zone; z != nil {
		first = words.Say("The weakest, {place}, has {head} more than it needs.", sc.Place(z.Worst), sc.Head(z.Margin))
	}
	if how := alike[sc.S.Sameness].apart; sc.S.Verdict == sheet.Yes && how != nil {
		apart = how(sc)
	}
	return words.Sentences(first, apart, sc.sought())
}

// sought says, where the pump is sought and the answer is not Yes, whether it is
// for want of one.
func (sc part) sought() string {
	w := sc.S.Wanted
	switch {
	case w == nil || sc.S.Verdict == sheet.Yes || sc.S.Verdict == sheet.Cannot:
		return ""
	case w.Does:
		return sc.wanted(&apartFrom)
	case sc.S.Findings[0].Kind == sheet.NarrowPump:
		return ""
	case w.Least > 0:
		return words.Say("No pump alone mends that: these are the figures with one of {head} at {flow}.", sc.Head(w.Least), sc.Amount(unit.Flow, w.Flow))
	}
	return words.Say("No pump alone mends that: these are the figures with one of {head} with everything shut, the greatest that the form takes.", sc.Head(design.MostHead))
}

// A wish is how a pump is asked for: what it must give at the least, and what it
// may give at the most or what stands behind it.
type wish struct{ most, behind words.Text }

var (
	yesWith = wish{
		most:   "Yes, with a pump of at least {head} at {flow}, at most {most} with everything shut.",
		behind: "Yes, with a pump of at least {head} at {flow}, and behind it a pressure regulator set to {pressure}.",
	}
	apartFrom = wish{
		most:   "Apart from that it takes a pump of at least {head} at {flow}, at most {most} with everything shut.",
		behind: "Apart from that it takes a pump of at least {head} at {flow}, and behind it a pressure regulator set to {pressure}.",
	}
	taking = wish{
		most:   "It takes a pump of at least {head} at {flow}, at most {most} with everything shut.",
		behind: "It takes a pump of at least {head} at {flow}, and behind it a pressure regulator set to {pressure}.",
	}
)

// wanted asks for the pump that the plan takes.
func (sc part) wanted(t *wish) string { return sc.wish(t, sc.S.Wanted) }

func (sc part) wish(t *wish, w *sheet.Wanted) string {
	head, flow := sc.Amount(unit.Head, w.Least), sc.Amount(unit.Flow, w.Flow) // as leaflets of pumps say it
	if w.Regulator > 0 {
		return words.Say(t.behind, head, flow, sc.Amount(unit.Pressure, w.Regulator))
	}
	return words.Say(t.most, head, flow, sc.Amount(unit.Head, w.Most))
}

// zonesApart says what a plant gets in the zones that differ most.
func (sc part) zonesApart() string {
	low, high := sc.S.Extremes()
	return words.Say("A plant of {zone} gets {flow} and one of {other} {more}, so run each zone for its own time.",
		sc.ZoneName(low), sc.Amount(unit.EmitterFlow, low.Alike.Mean), sc.ZoneName(high), sc.Amount(unit.EmitterFlow, high.Alike.Mean))
}

// spreadOut says how far plants are from one another.
func (sc part) spreadOut() string {
	switch share, seen := sc.S.LeastShare(); {
	case sc.S.Water != nil: // else Evenness has no table of the rows
		return words.Say("What each row gets stands under Evenness.")
	case seen:
		return words.Say("The plant with least water gets {share} of the mean.", sc.Amount(unit.Share, share))
	}
	return words.Say("It is the spread of manufacture, which the evenness (EU) counts.")
}

// figures prints at most five figures, label above, figure large, place small.
func (sc part) figures() {
	z := sc.Zone
	if z == nil || z.Worst < 0 || z.Worst >= len(sc.Plants) {
		return
	}
	e := sc.EmitterOf(z.Worst)
	if e == nil {
		return
	}
	h := sc.Plants[z.Worst].Head
	sc.HTML(`<dl class="figures">`)
	figure := func(label words.Text, head float64, small string) {
		sc.Figure(words.Say(label), sc.Amount(unit.Pressure, head*sc.Weight), small)
	}
	figure("Weakest emitter", h, words.Say("({head}), {place}", sc.Amount(unit.Head, h), sc.Place(z.Worst)))
	figure("It needs", e.Lowest, words.Say("({head})", sc.Amount(unit.Head, e.Lowest)))
	if z.Margin < 0 {
		figure("It lacks", -z.Margin, words.Say("({head})", sc.Amount(unit.Head, -z.Margin)))
	} else if sc.S.Verdict < sheet.No {
		figure("To spare", z.Margin, words.Say("({head}), safety margin included", sc.Amount(unit.Head, z.Margin)))
	}
	if e := sc.S.LeastAlike(); e.Open > 0 {
		limit := sc.Amount(unit.Share, sc.S.Plan.Limits.Evenness)
		small := words.Say("your limit is {limit}", limit)
		if e != z {
			small = words.Say("{zone}; your limit is {limit}", sc.ZoneName(e), limit)
		}
		sc.Figure(words.Say("Plants alike (EU)"), sc.Amount(unit.Share, e.Alike.EU), small)
	}
	sc.Figure(words.Say("Flow"), sc.Amount(unit.Flow, z.Flow), sc.ZoneName(z))
	sc.HTML(`</dl>`)
}

// Always is the line that stays in sight on a narrow screen.
func Always(the *scene.Scene) {
	sc := part{the}
	word, _ := sc.verdict()
	if w := sc.S.Wanted; w != nil && sc.S.Verdict == sheet.Yes {
		word = words.Say("Yes, with a pump of at least {head} at {flow}.", sc.Amount(unit.Head, w.Least), sc.Amount(unit.Flow, w.Flow))
	}
	sc.HTML(`<strong class="word`).HTML(wordClass[sc.S.Verdict]).HTML(`">`).Text(word).HTML(`</strong> `)
	z := sc.Zone
	switch {
	case z == nil:
	case z.Margin < 0:
		sc.Text(words.Say("{pressure} short at {place}", sc.Amount(unit.Pressure, -z.Margin*sc.Weight), sc.Place(z.Worst)))
	case sc.S.Verdict < sheet.No: // else it is that while emitters are shut, or if the lines were full
		sc.Text(words.Say("{pressure} to spare at {place}", sc.Amount(unit.Pressure, z.Margin*sc.Weight), sc.Place(z.Worst)))
	}
}

// Announce is the answer as it is read aloud once after a change.
func Announce(s *sheet.Sheet) string {
	word, rest := part{scene.New(s, nil)}.verdict()
	return words.Sentences(word, rest)
}
