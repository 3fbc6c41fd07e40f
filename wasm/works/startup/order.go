package startup

import (
	"math"

	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// rungs is how many steps the pressure is raised in, fewer for many plants,
// which take longer.
func rungs(nodes int) int { return min(max(40_000/nodes, 8), 40) }

// A ramp is a supply whose head at its outlet is let up from nothing. Without a
// curve of its own, behind a tank, it takes what is too much.
type ramp struct {
	law   network.Law // nil for a gravity tank without a regulator
	level float64     // m, at the source
	upTo  float64     // m
}

// Loss returns what the supply takes or gives, with no more head than upTo
// behind it.
func (r *ramp) Loss(q float64) (loss, slope float64) {
	if r.law != nil {
		loss, slope = r.law.Loss(q)
	}
	// Less a droop, so that it rises with the flow.
	const droop = 1 // m per m³/s
	if held := r.level - r.upTo + droop*q; held > loss {
		return held, droop
	}
	return loss, slope
}

// order raises the head at the supply in steps, and returns at which one each
// plant's emitters open, in m: 0 for those that drip as soon as they are wet or
// stand that low, for a tank the level with a minus sign when lower would do,
// infinite for those that stay shut, by index into l.Plants, NaN for those of
// other zones. At each step they open one after another, as in States.Fewest.
// Those that no water comes to in the running state stay shut.
func order(l *layout.Layout, n *network.Network, running *network.Solution) ([]float64, error) {
	at := make([]float64, len(l.Plants))
	comes := reachOf(l, n, running)
	lowest := math.Inf(1)
	for i := range l.Plants {
		at[i] = math.NaN()
		node := &n.Nodes[l.Plants[i].Node]
		if node.Emitter == network.None {
			continue
		}
		at[i] = math.Inf(1)
		if e := &n.Emitters[node.Emitter]; e.Kind == emitter.NonCompensating {
			if comes.gets(n, running, l.Plants[i].Node) {
				at[i] = 0
			}
		} else {
			lowest = min(lowest, node.Z+e.Opens)
		}
	}
	r := &ramp{level: n.Head}
	most := n.Head
	m := *n
	m.Links = append([]network.Link(nil), n.Links...)
	first := &m.Links[0]
	if l.Curve != nil {
		most, _ = l.Curve.Head(0)
		most += n.Head
	}
	if !(lowest <= most) {
		return at, nil
	}
	if l.Stretches[0].Kind != layout.Source {
		// Nothing stands before the tank's ways: its level itself rises.
		r = nil
	} else {
		r.law = first.Law
		first.Law = r
	}
	steps := rungs(len(n.Nodes))
	open := make([]bool, len(n.Nodes))
	var solver *network.Solver
	for k := range steps + 1 {
		upTo := lowest + (most-lowest)*float64(k)/float64(steps)
		if r == nil {
			m.Head = upTo
		} else {
			r.upTo = upTo
		}
		if solver == nil || r == nil {
			var err error
			if solver, err = network.NewSolver(&m); err != nil {
				return nil, err
			}
		}
		sol, err := slowly(solver, &m, open)
		if err != nil {
			return nil, err
		}
		open = sol.Open
		for i := range l.Plants {
			if k := l.Plants[i].Node; math.IsInf(at[i], 1) && open[k] && comes.gets(n, sol, k) {
				at[i] = upTo
				if l.Curve != nil { // a pump or a tap gives no less than nothing
					at[i] = max(upTo, 0)
				}
			}
		}
	}
	return at, nil
}
