package watering

import (
	"math"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/year/shots"
)

// Tank says how long the tank lasts, and how much drains.
func Tank(the *scene.Scene) {
	sc := part{the}
	c := sc.S.Shots
	if !c.Ready() {
		sc.Tag("p", TimerWaits)
		return
	}
	l := &c.Lines[c.Peak]
	var given, drained, all [shots.Skies]float64
	most := 0.0
	for sky := range given {
		given[sky], drained[sky] = l.Sets[sky].Given()
		most = max(most, given[sky])
	}
	tank := sc.S.Plan.Supply.Tank
	if sc.S.Plan.Supply.Kind == plan.Mains {
		tank = 0
	}
	most = max(most, tank)
	who, dry := "all plants together", sc.S.Verdict == sheet.No
	if dry {
		who = "only plants of zones in which every emitter opens"
	}
	told := "In the " + sc.lineWord() + " of greatest need, from " + l.From.Short() + ", " + who + " are given " + sc.Amount(unit.Volume, given[shots.Typical]) + " on a typical day, " + sc.Amount(unit.Volume, given[shots.Hot]) + " on a hot day and " + sc.Amount(unit.Volume, given[shots.Record]) + " on a record-hot day."
	hold := &given // what the tank has to hold
	if other := &c.Lines[thirstiest(c)]; other != l {
		for sky := range all {
			all[sky], _ = other.Sets[sky].Given()
		}
		hold = &all
		told += " The " + sc.lineWord() + " from " + other.From.Short() + " takes more from the tank, " + sc.Amount(unit.Volume, all[shots.Hot]) + " on a hot day and " + sc.Amount(unit.Volume, all[shots.Record]) + " on a record-hot day: the plants that need most then share a valve with others, which drain more."
	}
	if !dry {
		told += sc.refill(tank, hold)
	}
	sc.Tag("p", told)
	sc.Tag("p", "Of what is given from "+l.From.Short()+", "+sc.Amount(unit.Volume, drained[shots.Typical])+" drain on a typical day and "+sc.Amount(unit.Volume, drained[shots.Hot])+" on a hot day. It is feed: collect it where it cannot reach a well, a stream or a street drain, as local rules ask. Other plants in soil can have it. Not the same crop again, unless it is disinfected: it carries disease from plant to plant, and its salts climb.")
	var bs []block.Bar
	for sky := range given {
		b := block.Bar{Name: unit.Capital(words.Say(skies[sky])) + ": " + sc.Amount(unit.Volume, given[sky]), Solid: (given[sky] - drained[sky]) / most, All: given[sky] / most}
		if tank > 0 {
			b.Limit = tank / most
		}
		bs = append(bs, b)
	}
	caption := "Thick: what the plants take up in a day. Thin: what drains."
	if tank > 0 {
		caption += " The vertical line is what the tank holds."
	}
	sc.Picture(caption, func(class block.Markup, width float64) {
		p := block.Plot{Left: 8, Right: width - 12, X1: 1, Bottom: block.BarHeight * float64(len(bs))}
		sc.SVG(class, width, p.Bottom+6, "Water of all plants in a day", func() {
			sc.Bars(&p, bs)
		})
	})
	sc.SameAsTable(func() {
		t := sc.Table("Water of all plants in a day", "Day", "#Given", "#Drains", "#The tank lasts")
		for sky := range given {
			lasts := "–"
			if tank > 0 && given[sky] > 0 {
				lasts = sc.days(tank / given[sky])
			}
			t.Row(unit.Capital(words.Say(skies[sky])), sc.Amount(unit.Volume, given[sky]), sc.Amount(unit.Volume, drained[sky]), lasts)
		}
		t.End()
	})
}

// thirstiest is the line that takes most from the tank on a hot day: that of
// greatest need, but where crops share a valve another may give more, of which
// more drains.
func thirstiest(c *shots.Card) int {
	at := c.Peak
	most, _ := c.Lines[at].Sets[shots.Hot].Given()
	for i := range c.Lines {
		if given, _ := c.Lines[i].Sets[shots.Hot].Given(); given > most*(1+1e-9) { // sums differ in their last bits
			at, most = i, given
		}
	}
	return at
}

// refill says how often the tank has to be filled.
func (sc part) refill(tank float64, given *[shots.Skies]float64) string {
	hot, typical := given[shots.Hot], given[shots.Typical]
	switch {
	case !(tank > 0) || !(hot > 0):
		return ""
	case tank < hot:
		words := " The tank holds " + sc.Amount(unit.Volume, tank) + ", less than a hot day takes: fill it more than once that day, or take one of " + sc.Amount(unit.Volume, given[shots.Record]) + ", which holds a record-hot day."
		if tank < typical {
			words = " The tank holds " + sc.Amount(unit.Volume, tank) + ", less than one day takes. A float valve keeps it full, from above the rim through an air gap; or take one of " + sc.Amount(unit.Volume, given[shots.Record]) + ", which holds a record-hot day."
		}
		return words
	}
	if tank/typical >= 15 {
		return " The tank holds " + sc.Amount(unit.Volume, tank) + ", more than the plants take in two weeks."
	}
	words := " The tank holds " + sc.Amount(unit.Volume, tank) + ": fill it every " + every(tank/typical)
	if every(tank/hot) != every(tank/typical) {
		words += ", and in hot weather every " + every(tank/hot)
	}
	words += "."
	if tank < given[shots.Record] {
		words += " It does not hold a record-hot day: fill it at noon as well."
	}
	return words
}

// every is a number of whole days, rounded down, after "every".
func every(days float64) string {
	if n := int(math.Floor(days)); n > 1 {
		return wording.Count(n, "day", "days")
	}
	return "day"
}

// days is a number of days to a tenth.
func (sc part) days(n float64) string {
	if n = math.Round(n*10) / 10; n == 1 {
		return "1\u00a0day"
	}
	return sc.Amount(unit.None, n) + "\u00a0days"
}
