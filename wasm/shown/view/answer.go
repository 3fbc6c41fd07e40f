package view

import (
	"math"
	"slices"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/sheet"
)

// verdict is the answer: its first word, and the rest of the sentence.
func (sc *scene) verdict() (word, rest string) {
	word = [...]string{"Yes", "Nearly", "No", "Cannot say yet"}[sc.s.Verdict]
	all := 0
	for i := range sc.s.Zones {
		all += sc.s.Zones[i].Emitters
	}
	if sc.s.Verdict == sheet.Yes || len(sc.s.Findings) == 0 {
		switch sc.s.Verdict {
		case sheet.Yes:
			return word, sc.everyOne(all) + sc.sameness()
		case sheet.Nearly:
			return word, "Every emitter opens, but something is outside its limits."
		case sheet.No:
			return word, "Some plants get no water."
		}
		return word, "Something is missing in the plan."
	}
	f := &sc.s.Findings[0]
	switch f.Kind {
	case sheet.PowerOnly:
		return word, "Power alone does not tell how high the pump lifts the water."
	case sheet.NeverOpen:
		if f.Count >= all {
			return word, "No emitter opens, and no plant gets water."
		}
		words := strconv.Itoa(f.Count) + " of " + strconv.Itoa(all) + " emitters stay shut, and their plants get no water."
		if slices.ContainsFunc(sc.s.Findings, func(f sheet.Finding) bool { return f.Kind == sheet.TooHigh || f.Kind == sheet.Suction }) {
			words = "At least " + words // the flows are those of lines that are full
		}
		return word, words
	case sheet.Unsteady:
		return word, count(f.Count, "emitter opens and shuts", "emitters open and shut") + " in turn, and you cannot count on them."
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
func (sc *scene) sameness() string {
	switch sc.s.Sameness {
	case sheet.Same:
		if len(sc.plants) == 1 {
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
	return count(n, "runs", "run")
}

func (sc *scene) everyOne(all int) string {
	switch all {
	case 1:
		return "The emitter opens"
	case 2:
		return "Both emitters open"
	}
	return "All " + strconv.Itoa(all) + " emitters open"
}

// answer says yes or no, why, what would help, and the five figures.
func (sc *scene) answer(link Linker) {
	p := sc.s.Plan
	plants := 0
	for i := range p.Rows {
		plants += p.Rows[i].Plants
	}
	sc.html(`<p class="answer__plan"><b>`).text(Title(p)).html(`</b> `).
		text(count(len(p.Rows), "row", "rows") + ", " + count(plants, "plant", "plants")).html(`</p>`)

	word, rest := sc.verdict()
	sc.html(`<p class="answer__line"><strong class="word`).html(wordClass[sc.s.Verdict]).html(`">`).
		text(word).html(`.</strong> `).text(rest).html(`</p>`)
	if why := sc.why(); why != "" {
		sc.html(`<p class="answer__why">`).text(why).html(`</p>`)
	}
	sc.fixes(link)
	sc.figures()
}

var wordClass = [...]markup{sheet.Yes: " word--yes", sheet.Nearly: " word--nearly", sheet.No: " word--no", sheet.Cannot: " word--nearly"}

// why explains the verdict in one or two sentences.
func (sc *scene) why() string {
	words := ""
	if len(sc.s.Findings) > 0 {
		words = sc.explain(&sc.s.Findings[0])
	} else if z := sc.zone; z != nil {
		words = "The weakest, " + sc.place(z.Worst) + ", has " + sc.head(z.Margin) + " more than it needs."
	}
	if sc.s.Verdict == sheet.Yes {
		words += sc.apart()
	}
	return words
}

// apart says what plants get where it is not about the same for all.
func (sc *scene) apart() string {
	low, high, share := math.Inf(1), 0.0, math.Inf(1)
	var a, b *sheet.ZoneResult
	for i := range sc.s.Zones {
		z := &sc.s.Zones[i]
		share = min(share, z.Least/z.Alike.Mean)
		if z.Alike.Mean < low {
			low, a = z.Alike.Mean, z
		}
		if z.Alike.Mean > high {
			high, b = z.Alike.Mean, z
		}
	}
	switch sc.s.Sameness {
	case sheet.SameInZone, sheet.NearInZone:
		return " A plant of " + sc.zoneName(a) + " gets " + sc.amount(unit.EmitterFlow, low) + " and one of " + sc.zoneName(b) + " " + sc.amount(unit.EmitterFlow, high) + ", so run each zone for its own time."
	case sheet.Differs, sheet.AsNeeded:
		switch {
		case sc.s.Water != nil: // else Evenness has no table of the rows
			return " What each row gets stands under Evenness."
		case share < 0.9:
			return " The plant with least water gets " + sc.amount(unit.Share, share) + " of the mean."
		}
		return " It is the spread of manufacture, which the evenness (EU) counts."
	}
	return ""
}

// figures prints at most five figures, label above, figure large, place small.
func (sc *scene) figures() {
	z := sc.zone
	if z == nil || z.Worst < 0 || z.Worst >= len(sc.plants) {
		return
	}
	e := sc.emitterOf(z.Worst)
	if e == nil {
		return
	}
	h := sc.plants[z.Worst].head
	sc.html(`<dl class="figures">`)
	figure := func(label string, head float64, small string) {
		sc.figure(label, sc.amount(unit.Pressure, head*sc.weight), "("+sc.amount(unit.Head, head)+")"+small)
	}
	figure("Weakest emitter", h, ", "+sc.place(z.Worst))
	figure("It needs", e.Lowest, "")
	if z.Margin < 0 {
		figure("It lacks", -z.Margin, "")
	} else if sc.s.Verdict < sheet.No {
		figure("To spare", z.Margin, ", safety margin included")
	}
	if e := sc.least(); e.Open > 0 {
		where := ""
		if e != z {
			where = sc.zoneName(e) + "; "
		}
		sc.figure("Plants alike (EU)", sc.amount(unit.Share, e.Alike.EU), where+"your limit is "+sc.amount(unit.Share, sc.s.Plan.Limits.Evenness))
	}
	sc.figure("Flow", sc.amount(unit.Flow, z.Flow), sc.zoneName(z))
	sc.html(`</dl>`)
}

func (sc *scene) figure(label, value, small string) {
	sc.html(`<div><dt>`).text(label).html(`</dt><dd>`).text(value)
	if small != "" {
		sc.html(` <small>`).text(small).html(`</small>`)
	}
	sc.html(`</dd></div>`)
}

// zoneName says which zone a figure belongs to, if there are several.
func (sc *scene) zoneName(z *sheet.ZoneResult) string {
	if len(sc.s.Zones) < 2 {
		return "all rows together"
	}
	return "zone " + strconv.Itoa(z.Zone)
}

// always is the line that stays in sight on a narrow screen.
func (sc *scene) always() {
	word, _ := sc.verdict()
	sc.html(`<strong class="word`).html(wordClass[sc.s.Verdict]).html(`">`).text(word).html(`.</strong> `)
	z := sc.zone
	switch {
	case z == nil:
	case z.Margin < 0:
		sc.text(sc.amount(unit.Pressure, -z.Margin*sc.weight) + " short at " + sc.place(z.Worst))
	case sc.s.Verdict < sheet.No: // else it is that while emitters are shut, or if the lines were full
		sc.text(sc.amount(unit.Pressure, z.Margin*sc.weight) + " to spare at " + sc.place(z.Worst))
	}
}
