package design

import (
	"math"
	"slices"

	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/trade/evenness"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// A loose is a zone that the solver is asked about, at one head at the feed
// after another. All rows are in it: rings, lines and single rows have one zone.
type loose struct {
	s      *search
	l      *layout.Layout
	net    *network.Network
	solver *network.Solver
	head   *held
	open   []bool
}

// A held is a source of one head at any flow.
type held float64

// Loss returns the opposite of the head.
func (h *held) Loss(float64) (loss, slope float64) { return -float64(*h), 0 }

// A through is a way without a loss: the lead, for a network that begins at the
// feed.
type through struct{}

// Loss returns nothing.
func (through) Loss(float64) (loss, slope float64) { return 0, 0 }

// looseOf returns a zone of a layout, beginning at the feed.
func (s *search) looseOf(l *layout.Layout, number int) (*loose, bool) {
	a := &loose{s: s, l: l, net: l.Zone(number), head: new(held), open: slices.Repeat([]bool{true}, len(l.Points))}
	a.net.Links = slices.Clone(a.net.Links)
	var law network.Law = a.head
	for i := range l.Stretches {
		if st := &l.Stretches[i]; st.Rank() == layout.Lead {
			for _, k := range st.Links {
				a.net.Links[k] = network.Link{From: a.net.Links[k].From, To: a.net.Links[k].To, Law: law}
				law = through{}
			}
		}
	}
	var err error
	a.solver, err = network.NewSolver(a.net)
	return a, err == nil
}

// at solves the zone.
func (a *loose) at(head float64) *zone {
	*a.head = held(head)
	z := &zone{needs: math.Inf(1), air: math.Inf(-1), top: math.Inf(1)}
	sol, _, err := a.solver.Hold(a.open)
	if err != nil {
		a.s.work += 100 * len(a.net.Nodes) // about as many steps as it gives up after
		return z
	}
	a.s.work += sol.Iterations * len(a.net.Nodes)
	z.flow, z.needs = sol.Total, math.Inf(-1)
	n, least, sum, cv, fewest := 0, math.Inf(1), 0.0, 0.0, math.Inf(1)
	for i := range a.l.Plants {
		k := a.l.Plants[i].Node
		node := &a.net.Nodes[k]
		e := &a.net.Emitters[node.Emitter]
		lost := head - sol.Head[k] + node.Z
		z.needs, z.top = max(z.needs, lost+e.Lowest), min(z.top, lost+e.Highest)
		share := sol.Out[k] / (e.Flow * node.Count)
		n, least, sum = n+1, min(least, share), sum+share
		cv, fewest = max(cv, e.CV), min(fewest, node.Count)
	}
	z.even = evenness.Design(cv, fewest, least*float64(n)/sum)
	for i := range a.l.Stretches {
		st := &a.l.Stretches[i]
		if st.Kind == layout.HeaderOf || st.Kind == layout.Between {
			to := a.net.Links[st.Links[len(st.Links)-1]].To
			z.air = max(z.air, head-sol.Head[to]+a.net.Nodes[to].Z)
		}
		if st.Rank() == layout.Main {
			for _, k := range st.Links {
				z.speed = max(z.speed, math.Abs(pipe.Velocity(sol.Flow[k], a.net.Links[k].Bore)))
			}
		}
	}
	return z
}

// near is how close to a root in m is close enough: a hundredth of what a gauge
// shows, and a tenth of what package sheet looks for.
const near = 1e-4

// lowest is a head that the feed must have at least: what an emitter needs, and
// its height.
func (a *loose) lowest() float64 {
	most := math.Inf(-1)
	for i := range a.l.Plants {
		node := &a.net.Nodes[a.l.Plants[i].Node]
		most = max(most, node.Z+a.net.Emitters[node.Emitter].Lowest)
	}
	return most
}

// rising returns the head between two where a measure that rises with it is 0
// within near, and the flow there. It begins with the tangent of slope 1, which
// is that of fixed flows, and goes on by secants held in the bracket.
func rising(f func(head float64) (measure, flow float64), lo, hi float64) (head, flow float64, ok bool) {
	below, flow := f(lo)
	if below >= -near {
		return lo, flow, true
	}
	b := numeric.Bracket{Lo: lo, Hi: hi, AtLo: below, AtHi: math.NaN()}
	head = lo - below*1.02
	for range 60 {
		if !(head > b.Lo && head < b.Hi) {
			head = b.Lo + (b.Hi-b.Lo)/2
		}
		now, q := f(head)
		switch {
		case math.Abs(now) < near:
			return head, q, true
		case math.IsNaN(now):
			return 0, 0, false
		case now < 0 && math.IsNaN(b.AtHi):
			// Still below: onwards along the last secant, at least twice as far.
			next := head + max(head-b.Lo, -now*(head-b.Lo)/(now-b.AtLo))
			b.Lo, b.AtLo, head = head, now, next
			if b.Hi-b.Lo < near {
				return 0, 0, false
			}
		default:
			b.Narrow(head, now)
			head = b.Secant()
		}
	}
	return 0, 0, false
}
