package sheet

import (
	"math"

	"evenrow/wasm/trade/evenness"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// solveZone turns the water on for one zone, all its emitters shut, and
// measures what comes of it.
func solveZone(l *layout.Layout, zone int) (ZoneResult, error) {
	n := l.Zone(zone)
	sol, err := network.Solve(n)
	if err != nil {
		return ZoneResult{}, err
	}
	z := ZoneResult{Zone: zone, Solution: sol, Flow: sol.Total, Head: n.Head}
	if l.Curve != nil {
		z.Head, _ = l.Curve.Head(sol.Total)
	}
	z.tally(l, n)
	z.uniformity(l, n)
	z.speeds(l)
	z.Budget = budget(l, n, &z)
	z.Fouled = z.Margin
	if extra := l.Network.Water.HeadOf(l.Plan.Filter.Fouling); l.FilterLink >= 0 && extra > 0 {
		worse, err := network.Hold(l.Fouled(n, extra), sol.Open)
		if err != nil {
			return ZoneResult{}, err
		}
		z.Fouled, _ = margin(l, n, worse)
	}
	return z, nil
}

// tally counts the zone's emitters by state and finds the worst and the best.
func (z *ZoneResult) tally(l *layout.Layout, n *network.Network) {
	best := math.Inf(-1)
	for i := range l.Plants {
		node := &n.Nodes[l.Plants[i].Node]
		if node.Emitter == network.None {
			continue
		}
		e, h := &n.Emitters[node.Emitter], z.Solution.Head[l.Plants[i].Node]-node.Z
		z.Emitters += int(node.Count)
		state := stateOf(e, z.Solution.Open[l.Plants[i].Node], h)
		if state > Shut {
			z.Open += int(node.Count)
		}
		switch state {
		case Below:
			z.Below += int(node.Count)
		case Above:
			z.Above += int(node.Count)
		}
		if m := h - e.Lowest; m > best {
			best, z.Best = m, i
		}
	}
	z.Margin, z.Worst = margin(l, n, z.Solution)
}

// margin returns the least head that an emitter of the network has above the
// lowest of its range, in m, and whose plant that is.
func margin(l *layout.Layout, n *network.Network, sol *network.Solution) (least float64, plant int) {
	least = math.Inf(1)
	for i := range l.Plants {
		node := &n.Nodes[l.Plants[i].Node]
		if node.Emitter == network.None {
			continue
		}
		if m := sol.Head[l.Plants[i].Node] - node.Z - n.Emitters[node.Emitter].Lowest; m < least {
			least, plant = m, i
		}
	}
	return least, plant
}

// uniformity measures the flows of the zone's plants twice: as they are, and as
// shares of what each plant's emitters are made to give, times the mean of
// that.
func (z *ZoneResult) uniformity(l *layout.Layout, n *network.Network) {
	var flows, shares []float64
	nominal, first := 0.0, 0.0
	z.Least, z.PerPlant = math.Inf(1), math.Inf(1)
	for i := range l.Plants {
		k := l.Plants[i].Node
		node := &n.Nodes[k]
		if node.Emitter == network.None {
			continue
		}
		e, q := &n.Emitters[node.Emitter], z.Solution.Out[k]
		made := e.Flow * node.Count
		if len(flows) == 0 {
			first = made
		}
		z.Mixed = z.Mixed || math.Abs(made-first) > 1e-9*first
		flows = append(flows, q)
		shares = append(shares, q/made)
		nominal += made
		z.Least = min(z.Least, q)
		z.CV = max(z.CV, e.CV)
		z.PerPlant = min(z.PerPlant, node.Count)
	}
	for i := range shares {
		shares[i] *= nominal / float64(len(shares))
	}
	z.Even = evenness.Of(shares, z.PerPlant, z.CV)
	z.Alike = evenness.Of(flows, z.PerPlant, z.CV)
}

// speeds finds the largest velocity of each rank of tubing.
func (z *ZoneResult) speeds(l *layout.Layout) {
	of := [...]*float64{layout.Lead: &z.LeadSpeed, layout.Main: &z.HeaderSpeed, layout.Lateral: &z.RowSpeed}
	for i := range l.Stretches {
		s := &l.Stretches[i]
		for _, k := range s.Links {
			if link := &l.Network.Links[k]; link.Law == nil {
				v := of[s.Rank()]
				*v = max(*v, math.Abs(pipe.Velocity(z.Solution.Flow[k], link.Bore)))
			}
		}
	}
}
