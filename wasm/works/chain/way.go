package chain

import (
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/ends"
)

// had is what was found for a gap.
type had struct {
	from, to ends.End
	pressure float64
	steps    []Step
	ok       bool
	reached  []ends.End
}

// supply puts the devices in their order, which is that of the water: a valve that shuts
// must not stand behind a backflow device, dirt is kept out of what follows the filter, and
// what a regulator lets through is steady for all that comes after it (common practice, no
// source, but for the first: see the caution).
func (c *Chains) supply() (w Way) {
	q := &c.q
	add := func(p Place) { w.Places = append(w.Places, p) }
	add(q.place(Outlet, plan.AtOutlet))
	if q.kind == plan.Mains || q.kind == plan.GravityTank {
		add(q.place(TimerValve, plan.AtTimer))
	}
	if q.kind == plan.Mains {
		add(q.place(Backflow, plan.AtBackflow))
	}
	regulator := q.regulator && q.kind != plan.GravityTank
	switch {
	case q.filter:
		f := q.place(Filter, plan.AtFilter)
		if q.gauges {
			add(q.gauge(First, f.In))
		}
		add(f)
		if q.gauges {
			add(q.gauge(Second, f.Out))
		}
	case q.gauges && !regulator:
		add(q.gauge(First, w.Places[len(w.Places)-1].Out))
	}
	if regulator {
		r := q.place(Regulator, plan.AtRegulator)
		add(r)
		if !q.filter && q.gauges {
			add(q.gauge(First, r.Out))
		}
	}
	add(Place{Device: Tubing, In: ends.Tubing(q.tube)})
	pressure := q.ahead
	for i := 1; i < len(w.Places); i++ {
		if w.Places[i-1].Device == Regulator {
			pressure = q.rest
		}
		w.Gaps = append(w.Gaps, c.gap(&w, i-1, pressure))
	}
	return w
}

// become notes what the way of a pump may yet become where another pump is bought: with a
// regulator or without, and with whatever its pressure asks of the seals.
func (c *Chains) become(p *plan.Plan) {
	if p.Supply.Kind == plan.Mains || p.Supply.Kind == plan.GravityTank {
		return
	}
	was := c.q
	for _, regulator := range [...]bool{false, true} {
		c.q.regulator, c.q.gauges = regulator, true
		for i := range ends.Seals {
			c.q.ahead = ends.Seals[i].Pressure
			c.q.rest = c.q.ahead
			if w := c.supply(); len(c.might) == 0 || !same(&w, &c.might[len(c.might)-1]) {
				c.might = append(c.might, w)
			}
		}
	}
	c.q = was
}

// same says whether two ways lose the same.
func same(a, b *Way) bool { return len(a.Places) == len(b.Places) && a.Loss(1) == b.Loss(1) }

// header is the way through a tank's regulator, which stands at the header.
func (c *Chains) header() {
	q := &c.q
	if q.kind != plan.GravityTank || !q.regulator {
		return
	}
	end := ends.Tubing(q.last)
	c.Header.Places = []Place{{Device: Tubing, Out: end}, q.place(Regulator, plan.AtRegulator), {Device: Tubing, In: end}}
	for i := range 2 {
		c.Header.Gaps = append(c.Header.Gaps, c.gap(&c.Header, i, 0))
	}
}

// gap looks for the parts behind one place of a way: such as carry the pressure, and if
// there are none, any.
func (c *Chains) gap(w *Way, at int, pressure float64) Gap {
	g := Gap{From: at, To: at + 1, Pressure: pressure}
	from, to, fewest := w.Places[at].Out, w.Places[at+1].In, c.q.ends.Shortest != 0
	g.Steps, g.OK, g.Reached = c.best(from, to, 0, fewest)
	if g.OK && pressure > 0 && !holds(from, to, g.Steps, pressure) {
		if steps, ok, _ := c.best(from, to, pressure, fewest); ok {
			g.Steps = steps
		} else {
			g.Weak = true
		}
	}
	for _, s := range g.Steps {
		g.Joints = append(g.Joints, ends.Mate(from, s.In))
		from = s.Out
		g.Price += c.Parts[s.Part].Price
	}
	g.Joints = append(g.Joints, ends.Mate(from, to))
	return g
}

// best is [Best] among the parts of the plan: what was searched once for a gap, at a pressure,
// is not searched again.
func (c *Chains) best(from, to ends.End, pressure float64, fewest bool) (steps []Step, ok bool, reached []ends.End) {
	for i := range c.had {
		if h := &c.had[i]; h.from == from && h.to == to && h.pressure == pressure {
			return h.steps, h.ok, h.reached
		}
	}
	steps, ok, reached = Best(c.Parts, from, to, pressure, fewest)
	c.had = append(c.had, had{from, to, pressure, steps, ok, reached})
	return steps, ok, reached
}

// holds says whether each joint of a chain carries a pressure. One that is best over all
// joints, and holds, is best over those that hold.
func holds(from, to ends.End, steps []Step, pressure float64) bool {
	for _, s := range steps {
		if !ends.Mate(from, s.In).Holds(pressure) {
			return false
		}
		from = s.Out
	}
	return ends.Mate(from, to).Holds(pressure)
}

// Other returns the parts of a gap by the other choice: the fewest beside the cheapest, or
// the cheapest beside the fewest; and what they cost.
func (c *Chains) Other(w *Way, g *Gap) (parts int, price float64) {
	pressure := g.Pressure
	if g.Weak {
		pressure = 0
	}
	steps, _, _ := Best(c.Parts, w.Places[g.From].Out, w.Places[g.To].In, pressure, c.q.ends.Shortest == 0)
	for _, s := range steps {
		price += c.Parts[s.Part].Price
	}
	return len(steps), price
}

// pair looks for the parts between two kinds of tubing.
func (c *Chains) pair(from, to int, thread bool) Pair {
	start := ends.Tubing(from)
	if thread {
		start = ends.BranchOf(from)
	}
	w := Way{Places: []Place{{Device: Branch, Out: start}, {Device: Tubing, In: ends.Tubing(to)}}}
	return Pair{from, to, thread, c.gap(&w, 0, c.q.rest)}
}

// Between returns the parts where two kinds of tubing meet, and whether any are needed: one
// fitting may hold both.
func (c *Chains) Between(from, to int, thread bool) (p Pair, needed bool) {
	if catalogue.Tubes[from].Meets(&catalogue.Tubes[to]) {
		return Pair{}, false
	}
	for i := range c.Pairs {
		if o := &c.Pairs[i]; o.From == from && o.To == to && o.Thread == thread {
			return *o, true
		}
	}
	own := *c // what others may be looking at is not changed
	own.had = nil
	return own.pair(from, to, thread), true
}
