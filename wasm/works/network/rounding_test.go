package network

import (
	"math"
	"testing"

	"evenrow/wasm/trade/emitter"
)

// Wide emitters that need next to no head hang far down a thin lead, so that
// the last bit of a head of 150 m is a good share of their flow. That is no
// reason to say that the flows do not settle.
func TestRoundingIsNoUnrest(t *testing.T) {
	for _, length := range []float64{50, 500, 3000} {
		n := &Network{
			Water:    water20,
			Emitters: []emitter.Emitter{{Kind: emitter.NonCompensating, Flow: 100 / 3.6e6, Nominal: 0.2, Exponent: 0.3, Lowest: 0.1, Highest: 100}},
			Nodes:    []Node{{Emitter: None}, {Emitter: None}, {Z: 140, Emitter: None}},
			Links: []Link{
				{From: 0, To: 1, Law: curve{h0: 150, qm: 2e-3}},
				{From: 1, To: 2, Length: length, Bore: 0.002, K: 50},
			},
		}
		for i := range 400 {
			n.Nodes = append(n.Nodes, Node{Z: 140 - 0.1*float64(i), Emitter: 0, Count: 4})
			n.Links = append(n.Links, Link{From: i + 2, To: i + 3, Length: 0.3, Bore: 0.0136})
		}
		s, err := Solve(n)
		if err != nil {
			t.Errorf("a lead of %g m: %v", length, err)
			continue
		}
		sum := 0.0
		for _, q := range s.Out {
			sum += q
		}
		if s.Imbalance > flowRounding || math.Abs(sum-s.Total) > 1e-6*s.Total || !(s.Total > 0) {
			t.Errorf("a lead of %g m: imbalance %g, %g m³/s in and %g out", length, s.Imbalance, s.Total, sum)
		}
	}
}
