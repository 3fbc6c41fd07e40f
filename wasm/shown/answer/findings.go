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

// Findings lists everything worth a look, by weight.
func Findings(the *scene.Scene) {
	sc := part{the}
	if len(sc.S.Findings) == 0 {
		sc.Say("p", "Nothing. Every figure is within the limits that you set.")
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
		return words.Say("It costs no more.")
	case !f.Unpriced:
		return words.Say("It costs {more}.", more)
	case more == "":
		return words.Say("Its price is not in the plan.")
	}
	return words.Say("The tubing and valves cost {more}; the price of the other change is not in the plan.", more)
}

// beyond says why no pump and no tap alone can do it.
func (sc part) beyond(f *sheet.Fix) string {
	head := f.Value
	if f.Kind == sheet.MorePressure {
		head /= sc.Weight
	}
	least, flow, most := sc.Head(head), sc.Amount(unit.Flow, f.Flow), sc.Head(f.Breaks.Limit)
	if f.Breaks.Kind == sheet.OverRating {
		return words.Say("{none} alone can do it: it would have to give {head} at {flow}, and the weakest tubing may carry {most} in the sun.", sc.NoSource(), least, flow, most)
	}
	return words.Say("{none} alone can do it: it would have to give {head} at {flow}, and the emitters are made for {most} at most.", sc.NoSource(), least, flow, most)
}

// fixes says what would help. A fix that carries a plan leads to it.
func (sc part) fixes() {
	list := sc.S.Fixes
	if len(list) == 0 && !sc.S.Untried {
		return
	}
	sc.HTML(`<div class="fixes"><h2 class="fixes__head">`).Text(words.Say("What helps")).HTML(`</h2>`)
	if len(list) > 1 && !list[0].Unpriced {
		if list[len(list)-1].Unpriced {
			sc.Say("p", "Cheapest first, at the prices under Prices; what they do not cover comes last.")
		} else {
			sc.Say("p", "Cheapest first, at the prices under Prices.")
		}
	}
	if sc.S.Untried {
		sc.Say("p", "Not every change was tried: for this plan that takes too long. There may be others, and cheaper ones.")
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
		does, costs := words.Say("It helps, but is not enough by itself."), ""
		if f.Solves {
			does, costs = words.Say("With it, the answer is Yes."), sc.costing(f)
		}
		if f.Solves && f.And != nil {
			does = words.Say("With both, the answer is Yes.")
		}
		sc.HTML(`<li>`).Text(words.Sentences(sc.remedy(f), does, costs))
		if f.Plan != nil && sc.Link != nil {
			var open words.Text
			switch {
			case f.And != nil:
				open = "Open the plan with both"
			case f.Kind == sheet.NewPump:
				open = "Open the plan with such a pump"
			case f.Kind == sheet.MorePressure:
				open = "Open the plan with such a tap"
			default:
				open = "Open the plan with this change"
			}
			sc.HTML(` <a`).Attr("href", sc.Link(f.Plan)).HTML(`>`).Text(words.Say(open)).HTML(`</a>`)
		}
		sc.HTML(`</li>`)
	}
	sc.HTML(`</ul></div>`)
}
