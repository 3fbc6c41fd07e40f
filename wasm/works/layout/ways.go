package layout

import (
	"slices"

	"evenrow/wasm/works/network"
)

// Zone returns the network while zone z is watered: the same nodes and links,
// with the emitters of other zones taken away. A zone that no row is in has no
// emitters.
func (l *Layout) Zone(z int) *network.Network {
	n := l.Network
	n.Nodes = slices.Clone(n.Nodes)
	for i := range l.Plants {
		p := &l.Plants[i]
		if l.ZoneOf(p.Row) != z {
			n.Nodes[p.Node].Emitter, n.Nodes[p.Node].Count = network.None, 0
		}
	}
	return &n
}

// Fouled returns a network of this layout with a filter that loses extra m
// more than when it is clean, at its rated flow. Without a filter it returns
// the network itself.
func (l *Layout) Fouled(n *network.Network, extra float64) *network.Network {
	if l.FilterLink < 0 {
		return n
	}
	dirty := l.Clean
	dirty.Extra = extra
	m := *n
	m.Links = slices.Clone(n.Links)
	m.Links[l.FilterLink].Law = dirty
	return &m
}

// Path returns the links from the source to a node, in order, by the lead, the
// header and the node's own row.
func (l *Layout) Path(node int) []int {
	n := 0
	for at := node; at != 0; at = l.Network.Links[at-1].From {
		n++
	}
	path := make([]int, n)
	for at := node; at != 0; at = l.Network.Links[at-1].From {
		n--
		path[n] = at - 1
	}
	return path
}

// StretchOf returns the index of the stretch that a link belongs to.
func (l *Layout) StretchOf(link int) int {
	i, found := slices.BinarySearchFunc(l.Stretches, link, func(s Stretch, link int) int {
		return s.first - link
	})
	if !found {
		i--
	}
	return i
}
