// Package answer says whether every plant gets its water, what helps, and what
// stands around it: the rows, how much more there is room for, cheaper designs.
package answer

import (
	"math"
	"slices"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/wording"
)

// verdict is the answer: its first word, and the rest of the sentence.
func (sc part) verdict() (word, rest string) {
	word = [...]string{"Yes", "Nearly", "No", "Cannot say yet"}[sc.S.Verdict]
	all := 0
	for i := range sc.S.Zones {
		all += sc.S.Zones[i].Emitters
	}
	if sc.S.Verdict == sheet.Yes || len(sc.S.Findings) == 0 {
		switch sc.S.Verdict {
		case sheet.Yes:
			return word, sc.everyOne(all) + sc.sameness()
		case sheet.Nearly:
			return word, "Every emitter opens, but something is outside its limits."
		case sheet.No:
			return word, "Some plants get no water."
		}
		return word, "Something is missing in the plan."
	}
	f := &sc.S.Findings[0]
	switch f.Kind {
	case sheet.PowerOnly:
		return word, "Power alone does not tell how high the pump lifts the water."
	case sheet.NeverOpen:
		if f.Count >= all {
			return word, "No emitter opens, and no plant gets water."
		}
		words := strconv.Itoa(f.Count) + " of " + strconv.Itoa(all) + " emitters stay shut, and their plants get no water."
		if slices.ContainsFunc(sc.S.Findings, func(f sheet.Finding) bool { return f.Kind == sheet.TooHigh || f.Kind == sheet.Suction }) {
			words = "At least " + words // the flows are those of lines that are full
		}
		return word, words
	case sheet.Unsteady:
		return word, wording.Count(f.Count, "emitter opens and shuts", "emitters open and shut") + " in turn, and you cannot count on them."
	case sheet.BelowRange:
		return word, "Every emitter opens, but " + some(f.Count, all) + " below the pressure that keeps the water even."
	case sheet.AboveRange:
		return word, "Every emitter opens, but " + some(f.Count, all) + " above the pressure that such emitters are made for."
	case sheet.ShortReserve:
		return word, "Every plant gets its water, but with less than your safety margin."
	case sheet.Uneven:
		return word, "Every plant gets water, but not evenly enough."
	case sheet.Fouled:
		return word, "Every plant gets its water now, but not once the filter is due for cleaning."
	case sheet.Unsolved:
		return word, "The flows of this plan do not settle."
	case sheet.FastLead:
		return word, "Every plant gets its water, but it runs too fast on the way."
	case sheet.TooHigh:
		return word, "The water does not get over the highest point of its way."
	case sheet.Suction:
		return word, "A part of the line lies too high and draws air, and what lies beyond it may get no water."
	case sheet.OffCurve:
		return word, "The pump would have to run beyond the last point of its curve, where nobody knows what it gives."
	case sheet.OutsidePlace:
		return word, "Every plant gets its water, but a row does not fit the place."
	case sheet.Unlike:
		return word, "Every emitter opens, but rows that are watered together get different shares of what they need."
	case sheet.OverRating:
		return word, "Every plant gets its water, but the pressure can be more than the tubing may carry in the sun."
	}
	return word, "Every emitter opens, but something needs a change."
}

// sameness says how the water of one plant compares with another's.
func (sc part) sameness() string {
	switch sc.S.Sameness {
	case sheet.Same:
		if len(sc.Plants) == 1 {
			return ", and the plant gets its water."
		}
		return ", and every plant gets the same water."
	case sheet.NearlySame:
		return ", and every plant gets nearly the same water."
	case sheet.SameInZone:
		return ", and every plant of a zone gets the same water."
	case sheet.NearInZone:
		return ", and every plant of a zone gets nearly the same water."
	case sheet.AsNeeded:
		return ". Plants get different amounts of water, each row about in proportion to what its crop needs."
	}
	return ", but not every plant gets the same water."
}

// some says how many of all the emitters run.
func some(n, all int) string {
	if n == all && all > 1 {
		return "all of them run"
	}
	return wording.Count(n, "runs", "run")
}

func (sc part) everyOne(all int) string {
	switch all {
	case 1:
		return "The emitter opens"
	case 2:
		return "Both emitters open"
	}
	return "All " + strconv.Itoa(all) + " emitters open"
}

// Answer says yes or no, why, what would help, and the five figures.
func Answer(the *scene.Scene) {
	sc := part{the}
	p := sc.S.Plan
	plants := 0
	for i := range p.Rows {
		plants += p.Rows[i].Plants
	}
	sc.HTML(`<p class="answer__plan"><b>`).Text(scene.Title(p)).HTML(`</b> `).
		Text(wording.Count(len(p.Rows), "row", "rows") + ", " + wording.Count(plants, "plant", "plants")).HTML(`</p>`)

	word, rest := sc.verdict()
	sc.HTML(`<p class="answer__line"><strong class="word`).HTML(wordClass[sc.S.Verdict]).HTML(`">`).
		Text(word).HTML(`.</strong> `).Text(rest).HTML(`</p>`)
	if why := sc.why(); why != "" {
		sc.HTML(`<p class="answer__why">`).Text(why).HTML(`</p>`)
	}
	sc.fixes()
	sc.figures()
}

var wordClass = [...]block.Markup{sheet.Yes: " word--yes", sheet.Nearly: " word--nearly", sheet.No: " word--no", sheet.Cannot: " word--nearly"}

// why explains the verdict in one or two sentences.
func (sc part) why() string {
	words := ""
	if len(sc.S.Findings) > 0 {
		words = sc.explain(&sc.S.Findings[0])
	} else if z := sc.Zone; z != nil {
		words = "The weakest, " + sc.Place(z.Worst) + ", has " + sc.Head(z.Margin) + " more than it needs."
	}
	if sc.S.Verdict == sheet.Yes {
		words += sc.apart()
	}
	return words
}

// apart says what plants get where it is not about the same for all.
func (sc part) apart() string {
	low, high, share := math.Inf(1), 0.0, math.Inf(1)
	var a, b *sheet.ZoneResult
	for i := range sc.S.Zones {
		z := &sc.S.Zones[i]
		share = min(share, z.Least/z.Alike.Mean)
		if z.Alike.Mean < low {
			low, a = z.Alike.Mean, z
		}
		if z.Alike.Mean > high {
			high, b = z.Alike.Mean, z
		}
	}
	switch sc.S.Sameness {
	case sheet.SameInZone, sheet.NearInZone:
		return " A plant of " + sc.ZoneName(a) + " gets " + sc.Amount(unit.EmitterFlow, low) + " and one of " + sc.ZoneName(b) + " " + sc.Amount(unit.EmitterFlow, high) + ", so run each zone for its own time."
	case sheet.Differs, sheet.AsNeeded:
		switch {
		case sc.S.Water != nil: // else Evenness has no table of the rows
			return " What each row gets stands under Evenness."
		case share < 0.9:
			return " The plant with least water gets " + sc.Amount(unit.Share, share) + " of the mean."
		}
		return " It is the spread of manufacture, which the evenness (EU) counts."
	}
	return ""
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
	figure := func(label string, head float64, small string) {
		sc.Figure(label, sc.Amount(unit.Pressure, head*sc.Weight), "("+sc.Amount(unit.Head, head)+")"+small)
	}
	figure("Weakest emitter", h, ", "+sc.Place(z.Worst))
	figure("It needs", e.Lowest, "")
	if z.Margin < 0 {
		figure("It lacks", -z.Margin, "")
	} else if sc.S.Verdict < sheet.No {
		figure("To spare", z.Margin, ", safety margin included")
	}
	if e := sc.Least(); e.Open > 0 {
		where := ""
		if e != z {
			where = sc.ZoneName(e) + "; "
		}
		sc.Figure("Plants alike (EU)", sc.Amount(unit.Share, e.Alike.EU), where+"your limit is "+sc.Amount(unit.Share, sc.S.Plan.Limits.Evenness))
	}
	sc.Figure("Flow", sc.Amount(unit.Flow, z.Flow), sc.ZoneName(z))
	sc.HTML(`</dl>`)
}

// Always is the line that stays in sight on a narrow screen.
func Always(the *scene.Scene) {
	sc := part{the}
	word, _ := sc.verdict()
	sc.HTML(`<strong class="word`).HTML(wordClass[sc.S.Verdict]).HTML(`">`).Text(word).HTML(`.</strong> `)
	z := sc.Zone
	switch {
	case z == nil:
	case z.Margin < 0:
		sc.Text(sc.Amount(unit.Pressure, -z.Margin*sc.Weight) + " short at " + sc.Place(z.Worst))
	case sc.S.Verdict < sheet.No: // else it is that while emitters are shut, or if the lines were full
		sc.Text(sc.Amount(unit.Pressure, z.Margin*sc.Weight) + " to spare at " + sc.Place(z.Worst))
	}
}

// Announce is the answer as it is read aloud once after a change.
func Announce(s *sheet.Sheet) string {
	word, rest := part{scene.New(s, nil)}.verdict()
	return word + ". " + rest
}
