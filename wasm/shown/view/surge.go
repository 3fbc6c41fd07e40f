package view

import (
	"math"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/surge"
)

// surge says what a valve that shuts at once does to the tubing.
func (sc *scene) surge() {
	blows := sc.s.Surge
	if len(blows) == 0 {
		sc.tag("p", "This is worked out as soon as the plan says what drives the water.")
		return
	}
	slowest := 0.0     // s, over which a valve must shut so that all tubing stands it
	worst := &blows[0] // nearest to what it may carry, or most beyond
	for i := range blows {
		if b := &blows[i]; b.Worse(worst) {
			worst = b
		}
		slowest = max(slowest, blows[i].Closing)
	}
	name := sc.struck(worst) + " tubing"
	sun, cool := sc.amount(unit.Temperature, catalogue.Sun), sc.amount(unit.Temperature, 20)
	warm := "in the sun, taken to be " + sun + " warm,"
	words := "The tubing stands it. The " + name + " comes nearest: the pressure at rest and the surge make " + sc.amount(unit.Pressure, worst.Rest+worst.Rise) +
		", and " + warm + " it may carry " + sc.amount(unit.Pressure, worst.Carries) + "."
	switch {
	case math.IsInf(worst.Closing, 1):
		words = "The " + name + " may not even carry the pressure at rest: " + sc.amount(unit.Pressure, worst.Rest) + ", with every valve shut, and " + warm + " it may carry " +
			sc.amount(unit.Pressure, worst.Carries) + ". " + sc.relief()
	case worst.Closing > 0:
		words = "Shut valves slowly. At once, the pressure in the " + name + " would rise to " + sc.amount(unit.Pressure, worst.Rest+worst.Rise) + ", and " + warm + " it may carry " +
			sc.amount(unit.Pressure, worst.Carries) + ". Over " + seconds(slowest) + " or more all tubing stays within what it may carry. With less pressure at rest a valve may shut faster. " + sc.relief()
	}
	sc.tag("p", words)
	most := 0.0
	for i := range blows {
		most = max(most, blows[i].Carries, blows[i].Rest+blows[i].Rise)
	}
	var bs []bar
	for i := range blows {
		b := &blows[i]
		bs = append(bs, bar{name: sc.struck(b), solid: max(b.Rest, 0) / most, all: max(b.Rest+b.Rise, 0) / most, limit: b.Carries / most})
	}
	sc.html(`<figure>`)
	for _, w := range widths {
		p := plot{left: 8, right: w.width - 12, x1: 1, bottom: barHeight * float64(len(bs))}
		sc.svg(w.class, w.width, p.bottom+40, "Pressure at rest and surge in each size of tubing")
		sc.bars(&p, bs)
		p.x1 = most
		sc.axis(&p, unit.Pressure, sc.ticks(unit.Pressure, 0, most, int(w.width/110)), "pressure")
		sc.html(`</svg>`)
	}
	sc.tag("figcaption", "Thick: the pressure at rest, with every valve shut. Thin: the pressure surge on top of it. The vertical line is what the tubing may carry in the sun.")
	sc.html(`</figure>`)
	sc.fold("The same as a table")
	sc.tag("p", "The warmer tubing is, the less it may carry. At "+sun+" pipe of PE 100 keeps "+sc.amount(unit.Share, catalogue.LeftPE100)+" of its rating for "+cool+" ("+catalogue.LeftPE100Source.String()+"), and soft drip tubing and all other pipe "+sc.amount(unit.Share, catalogue.LeftSoft)+" ("+catalogue.LeftSoftSource.String()+"). Soft tubing may lose more: what its maker says comes first. That the sun makes it so warm is "+catalogue.SunSource.Standing.String()+".")
	t := sc.table("What a valve that shuts at once does", "Tubing", "#Speed", "#At rest", "#Surge", "#Rated at "+cool, "#May carry at "+sun, "#Shut over at least")
	for i := range blows {
		b := &blows[i]
		t.row(sc.struck(b), sc.amount(unit.Speed, b.Speed), sc.amount(unit.Pressure, b.Rest), sc.amount(unit.Pressure, b.Rise),
			sc.amount(unit.Pressure, b.Rated), sc.amount(unit.Pressure, b.Carries), seconds(b.Closing))
	}
	t.end()
	sc.html(`</details>`)
	sc.fold("Show the working")
	sc.tag("p", "The pressure surge in the "+name+":")
	sc.formula(pipe.SurgeFormula, sc.s.Layout.Network.Water.Density, worst.Celerity, worst.Speed)
	sc.html(`</details>`)
}

// struck is the size of tubing that a blow is in.
func (sc *scene) struck(b *surge.Blow) string {
	l := sc.s.Layout
	return l.Tubes[l.Stretches[b.Stretch].Tube].Short(sc.sys)
}

// seconds is a time of closing.
func seconds(t float64) string {
	switch {
	case t == 0:
		return "at once"
	case !finite(t):
		return "–"
	}
	return unit.Figure(unit.None, unit.Metric, math.Ceil(t*10)/10) + "\u00a0s"
}
