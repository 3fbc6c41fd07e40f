package why

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/evenness"
	"evenrow/wasm/works/chance"
)

// Chance says how many plants are short of water because emitters differ.
func Chance(the *scene.Scene) {
	sc := part{the}
	zones := sc.S.Chance
	if len(zones) == 0 {
		sc.Tag("p", sc.Idle())
		return
	}
	z := chance.Worst(zones)
	in, of := "", ""
	if len(zones) > 1 {
		of = " of that zone"
		in = " in zone " + strconv.Itoa(z.Number) + ", the worst,"
	}
	enough := sc.Amount(unit.Share, chance.Enough)
	words := "No plant" + in + " ever got less than " + enough + " of the mean, in " + strconv.Itoa(z.Draws) + " trials."
	if z.Short > 0 {
		words = "About " + wording.Odds(z.Short) + in + " less than " + enough + " of the mean. In " + sc.Amount(unit.Share, z.None) + " of systems built like this one, no plant" + of + " does. "
		if z.Singled() {
			words += sc.PlaceBegin(z.Weakest) + " was short most often: in " + sc.Amount(unit.Share, z.Often) + " of the trials."
		} else {
			words += "It may be any of them: no plant was short more often than luck explains."
		}
	}
	if sc.S.Mixed() {
		words += " Rows here have different emitters, so each plant is held against what its own are made to give, and the mean is that of such shares."
	}
	sc.Tag("p", words)
	switch z.Remedy(sc.S.Plan.Chance.Blocked) {
	case chance.UnblockAndDouble:
		sc.Tag("p", "Clean or replace blocked emitters, and give each plant two: then one that is blocked does not leave it dry.")
	case chance.Unblock:
		sc.Tag("p", "Clean or replace blocked emitters. One that is blocked does not leave its plant dry: it has others.")
	case chance.LessSpreadOrTwice:
		sc.Tag("p", "Emitters with a smaller CV help, and so do two of them at each plant, each with half the flow: what one gives too little the other may give too much.")
	case chance.LessSpread:
		sc.Tag("p", "Emitters with a smaller CV help.")
	}
	sc.Picture("How many plants get how much, over all trials, as a share of the mean. Left of the vertical line they are short.", func(class block.Markup, width float64) {
		sc.spread(class, width, z)
	})
	sc.SameAsTable(func() {
		sc.Table("Water of the plants over all trials", "Zone", "#Trials", "#Plants short", "#Trials without one", "#EU", "#EU by formula", "#CU", "#CU by formula", "#CV of the plants").Rows(func(t *block.Table) {
			for i := range zones {
				z := &zones[i]
				t.Row(strconv.Itoa(z.Number), strconv.Itoa(z.Draws), sc.Amount(unit.Share, z.Short), sc.Amount(unit.Share, z.None), sc.Amount(unit.Share, z.EU), sc.Amount(unit.Share, z.Design),
					sc.Amount(unit.Share, z.CU), sc.Amount(unit.Share, z.Normal), sc.Amount(unit.Share, z.CV))
			}
		})
		sc.Tag("p", "EU is the mean of the lowest quarter over the mean; its formula takes the plant with the least head for all, so it is mostly the more cautious. The formulas know manufacture, and no blocked emitters; that of CU no differences of head either.")
	})
	sc.Working(func() {
		sc.Tag("p", "In each trial each emitter is drawn from a normal distribution with its CV, cut off at no flow, and is blocked with a chance of "+sc.Amount(unit.Share, sc.S.Plan.Chance.Blocked)+". The numbers come from the generator splitmix64, started at "+strconv.Itoa(chance.Seed)+", so everybody gets the same.")
		sc.Tag("p", "The heads answer to each draw to first order; which emitters are open is left as it is. "+sc.checked(zones))
		sc.Formula(evenness.EmissionUniformityFormula, z.Most, z.Fewest, z.Least)
	})
}

// checked says how far the draws are off.
func (sc part) checked(zones []chance.Zone) string {
	solved, off := chance.Checked(zones)
	words := "less than 0.01 %"
	if off >= 1e-4 {
		words = unit.Figure(unit.None, sc.Sys, off*100) + " % at most"
	}
	return wording.Count(solved, "draw was", "draws were") + " solved in full beside: a plant's water differs by " + words + " of the mean."
}

// spread draws the histogram of one zone.
func (sc part) spread(class block.Markup, width float64, z *chance.Zone) {
	lo, hi, most := chance.Bins-1, 0, 1
	for i, n := range z.Counts {
		if n > 0 {
			lo, hi = min(lo, i), max(hi, i)
			most = max(most, n)
		}
	}
	lo, hi = min(lo, 32), max(hi+1, 48) // 0.8 to 1.2 at least
	p := block.Plot{Left: 12, Right: width - 12, Top: 22, Bottom: 150, X0: float64(lo) * chance.Width, X1: float64(hi) * chance.Width, Y1: float64(most)}
	sc.SVG(class, width, p.Bottom+40, "Water of the plants over all trials", func() {
		var line, mark block.Path
		line.Move(p.X(p.X0), p.Bottom)
		for i := lo; i < hi; i++ {
			y := p.Y(float64(z.Counts[i]))
			line.Line(p.X(float64(i)*chance.Width), y)
			line.Line(p.X(float64(i+1)*chance.Width), y)
		}
		line.Line(p.X(p.X1), p.Bottom)
		mark.Move(p.X(chance.Enough), p.Top-4)
		mark.Line(p.X(chance.Enough), p.Bottom)
		sc.Draw("line", &line).Draw("dash", &mark)
		sc.Label(p.X(chance.Enough)-5, p.Top+6, "end", "short")
		sc.Axis(&p, unit.Share, sc.Ticks(unit.Share, p.X0, p.X1, 6), "of the mean")
	})
}
