package startup

import (
	"math"

	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// A reach is how high the water of a running zone stands, or would, in m, by
// node: minus infinity beyond a height that it never gets over. What lies higher
// stays dry.
type reach []float64

// reachOf finds it for a state. Where nothing flows the water stands at the
// heads. Where it flows, it has come over each height of the lead and the header
// that still water gets up to, and in the rows it stands at the heads.
func reachOf(l *layout.Layout, n *network.Network, sol *network.Solution) reach {
	r := append(reach(nil), sol.Head...)
	for i := range l.Stretches {
		if st := &l.Stretches[i]; st.Kind != layout.RowOf && sol.Total > 0 {
			for _, k := range st.Links {
				r[n.Links[k].To] = l.Still(st)
			}
		}
	}
	come := make([]bool, len(r))
	come[0] = true
	for again := true; again; {
		again = false
		for i := range l.Stretches {
			st := &l.Stretches[i]
			for _, k := range st.Links {
				a, b := n.Links[k].From, n.Links[k].To
				if come[b] {
					a, b = b, a
				}
				// Within a row the answer looks at each emitter by itself.
				if come[a] && !come[b] && (st.Kind == layout.RowOf || r[a] >= n.Nodes[a].Z-brim) {
					come[b], again = true, true
				}
			}
		}
	}
	for i := range r {
		if !come[i] {
			r[i] = math.Inf(-1)
		}
	}
	return r
}

// gets says whether a node's emitters give water in a state: they are open, and
// it stands above them.
func (r reach) gets(n *network.Network, sol *network.Solution, node int) bool {
	return sol.Open[node] && sol.Head[node] > n.Nodes[node].Z && !math.IsInf(r[node], -1)
}

// open counts the emitters that give water in a state.
func (r reach) open(n *network.Network, sol *network.Solution) int {
	sum := 0
	for i := range n.Nodes {
		if n.Nodes[i].Emitter != network.None && r.gets(n, sol, i) {
			sum += int(n.Nodes[i].Count)
		}
	}
	return sum
}

// full returns the share of a link, from its lower end, that is full.
func (r reach) full(n *network.Network, link *network.Link) float64 {
	lo, hi := link.From, link.To
	if n.Nodes[lo].Z > n.Nodes[hi].Z {
		lo, hi = hi, lo
	}
	bottom, top := n.Nodes[lo].Z, n.Nodes[hi].Z
	switch {
	case r[lo] < bottom-brim:
		return 0
	case r[hi] >= top-brim:
		return 1
	case top == bottom:
		return 0
	}
	level := r[hi] // nothing flows through what is half full
	if math.IsInf(level, -1) {
		level = r[lo]
	}
	return min(max((level-bottom)/(top-bottom), 0), 1)
}
