package startup

import (
	"slices"

	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/trade/water"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// A length is a piece of tubing that fills as one: a run, a piece of the
// header, part of a row. With a law it is a device, which holds no water.
type length struct {
	from, to        int     // places
	long, bore      float64 // m
	rough, k, extra float64 // as in network.Link
	law             network.Law
	volume          float64 // m³
}

// Lines are the tubing that one zone's water fills, coarser than the network:
// while emitters are shut a row is one tube.
type lines struct {
	head     float64 // m, at place 0
	water    water.Water
	emitters []emitter.Emitter
	z        []float64 // m, by place
	drips    []float64 // by place: how many emitters drip there as soon as it is wet
	kind     []int     // by place: which
	lengths  []length
	place    []int // by node of the layout: its place, or -1
	meter    *work.Meter
}

// parts is into how many pieces a row is cut whose emitters drip at once: more
// for few rows, and fewer where that would take long.
func parts(rows int) int { return min(max(48/rows, 2), 6) }

// linesOf gathers the tubing of a zone. The rows of other zones stand behind
// valves that are shut.
func linesOf(l *layout.Layout, zone int) *lines {
	n := &l.Network
	f := &lines{head: n.Head, water: n.Water, emitters: Flushing(l), place: make([]int, len(n.Nodes)), meter: n.Meter}
	for i := range f.place {
		f.place[i] = -1
	}
	f.at(0, n.Nodes[0].Z)
	for i := range l.Stretches {
		s := &l.Stretches[i]
		row := s.Kind == layout.RowOf
		if row && l.ZoneOf(s.Index) != zone {
			continue
		}
		each := 1 // links to a piece
		if row {
			each = len(s.Links)
			if e := &l.Plan.Emitters[l.Plan.Rows[s.Index].Emitter]; e.Kind == plan.NonCompensating || e.Flushes == plan.WhenLow {
				each = max(1, len(s.Links)/parts(len(l.Plan.Rows)))
			}
		}
		f.stretch(n, s.Links, each, row)
	}
	return f
}

// at returns the place of a node, new if it has none.
func (f *lines) at(node int, z float64) int {
	if f.place[node] < 0 {
		f.place[node] = len(f.z)
		f.z = append(f.z, z)
		f.drips = append(f.drips, 0)
		f.kind = append(f.kind, network.None)
	}
	return f.place[node]
}

// stretch adds the links of a stretch, so many to a piece. The first of a row,
// which climbs from the header, is a piece of its own.
func (f *lines) stretch(n *network.Network, links []int, each int, row bool) {
	var c length
	drips, merged := 0.0, 0
	from := -1
	for i, k := range links {
		link := &n.Links[k]
		if from < 0 {
			from = link.From
			c = length{bore: link.Bore, rough: link.Roughness, law: link.Law}
		}
		c.long += link.Length
		c.k += link.K
		c.extra += link.Extra
		merged++
		to := &n.Nodes[link.To]
		if e := to.Emitter; e != network.None {
			if f.emitters[e].Kind == emitter.NonCompensating {
				drips += to.Count
			}
		}
		if merged < each && i < len(links)-1 && !(row && i == 0 && c.long > 0) {
			continue
		}
		c.from, c.to = f.at(from, n.Nodes[from].Z), f.at(link.To, to.Z)
		if c.law == nil {
			c.long = max(c.long, shortest)
			c.volume = pipe.Volume(c.long, c.bore)
		}
		f.lengths = append(f.lengths, c)
		if drips > 0 {
			f.drips[c.to] += drips
			f.kind[c.to] = emitterBefore(n, links[:i+1])
		}
		from, drips, merged = -1, 0, 0
	}
}

// emitterBefore returns the kind of the last emitter on links.
func emitterBefore(n *network.Network, links []int) int {
	for _, k := range slices.Backward(links) {
		if e := n.Nodes[n.Links[k].To].Emitter; e != network.None {
			return e
		}
	}
	return network.None
}

// shortest is a length in m that stands for none.
const shortest = 1e-6
