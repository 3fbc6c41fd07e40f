package fault

import (
	"math"

	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/trade/filter"
	"evenrow/wasm/trade/pump"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// most is how far dirt is followed, in m at the rated flow: where the flow is a
// hundredth of that, a hundred metres.
const most = 1e6

// A laggard is a zone in which something grows.
type laggard struct {
	*zone
	net    *network.Network
	solver *network.Solver
	set    func(amount float64)
}

// slow follows what grows in a zone, and says whether the flows settled.
func (f *Faults) slow(z *zone) bool {
	l := z.l
	if l.FilterLink >= 0 {
		dirty := l.Clean
		law := &dirt{&dirty}
		g := z.laggard(func(n *network.Network) { n.Links[l.FilterLink].Law = law })
		if g == nil {
			return false
		}
		g.set = func(amount float64) { dirty.Extra = amount }
		s := Slow{Kind: Dirt}
		if !g.follow(&s, most, f.soonest(Dirt)) {
			return false
		}
		if f.first(s) {
			g.set(l.Network.Water.HeadOf(l.Plan.Filter.Fouling))
			sol, _, err := g.solver.Hold(z.was.Open)
			if err != nil {
				return false
			}
			due := g.read(sol, 0)
			f.Due = &due
		}
	}
	if l.Curve == nil {
		return f.sinking(z)
	}
	source := l.Stretches[0].Links[0]
	law := &drive{l.Curve}
	g := z.laggard(func(n *network.Network) { n.Links[source].Law = law })
	if g == nil {
		return false
	}
	g.set = func(amount float64) { law.Curve = worn(l, amount, true) }
	s := Slow{Kind: Wear}
	if !g.follow(&s, 0.99, f.soonest(Wear)) {
		return false
	}
	f.first(s)
	return true
}

// sinking follows the level of a gravity tank.
func (f *Faults) sinking(z *zone) bool {
	// What a regulator takes away it takes less of first.
	spare := 0.0
	if s := &z.l.Stretches[0]; s.Kind == layout.Source {
		spare, _ = z.l.Network.Links[s.Links[0]].Law.Loss(0)
	}
	g := z.laggard(func(*network.Network) {})
	if g == nil {
		return false
	}
	level := g.net.Head
	g.set = func(amount float64) { g.net.Head = level - max(0, amount-spare) }
	s := Slow{Kind: Sinking}
	if !g.follow(&s, spare+200, f.soonest(Sinking)) {
		return false
	}
	f.first(s)
	return true
}

// soonest returns the amount at which a zone that was followed fails, or 0.
func (f *Faults) soonest(kind Kind) float64 {
	for i := range f.Slow {
		if s := &f.Slow[i]; s.Kind == kind && !s.Never {
			return s.Amount
		}
	}
	return 0
}

// first keeps a fault if there is none of its kind that comes sooner, and says
// whether it did.
func (f *Faults) first(s Slow) bool {
	for i := range f.Slow {
		if o := &f.Slow[i]; o.Kind == s.Kind {
			if o.Already || o.Amount <= s.Amount && !o.Never || s.Never {
				return false
			}
			*o = s
			return true
		}
	}
	f.Slow = append(f.Slow, s)
	return true
}

// laggard makes a network of the zone with a law of its own; nil where it
// cannot be solved.
func (z *zone) laggard(change func(*network.Network)) *laggard {
	n := z.l.Zone(z.number)
	n.Links = append([]network.Link(nil), n.Links...)
	change(n)
	s, err := network.NewSolver(n)
	if err != nil {
		return nil
	}
	return &laggard{zone: z, net: n, solver: s}
}

// follow grows the fault until an emitter that is open is at the lower end of
// its range, or until fewer open than did. It says whether the flows settled.
// sooner is where another zone fails, 0 for none: what lasts as long as that is
// not followed further.
func (g *laggard) follow(s *Slow, end, sooner float64) bool {
	s.Zone, s.Was = g.number, g.read(g.was, 0)
	s.Now = s.Was
	settled := true
	margin := func(amount float64) float64 {
		g.set(amount)
		sol, _, err := g.solver.Hold(g.was.Open)
		if err != nil {
			settled = false
			return 0
		}
		var m float64
		m, s.Plant = g.margin(sol)
		return m
	}
	lasts := func(amount float64) bool {
		g.set(amount)
		sol, err := g.solver.Start()
		if err != nil {
			settled = false
			return false
		}
		return sol.Unsteady == 0 && open(sol) == open(g.was)
	}
	if m := margin(0); m < 0 || g.was.Unsteady > 0 {
		s.Already = true
		return settled
	}
	// Where another zone fails first there is nothing to search for.
	if sooner > 0 && margin(sooner) >= 0 && lasts(sooner) {
		s.Amount, s.Never = sooner, true
		return settled
	}
	hi := min(end, 0.125)
	for margin(hi) >= 0 && hi < end {
		hi = min(2*hi, end)
	}
	if margin(hi) >= 0 {
		s.Never = settled
	} else {
		s.Amount = numeric.Root(margin, 0, hi)
		margin(s.Amount)
	}
	if s.Never {
		s.Amount = end
	}
	// Water is turned on afresh every time, with every emitter shut.
	if settled && !lasts(s.Amount*(1-1e-9)) {
		s.Opening, s.Never = true, false
		lo, hi := 0.0, s.Amount
		for range 30 {
			mid := (lo + hi) / 2
			if lasts(mid) {
				lo = mid
			} else {
				hi = mid
			}
		}
		s.Amount = lo
	}
	if !settled || s.Never {
		return settled
	}
	g.set(s.Amount)
	sol, _, err := g.solver.Hold(g.was.Open)
	if err != nil {
		return false
	}
	share := 0.0
	if s.Kind == Wear {
		share = s.Amount
	}
	s.Now = g.read(sol, share)
	return true
}

// margin returns the least head that an open emitter has above the lowest of
// its range, in m, and whose plant that is.
func (z *zone) margin(sol *network.Solution) (least float64, plant int) {
	least, plant = math.Inf(1), -1
	for i := range z.l.Plants {
		p := &z.l.Plants[i]
		if !z.was.Open[p.Node] || z.l.ZoneOf(p.Row) != z.number {
			continue
		}
		node := &z.l.Network.Nodes[p.Node]
		if m := sol.Head[p.Node] - node.Z - z.l.Network.Emitters[node.Emitter].Lowest; m < least {
			least, plant = m, i
		}
	}
	return least, plant
}

// open counts the nodes whose emitters are open.
func open(sol *network.Solution) (n int) {
	for _, o := range sol.Open {
		if o {
			n++
		}
	}
	return n
}

// dirt is a filter whose loss can be changed.
type dirt struct{ *filter.Filter }

// drive is a supply that can be changed.
type drive struct{ pump.Curve }

// worn is what drives the water when a supply has lost a share of its head at
// every flow, behind its regulator or before it: how a pump wears whose wheel
// lets more water slip back is common practice, no source.
func worn(l *layout.Layout, share float64, behind bool) pump.Curve {
	s := l.Plan.Supply
	s.Regulator = 0
	var c pump.Curve = weak{layout.Drive(&s, l.Network.Water), 1 - share}
	if behind && l.Plan.Supply.Regulator > 0 {
		c = pump.Regulated(c, l.Network.Water.HeadOf(l.Plan.Supply.Regulator))
	}
	return c
}

// weak is a supply that gives a share of its head at every flow. The points of its
// curve are not changed: of two that hardly differ the smaller might then round to
// the other.
type weak struct {
	pump.Curve
	left float64
}

func (w weak) Head(q float64) (h, slope float64) {
	h, slope = w.Curve.Head(q)
	return h * w.left, slope * w.left
}

func (w weak) Loss(q float64) (loss, slope float64) {
	loss, slope = w.Curve.Loss(q)
	return loss * w.left, slope * w.left
}
