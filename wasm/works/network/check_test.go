package network

import (
	"math"
	"testing"
)

// Each fault is named, with the number of its node or link.
func TestFaults(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(n *Network)
		want   string // empty where it is none
	}{
		{"a sound one", func(n *Network) {}, ""},
		{"no node", func(n *Network) { n.Nodes = nil }, "network: no node"},
		{"an emitter at the source", func(n *Network) { n.Nodes[0].Emitter = 0 }, "network: the source takes water"},
		{"a draw at the source", func(n *Network) { n.Nodes[0].Draw = 1 }, "network: the source takes water"},
		{"no head", func(n *Network) { n.Head = math.NaN() }, "network: the source's head or the water's viscosity is missing"},
		{"endless head", func(n *Network) { n.Head = math.Inf(1) }, "network: the source's head or the water's viscosity is missing"},
		{"no water", func(n *Network) { n.Water.Kinematic = 0 }, "network: the source's head or the water's viscosity is missing"},
		{"a height that is none", func(n *Network) { n.Nodes[1].Z = math.NaN() }, "network: node 1 has no valid height or draw"},
		{"an endless draw", func(n *Network) { n.Nodes[1].Draw = math.Inf(1) }, "network: node 1 has no valid height or draw"},
		{"a draw that brings water", func(n *Network) { n.Nodes[1].Draw = -1e-6 }, "network: node 1 has no valid height or draw"},
		{"a draw", func(n *Network) { n.Nodes[1].Draw = 1e-6 }, ""},
		{"an emitter below none", func(n *Network) { n.Nodes[1].Emitter = -2 }, "network: node 1 has no valid emitter"},
		{"an emitter that is not there", func(n *Network) { n.Nodes[2].Emitter = 1 }, "network: node 2 has no valid emitter"},
		{"no emitter of a kind", func(n *Network) { n.Nodes[2].Count = 0 }, "network: node 2 has no valid count of emitters"},
		{"endless emitters", func(n *Network) { n.Nodes[2].Count = math.Inf(1) }, "network: node 2 has no valid count of emitters"},
		{"half an emitter", func(n *Network) { n.Nodes[2].Count = 0.5 }, ""},
		{"a link to itself", func(n *Network) { n.Links[1].To = 1 }, "network: link 1 has no valid ends"},
		{"a link from nowhere", func(n *Network) { n.Links[0].From = -1 }, "network: link 0 has no valid ends"},
		{"a link to nowhere", func(n *Network) { n.Links[1].To = 3 }, "network: link 1 has no valid ends"},
		{"no bore", func(n *Network) { n.Links[1].Bore = 0 }, "network: link 1 has no valid size"},
		{"an endless bore", func(n *Network) { n.Links[1].Bore = math.Inf(1) }, "network: link 1 has no valid size"},
		{"a bore below 0", func(n *Network) { n.Links[1].Bore = -1 }, "network: link 1 has no valid size"},
		{"an endless length", func(n *Network) { n.Links[1].Length = math.Inf(1) }, "network: link 1 has no valid size"},
		{"endless extra", func(n *Network) { n.Links[1].Extra = math.Inf(1) }, "network: link 1 has no valid size"},
		{"an endless coefficient", func(n *Network) { n.Links[1].K = math.Inf(1) }, "network: link 1 has no valid size"},
		{"endless roughness", func(n *Network) { n.Links[1].Roughness = math.Inf(1) }, "network: link 1 has no valid size"},
		{"a length below 0", func(n *Network) { n.Links[1].Length = -1 }, "network: link 1 has no valid size"},
		{"a length that is none", func(n *Network) { n.Links[1].Length = math.NaN() }, "network: link 1 has no valid size"},
		{"extra below 0", func(n *Network) { n.Links[1].Extra = -1 }, "network: link 1 has no valid size"},
		{"a coefficient below 0", func(n *Network) { n.Links[1].K = -1 }, "network: link 1 has no valid size"},
		{"roughness below 0", func(n *Network) { n.Links[1].Roughness = -1 }, "network: link 1 has no valid size"},
		{"no length", func(n *Network) { n.Links[1].Length = 0 }, ""},
		{"a law in the place of a size", func(n *Network) { n.Links[1].Bore, n.Links[1].Law = 0, quadratic(1) }, ""},
		{"a second drop", func(n *Network) { n.Links[1].Law = Drop(1) }, "network: link 1 has no valid law: a second drop"},
		{"a node that no water can reach", func(n *Network) { n.Nodes = append(n.Nodes, Node{Emitter: None}) }, "network: node 3 has no valid way to the source"},
		{"a ring that no water can reach", func(n *Network) {
			n.Nodes = append(n.Nodes, Node{Emitter: None}, Node{Emitter: None}, Node{Emitter: None})
			for _, e := range [][2]int{{3, 4}, {4, 5}, {5, 3}} {
				n.Links = append(n.Links, Link{From: e[0], To: e[1], Length: 1, Bore: 0.01})
			}
		}, "network: node 4 has no valid way to the source"},
	} {
		n := behind(20, orifice(2))
		c.change(n)
		for what, err := range map[string]error{"solving": second(Solve(n)), "a solver": second(NewSolver(n))} {
			if got := text(err); got != c.want {
				t.Errorf("%s, %s: %q, want %q", c.name, what, got, c.want)
			}
		}
	}
}

func second[T any](_ T, err error) error { return err }

func text(err error) string {
	if err == nil {
		return ""
	}
	return err.Error()
}
