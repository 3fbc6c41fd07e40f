package parts

import (
	"math"
	"slices"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/layout"
)

// waterPath adds what stands before the lead.
func (c *count) waterPath() {
	s := &c.Plan.Supply
	if s.Kind != plan.Mains {
		c.one(ATank, "", words.Say("Tank with a lid, {volume}", unit.Text(unit.Volume, c.sys, s.Tank)),
			words.Say("from the plan; the lid keeps out light, leaves and children"))
	}
	switch s.Kind {
	case plan.GravityTank:
		c.one(ATankOutlet, "", words.Say("Tank outlet with a thread"), words.Say("where the water leaves the tank"))
		c.one(ATimerValve, "", words.Say("Timer valve that opens without pressure"), words.Say("a tank gives too little pressure for a valve that needs some to open"))
	case plan.Mains:
		c.one(AConnector, "tap", words.Say("Hose-thread connector with its washer"), words.Say("on the tap; the washer seals, not tape"))
		c.one(ABackflow, "", words.Say("Backflow device"), words.Say("so that feed cannot run back into drinking water; your water supplier and local code say which kind, and on which side of the timer valve"))
		c.one(ATimerValve, "", words.Say("Timer valve"), words.Say("on the tap"))
	default:
		c.pump()
	}
	path := c.path()
	after := func(part words.Text) string {
		return words.Say("from the plan, after {part}", words.Say(path[max(0, slices.Index(path, part)-1)]))
	}
	if f := &c.Plan.Filter; f.Present != 0 {
		c.one(AFilter, "", words.Say("Filter, {opening}", unit.Text(unit.Opening, c.sys, f.Opening)), after(theFilter))
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

// connectors adds what joins the threads of the supply's parts. The tap and
// the device on it have a connector of their own.
func (c *count) connectors() {
	path := c.path()
	if c.Plan.Supply.Kind == plan.Mains {
		path = path[1:]
	}
	why := ""
	for i := 1; i < len(path); i++ {
		one := words.Say("between {part} and {next}", words.Say(path[i-1]), words.Say(path[i]))
		if i > 1 {
			one = words.Say("{these}, and {next}", why, one)
		}
		why = one
	}
	c.add(Line{Item: AConnector, Name: words.Say("Connector with the threads of the parts it joins"), Count: max(0, len(path)-1), Why: why})
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
		words.Say("keeps them dry, above splash and off the ground; let the cord hang in a loop below the outlet, so that water drips off it there"))
	c.one(APumpTimer, "", words.Say("Timer for the pump"), words.Say("its contacts must be rated for the pump's current"))
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
	n, where := 2, words.Say("one at the supply")
	switch tank := c.Plan.Supply.Kind == plan.GravityTank; {
	case tank:
		where = words.Say("one at the header, since near the tank there is no pressure yet")
	case c.regulated() && c.Curve != nil && c.FilterLink >= 0:
		n, where = 1, ""
		own := c.Plan.Supply
		own.Regulator = 0
		head, _ := layout.Drive(&own, c.Network.Water).Head(0)
		if c.buy != nil {
			head = 0 // nobody knows what it will give
		}
		c.gauge(2, words.Say("one before the filter, one after it, both before the regulator"), c.Network.Water.PressureHead(head), c.ahead)
	case c.FilterLink >= 0:
		n, where = 3, words.Say("one before the filter, one after it")
	case c.regulated():
		where = words.Say("one after the regulator")
	}
	rest := c.atRest()
	if c.Plan.Supply.Kind == plan.GravityTank && rest <= 0 {
		return // too low to show anything: the answer says so
	}
	oneLine := c.Plan.Header.Layout == plan.OneLine
	if head := c.Network.Water.HeadOf(rest); head > 0 && head <= sightTube {
		long := words.Say("Clear hose, {length} long", unit.Text(unit.Length, c.sys, math.Ceil(2*head+0.5)/2))
		most := unit.Text(unit.Head, c.sys, head)
		if oneLine {
			c.one(AClearHose, "", long, words.Say("to hold vertical at the end of the line, open at its top: water stands in it as high as its pressure there, {head} at most, which no common gauge shows as well", most))
		} else {
			c.one(AClearHose, "", long, words.Say("to hold vertical at the end of the last row, open at its top: water stands in it as high as its pressure there, {head} at most, which no common gauge shows as well", most))
		}
		return
	}
	last := words.Say("one at the end of the last row")
	if oneLine {
		last = words.Say("one at the end of the line")
	}
	c.gauge(n, words.List(where, last), rest, c.working)
}

// gauge adds n gauges whose range has the pressure at rest in Pa on its scale,
// and the highest while watering within three quarters of it (EN 837-2, from
// memory).
func (c *count) gauge(n int, where string, rest, working float64) {
	size, name, scale := "", words.Say("Pressure gauge"), words.Say("its scale must reach the pump's shut-off pressure")
	if rest > 0 {
		u := unit.Of(unit.Pressure, c.sys)
		top := u.FromInner(max(rest, working/0.75))
		for _, r := range ranges[c.sys] {
			if r >= top {
				top = r
				break
			}
		}
		size = strconv.FormatFloat(math.Ceil(10*top-1e-6)/10, 'f', -1, 64) + " " + u.Symbol
		name = words.Say("Pressure gauge, 0 to {top}", size)
		scale = words.Say("with every emitter shut it reads at most {pressure}", unit.Text(unit.Pressure, c.sys, rest))
	}
	c.add(Line{Item: AGauge, Size: size, Name: name, Count: n, Why: words.Notes(where, scale, words.Say("each on a tee with its thread, where the filter has no place for it"))})
}

// atRest returns the highest pressure in Pa that can stand in the tubing while
// nothing flows.
func (c *count) atRest() float64 {
	head := c.Network.Head
	if c.Curve != nil {
		head, _ = c.Curve.Head(0)
	}
	if c.buy != nil && c.buy.Most > 0 {
		head = c.buy.Most
	}
	lowest := 0.0
	for i := range c.Points {
		lowest = min(lowest, c.Points[i].Z)
	}
	return c.Network.Water.PressureHead(head - lowest)
}
