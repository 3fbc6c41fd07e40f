package view

import (
	"math"
	"slices"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/evenness"
	"evenrow/wasm/works/chance"
)

// luck is how many standard deviations a plant must be short more often than
// the mean of all before it is named: with less, one of a thousand plants that
// are alike would be (for rare events counts scatter as their square root).
const luck = 6

// idle stands where nothing can be said because no water flows.
func (sc *scene) idle() string {
	if len(sc.s.Zones) > 0 {
		return "This is worked out once water runs at the plants. Look at the answer first."
	}
	return "This is worked out as soon as the plan says what drives the water."
}

// chance says how many plants are short of water because emitters differ.
func (sc *scene) chance() {
	zones := sc.s.Chance
	if len(zones) == 0 {
		sc.tag("p", sc.idle())
		return
	}
	z := &zones[0]
	for i := range zones {
		if zones[i].Short > z.Short {
			z = &zones[i]
		}
	}
	in, of := "", ""
	if len(zones) > 1 {
		of = " of that zone"
		in = " in zone " + strconv.Itoa(z.Number) + ", the worst,"
	}
	enough := sc.amount(unit.Share, chance.Enough)
	words := "No plant" + in + " ever got less than " + enough + " of the mean, in " + strconv.Itoa(z.Draws) + " trials."
	if z.Short > 0 {
		// Where all plants are alike, one of them is short most often by luck.
		words = "About " + odds(z.Short) + in + " less than " + enough + " of the mean. In " + sc.amount(unit.Share, z.None) + " of systems built like this one, no plant" + of + " does. "
		if z.Often > z.Short+luck*math.Sqrt(z.Short/float64(z.Draws)) {
			words += unit.Capital(sc.place(z.Weakest)) + " was short most often: in " + sc.amount(unit.Share, z.Often) + " of the trials."
		} else {
			words += "It may be any of them: no plant was short more often than luck explains."
		}
	}
	if sc.mixed() {
		words += " Rows here have different emitters, so each plant is held against what its own are made to give, and the mean is that of such shares."
	}
	sc.tag("p", words)
	switch {
	case z.Short > 0.02 && sc.s.Plan.Chance.Blocked > 0 && z.Fewest < 2:
		sc.tag("p", "Clean or replace blocked emitters, and give each plant two: then one that is blocked does not leave it dry.")
	case z.Short > 0.02 && sc.s.Plan.Chance.Blocked > 0:
		sc.tag("p", "Clean or replace blocked emitters. One that is blocked does not leave its plant dry: it has others.")
	case z.Short > 0.02 && z.Fewest < 2:
		sc.tag("p", "Emitters with a smaller CV help, and so do two of them at each plant, each with half the flow: what one gives too little the other may give too much.")
	case z.Short > 0.02:
		sc.tag("p", "Emitters with a smaller CV help.")
	}
	sc.html(`<figure>`)
	for _, w := range widths {
		sc.spread(w.class, w.width, z)
	}
	sc.tag("figcaption", "How many plants get how much, over all trials, as a share of the mean. Left of the vertical line they are short.")
	sc.html(`</figure>`)
	sc.fold("The same as a table")
	t := sc.table("Water of the plants over all trials", "Zone", "#Trials", "#Plants short", "#Trials without one", "#EU", "#EU by formula", "#CU", "#CU by formula", "#CV of the plants")
	for i := range zones {
		z := &zones[i]
		t.row(strconv.Itoa(z.Number), strconv.Itoa(z.Draws), sc.amount(unit.Share, z.Short), sc.amount(unit.Share, z.None), sc.amount(unit.Share, z.EU), sc.amount(unit.Share, z.Design),
			sc.amount(unit.Share, z.CU), sc.amount(unit.Share, z.Normal), sc.amount(unit.Share, z.CV))
	}
	t.end()
	sc.tag("p", "EU is the mean of the lowest quarter over the mean; its formula takes the plant with the least head for all, so it is mostly the more cautious. The formulas know manufacture, and no blocked emitters; that of CU no differences of head either.")
	sc.html(`</details>`)
	sc.fold("Show the working")
	sc.tag("p", "In each trial each emitter is drawn from a normal distribution with its CV, cut off at no flow, and is blocked with a chance of "+sc.amount(unit.Share, sc.s.Plan.Chance.Blocked)+". The numbers come from the generator splitmix64, started at "+strconv.Itoa(chance.Seed)+", so everybody gets the same.")
	sc.tag("p", "The heads answer to each draw to first order; which emitters are open is left as it is. "+sc.checked(zones))
	sc.formula(evenness.EmissionUniformityFormula, z.Most, z.Fewest, z.Least)
	sc.html(`</details>`)
}

// mixed says whether plants of some zone have emitters that are made to give
// different amounts.
func (sc *scene) mixed() bool {
	return slices.ContainsFunc(sc.s.Zones, func(z sheet.ZoneResult) bool { return z.Mixed })
}

// odds is a small share in words, up to the verb.
func odds(share float64) string {
	if share > 0.3 {
		return strconv.Itoa(int(share*100+0.5)) + " in 100 plants get"
	}
	return "1 in " + strconv.Itoa(int(1/share+0.5)) + " plants gets"
}

// checked says how far the draws are off.
func (sc *scene) checked(zones []chance.Zone) string {
	solved, off := 0, 0.0
	for i := range zones {
		solved += zones[i].Solved
		off = max(off, zones[i].Off)
	}
	words := "less than 0.01 %"
	if off >= 1e-4 {
		words = unit.Figure(unit.None, sc.sys, off*100) + " % at most"
	}
	return count(solved, "draw was", "draws were") + " solved in full beside: a plant's water differs by " + words + " of the mean."
}

// spread draws the histogram of one zone.
func (sc *scene) spread(class markup, width float64, z *chance.Zone) {
	lo, hi, most := chance.Bins-1, 0, 1
	for i, n := range z.Counts {
		if n > 0 {
			lo, hi = min(lo, i), max(hi, i)
			most = max(most, n)
		}
	}
	lo, hi = min(lo, 32), max(hi+1, 48) // 0.8 to 1.2 at least
	p := plot{left: 12, right: width - 12, top: 22, bottom: 150, x0: float64(lo) * chance.Width, x1: float64(hi) * chance.Width, y1: float64(most)}
	sc.svg(class, width, p.bottom+40, "Water of the plants over all trials")
	var line, mark path
	line.move(p.x(p.x0), p.bottom)
	for i := lo; i < hi; i++ {
		y := p.y(float64(z.Counts[i]))
		line.line(p.x(float64(i)*chance.Width), y)
		line.line(p.x(float64(i+1)*chance.Width), y)
	}
	line.line(p.x(p.x1), p.bottom)
	mark.move(p.x(chance.Enough), p.top-4)
	mark.line(p.x(chance.Enough), p.bottom)
	sc.draw("line", &line).draw("dash", &mark)
	sc.label(p.x(chance.Enough)-5, p.top+6, "end", "short")
	sc.axis(&p, unit.Share, sc.ticks(unit.Share, p.x0, p.x1, 6), "of the mean")
	sc.html(`</svg>`)
}
