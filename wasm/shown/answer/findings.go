package answer

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/works/design"
)

// nothing is a head in m that prints as none.
const nothing = 0.005

// explain says a finding in plain words, with what was found and what was
// wanted.
func (sc part) explain(f *sheet.Finding) string {
	v, l := f.Value, f.Limit
	where := ""
	if f.Zone > 0 && len(sc.S.Zones) > 1 {
		where = " in zone " + strconv.Itoa(f.Zone)
	}
	row := "A row"
	if f.Row >= 0 {
		row = "Row " + strconv.Itoa(f.Row+1)
	}
	switch f.Kind {
	case sheet.PowerOnly:
		return "Power is flow times head: " + sc.Amount(unit.Power, v) + " can be much water lifted a little, or a little water lifted high, and only the second opens emitters. Look up the pump's curve, or its greatest head and its greatest flow, and type them in."
	case sheet.NeverOpen:
		if v < -nothing {
			return "The water stands " + sc.Amount(unit.Head, -v) + " below the lowest of the shut emitters" + where + "."
		}
		if v < nothing {
			return "Nothing of the head of the supply is left for the shut emitters" + where + "."
		}
		return "Emitters open at " + sc.Head(l) + "; those that are shut get at most " + sc.Head(v) + where + "."
	case sheet.Unsteady:
		return wording.Count(f.Count, "emitter has", "emitters have") + " enough to open but not enough to stay open" + where + ": " + sc.Head(v) + " while shut, and once open the head falls below the " + sc.Head(l) + " at which they shut."
	case sheet.BelowRange:
		return wording.Count(f.Count, "emitter runs", "emitters run") + " below the range" + where + ": the lowest has " + sc.Head(v) + ", and they keep their flow from " + sc.Head(l) + " on."
	case sheet.AboveRange:
		return wording.Count(f.Count, "emitter runs", "emitters run") + " above the range" + where + ": the highest has " + sc.Head(v) + ", and they are made for " + sc.Head(l) + " at most."
	case sheet.ShortReserve:
		return "The weakest emitter has " + sc.Head(v) + " to spare" + where + ", and your safety margin is " + sc.Head(l) + ". A fouled filter or a warm day uses it up."
	case sheet.Uneven:
		return "The evenness (EU) is " + sc.Amount(unit.Share, v) + where + ", and your limit is " + sc.Amount(unit.Share, l) + "."
	case sheet.FastLead:
		return "The water runs at " + sc.Amount(unit.Speed, v) + " in the supply line or the header" + where + ", and your limit is " + sc.Amount(unit.Speed, l) + ". Fast water costs head and causes water hammer when a valve shuts."
	case sheet.OffCurve:
		return "The rows draw " + sc.Amount(unit.Flow, v) + where + ", and the curve that you typed ends at " + sc.Amount(unit.Flow, l) + ". Add points, or split the rows into zones."
	case sheet.CoarseFilter:
		return "The filter lets through " + sc.Amount(unit.Opening, v) + ", and the narrowest passage of your emitters needs " + sc.Amount(unit.Opening, l) + " at most."
	case sheet.NoFilter:
		return "There is no filter. The narrow passages of drip emitters block without one."
	case sheet.OverRating:
		return "With every valve shut the pressure reaches " + sc.Head(v) + ". Warm tubing carries less: in the sun, taken to be " + sc.Amount(unit.Temperature, catalogue.Sun) + " warm, the weakest may carry " + sc.Head(l) + " for long. " + sc.Relief()
	case sheet.OutsidePlace:
		if v < 0 {
			return row + " begins " + sc.Amount(unit.Length, -v) + " before the place."
		}
		return row + " reaches " + sc.Amount(unit.Length, v) + ", and the place ends at " + sc.Amount(unit.Length, l) + "."
	case sheet.Fouled:
		return "When the filter has fouled as far as you let it, the weakest emitter lacks " + sc.Head(-v) + where + ". Clean the filter sooner, or give the system more head."
	case sheet.NoBackflow:
		return "No loss is counted for a backflow device. A tap usually needs one, your water supplier says which, and it takes head: enter it under Supply from its data sheet."
	case sheet.Unlike:
		a, b := &sc.S.Water[f.Row], &sc.S.Water[f.Base]
		return row + " gets " + sc.Amount(unit.EmitterFlow, a.Mean) + " a plant and row " + strconv.Itoa(f.Base+1) + " " + sc.Amount(unit.EmitterFlow, b.Mean) +
			", from the same shots. On a typical day their plants take up " + sc.Amount(unit.PlantWater, a.Need) + " and " + sc.Amount(unit.PlantWater, b.Need) +
			" at most. So when row " + strconv.Itoa(f.Base+1) + " has what it needs, " + unit.Uncapital(row) + " gets " + times(v) + " its need, and the rest drains."
	case sheet.TooHigh:
		return "With nothing flowing the water stays " + sc.Amount(unit.Head, -v) + " below the highest point of its way" + where + ", so it never gets over it. Lay the tubing lower, or give the system more head."
	case sheet.Suction:
		return "At the highest point of its way" + where + " the running water lacks " + sc.Amount(unit.Head, -v) + ", so it draws in air at the joints there. Lay the tubing lower or make it wider, or give the system more head."
	case sheet.Unsolved:
		return "No state was found in which the water comes to rest. Look at the figures for one that is far from the others."
	case sheet.SmallTank:
		return "At this flow the tank is empty after " + sc.Amount(unit.Duration, v*3600) + " of watering. Keep it filled, or take a larger one."
	}
	return ""
}

// times says how many times as much, to two figures.
func times(v float64) string {
	return strconv.FormatFloat(v, 'g', max(2, len(strconv.Itoa(int(v)))), 64) + " times"
}

// Findings lists everything worth a look, by weight.
func Findings(the *scene.Scene) {
	sc := part{the}
	if len(sc.S.Findings) == 0 {
		sc.Tag("p", "Nothing. Every figure is within the limits that you set.")
		return
	}
	sc.HTML(`<ul class="findings">`)
	for i := range sc.S.Findings {
		sc.Tag("li", sc.explain(&sc.S.Findings[i]))
	}
	sc.HTML(`</ul>`)
}

// change says what a change does, as the rest of a sentence.
func (sc part) change(f *sheet.Change) string {
	switch f.Kind {
	case sheet.NewPump:
		return "use a pump that gives at least " + sc.Head(f.Value) + " at " + sc.Amount(unit.Flow, f.Flow) + sc.shut(f, "everything shut")
	case sheet.RaiseTank:
		return "raise the tank by " + sc.Amount(unit.Length, f.Value)
	case sheet.MorePressure:
		return "find a tap that keeps at least " + sc.HeadOf(f.Value) + " while it gives " + sc.Amount(unit.Flow, f.Flow) + sc.shut(f, "every tap closed")
	case sheet.AddRegulator:
		if sc.S.Plan.Supply.Regulator > 0 {
			return "set the regulator to " + sc.HeadOf(f.Value)
		}
		return "put a pressure regulator, set to " + sc.HeadOf(f.Value) + ", before the header"
	case sheet.WiderLead:
		return "lay the supply line in " + tube(f.Index) + " tubing"
	case sheet.WiderHeader:
		return "make the header of " + tube(f.Index) + " tubing"
	case sheet.WiderRows:
		return "lay the rows in " + tube(f.Index) + " tubing"
	case sheet.MiddleFeed:
		return "feed the header in its middle"
	case sheet.MoreZones:
		return "split the rows into " + strconv.Itoa(f.Index) + " zones, and water one after another"
	case sheet.CleanerFilter:
		return "clean the filter sooner: when it takes " + sc.Amount(unit.Pressure, f.Value) + " more than it does clean"
	case sheet.LowerEmitters:
		return "use emitters of the same flow that keep it from " + sc.HeadOf(f.Value) + " on"
	case sheet.OneEmitter:
		r := &sc.S.Plan.Rows[f.Index]
		return "give every plant what row " + strconv.Itoa(f.Index+1) + " has: " + wording.Count(r.PerPlant, "emitter", "emitters") + " of " + sc.Amount(unit.EmitterFlow, sc.S.Plan.Emitters[r.Emitter].Flow)
	case sheet.OwnZones:
		return "water rows with different emitters in zones of their own, " + strconv.Itoa(f.Index) + " in all, each for its own time"
	case sheet.CloseRing:
		return "tie the far ends of the rows with a second header"
	case sheet.Redesign:
		return "use other sizes"
	}
	return ""
}

// shut says what a pump or a tap may give at the most with no water flowing, and
// what stands behind it.
func (sc part) shut(f *sheet.Change, when string) string {
	now := sc.S.Plan.Supply.Regulator
	switch {
	case f.Regulator > 0 && f.Regulator == now:
		return ", before the regulator that you have"
	case f.Regulator > 0 && now > 0:
		return ", and set the regulator to " + sc.HeadOf(f.Regulator)
	case f.Regulator > 0:
		return ", and behind it a pressure regulator set to " + sc.HeadOf(f.Regulator)
	case f.Most == 0:
		return ""
	}
	words := ", and at most " + sc.Head(f.Most) + " with " + when
	if now > 0 {
		words += ", without the regulator"
	}
	return words
}

// tube is the short name of a size of tubing.
func tube(i int) string {
	if i > catalogue.Custom && i < len(catalogue.Tubes) {
		return words.Say(catalogue.Tubes[i].Short)
	}
	return "wider"
}

// remedy says a fix as a sentence, or two.
func (sc part) remedy(f *sheet.Fix) string {
	words := sc.change(&f.Change)
	if f.Design != nil {
		words += " (" + sc.made(f.Design) + ")"
		if f.Flow > 0 {
			words += " with the " + sc.SourceName() + " that the plan below has"
		}
	}
	if f.And != nil {
		return "Do both: " + words + ", and " + sc.change(f.And) + "."
	}
	return unit.Capital(words) + "."
}

// costing says what a fix costs more or less than the plan.
func (sc part) costing(f *sheet.Fix) string {
	now := design.Cost(sc.S.Layout)
	more := sc.beside(now, now+f.Cost)
	switch {
	case !f.Unpriced && more == "":
		return " It costs no more."
	case !f.Unpriced:
		return " It costs " + more + "."
	case more == "":
		return " Its price is not in the plan."
	}
	return " The tubing and valves cost " + more + "; the price of the other change is not in the plan."
}

// beyond says why no pump and no tap alone can do it.
func (sc part) beyond(f *sheet.Fix) string {
	head := f.Value
	if f.Kind == sheet.MorePressure {
		head /= sc.Weight
	}
	words := "No " + sc.SourceName() + " alone can do it: it would have to give " + sc.Head(head) + " at " + sc.Amount(unit.Flow, f.Flow)
	if f.Breaks.Kind == sheet.OverRating {
		return words + ", and the weakest tubing may carry " + sc.Head(f.Breaks.Limit) + " in the sun."
	}
	return words + ", and the emitters are made for " + sc.Head(f.Breaks.Limit) + " at most."
}

// fixes says what would help. A fix that carries a plan leads to it.
func (sc part) fixes() {
	list := sc.S.Fixes
	if len(list) == 0 && !sc.S.Untried {
		return
	}
	sc.HTML(`<div class="fixes"><h2 class="fixes__head">What helps</h2>`)
	if len(list) > 1 && !list[0].Unpriced {
		words := "Cheapest first, at the prices under Prices"
		if list[len(list)-1].Unpriced {
			words += "; what they do not cover comes last"
		}
		sc.Tag("p", words+".")
	}
	if sc.S.Untried {
		sc.Tag("p", "Not every change was tried: for this plan that takes too long. There may be others, and cheaper ones.")
	}
	if len(list) == 0 {
		sc.HTML(`</div>`)
		return
	}
	sc.HTML(`<ul>`)
	for i := range list {
		f := &list[i]
		if f.Breaks != nil {
			sc.Tag("li", sc.beyond(f))
			continue
		}
		sc.HTML(`<li>`).Text(sc.remedy(f))
		switch {
		case f.Solves && f.And != nil:
			sc.Text(" With both, the answer is Yes.")
		case f.Solves:
			sc.Text(" With it, the answer is Yes.")
		default:
			sc.Text(" It helps, but is not enough by itself.")
		}
		if f.Solves {
			sc.Text(sc.costing(f))
		}
		if f.Plan != nil && sc.Link != nil {
			what := "this change"
			switch {
			case f.And != nil:
				what = "both"
			case f.Kind == sheet.NewPump:
				what = "such a pump"
			case f.Kind == sheet.MorePressure:
				what = "such a tap"
			}
			sc.HTML(` <a`).Attr("href", sc.Link(f.Plan)).HTML(`>Open the plan with `).Text(what).HTML(`</a>`)
		}
		sc.HTML(`</li>`)
	}
	sc.HTML(`</ul></div>`)
}
