// Package chain finds the parts that lead the water from the outlet that a grower has,
// through timer valve, backflow device, gauges, filter and regulator, to the tubing, over
// joints that truly mate.
package chain

import (
	"math"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/ends"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/trade/water"
)

// A Device is a place on the way of the water.
type Device uint8

const (
	Outlet     Device = iota // of the tap, the pump or the tank
	TimerValve               // where a timer opens the water
	Backflow                 // the device that lets nothing back into drinking water
	First                    // the gauge before the filter, or the only one at the supply
	Filter
	Second // the gauge after the filter
	Regulator
	Tubing         // the supply line, or a row
	Branch         // the thread of a tee between two kinds of tubing
	Devices = iota // how many there are
)

// A Place is a device with its two ends.
type Place struct {
	Device  Device
	In, Out ends.End
	Chosen  bool // by the grower: else the ends are the usual ones, which is assumed
}

// A Gap is what joins one place to the next.
type Gap struct {
	From, To int // indices into Way.Places
	Steps    []Step
	Joints   []ends.Rule // one more than Steps; of a Gap that is not OK what the two ends alone would be
	OK       bool
	Weak     bool    // no parts carry the pressure that may stand there, and these do not
	Pressure float64 // Pa, the most that may stand there
	Price    float64 // of the steps

	Reached []ends.End // of one that is not OK: the ends that parts lead to from its beginning
}

// A Way is a chain of places and the parts between them.
type Way struct {
	Places []Place
	Gaps   []Gap // one less than Places
}

// Price is what the parts cost, in the currency of the plan.
func (w *Way) Price() (price float64) {
	for i := range w.Gaps {
		price += w.Gaps[i].Price
	}
	return price
}

// Parts is how many parts there are.
func (w *Way) Parts() (n int) {
	for i := range w.Gaps {
		n += len(w.Gaps[i].Steps)
	}
	return n
}

// Gauges is how many gauges stand on the way.
func (w *Way) Gauges() (n int) {
	for i := range w.Places {
		if d := w.Places[i].Device; d == First || d == Second {
			n++
		}
	}
	return n
}

// Chains are all ways of a plan.
type Chains struct {
	Parts  []Part // that were searched; steps are indices into it
	Supply Way    // from the outlet to the supply line
	Pairs  []Pair // where two kinds of tubing meet
	Header Way    // of a tank's regulator: from the supply line through it; else without places
	q      question
	had    []had   // gaps that were searched
	rest   float64 // Pa at rest behind the regulator
	ahead  float64 // and before it
	might  []Way   // what Supply may yet become, of a pump that is still to be bought
}

// had is what was found for a gap.
type had struct {
	from, to ends.End
	pressure float64
	steps    []Step
	ok       bool
	reached  []ends.End
}

// A Pair is where a fitting cannot hold both of two kinds of tubing, indices into
// catalogue.Tubes.
type Pair struct {
	From, To int
	Thread   bool // the fitting at From has a thread for To: a tee or an elbow; else a joiner is all that stands there
	Gap      Gap  // from that thread, or from the tubing, to the tubing
}

// maxPairs is how many such places are held apart: more kinds of tubing than that nobody
// mixes, and where a plan does, the last are searched anew each time.
const maxPairs = 8

// A question is all that the ways depend on: what is asked again is answered from before.
type question struct {
	kind, tube, last          int
	metric, measured          bool    // what the supply line is, and whether any tubing is of a measured bore
	rest, ahead               float64 // Pa at rest behind the regulator, and before it
	gauges, filter, regulator bool
	ends                      plan.Ends
	own                       [plan.MaxFittings]ends.Part
	fittings                  int
	pairs                     [maxPairs]struct {
		from, to int
		thread   bool
	}
	met int
}

// sight is the head in m at rest up to which a clear hose shows the pressure better than
// a gauge: common practice, no source.
const Sight = 2.5

// ask is what the ways of a plan depend on. Pressures are rounded up to a tenth of a bar: no
// seal is known better.
func ask(p *plan.Plan) (q question, rest, ahead float64) {
	q = question{
		kind: p.Supply.Kind, tube: p.Runs[0].Tube, last: p.Runs[len(p.Runs)-1].Tube,
		filter: p.Filter.Present != 0, regulator: p.Supply.Regulated(), ends: p.Ends, fittings: len(p.Fittings),
	}
	for i := range p.Fittings {
		f := &p.Fittings[i]
		q.own[i] = ends.Part{A: ends.All[f.A], B: ends.All[f.B], Price: f.Price}
	}
	q.metric = catalogue.Tubes[q.tube].Metric()
	if q.tube == catalogue.Custom {
		q.metric = p.Units == 0
	}
	w := water.At(p.Place.Water)
	switch p.Supply.Kind {
	case plan.PumpPoints:
		q.ahead = w.PressureHead(p.Supply.Points[0].Head)
	case plan.PumpTwo:
		q.ahead = w.PressureHead(p.Supply.ShutOff)
	case plan.Mains:
		q.ahead = p.Supply.Static
	}
	q.rest = q.ahead
	if q.regulator {
		q.rest = min(q.rest, p.Supply.Regulator)
	}
	q.gauges = p.Supply.Kind != plan.GravityTank && (p.Supply.Sought() || w.HeadOf(q.rest) > Sight || q.filter && q.regulator)
	rest, ahead = q.rest, q.ahead
	q.measured = p.Uses(catalogue.Custom)
	q.rest, q.ahead = class(rest), class(ahead)
	q.meet(p)
	return q, rest, ahead
}

// meet notes where two kinds of tubing meet in a plan.
func (q *question) meet(p *plan.Plan) {
	pair := func(from, to int, thread bool) {
		if catalogue.Tubes[from].Meets(&catalogue.Tubes[to]) {
			return
		}
		for i := range q.met {
			if o := &q.pairs[i]; o.from == from && o.to == to && o.thread == thread {
				return
			}
		}
		if q.met < maxPairs {
			o := &q.pairs[q.met]
			o.from, o.to, o.thread = from, to, thread
			q.met++
		}
	}
	for i := 1; i < len(p.Runs); i++ {
		pair(p.Runs[i-1].Tube, p.Runs[i].Tube, false)
	}
	last := p.Runs[len(p.Runs)-1].Tube
	if p.Header.Layout == plan.OneLine || len(p.Rows) == 1 {
		pair(last, p.Rows[0].Tube, false)
		for i := 1; i < len(p.Rows); i++ {
			pair(p.Rows[i-1].Tube, p.Rows[i].Tube, true)
		}
		return
	}
	if p.Header.Feed == plan.FeedMiddle {
		pair(p.Header.Tube, last, true)
	} else {
		pair(last, p.Header.Tube, false)
	}
	for i := range p.Rows {
		pair(p.Header.Tube, p.Rows[i].Tube, true)
	}
}

// class rounds a pressure up to the next one that a seal carries: between two of them
// the same parts serve.
func class(pressure float64) float64 {
	next := math.Inf(1)
	for i := range ends.Seals {
		if p := ends.Seals[i].Pressure; p >= pressure {
			next = min(next, p)
		}
	}
	if pressure <= 0 {
		return 0
	}
	return next
}

// Of returns the ways of a plan that was checked. The same is returned for plans whose
// ends, order, tubing, pressures and own fittings are the same.
func Of(p *plan.Plan) *Chains {
	q, rest, ahead := ask(p)
	if c := known(q); c != nil {
		if c.rest == rest && c.ahead == ahead {
			return c
		}
		other := *c
		other.rest, other.ahead = rest, ahead
		return &other
	}
	c := &Chains{q: q, rest: rest, ahead: ahead}
	for _, part := range ends.Parts {
		if (!part.Rare || q.ends.Mixed != 0) && (q.measured || !part.Of(catalogue.Custom)) {
			c.Parts = append(c.Parts, Part{part, -1})
		}
	}
	for i := range q.fittings {
		c.Parts = append(c.Parts, Part{q.own[i], i})
	}
	c.Supply = c.supply()
	c.header()
	c.become(p)
	for i := range q.met {
		o := &q.pairs[i]
		c.Pairs = append(c.Pairs, c.pair(o.from, o.to, o.thread))
	}
	keep(c)
	return c
}

// usual are the threads that a place commonly has, by the family of the supply line: with tubing in mm
// pumps have G 1 male, taps and tanks G 3/4 male, filters a tapered male thread at either
// side, regulators female ones; with those of the United States pumps, tanks and filters
// have 3/4 in NPT male, taps and what stands on them hose threads. Common practice, no
// source.
func (q *question) usual(place int) (in, out ends.End) {
	end := func(f ends.Family, s ends.Sex, size int) ends.End { return ends.End{Family: f, Sex: s, Size: size} }
	const three = ends.ThreeQuarter
	if q.metric {
		switch place {
		case plan.AtOutlet:
			if q.kind == plan.Mains || q.kind == plan.GravityTank {
				return in, end(ends.Parallel, ends.Male, three)
			}
			return in, end(ends.Parallel, ends.Male, ends.One)
		case plan.AtFilter:
			return end(ends.Taper, ends.Male, three), end(ends.Taper, ends.Male, three)
		case plan.AtRegulator:
			return end(ends.Parallel, ends.Female, three), end(ends.Parallel, ends.Female, three)
		}
		return end(ends.Parallel, ends.Female, three), end(ends.Parallel, ends.Male, three)
	}
	switch place {
	case plan.AtOutlet:
		if q.kind == plan.Mains {
			return in, end(ends.HoseThread, ends.Male, three)
		}
		return in, end(ends.PipeThread, ends.Male, three)
	case plan.AtFilter:
		return end(ends.PipeThread, ends.Male, three), end(ends.PipeThread, ends.Male, three)
	case plan.AtRegulator:
		return end(ends.PipeThread, ends.Female, three), end(ends.PipeThread, ends.Female, three)
	}
	return end(ends.HoseThread, ends.Female, three), end(ends.HoseThread, ends.Male, three)
}

// place is a device with the ends that the grower has chosen, or the usual ones.
func (q *question) place(d Device, at int) Place {
	p := Place{Device: d}
	p.In, p.Out = q.usual(at)
	if e, chosen := plan.EndOf(q.ends.In[at]); chosen && at != plan.AtOutlet {
		p.In, p.Chosen = e, true
	}
	if e, chosen := plan.EndOf(q.ends.Out[at]); chosen {
		p.Out, p.Chosen = e, true
	}
	return p
}

// gauge is a tee for a gauge, of the thread that it stands next to: female at either side, and
// of hose threads, as they are sold, female where the water comes in and male where it goes out.
func (q *question) gauge(d Device, next ends.End) Place {
	e := ends.End{Family: next.Family, Sex: ends.Female, Size: next.Size}
	if e.Family == ends.Taper {
		e.Family = ends.Parallel
	}
	out := e
	if e.Family == ends.HoseThread {
		out.Sex = ends.Male
	}
	return Place{Device: d, In: e, Out: out}
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

// Loss returns the loss coefficient of what stands between the supply and the supply line,
// on the velocity in tubing of a bore in m. Of a pump it is the most that the way may become
// with another one, so that a duty that is asked for is enough.
func (c *Chains) Loss(bore float64) float64 {
	k := c.Supply.Loss(bore)
	for i := range c.might {
		k = max(k, c.might[i].Loss(bore))
	}
	return k
}

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

// UnionLoss is the loss coefficient of a threaded joint, on the velocity within it.
const UnionLoss = 0.08

// Loss returns the loss coefficient of all that stands between the places of a way, and
// of its gauges' tees, on the velocity in tubing of a bore in m. What the devices take the
// plan says itself.
func (w *Way) Loss(bore float64) (k float64) {
	for i := range w.Gaps {
		k += w.Gaps[i].Loss(bore)
	}
	for i := range w.Places {
		if p := &w.Places[i]; p.Device == First || p.Device == Second {
			k += narrow(p.In, p.Out, bore, catalogue.Fittings[catalogue.TeeThrough].K)
		}
	}
	return k
}

// Loss is that of the parts of a gap.
func (g *Gap) Loss(bore float64) (k float64) {
	for _, s := range g.Steps {
		k += narrow(s.In, s.Out, bore, UnionLoss)
	}
	return k
}

// narrow is the loss coefficient of a part, on the velocity in tubing of a bore in m: the
// lesser bore of its two ends narrows the way, and it has a coefficient of its own on the
// velocity there. An end that is pushed into tubing is counted with the tubing.
func narrow(a, b ends.End, bore, own float64) (k float64) {
	free := a.Bore()
	if other := b.Bore(); free == 0 || other > 0 && other < free {
		free = other
	}
	if free == 0 {
		return 0 // of tubing to tubing
	}
	r := bore / free
	k = own * r * r * r * r
	if free < bore {
		k += pipe.Insert(free, bore)
	}
	return k
}

// Missing is the first gap of the ways that no parts close, with its way; nil for none.
func (c *Chains) Missing() (*Gap, *Way) {
	for _, w := range [...]*Way{&c.Supply, &c.Header} {
		for i := range w.Gaps {
			if !w.Gaps[i].OK {
				return &w.Gaps[i], w
			}
		}
	}
	return nil, nil
}

// Broken is how many places there are where two kinds of tubing meet and no parts lead
// from one to the other.
func (c *Chains) Broken() (n int) {
	for i := range c.Pairs {
		if !c.Pairs[i].Gap.OK {
			n++
		}
	}
	return n
}

// Weak is the first gap whose parts carry less than they may have to, or nil.
func (c *Chains) Weak() *Gap {
	for _, w := range [...]*Way{&c.Supply, &c.Header} {
		for i := range w.Gaps {
			if w.Gaps[i].Weak {
				return &w.Gaps[i]
			}
		}
	}
	return nil
}

// Weakest is the joint of a weak gap that carries least.
func (g *Gap) Weakest() (rule ends.Rule, weak bool) {
	least := math.Inf(1)
	for _, r := range g.Joints {
		if g.Weak && ends.Seals[r].Pressure < least {
			rule, least = r, ends.Seals[r].Pressure
		}
	}
	return rule, g.Weak
}

// Stands is the pressure in Pa that may stand at a gap of a way, at the level of the
// supply, with every outlet shut.
func (c *Chains) Stands(w *Way, g *Gap) float64 {
	for i := range g.From + 1 {
		if w.Places[i].Device == Regulator {
			return c.rest
		}
	}
	return c.ahead
}

// MateOf is an end that mates with another: such as a fitting needs that closes a gap.
func MateOf(e ends.End) ends.End {
	for _, o := range ends.All {
		if ends.Mate(e, o).Holds(0) && o.Family != ends.Taper {
			return o
		}
	}
	for _, o := range ends.All {
		if ends.Mate(e, o).Holds(0) {
			return o
		}
	}
	return e
}
