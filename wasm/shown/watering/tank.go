package watering

import (
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
		sc.Say("p", TimerWaits)
		return
	}
	l := &c.Lines[c.Peak]
	given, drained := l.Given()
	most := 0.0
	for _, v := range given {
		most = max(most, v)
	}
	tank := sc.S.Plan.Supply.Tank
	if sc.S.Plan.Supply.Kind == plan.Mains {
		tank = 0
	}
	most = max(most, tank)
	who := "all plants together"
	if sc.S.Verdict == sheet.No {
		who = "only plants of zones in which every emitter opens"
	}
	told := "In the " + sc.lineWord() + " of greatest need, from " + l.From.Short() + ", " + who + " are given " + sc.Amount(unit.Volume, given[shots.Typical]) + " on a typical day, " + sc.Amount(unit.Volume, given[shots.Hot]) + " on a hot day and " + sc.Amount(unit.Volume, given[shots.Record]) + " on a record-hot day."
	if other := c.Thirstiest(); other != l {
		all, _ := other.Given()
		told += " The " + sc.lineWord() + " from " + other.From.Short() + " takes more from the tank, " + sc.Amount(unit.Volume, all[shots.Hot]) + " on a hot day and " + sc.Amount(unit.Volume, all[shots.Record]) + " on a record-hot day: the plants that need most then share a valve with others, which drain more."
	}
	sc.Tag("p", wording.Sentences(told, sc.refill(tank, sc.S.Refill())))
	sc.Tag("p", "Of what is given from "+l.From.Short()+", "+sc.Amount(unit.Volume, drained[shots.Typical])+" drain on a typical day and "+sc.Amount(unit.Volume, drained[shots.Hot])+" on a hot day. It is feed. Other plants in soil can have it. Not the same crop again, unless it is disinfected: it carries disease from plant to plant, and its salts climb.")
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
		sc.Table("Water of all plants in a day", "Day", "#Given", "#Drains", "#The tank lasts").Rows(func(t *block.Table) {
			for sky := range given {
				lasts := "–"
				if tank > 0 && given[sky] > 0 {
					lasts = sc.Days(tank / given[sky])
				}
				t.Row(unit.Capital(words.Say(skies[sky])), sc.Amount(unit.Volume, given[sky]), sc.Amount(unit.Volume, drained[sky]), lasts)
			}
		})
	})
}

// refill says how often the tank has to be filled.
func (sc part) refill(tank float64, r shots.Refill) string {
	holds, wanted := sc.Amount(unit.Volume, tank), sc.Amount(unit.Volume, r.Wanted)
	if floats(sc.Scene) && r.Filling != shots.NoTank {
		return words.Say("A float valve keeps the tank full while its tap gives water. That water is plain: what was mixed into the tank thins out.")
	}
	switch r.Filling {
	case shots.NoTank:
		return ""
	case shots.MoreThanOnce:
		return words.Say("The tank holds {volume}, less than one day takes. A float valve keeps it full, from above the rim through an air gap; or take one of {more}, which holds a record-hot day.", holds, wanted)
	case shots.TwiceWhenHot:
		return words.Say("The tank holds {volume}, less than a hot day takes: fill it more than once that day, or take one of {more}, which holds a record-hot day.", holds, wanted)
	case shots.Seldom:
		return words.Say("The tank holds {volume}, more than the plants take in two weeks.", holds)
	case shots.EveryDays:
		return sc.everyDays(holds, r)
	}
	return ""
}

// floats says whether a valve fills the tank.
func floats(the *scene.Scene) bool {
	s := &the.S.Plan.Supply
	return s.Kind != plan.Mains && s.Fill == plan.FilledByFloat
}

// everyDays says after how many days a tank is to be filled.
func (sc part) everyDays(holds string, r shots.Refill) string {
	often := words.Say("The tank holds {volume}: fill it every {days}, and in hot weather every {fewer}.", holds, every(r.Typical), every(r.Hot))
	if r.Typical == r.Hot {
		often = words.Say("The tank holds {volume}: fill it every {days}.", holds, every(r.Typical))
	}
	if r.Holds {
		return often
	}
	return wording.Sentences(often, words.Say("It does not hold a record-hot day: fill it at noon as well."))
}

// every is a number of days after "every".
func every(days int) string {
	if days > 1 {
		return words.Say("{n} {n|day|days}", words.N(days))
	}
	return words.Say("day")
}
