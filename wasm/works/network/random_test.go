package network

import (
	"math"
	"math/rand/v2"

	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/trade/water"
)

// water20 is water at 20 °C, written out so that these tests stand alone.
var water20 = water.Water{Celsius: 20, Density: 998.2, Kinematic: 1.0034e-6}

// curve is a pump: head h0 at no flow, falling with the square of the flow to
// nothing at qm.
type curve struct{ h0, qm float64 }

func (c curve) Loss(q float64) (loss, slope float64) {
	r := q / c.qm
	return -c.h0 * (1 - r*math.Abs(r)), 2 * c.h0 * math.Abs(r) / c.qm
}

// quadratic is a filter: a loss of k q|q|.
type quadratic float64

func (k quadratic) Loss(q float64) (loss, slope float64) {
	return float64(k) * q * math.Abs(q), 2 * float64(k) * math.Abs(q)
}

// compensating returns an emitter of the usual kind.
func compensating(lph float64) emitter.Emitter {
	return emitter.Emitter{
		Kind: emitter.Compensating, Flow: lph / 3.6e6, Nominal: 10.5, Lowest: 10.5, Highest: 41,
		Opens: 7, Closes: 5,
	}
}

// orifice returns an emitter that does not compensate.
func orifice(lph float64) emitter.Emitter {
	return emitter.Emitter{
		Kind: emitter.NonCompensating, Flow: lph / 3.6e6, Nominal: 10, Lowest: 1, Highest: 40, Exponent: 0.5,
	}
}

// randomTree returns a network with no ring: a pump, a filter, and up to n
// nodes that branch from each other, with slopes and mixed emitters.
func randomTree(r *rand.Rand, n int) *Network {
	net := &Network{
		Head:  r.Float64()*4 - 2,
		Water: water20,
		Emitters: []emitter.Emitter{
			compensating(1 + 3*r.Float64()),
			orifice(1 + 3*r.Float64()),
			compensating(8),
		},
		Nodes: []Node{{Emitter: None}, {Emitter: None}, {Emitter: None}},
		Links: []Link{
			{From: 0, To: 1, Law: curve{h0: 1 + 59*r.Float64(), qm: math.Exp2(-8*r.Float64()) * 2e-3}},
			{From: 1, To: 2, Law: quadratic(1e7 * r.Float64())},
		},
	}
	net.Emitters[0].Exponent = 0.1 * r.Float64()
	branch := r.Float64() * r.Float64()
	for i := 3; i < 3+n; i++ {
		from := i - 1
		if r.Float64() < branch {
			from = 2 + r.IntN(i-2)
		}
		node := Node{Z: net.Nodes[from].Z + 0.2*r.NormFloat64(), Emitter: r.IntN(4) - 1}
		if node.Emitter != None {
			node.Count = 1 + float64(r.IntN(3))
		}
		net.Nodes = append(net.Nodes, node)
		net.Links = append(net.Links, Link{
			From: from, To: i,
			Length: 0.01 + 2*r.Float64()*r.Float64(), Bore: 0.003 + 0.03*r.Float64()*r.Float64(),
			Roughness: 1.5e-6, K: 2 * r.Float64(), Extra: 0.2 * r.Float64(),
		})
		if l := &net.Links[len(net.Links)-1]; r.IntN(2) == 0 {
			l.From, l.To = l.To, l.From
		}
	}
	return net
}

// withRings adds up to n links between nodes that are joined already.
func withRings(r *rand.Rand, net *Network, n int) {
	for range n {
		a, b := 2+r.IntN(len(net.Nodes)-2), 2+r.IntN(len(net.Nodes)-2)
		if a != b {
			net.Links = append(net.Links, Link{From: a, To: b, Length: 0.1 + 5*r.Float64(), Bore: 0.004 + 0.02*r.Float64(), K: r.Float64()})
		}
	}
}
