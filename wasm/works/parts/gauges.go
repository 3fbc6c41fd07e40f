package parts

import (
	"math"
	"slices"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/chain"
	"evenrow/wasm/works/layout"
)

// ranges holds the ends of the scales that pressure gauges are sold with, by
// system of units, in bar and psi: the nominal ranges of EN 837-1, from memory,
// and those of the trade in the United States (common practice, no source).
var ranges = [unit.Systems][]float64{
	unit.Metric: {0.6, 1, 1.6, 2.5, 4, 6, 10, 16, 25, 40},
	unit.US:     {15, 30, 60, 100, 160, 200, 300, 600},
}

// gauges adds the gauges that the guides ask for: before the filter and after
// it, and at the end of the last row. A regulator follows the filter, so that
// the first two see what the supply gives without it, and have a scale of their
// own. Where water stands no higher than a hose can be held, a hose takes the
// place of those behind it.
func (c *count) gauges() {
	n, before, where := 2, 0, words.Say("one at the supply")
	lead := layout.NoTube // the tubing that the tee of the first is cut into, else threads
	switch tank := c.Plan.Supply.Kind == plan.GravityTank; {
	case tank:
		r := &c.Plan.Runs[len(c.Plan.Runs)-1]
		lead = slices.Index(c.Tubes, layout.TubeOf(r.Tube, r.Bore))
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
		before = 2
	case c.Chains.Supply.Gauges() == 0:
		n, where = 1, ""
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
	if head := c.Network.Water.HeadOf(rest); head > 0 && head <= chain.Sight {
		long := words.Say("Clear hose, {length} long", unit.Text(unit.Length, c.sys, math.Ceil(2*head+0.5)/2))
		most := unit.Text(unit.Head, c.sys, head)
		if before > 0 {
			c.gaugeTees(layout.NoTube, before, 0, Leading)
		}
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
	if n += before; n > 1 {
		c.gaugeTees(lead, n-1, c.Feed, Leading)
	}
	c.gaugeTees(c.lastRow(), 1, c.Ends[len(c.Ends)-1], Rowing)
}

// lastRow returns the tubing of the row at whose end the last gauge stands.
func (c *count) lastRow() int {
	r := &c.Plan.Rows[len(c.Plan.Rows)-1]
	return slices.Index(c.Tubes, layout.TubeOf(r.Tube, r.Bore))
}

// gaugeTee is what a gauge stands on in tubing.
var gaugeTee = layout.Noun{Name: "gauge tee", The: "the gauge tee", Held: [...]words.Text{
	"Barbed tee with a thread of 1/4 in for a gauge", "Insert tee with a thread of 1/4 in for a gauge", "Compression tee with a thread of 1/4 in for a gauge"}}

// gaugeTees adds the tees of n gauges: cut into tubing at a node of a site, or between
// threads of the supply, which is none.
func (c *count) gaugeTees(tube, n, node int, at Site) {
	var by [Sites]float64
	if tube == layout.NoTube {
		by[at] = 1
		why := words.Say("one for each gauge at the supply, between the parts that it stands between; a filter with places for gauges has that of its own")
		for i := range c.Chains.Supply.Places {
			if p := &c.Chains.Supply.Places[i]; p.Device == chain.First || p.Device == chain.Second {
				name := words.Say("Tee, {thread}, at both ends, with a thread of 1/4 in for a gauge", p.In.Name(""))
				if p.In != p.Out {
					name = words.Say("Tee, {in}, to {out}, with a thread of 1/4 in for a gauge", p.In.Name(""), p.Out.Name(""))
				}
				c.add(Line{Item: AGaugeTee, Size: "thread " + c.endKey(p.In), Name: name, Count: 1, By: by,
					Why: why, Nodes: []int{node}})
				why = ""
			}
		}
		return
	}
	c.tees[tube] += n
	by[at] = float64(n)
	c.add(Line{Item: AGaugeTee, Size: c.size(tube), Name: words.Say("{part}, {size}", c.held(tube, &gaugeTee), c.Tubes[tube].Short(c.sys)), Count: n,
		Why: words.Say("one for each gauge in this tubing, where the gauge can stay"), Nodes: []int{node}, By: by})
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
	c.add(Line{Item: AGauge, Size: size, Name: name, Count: n, Why: words.Notes(where, scale)})
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
