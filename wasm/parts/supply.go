package parts

import (
	"evenrow/wasm/plan"
	"evenrow/wasm/unit"
)

// waterPath adds what stands before the lead.
func (c *count) waterPath() {
	s := &c.Plan.Supply
	if s.Kind != plan.Mains {
		c.one(WaterPath, "Tank with a lid, "+unit.Text(unit.Volume, c.sys, s.Tank),
			"from the plan; the lid keeps out light, leaves and children")
	}
	switch s.Kind {
	case plan.GravityTank:
		c.one(WaterPath, "Tank outlet with a thread", "where the water leaves the tank")
		c.one(WaterPath, "Timer valve that opens without pressure", "a tank gives too little pressure for a valve that needs some to open")
	case plan.Mains:
		c.one(WaterPath, "Hose-thread connector with its washer", "on the tap; the washer seals, not tape")
		c.one(WaterPath, "Backflow device", "on the tap, so that feed cannot run back into drinking water; your water supplier and local code say which kind")
		c.one(WaterPath, "Timer valve", "on the tap")
	default:
		c.pump()
	}
	n := 0
	why := ""
	if c.regulated() {
		from := "from the plan, after " + c.outlet()
		why = "between " + c.outlet() + " and the regulator"
		if s.Kind == plan.GravityTank {
			from = "from the plan, at the header: near the tank there is no pressure yet to take away"
			why = "between the lead and the regulator"
		}
		c.one(WaterPath, "Pressure regulator, "+unit.Text(unit.Pressure, c.sys, s.Regulator), from)
		n++
	}
	if f := &c.Plan.Filter; f.Present != 0 {
		c.one(WaterPath, "Filter, "+unit.Text(unit.Opening, c.sys, f.Opening), "from the plan, directly after the supply")
		n++
		if why != "" && s.Kind == plan.GravityTank {
			why += ", and between " + c.outlet() + " and the filter"
		} else if why != "" {
			why += ", and between the regulator and the filter"
		} else {
			why = "between " + c.outlet() + " and the filter"
		}
	}
	c.add(Line{Group: WaterPath, Name: "Connector with the threads of the parts it joins", Count: n, Why: why})
	c.gauge()
}

// pump adds the pump and what keeps people safe from it.
func (c *count) pump() {
	if c.Curve == nil {
		c.one(WaterPath, "Pump", "its power alone does not say which; find one with a curve first")
	} else {
		c.one(WaterPath, "Pump with the curve of this plan", "from the plan")
	}
	c.one(WaterPath, "Outlet with ground-fault protection (GFCI, or RCD of 30 mA or less)",
		"for the pump's plug: it reduces the risk of a deadly shock and does not remove it; local code comes first, and fixed wiring is a licensed electrician's work")
	c.one(WaterPath, "Weatherproof cover for plug and timer",
		"keeps them dry, above splash and off the ground; let the cord hang in a loop below the outlet, so that water drips off it there")
	c.one(WaterPath, "Timer for the pump", "its contacts must be rated for the pump's current")
}

// gauge adds a gauge that the highest pressure of the plan does not harm: that
// of the supply at no flow, at the lowest place.
func (c *count) gauge() {
	name := "Pressure gauge"
	if top := c.atRest(); top > 0 {
		name += ", to " + unit.Text(unit.Pressure, c.sys, top) + " or more"
	}
	c.one(WaterPath, name, "to compare the header and the far ends with the pressures expected; with every emitter shut it reads at most that")
}

// atRest returns the highest pressure in Pa that can stand in the tubing while
// nothing flows.
func (c *count) atRest() float64 {
	head := c.Network.Head
	if c.Curve != nil {
		head, _ = c.Curve.Head(0)
	}
	lowest := 0.0
	for i := range c.Points {
		lowest = min(lowest, c.Points[i].Z)
	}
	return c.Network.Water.PressureHead(head - lowest)
}
