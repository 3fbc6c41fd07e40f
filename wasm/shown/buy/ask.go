package buy

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/parts"
)

// asks are what to say to somebody who sells a part and knows nothing of the plan. What is
// asked for by its name alone is not among them.
var asks = [parts.Items]func(*part, *parts.Line) string{
	parts.ATube: func(sc *part, n *parts.Line) string {
		bore, outside := sc.sizes(n)
		if outside == 0 {
			return words.Say("Tubing with a bore of {bore}, measured, whatever its name says; black, so that nothing grows in it.", sc.Amount(unit.Bore, bore))
		}
		return words.Say("Tubing with a bore of {bore} and {outside} outside, measured, whatever its name says; black, so that nothing grows in it.", sc.Amount(unit.Bore, bore), sc.Amount(unit.Bore, outside))
	},
	parts.AClamp: func(*part, *parts.Line) string {
		return words.Say("Clamps of stainless steel that close in the middle of their range around the tubing once it is on its barb: try one on.")
	},
	parts.AnEmitter: func(sc *part, n *parts.Line) string {
		i, _ := strconv.Atoi(n.Size)
		if i >= len(sc.S.Plan.Emitters) {
			return ""
		}
		e := &sc.S.Plan.Emitters[i]
		flow := sc.Amount(unit.EmitterFlow, e.Flow)
		if e.Kind == plan.Compensating {
			return words.Say("Emitters that give {flow} at any pressure from {low} to {high}, and open at {opens} or less.",
				flow, sc.Amount(unit.Pressure, e.Lowest), sc.Amount(unit.Pressure, e.Highest), sc.Amount(unit.Pressure, e.Opens))
		}
		return words.Say("Emitters that give {flow} at {pressure}, all from one bag.", flow, sc.Amount(unit.Pressure, e.Nominal))
	},
	parts.ATank: func(sc *part, _ *parts.Line) string {
		return words.Say("A tank for {volume}, with a lid, of a plastic that light does not pass and that is fit for drinking water.", sc.Amount(unit.Volume, sc.S.Plan.Supply.Tank))
	},
	parts.ATimerValve: func(sc *part, _ *parts.Line) string {
		if sc.S.Plan.Supply.Kind == plan.GravityTank {
			return words.Say("A timer with a ball valve that a motor turns, so that it opens without pressure.")
		}
		return words.Say("A timer that opens a tap with {pressure} of pressure when nothing flows.", sc.Amount(unit.Pressure, sc.S.Plan.Supply.Static))
	},
	parts.APump: func(sc *part, _ *parts.Line) string {
		if w := sc.S.Wanted; w != nil {
			if !w.Does {
				return ""
			}
			if w.Regulator > 0 {
				return words.Say("A pump that lifts {head} at {flow}; what it gives with everything shut is no matter, because of a regulator behind it. Look at its curve, not at its power.",
					sc.Amount(unit.Head, w.Least), sc.Amount(unit.Flow, w.Flow))
			}
			return words.Say("A pump that lifts {head} at {flow}, and no more than {most} with everything shut. Look at its curve, not at its power.",
				sc.Amount(unit.Head, w.Least), sc.Amount(unit.Flow, w.Flow), sc.Amount(unit.Head, w.Most))
		}
		c, z := sc.S.Layout.Curve, sc.busiest()
		if c == nil || z == nil || z.Flow == 0 {
			return ""
		}
		own := sc.S.Layout.Plan.Supply
		own.Regulator = 0
		drive := layout.Drive(&own, sc.S.Layout.Network.Water)
		head, _ := drive.Head(z.Flow)
		shut, _ := drive.Head(0)
		return words.Say("A pump that lifts {head} at {flow}, and {most} with everything shut, as the one of this plan does. Look at its curve, not at its power.",
			sc.Amount(unit.Head, head), sc.Amount(unit.Flow, z.Flow), sc.Amount(unit.Head, shut))
	},
	parts.AFilter: func(sc *part, _ *parts.Line) string {
		f := &sc.S.Plan.Filter
		return words.Say("A filter with openings of {opening} that can be opened and washed, and that takes no more than {loss} while {flow} runs through it and it is clean.",
			sc.Amount(unit.Opening, f.Opening), sc.Amount(unit.Pressure, f.Clean), sc.Amount(unit.Flow, f.Rated))
	},
	parts.ARegulator: func(sc *part, _ *parts.Line) string {
		least, z := 0.0, sc.busiest()
		for i := range sc.S.Zones {
			if flow := sc.S.Zones[i].Flow; least == 0 || flow < least {
				least = flow
			}
		}
		set := sc.Amount(unit.Pressure, sc.S.Plan.Supply.Regulator)
		switch {
		case z == nil || z.Flow == 0:
			return ""
		case least == z.Flow:
			return words.Say("A pressure regulator that keeps {pressure} behind it while {flow} runs through it.", set, sc.Amount(unit.Flow, z.Flow))
		}
		return words.Say("A pressure regulator that keeps {pressure} behind it while from {least} to {most} run through it.", set, sc.Amount(unit.Flow, least), sc.Amount(unit.Flow, z.Flow))
	},
	parts.AGauge: func(_ *part, n *parts.Line) string {
		if n.Size == "" {
			return ""
		}
		return words.Say("A pressure gauge for water whose scale ends at {top}: a longer one shows too little of what is looked for here.", n.Size)
	},
	parts.APumpTimer: func(*part, *parts.Line) string {
		return words.Say("A timer whose contacts carry the current that the pump's label says, and more while it starts; for a motor, not only for lamps.")
	},
	parts.AMedium: func(sc *part, n *parts.Line) string {
		kind, _ := strconv.Atoi(n.Size)
		if kind >= len(catalogue.Media) {
			return ""
		}
		m := &catalogue.Media[kind]
		volume := sc.Amount(unit.Volume, m.Volume)
		if m.Empty {
			return words.Say("{medium} for {volume}, with holes for the drain, that light does not pass.", words.Say(m.Begin), volume)
		}
		return words.Say("{medium} of {volume} once it is wet, about {length} long.", words.Say(m.Begin), volume, sc.Amount(unit.Length, m.Length))
	},
}

// sizes are the bore and the outside of the tubing of a line, in m; 0 where it is not known.
func (sc *part) sizes(n *parts.Line) (bore, outside float64) {
	for _, i := range n.Stretches {
		t := &sc.S.Layout.Tubes[sc.S.Layout.Stretches[i].Tube]
		return t.Bore, t.Outside
	}
	return 0, 0
}

// busiest is the zone that takes most water, or nil.
func (sc *part) busiest() (z *sheet.ZoneResult) {
	for i := range sc.S.Zones {
		if o := &sc.S.Zones[i]; z == nil || o.Flow > z.Flow {
			z = o
		}
	}
	return z
}

// ask is what to say in a shop for a line; empty where its name says it.
func (sc *part) ask(n *parts.Line) string {
	if asks[n.Item] == nil {
		return ""
	}
	return asks[n.Item](sc, n)
}

// Ask is [part.ask] of a line of a sheet.
func Ask(s *sheet.Sheet, n *parts.Line) string {
	sc := part{scene.New(s, nil)}
	return sc.ask(n)
}

// Asks lists what to say in the shop.
func Asks(the *scene.Scene) {
	sc := part{the}
	if len(sc.S.Parts) == 0 {
		sc.Say("p", "There is nothing to buy yet.")
		return
	}
	sc.Table(words.Say("Parts in plain words"), words.Say("Part"), words.Say("In plain words")).Rows(func(t *block.Table) {
		for i := range sc.S.Parts {
			if said := sc.ask(&sc.S.Parts[i]); said != "" {
				t.Row(sc.S.Parts[i].Name, said)
			}
		}
	})
}
