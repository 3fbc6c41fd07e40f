package parts

import (
	"slices"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
)

// waterPath adds what stands before the lead.
func (c *count) waterPath() {
	s := &c.Plan.Supply
	if s.Kind != plan.Mains {
		c.tank()
	}
	switch s.Kind {
	case plan.GravityTank:
		c.one(ATankOutlet, "", words.Say("Tank outlet with a thread, fit for drinking water"), words.Say("where the water leaves the tank"))
		c.one(ATimerValve, "", words.Say("Timer valve that opens without pressure"), words.Say("a tank gives too little pressure for a valve that needs some to open"))
	case plan.Mains:
		c.one(ABackflow, "", words.Say("Backflow device"), words.Say("so that feed cannot run back into drinking water; your water supplier and local code say which kind, and on which side of the timer valve; a vacuum breaker at the tap has no valve behind it that shuts, and no pressure on it for more than {n} hours at a time", words.N(breakerHours)))
		c.one(ATimerValve, "", words.Say("Timer valve"), words.Say("on the tap"))
	default:
		c.pump()
	}
	path := c.path()
	after := func(part words.Text) string {
		return words.Say("from the plan, after {part}", words.Say(path[max(0, slices.Index(path, part)-1)]))
	}
	if f := &c.Plan.Filter; f.Present != 0 {
		c.one(AFilter, "", words.Say("Filter, {opening}", unit.Text(unit.Opening, c.sys, f.Opening)), words.Notes(after(theFilter), words.Say("opaque, or kept in the dark, so that nothing grows in it")))
	}
	if c.regulated() {
		from := after(theRegulator)
		if s.Kind == plan.GravityTank {
			from = words.Say("from the plan, at the header: near the tank there is no pressure yet to take away")
		}
		c.one(ARegulator, "", words.Say("Pressure regulator, {pressure}", unit.Text(unit.Pressure, c.sys, s.Regulator)), from)
	}
	c.connectors()
	c.gauges()
}

// pump adds the pump and what keeps people safe from it.
func (c *count) pump() {
	if b := c.buy; b != nil {
		least := words.Say("Pump that gives at least {head} at {flow}", unit.Text(unit.Head, c.sys, b.Least), unit.Text(unit.Flow, c.sys, b.Flow))
		if b.Most > 0 {
			c.one(APump, "", least, words.Say("and at most {most} with everything shut; look at its curve, not at its power", unit.Text(unit.Head, c.sys, b.Most)))
		} else {
			c.one(APump, "", least, words.Say("before the regulator; look at its curve, not at its power"))
		}
	} else {
		c.one(APump, "", words.Say("Pump with the curve of this plan"), words.Say("from the plan"))
	}
	c.one(AProtectedOutlet, "", words.Say("Outlet with ground-fault protection (GFCI, or RCD of 30 mA or less)"),
		words.Say("for the pump's plug: it reduces the risk of a deadly shock and does not remove it; local code comes first, and fixed wiring is a licensed electrician's work"))
	c.one(APlugCover, "", words.Say("Weatherproof cover for plug and timer"),
		words.Say("keeps them dry, above splash and off the ground; one that stays shut with the plug in it"))
	c.one(ACordHook, "", words.Say("Hook for the pump's cord"),
		words.Say("holds a loop of the cord below the outlet, so that water drips off it there and does not run into the plug"))
	c.one(APumpTimer, "", words.Say("Timer for the pump"), words.Say("its contacts must be rated for the pump's current"))
}

// breakerHours is for how many hours at a time a vacuum breaker of a hose tap may stand under
// pressure: a list of a city and a state's guide on backflow.
const breakerHours = 12
