package design

import (
	"math"

	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/pump"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/limit"
)

// judge finds the least supply of a candidate and whether, with it, every limit
// is met; then whether the supply of the plan does as well.
func (s *search) judge(c *found, zones []zone, a *lead, h *header, f *field) {
	c.head = math.Inf(-1)
	carried := true
	for i := range zones {
		for _, due := range [...]bool{false, true} {
			if due && s.fouling == 0 {
				break
			}
			head, flow, ok := s.least(&zones[i], a, i, due, limit.MarginOf(s.p, due).At)
			if !ok {
				s.r.Solved++
				s.fail(limit.Reach.Alone())
				return
			}
			c.head, c.flow = max(c.head, head), max(c.flow, flow)
			carried = carried && (s.own == nil || c.cost <= s.own.cost) && s.carries(head, flow)
		}
	}
	c.effort = s.effort(c.head, c.flow)
	c.power = max(0, pump.HydraulicPower(s.water.Density, c.flow, c.head))
	if s.beaten(c, carried) {
		s.r.Pruned++
		return
	}
	s.r.Solved++
	curve, rests, ok := s.supply(c.head, c.flow)
	why := limit.Reach.Alone()
	if ok {
		why = s.breaks(zones, a, curve, rests, h, f)
	}
	if why == 0 {
		s.keep(c)
	} else {
		s.fail(why)
	}
	if carried && s.better(c) && s.breaks(zones, a, s.mine, s.rests, h, f) == 0 {
		own := *c
		own.own = true
		s.own = &own
	}
}

// better says whether a candidate beats the best that the supply carries.
func (s *search) better(c *found) bool {
	return s.own == nil || c.cost < s.own.cost || c.cost == s.own.cost && c.effort < s.own.effort
}

// least returns the least head at the supply that zone i takes with a reserve, with
// the filter clean or due for cleaning, and its flow.
func (s *search) least(z *zone, a *lead, i int, due bool, reserve float64) (head, flow float64, ok bool) {
	head, flow, ok = z.least(reserve)
	if !ok {
		return 0, 0, false
	}
	if s.tree {
		loss := a.loss[i]
		if due {
			loss = a.fouled[i]
		}
		return max(head, a.lifts[i]) + loss, flow, true
	}
	loss, lift := a.at(flow, due)
	if lift > head+near {
		// The runs would draw air: more head, and with it more flow.
		head, flow, ok = rising(func(head float64) (float64, float64) {
			q := z.at(head).flow
			_, lift := a.at(q, due)
			return head - lift, q
		}, head, max(MostHead, lift+near))
		loss, _ = a.at(flow, due)
	}
	return head + loss, flow, ok
}

// Strengthen gives a plan a supply of a duty: a higher tank, or a pump whose
// parabola passes through the duty, or a little above, at four fifths of its
// shut-off head; in place of a tap, too.
func Strengthen(p *plan.Plan, head, flow float64) {
	p.Supply.Regulator = 0
	if p.Supply.Kind == plan.GravityTank {
		p.Runs[0].Rise -= max(0, Rise(p.Units, head))
		return
	}
	p.Supply.Kind = plan.PumpTwo
	p.Supply.ShutOff, p.Supply.MaxFlow = Through(numeric.RoundUp(head, 0.1), numeric.RoundUp(flow, 1e-3/600))
	f := plan.FieldNamed("supply", "shut-off")
	p.Supply.ShutOff = max(p.Supply.ShutOff, f.Min)
	f = plan.FieldNamed("supply", "max-flow")
	p.Supply.MaxFlow = max(p.Supply.MaxFlow, f.Min)
}

// Rise returns how much higher a tank is set to give head m more: that or a
// little more, such that the page prints it in full.
func Rise(sys unit.System, head float64) float64 {
	step := 0.05
	if sys == unit.US {
		step = 0.03048 // a tenth of a foot
	}
	return numeric.RoundUp(head, step)
}

// Through returns the shut-off head and the greatest flow of a pump, or a tap,
// whose parabola passes through the given point at four fifths of its shut-off
// head, about where small pumps are meant to run (common practice, no source).
func Through(head, flow float64) (shutOff, maxFlow float64) {
	return head / 0.8, flow / math.Sqrt(0.2)
}

// supply returns what drives the water with the least supply of a duty, and the
// head of still water, in the lead and behind it. It is not ok where the form
// takes no such supply.
func (s *search) supply(head, flow float64) (c pump.Curve, rests [2]float64, ok bool) {
	p := plan.Plan{Units: s.p.Units, Supply: s.p.Supply, Runs: []plan.Run{s.p.Runs[0]}}
	Strengthen(&p, head, flow)
	if s.gravity {
		raised := s.p.Runs[0].Rise - p.Runs[0].Rise
		return level(raised), [2]float64{raised, raised}, p.Runs[0].Rise >= plan.FieldNamed("runs", "rise").Min
	}
	c, err := pump.ByTwo(p.Supply.ShutOff, p.Supply.MaxFlow)
	ok = err == nil && p.Supply.ShutOff <= plan.FieldNamed("supply", "shut-off").Max && p.Supply.MaxFlow <= plan.FieldNamed("supply", "max-flow").Max
	return c, [2]float64{p.Supply.ShutOff, p.Supply.ShutOff}, ok
}

// A level is a tank's, which gives the same head at any flow.
type level float64

// Head returns the head.
func (l level) Head(float64) (h, slope float64) { return float64(l), 0 }

// Loss returns its opposite.
func (l level) Loss(float64) (loss, slope float64) { return -float64(l), 0 }

// LastFlow is without end.
func (l level) LastFlow() float64 { return math.Inf(1) }

// ownSupply reads what the plan's own supply gives.
func (s *search) ownSupply() {
	s.mine = s.base.Curve
	switch source := &s.base.Stretches[0]; {
	case s.mine != nil:
		h, _ := s.mine.Head(0)
		s.rests = [2]float64{h, h}
	case s.gravity:
		taken := 0.0
		if source.Kind == layout.Source {
			taken, _ = s.base.Network.Links[source.Links[0]].Law.Loss(0)
		}
		s.mine, s.rests = level(-taken), [2]float64{0, -taken}
	}
}

// breaks returns the limits that a candidate breaks with a supply.
func (s *search) breaks(zones []zone, a *lead, c pump.Curve, rests [2]float64, h *header, f *field) (why limit.Set) {
	if rests[0] > a.still || rests[1] > min(h.still, f.still) {
		why |= limit.Rating.Alone()
	}
	for i := range zones {
		z := &zones[i]
		head, flow, ok := s.operates(z, a, i, c)
		if !ok {
			return why | limit.Reach.Alone()
		}
		at := z.at(head)
		var lift float64
		if s.tree {
			lift = a.lifts[i]
		} else {
			_, lift = a.at(flow, false)
		}
		need := max(at.needs+limit.MarginOf(s.p, false).At, at.air, lift)
		if head < need-2*near || limit.CurveOf(c).Broken(flow) {
			why |= limit.Reach.Alone()
		}
		if s.fouling > 0 && !why.Has(limit.Reach) && !s.stillCarries(z, a, i, c) {
			why |= limit.Reach.Alone()
		}
		if head > at.top {
			why |= limit.Range.Alone()
		}
		if limit.SpeedOf(s.p).Broken(max(at.speed, a.fastest(flow))) {
			why |= limit.Speed.Alone()
		}
		if limit.EvennessOf(s.p).Broken(at.even) {
			why |= limit.Evenness.Alone()
		}
	}
	for _, g := range s.gushes(h, f) {
		loss, _ := a.at(g.flow, false)
		if h, _ := c.Head(g.flow); h < g.head+loss {
			why |= limit.Flushing.Alone()
			break
		}
	}
	return why
}

// operates returns the head at the feed and the flow where a zone meets a
// supply.
func (s *search) operates(z *zone, a *lead, i int, c pump.Curve) (head, flow float64, ok bool) {
	if z.loose == nil {
		h, _ := c.Head(z.flow)
		if s.tree {
			return h - a.loss[i], z.flow, true
		}
		loss, _ := a.at(z.flow, false)
		return h - loss, z.flow, true
	}
	short := func(head float64) (float64, float64) {
		q := z.at(head).flow
		h, _ := c.Head(q)
		loss, _ := a.at(q, false)
		return head - h + loss, q
	}
	// It is the least head that the zone needs, or more; else it does not carry.
	least, _, ok := z.least(limit.MarginOf(s.p, false).At)
	if !ok {
		return 0, 0, false
	}
	if over, _ := short(least); over > 2*near {
		return 0, 0, false
	}
	return rising(short, least, 2*MostHead)
}

// stillCarries says whether a supply carries a zone once the filter is due.
func (s *search) stillCarries(z *zone, a *lead, i int, c pump.Curve) bool {
	need, flow, ok := s.least(z, a, i, true, limit.MarginOf(s.p, true).At)
	if !ok {
		return false
	}
	h, _ := c.Head(flow)
	return h >= need-2*near
}

// gushes returns what flushing each row alone takes at the feed. It is the same
// whatever the zones are, so it is worked out once, and of rows that take the
// same flow only the most is kept.
func (s *search) gushes(h *header, f *field) []gush {
	if !s.flush {
		return nil
	}
	if f.place < len(h.gushes) && h.gushes[f.place] != nil {
		return h.gushes[f.place]
	}
	var list []gush
	lost := make([]float64, len(h.pieces))
	last := math.NaN()
	for r := range f.rows {
		g := f.rows[r].flush
		for i := range h.pieces {
			if c := &h.pieces[i]; g.flow != last {
				lost[i], _ = c.drag.Loss(g.flow)
				if c.before >= 0 {
					lost[i] += lost[c.before]
				}
			}
		}
		last = g.flow
		if i := h.leadsTo[r]; i >= 0 {
			g.head += lost[i]
		}
		i := 0
		for i < len(list) && list[i].flow != g.flow {
			i++
		}
		if i == len(list) {
			list = append(list, g)
		}
		list[i].head = max(list[i].head, g.head)
	}
	for len(h.gushes) <= f.place {
		h.gushes = append(h.gushes, nil)
	}
	h.gushes[f.place] = list
	return list
}

// bounds are what a zone takes at least, whatever its tubing.
type bounds struct {
	l *layout.Layout
}

type bound struct{ head, flow float64 }

func newBounds(l *layout.Layout) bounds { return bounds{l} }

// of returns the least head and flow of any zone's greatest: losses and rises
// of the lead are left out, so that it holds for every candidate.
func (b *bounds) of(p *plan.Plan, numbers []int) bound {
	most := bound{head: math.Inf(-1)}
	for _, number := range numbers {
		flow := 0.0
		for i := range b.l.Plants {
			pl := &b.l.Plants[i]
			if len(numbers) > 1 && p.Rows[pl.Row].Zone != number {
				continue
			}
			node := &b.l.Network.Nodes[pl.Node]
			e := &b.l.Network.Emitters[node.Emitter]
			q, _ := e.Open(e.Lowest)
			flow += node.Count * q
			most.head = max(most.head, node.Z+e.Lowest)
		}
		most.flow = max(most.flow, flow)
	}
	return most
}
