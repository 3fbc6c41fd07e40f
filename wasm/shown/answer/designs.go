package answer

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/pump"
	"evenrow/wasm/trade/water"
	"evenrow/wasm/works/design"
)

// Designs says which tubing, feed and zones would serve for the least money,
// and which for the least pump.
func Designs(the *scene.Scene) {
	sc := part{the}
	d := sc.S.Designs
	if d == nil {
		sc.Tag("p", "This is worked out as soon as the plan can be.")
		return
	}
	if len(d.Best) == 0 {
		sc.Tag("p", sc.noDesign(d))
		sc.counted(d)
		return
	}
	sc.Tag("p", sc.cheapest(d))
	sc.HTML(`<ol class="findings">`)
	for i := range d.Best {
		b := &d.Best[i]
		sc.HTML(`<li>`).Text(sc.designWords(b, i, d))
		if sc.Link != nil {
			sc.HTML(` <a`).Attr("href", sc.Link(b.Take)).HTML(`>Use design `).Num(i + 1).HTML(`</a>`)
		}
		sc.HTML(`</li>`)
	}
	sc.HTML(`</ol>`)
	if len(d.Best) > 1 {
		sc.Picture("Each mark is a design with its number: further left is cheaper, further down needs less of the "+sc.SourceName()+". Full marks work with what you have. The vertical dashes stand at what your plan costs.", func(class block.Markup, width float64) {
			sc.tradeOff(class, width, d)
		})
	}
	sc.SameAsTable(func() {
		t := sc.Table("Designs that serve", "Design, and what it is", "#Cost", "#Head wanted, "+sc.Symbol(unit.Head), "#Flow wanted, "+sc.Symbol(unit.Flow),
			"#Power in the water, W", "#To spare, "+sc.Symbol(unit.Head), "#EU", "#A round", "Works with what you have")
		for i := range d.Best {
			b := &d.Best[i]
			t.Explained(strconv.Itoa(i+1), sc.made(&b.Design), sc.Bare(unit.Money, b.Cost), sc.Bare(unit.Head, b.Head), sc.Bare(unit.Flow, b.Flow),
				watts(b.Power), sc.Bare(unit.Head, b.Margin), sc.Amount(unit.Share, b.Even), sc.Amount(unit.Duration, b.Round), carried(b))
		}
		t.End()
		sc.Tag("p", "Cost is that of the tubing, and with several zones of the valves and the places at the timer, at the prices under Prices; fittings, emitters and the "+sc.SourceName()+" are left out. Your plan as it stands costs "+sc.Amount(unit.Money, d.Now)+". Head and flow wanted are the least that serve, above the "+sc.level()+". To spare, EU and the round are those of the design as the link opens it.")
	})
	if b := &d.Best[0]; b.Head > 0 && sc.S.Plan.Supply.Kind != plan.GravityTank {
		sc.Working(func() {
			sc.Tag("p", "Power that the water takes up with design 1, at the least that serves:")
			sc.Formula(pump.HydraulicPowerFormula, sc.Weight/water.Gravity, b.Flow, b.Head)
		})
	}
	sc.counted(d)
}

// watts is a power in watts in either system: the water's share of a pump is a
// small part of a horsepower.
func watts(v float64) string {
	if !wording.Finite(v) {
		return "–"
	}
	return strconv.FormatFloat(v, 'f', 1, 64)
}

// carried says whether the supply that stands carries a design.
func carried(b *sheet.Best) string {
	switch {
	case b.Present:
		return "yes"
	case b.Regulator > 0:
		return "behind a regulator"
	}
	return "no"
}

// level is what a head is counted above.
func (sc part) level() string {
	switch sc.S.Plan.Supply.Kind {
	case plan.Mains:
		return "tap"
	case plan.GravityTank:
		return "water in the tank as it stands"
	}
	return "water in the tank"
}

// cheapest is the conclusion.
func (sc part) cheapest(d *sheet.Designs) string {
	b := &d.Best[0]
	yours, least := "the "+sc.SourceName()+" that you have", "is the cheapest that does"
	none, each := "No design works", "nothing cheaper works"
	if d.Cut || sc.S.Untried {
		least, none, each = "is the cheapest that was found", "No design was found that works", "nothing cheaper was found that works"
	}
	switch {
	case sc.S.Plan.Supply.Kind == plan.PumpPower:
		return "What your pump can drive cannot be told from its power. The cheapest design costs " + sc.Amount(unit.Money, b.Cost) + " without a pump."
	case b.Regulator > 0:
		words := "Your " + sc.SourceName() + " is too strong for any of them as it stands. Behind a regulator set to "
		if sc.S.Plan.Supply.Regulator > 0 {
			words = "None serves with the regulator as you have set it. With it set to "
		}
		return words + sc.HeadOf(b.Regulator) + " design 1 serves, and " + least + ". It costs " + sc.Amount(unit.Money, b.Cost) +
			" without the regulator; your plan costs " + sc.Amount(unit.Money, d.Now) + "."
	case !b.Present:
		return none + " with " + yours + ". Each needs another; the cheapest costs " + sc.Amount(unit.Money, b.Cost) + " without it."
	case sc.S.Verdict == sheet.Yes && b.Cost > d.Now-0.005: // half of a hundredth
		return "Your plan costs " + sc.Amount(unit.Money, d.Now) + ", and " + each + " with " + yours + "."
	case sc.S.Verdict == sheet.Yes:
		return "With " + yours + " it could cost " + sc.Amount(unit.Money, b.Cost) + " instead of " + sc.Amount(unit.Money, d.Now) + "."
	}
	return "Design 1 serves with " + yours + ", and " + least + ". It costs " + sc.Amount(unit.Money, b.Cost) + "; your plan costs " + sc.Amount(unit.Money, d.Now) + "."
}

// beside says what one cost is more or less than the plan's, or nothing. Costs
// are printed in hundredths, and their difference is that of what is printed.
func (sc part) beside(now, cost float64) string {
	switch more := math.Round(cost*100) - math.Round(now*100); {
	case more > 0:
		return sc.Amount(unit.Money, more/100) + " more than your plan"
	case more < 0:
		return sc.Amount(unit.Money, -more/100) + " less than your plan"
	}
	return ""
}

// designWords says one design, what it costs and what it wins.
func (sc part) designWords(b *sheet.Best, i int, d *sheet.Designs) string {
	words := unit.Capital(sc.made(&b.Design)) + "."
	if b.Fix != nil {
		words = sc.remedy(b.Fix)
	}
	words += " It costs " + sc.Amount(unit.Money, b.Cost)
	if more := sc.beside(d.Now, b.Cost); more != "" {
		words += ", " + more
	}
	words += "."
	if p := sc.S.Plan; b.Fix == nil && p.Prices.Flush != 0 && p.Header.Layout != plan.Ring {
		if words += " Each row flushes clean with the other rows shut."; p.Header.Layout == plan.OneLine || len(p.Rows) == 1 {
			words = words[:len(words)-len("Each row flushes clean with the other rows shut.")] + "Its end flushes clean."
		}
	}
	if b.Fix != nil && b.Fix.Driven() {
		return words
	}
	set := ""
	if b.Regulator > 0 && b.Fix == nil {
		set = " A regulator set to " + sc.HeadOf(b.Regulator) + " makes it fit."
	}
	if sc.S.Plan.Supply.Kind == plan.GravityTank {
		if b.Regulator > 0 {
			return words + " The tank stands high enough." + set
		}
		if b.Present {
			words += " The tank stands high enough"
			if lower := -design.Rise(sc.Sys, b.Head); lower > 0 {
				words += "; it could stand " + sc.Amount(unit.Length, lower) + " lower"
			}
			return words + "."
		}
		return words + " Raise the tank by " + sc.Amount(unit.Length, sc.S.Plan.Runs[0].Rise-b.Take.Runs[0].Rise) + "."
	}
	if b.Head < 0 && !b.Present && b.Regulator == 0 {
		return words + " The water falls far enough by itself: the link puts a very weak pump in the place of the " + sc.SourceName() + " that you have."
	}
	words += " It takes " + sc.Head(max(0, b.Head)) + " at " + sc.Amount(unit.Flow, b.Flow)
	switch {
	case b.Present, b.Regulator > 0:
		words += ", which the " + sc.SourceName() + " that you have gives." + set
	case sc.S.Plan.Supply.Kind == plan.PumpPower:
		words += ". The link puts a pump of that duty in."
	case b.Weak:
		words += ", more than the " + sc.SourceName() + " that you have gives: the link puts a pump of that duty in its place."
	default:
		words += ", and the " + sc.SourceName() + " that you have gives too much: the link puts a pump of that duty in its place."
	}
	if first := d.Best[0]; i > 0 && b.Power < first.Power {
		words += " The water takes " + watts(first.Power-b.Power) + " W less than with design 1."
	}
	return words
}

// made says what a design is made of.
func (sc part) made(b *design.Design) string {
	kept := func(size int) string {
		if size == design.Kept {
			return "as it stands"
		}
		return tube(size)
	}
	words := "rows: " + kept(b.Rows)
	if sc.S.Plan.Header.Layout != plan.OneLine && len(sc.S.Plan.Rows) > 1 {
		words += "; header: " + kept(b.Header) + ", fed at its end"
		if b.Middle {
			words = words[:len(words)-len("at its end")] + "in its middle"
		}
	}
	words += "; supply line: "
	for i, size := range b.Runs {
		if i > 0 && size == b.Runs[i-1] {
			continue
		}
		if i > 0 {
			words += ", then "
		}
		words += kept(size)
	}
	if sc.S.Plan.Header.Layout == plan.HeaderAndRows && len(sc.S.Plan.Rows) > 1 {
		words += "; " + wording.Count(b.Zones, "zone", "zones")
	}
	return words
}

// broken names the limits that designs fail.
var broken = [design.Limits]string{
	"no supply that the form takes gives enough pressure or flow",
	"the water runs faster in the supply line or the header than your limit",
	"the water is less even than your limit",
	"emitters run above the pressure that they are made for",
	"the pressure with every valve shut is more than the tubing may carry in the sun",
	"the ends of the rows do not flush clean",
	"a row does not fit the place",
}

// noDesign says why nothing serves.
func (sc part) noDesign(d *sheet.Designs) string {
	words := ""
	for i, w := range broken {
		if d.Forbids&(1<<i) != 0 {
			if words != "" {
				words += ", and "
			}
			words += w
		}
	}
	switch {
	case d.Unlike > 0 && d.Unlike == d.Unequal:
		words = "No design serves. No tubing changes that rows watered together have different emitters"
		if len(sc.S.Fixes) > 0 {
			words += ": see What helps, below the answer"
		}
		return words + "."
	case d.Cut:
		return "The plan is too large for a search: none of the designs that were compared serves."
	case words != "":
		return "No design serves: " + words + ", whatever the tubing, the feed and the zones."
	case d.Counted == 0:
		return "No design was looked at: under Prices there is no tubing for some part."
	case d.Unequal > 0:
		return "No design serves: worked out emitter by emitter, none gave the answer Yes."
	}
	most := 0
	for i, n := range d.Failures {
		if n > d.Failures[most] {
			most = i
		}
	}
	return "No design serves. No limit alone forbids it; most often, " + broken[most] + "."
}

// counted says how the designs were found.
func (sc part) counted(d *sheet.Designs) {
	if d.Counted == 0 {
		return
	}
	words := strconv.Itoa(d.Counted) + " designs were compared: " + strconv.Itoa(d.Solved) + " worked out to the end, and " + strconv.Itoa(d.Pruned) +
		" passed over because a design that serves costs no more and takes no more of the " + sc.SourceName() + "."
	if n := len(d.List); n > len(d.Best) {
		words += " " + strconv.Itoa(n) + " are beaten by none; those that differ most are listed."
	}
	if len(d.Best) > 0 {
		words += " The ones listed were then worked out again emitter by emitter."
	}
	if d.Cut {
		words += " The plan is large, and the search was ended before all sizes were compared with all numbers of zones: something cheaper may have been missed."
	}
	if d.Unequal > 0 {
		words += " " + wording.Count(d.Unequal, "was", "were") + " left out because that gave another answer."
	}
	sc.Tag("p", words)
}

// tradeOff draws the designs by cost and power, or head for a tank.
func (sc part) tradeOff(class block.Markup, width float64, d *sheet.Designs) {
	tank := sc.S.Plan.Supply.Kind == plan.GravityTank
	of := func(b *design.Design) float64 {
		if tank {
			return unit.Of(unit.Head, sc.Sys).FromInner(b.Head)
		}
		return b.Power
	}
	p := block.Plot{Left: 56, Right: width - 24, Top: 26, Bottom: 240}
	p.X0, p.X1 = block.Span(math.Inf(1), math.Inf(-1), d.Now)
	p.Y0, p.Y1 = math.Inf(1), math.Inf(-1)
	for i := range d.Best {
		b := &d.Best[i].Design
		p.X0, p.X1 = block.Span(p.X0, p.X1, b.Cost)
		p.Y0, p.Y1 = block.Span(p.Y0, p.Y1, of(b))
	}
	if !tank {
		p.Y0 = 0
	}
	pad := max((p.X1-p.X0)/12, 0.5)
	p.X0, p.X1 = p.X0-pad, p.X1+pad
	pad = max((p.Y1-p.Y0)/8, 0.01)
	p.Y1 += pad
	if tank {
		p.Y0 -= pad
	}
	sc.SVG(class, width, p.Bottom+40, "Designs by cost and by what they take of the "+sc.SourceName(), func() {
		var grid, now block.Path
		ys := sc.Ticks(unit.None, p.Y0, p.Y1, 4)
		for _, t := range ys {
			grid.Move(p.Left, p.Y(t.V))
			grid.Line(p.Right, p.Y(t.V))
		}
		sc.Draw("grid", &grid)
		for i, t := range ys {
			words := t.Text
			if i == len(ys)-1 {
				if words += " W"; tank {
					words = t.Text + " " + sc.Symbol(unit.Head)
				}
			}
			sc.Label(p.Left-6, p.Y(t.V)+4, "end", words)
		}
		now.Move(p.X(d.Now), p.Top)
		now.Line(p.X(d.Now), p.Bottom)
		sc.Draw("dash", &now)
		for i := range d.Best {
			b := &d.Best[i]
			x, y := p.X(b.Cost), p.Y(of(&b.Design))
			mark := block.Markup("drop drop--empty")
			if b.Present {
				mark = "drop"
			}
			var m block.Path
			m.Move(x-5, y)
			m.Line(x, y-5)
			m.Line(x+5, y)
			m.Line(x, y+5)
			m.Close()
			sc.Draw(mark, &m)
			// Beside a mark that stands close, the number goes to the right.
			crowded := false
			for j := range i {
				o := &d.Best[j]
				crowded = crowded || math.Abs(p.X(o.Cost)-x) < 14 && math.Abs(p.Y(of(&o.Design))-y) < 14
			}
			if crowded {
				sc.Label(x+9, y+4, "start", strconv.Itoa(i+1))
			} else {
				sc.Label(x, y-9, "middle", strconv.Itoa(i+1))
			}
		}
		sc.Axis(&p, unit.Money, sc.Ticks(unit.Money, p.X0, p.X1, 5), "cost")
	})
}
