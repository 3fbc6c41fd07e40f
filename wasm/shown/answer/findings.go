package answer

import (
	"math"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
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

// change says what a change does.
func (sc part) change(f *sheet.Change) string { return changes[f.Kind](sc, f) }

// changes have a row for each kind of change, in the order of [sheet.FixesOf]. That
// of a redesign is never asked: it takes a whole fix.
var changes [sheet.FixKinds]func(sc part, f *sheet.Change) string = [...]func(sc part, f *sheet.Change) string{
	sheet.NewPump: func(sc part, f *sheet.Change) string { return sc.stronger(&anotherPump, f, sc.Head(f.Value)) },
	sheet.RaiseTank: func(sc part, f *sheet.Change) string {
		return words.Say("Raise the tank by {length}.", sc.Amount(unit.Length, f.Value))
	},
	sheet.MorePressure: func(sc part, f *sheet.Change) string { return sc.stronger(&anotherTap, f, sc.HeadOf(f.Value)) },
	sheet.AddRegulator: func(sc part, f *sheet.Change) string {
		if sc.S.Plan.Supply.Regulator > 0 {
			return words.Say("Set the regulator to {pressure}.", sc.HeadOf(f.Value))
		}
		return words.Say("Put a pressure regulator, set to {pressure}, before the header.", sc.HeadOf(f.Value))
	},
	sheet.WiderLead: func(_ part, f *sheet.Change) string {
		return words.Say("Lay the supply line in {size} tubing.", tube(f.Index))
	},
	sheet.WiderHeader: func(_ part, f *sheet.Change) string {
		return words.Say("Make the header of {size} tubing.", tube(f.Index))
	},
	sheet.WiderRows: func(_ part, f *sheet.Change) string {
		return words.Say("Lay the rows in {size} tubing.", tube(f.Index))
	},
	sheet.MiddleFeed: func(part, *sheet.Change) string { return words.Say("Feed the header in its middle.") },
	sheet.MoreZones: func(_ part, f *sheet.Change) string {
		return words.Say("Split the rows into {n} {n|zone|zones}, and water one after another.", words.N(f.Index))
	},
	sheet.CleanerFilter: func(sc part, f *sheet.Change) string {
		return words.Say("Clean the filter sooner: when it takes {pressure} more than it does clean.", sc.Amount(unit.Pressure, f.Value))
	},
	sheet.LowerEmitters: func(sc part, f *sheet.Change) string {
		return words.Say("Use emitters of the same flow that keep it from {pressure} on.", sc.HeadOf(f.Value))
	},
	sheet.CloseRing: func(part, *sheet.Change) string {
		return words.Say("Tie the far ends of the rows with a second header.")
	},
	sheet.OneEmitter: func(sc part, f *sheet.Change) string {
		r := &sc.S.Plan.Rows[f.Index]
		return words.Say("Give every plant what row {row} has: {n} {n|emitter|emitters} of {flow}.",
			words.N(f.Index+1), words.N(r.PerPlant), sc.Amount(unit.EmitterFlow, sc.S.Plan.Emitters[r.Emitter].Flow))
	},
	sheet.OwnZones: func(_ part, f *sheet.Change) string {
		return words.Say("Water rows with different emitters in zones of their own, {n} in all, each for its own time.", words.N(f.Index))
	},
	sheet.Redesign: nil,
}

// A supply is how another pump or tap is asked for: what it must give at the
// least, and what it may give at the most or what stands behind it.
type supply struct{ least, before, set, behind, most, without words.Text }

var (
	anotherPump = supply{
		least:   "Use a pump that gives at least {head} at {flow}.",
		before:  "Use a pump that gives at least {head} at {flow}, before the regulator that you have.",
		set:     "Use a pump that gives at least {head} at {flow}, and set the regulator to {pressure}.",
		behind:  "Use a pump that gives at least {head} at {flow}, and behind it a pressure regulator set to {pressure}.",
		most:    "Use a pump that gives at least {head} at {flow}, and at most {most} with everything shut.",
		without: "Use a pump that gives at least {head} at {flow}, and at most {most} with everything shut, without the regulator.",
	}
	anotherTap = supply{
		least:   "Find a tap that keeps at least {head} while it gives {flow}.",
		before:  "Find a tap that keeps at least {head} while it gives {flow}, before the regulator that you have.",
		set:     "Find a tap that keeps at least {head} while it gives {flow}, and set the regulator to {pressure}.",
		behind:  "Find a tap that keeps at least {head} while it gives {flow}, and behind it a pressure regulator set to {pressure}.",
		most:    "Find a tap that keeps at least {head} while it gives {flow}, and at most {most} with every tap closed.",
		without: "Find a tap that keeps at least {head} while it gives {flow}, and at most {most} with every tap closed, without the regulator.",
	}
)

// stronger asks for another pump or tap, of a head at the least.
func (sc part) stronger(t *supply, f *sheet.Change, head string) string {
	flow, now := sc.Amount(unit.Flow, f.Flow), sc.S.Plan.Supply.Regulator
	switch {
	case f.Regulator > 0 && f.Regulator == now:
		return words.Say(t.before, head, flow)
	case f.Regulator > 0 && now > 0:
		return words.Say(t.set, head, flow, sc.HeadOf(f.Regulator))
	case f.Regulator > 0:
		return words.Say(t.behind, head, flow, sc.HeadOf(f.Regulator))
	case f.Most == 0:
		return words.Say(t.least, head, flow)
	case now > 0:
		return words.Say(t.without, head, flow, sc.Head(f.Most))
	}
	return words.Say(t.most, head, flow, sc.Head(f.Most))
}

// tube is the short name of a size of tubing.
func tube(i int) string { return words.Say(catalogue.Tubes[i].Short) }

// remedy says a fix, a sentence for each of its changes.
func (sc part) remedy(f *sheet.Fix) string {
	does := ""
	switch {
	case f.Design == nil:
		does = sc.change(&f.Change)
	case f.Flow > 0:
		does = words.Say("Use other sizes ({design}) with {source} of the plan below.", sc.made(f.Design, false), sc.TheSource())
	default:
		does = words.Say("Use other sizes ({design}).", sc.made(f.Design, false))
	}
	if f.And != nil {
		return words.Say("Do both: {first} {second}", does, sc.change(f.And))
	}
	return does
}

// costing says what a fix costs more or less than the plan.
func (sc part) costing(f *sheet.Fix) string {
	now := design.Cost(sc.S.Layout)
	more := sheet.DearerBy(now, now+f.Cost)
	by := sc.Amount(unit.Money, math.Abs(more))
	switch {
	case !f.Unpriced && more == 0:
		return words.Say("It costs no more.")
	case !f.Unpriced && more > 0:
		return words.Say("It costs {more} more than your plan.", by)
	case !f.Unpriced:
		return words.Say("It costs {less} less than your plan.", by)
	case more == 0:
		return words.Say("Its price is not in the plan.")
	case more > 0:
		return words.Say("The tubing and valves cost {more} more than your plan; the price of the other change is not in the plan.", by)
	}
	return words.Say("The tubing and valves cost {less} less than your plan; the price of the other change is not in the plan.", by)
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

// Helps says what would help. A fix that carries a plan leads to it.
func Helps(the *scene.Scene) {
	sc := part{the}
	list := sc.S.Fixes
	if len(list) == 0 && !sc.S.Untried {
		return
	}
	sc.HTML(`<div class="fixes">`)
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
