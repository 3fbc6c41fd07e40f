package why

import (
	"math"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/surge"
)

// Surge says what a valve that shuts at once does to the tubing.
func Surge(the *scene.Scene) {
	sc := part{the}
	blows := sc.S.Surge
	if len(blows) == 0 {
		sc.Tag("p", "This is worked out as soon as the plan says what drives the water.")
		return
	}
	worst, slowest := surge.Worst(blows)
	name := sc.struck(worst) + " tubing"
	sun, cool := sc.Amount(unit.Temperature, catalogue.Sun), sc.Amount(unit.Temperature, catalogue.Rated)
	warm := "in the sun, taken to be " + sun + " warm,"
	words := "The tubing stands it. The " + name + " comes nearest: the pressure at rest and the surge make " + sc.Amount(unit.Pressure, worst.Rest+worst.Rise) +
		", and " + warm + " it may carry " + sc.Amount(unit.Pressure, worst.Carries) + "."
	switch {
	case math.IsInf(worst.Closing, 1):
		words = "The " + name + " may not even carry the pressure at rest: " + sc.Amount(unit.Pressure, worst.Rest) + ", with every valve shut, and " + warm + " it may carry " +
			sc.Amount(unit.Pressure, worst.Carries) + ". " + sc.Relief()
	case worst.Closing > 0:
		words = "Shut valves slowly. At once, the pressure in the " + name + " would rise to " + sc.Amount(unit.Pressure, worst.Rest+worst.Rise) + ", and " + warm + " it may carry " +
			sc.Amount(unit.Pressure, worst.Carries) + ". Over " + wording.Closing(slowest) + " or more all tubing stays within what it may carry. With less pressure at rest a valve may shut faster. " + sc.Relief()
	}
	sc.Tag("p", words)
	most := 0.0
	for i := range blows {
		most = max(most, blows[i].Carries, blows[i].Rest+blows[i].Rise)
	}
	var bs []block.Bar
	for i := range blows {
		b := &blows[i]
		bs = append(bs, block.Bar{Name: sc.struck(b), Solid: max(b.Rest, 0) / most, All: max(b.Rest+b.Rise, 0) / most, Limit: b.Carries / most})
	}
	sc.Picture("Thick: the pressure at rest, with every valve shut. Thin: the pressure surge on top of it. The vertical line is what the tubing may carry in the sun.", func(class block.Markup, width float64) {
		p := block.Plot{Left: 8, Right: width - 12, X1: 1, Bottom: block.BarHeight * float64(len(bs))}
		sc.SVG(class, width, p.Bottom+40, "Pressure at rest and surge in each size of tubing", func() {
			sc.Bars(&p, bs)
			p.X1 = most
			sc.Axis(&p, unit.Pressure, sc.Ticks(unit.Pressure, 0, most, int(width/110)), "pressure")
		})
	})
	sc.SameAsTable(func() {
		sc.Tag("p", "The warmer tubing is, the less it may carry. At "+sun+" pipe of PE 100 keeps "+sc.Amount(unit.Share, catalogue.LeftPE100)+" of its rating for "+cool+" ("+catalogue.LeftPE100Source.String()+"), and soft drip tubing and all other pipe "+sc.Amount(unit.Share, catalogue.LeftSoft)+" ("+catalogue.LeftSoftSource.String()+"). Soft tubing may lose more: what its maker says comes first. That the sun makes it so warm is "+catalogue.SunSource.Standing.String()+".")
		sc.Table("What a valve that shuts at once does", "Tubing", "#Speed", "#At rest", "#Surge", "#Rated at "+cool, "#May carry at "+sun, "#Shut over at least").Rows(func(t *block.Table) {
			for i := range blows {
				b := &blows[i]
				t.Row(sc.struck(b), sc.Amount(unit.Speed, b.Speed), sc.Amount(unit.Pressure, b.Rest), sc.Amount(unit.Pressure, b.Rise),
					sc.Amount(unit.Pressure, b.Rated), sc.Amount(unit.Pressure, b.Carries), wording.Closing(b.Closing))
			}
		})
	})
	sc.Working(func() {
		sc.Tag("p", "The pressure surge in the "+name+":")
		sc.Formula(pipe.SurgeFormula, sc.S.Layout.Network.Water.Density, worst.Celerity, worst.Speed)
	})
}

// struck is the size of tubing that a blow is in.
func (sc part) struck(b *surge.Blow) string {
	l := sc.S.Layout
	return l.Tubes[l.Stretches[b.Stretch].Tube].Short(sc.Sys)
}
