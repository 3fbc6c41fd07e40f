package parts

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/layout"
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
		c.one(WaterPath, "Backflow device", "so that feed cannot run back into drinking water; your water supplier and local code say which kind, and on which side of the timer valve")
		c.one(WaterPath, "Timer valve", "on the tap")
	default:
		c.pump()
	}
	path := c.path()
	after := func(part string) string { return "from the plan, after " + path[max(0, slices.Index(path, part)-1)] }
	if f := &c.Plan.Filter; f.Present != 0 {
		c.one(WaterPath, "Filter, "+unit.Text(unit.Opening, c.sys, f.Opening), after(theFilter))
	}
	if c.regulated() {
		from := after(regulator)
		if s.Kind == plan.GravityTank {
			from = "from the plan, at the header: near the tank there is no pressure yet to take away"
		}
		c.one(WaterPath, "Pressure regulator, "+unit.Text(unit.Pressure, c.sys, s.Regulator), from)
	}
	c.connectors()
	c.gauges()
}

// connectors adds what joins the threads of the supply's parts. The tap and
// the device on it have a connector of their own.
func (c *count) connectors() {
	path, between := c.path(), []string(nil)
	if c.Plan.Supply.Kind == plan.Mains {
		path = path[1:]
	}
	for i := 1; i < len(path); i++ {
		between = append(between, "between "+path[i-1]+" and "+path[i])
	}
	c.add(Line{Group: WaterPath, Name: "Connector with the threads of the parts it joins", Count: len(between), Why: strings.Join(between, ", and ")})
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

// ranges holds the ends of the scales that pressure gauges are sold with, by
// system of units, in bar and psi: the nominal ranges of EN 837-1, from memory,
// and those of the trade in the United States (common practice, no source).
var ranges = [unit.Systems][]float64{
	unit.Metric: {0.6, 1, 1.6, 2.5, 4, 6, 10, 16, 25, 40},
	unit.US:     {15, 30, 60, 100, 160, 200, 300, 600},
}

// sightTube is the head in m at rest up to which a clear hose that is held
// upright reads better than a gauge: what an arm reaches. It is two fifths of
// the least of the ranges, of which gauges are good to a twentieth or so.
// Common practice, no source.
const sightTube = 2.5

// gauges adds the gauges that the guides ask for: before the filter and after
// it, and at the end of the last row. A regulator follows the filter, so that
// the first two see what the supply gives without it, and have a scale of their
// own. Where water stands no higher than a hose can be held, a hose takes the
// place of those behind it.
func (c *count) gauges() {
	at := "one at the end of the last row"
	if c.Plan.Header.Layout == plan.OneLine {
		at = "one at the end of the line"
	}
	n, where, filtered := 2, "one at the supply, ", "one before the filter, one after it"
	switch tank := c.Plan.Supply.Kind == plan.GravityTank; {
	case tank:
		where = "one at the header, since near the tank there is no pressure yet, "
	case c.regulated() && c.Curve != nil && c.FilterLink >= 0:
		n, where = 1, ""
		own := c.Plan.Supply
		own.Regulator = 0
		head, _ := layout.Drive(&own, c.Network.Water).Head(0)
		c.gauge(2, filtered+", both before the regulator", c.Network.Water.PressureHead(head), c.ahead)
	case c.FilterLink >= 0:
		n, where = 3, filtered+", "
	case c.regulated():
		where = "one after the regulator, "
	}
	rest := c.atRest()
	if c.Plan.Supply.Kind == plan.GravityTank && rest <= 0 {
		return // too low to show anything: the answer says so
	}
	if head := c.Network.Water.HeadOf(rest); head > 0 && head <= sightTube {
		c.one(WaterPath, "Clear hose, "+unit.Text(unit.Length, c.sys, math.Ceil(2*head+0.5)/2)+" long",
			"to hold vertical "+at[len("one "):]+", open at its top: water stands in it as high as its pressure there, "+
				unit.Text(unit.Head, c.sys, head)+" at most, which no common gauge shows as well")
		return
	}
	c.gauge(n, where+at, rest, c.working)
}

// gauge adds n gauges whose range has the pressure at rest in Pa on its scale,
// and the highest while watering within three quarters of it (EN 837-2, from
// memory).
func (c *count) gauge(n int, where string, rest, working float64) {
	name := "Pressure gauge"
	if rest > 0 {
		u := unit.Of(unit.Pressure, c.sys)
		top := u.FromInner(max(rest, working/0.75))
		for _, r := range ranges[c.sys] {
			if r >= top {
				top = r
				break
			}
		}
		name += ", 0 to " + strconv.FormatFloat(math.Ceil(10*top-1e-6)/10, 'f', -1, 64) + " " + u.Symbol
		where += "; with every emitter shut it reads at most " + unit.Text(unit.Pressure, c.sys, rest)
	} else {
		where += "; its scale must reach the pump's shut-off pressure"
	}
	c.add(Line{Group: WaterPath, Name: name, Count: n, Why: where + "; each on a tee with its thread, where the filter has no place for it"})
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
