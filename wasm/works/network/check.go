package network

import (
	"errors"
	"strconv"
)

// check returns an error that names the first fault that would keep the
// network from having one solution.
func (n *Network) check() error {
	if len(n.Nodes) == 0 {
		return errors.New("network: no node")
	}
	if n.Nodes[0].Emitter != None || n.Nodes[0].Draw != 0 {
		return errors.New("network: the source takes water")
	}
	if !finite(n.Head) || !(n.Water.Kinematic > 0) {
		return errors.New("network: the source's head or the water's viscosity is missing")
	}
	for i := range n.Nodes {
		node := &n.Nodes[i]
		switch {
		case !finite(node.Z) || !amount(node.Draw):
			return fault("node", i, "height or draw")
		case node.Emitter < None || node.Emitter >= len(n.Emitters):
			return fault("node", i, "emitter")
		case node.Emitter != None && !(node.Count > 0 && finite(node.Count)):
			return fault("node", i, "count of emitters")
		}
	}
	drops := 0
	for k := range n.Links {
		l := &n.Links[k]
		if _, ok := l.Law.(Drop); ok {
			drops++
		}
		switch {
		case l.From == l.To || min(l.From, l.To) < 0 || max(l.From, l.To) >= len(n.Nodes):
			return fault("link", k, "ends")
		case drops > 1:
			return fault("link", k, "law: a second drop")
		case l.Law != nil:
		case l.Bore == 0 || !amount(l.Bore) || !amount(l.Length) || !amount(l.Extra) || !amount(l.K) || !amount(l.Roughness):
			return fault("link", k, "size")
		}
	}
	return nil
}

func fault(what string, i int, part string) error {
	return errors.New("network: " + what + " " + strconv.Itoa(i) + " has no valid " + part)
}

// amount reports whether there can be so much of something.
func amount(x float64) bool { return x >= 0 && finite(x) }

func finite(x float64) bool { return x-x == 0 }
