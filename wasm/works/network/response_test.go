package network

import (
	"math"
	"math/rand/v2"
	"testing"
)

// The response to a little more water taken at a node is the difference between
// two solutions of the whole network, with and without it.
func TestResponseIsTheDifferenceOfTwoStates(t *testing.T) {
	tried := 0
	for seed := range uint64(40) {
		r := rand.New(rand.NewPCG(seed, 77))
		n := randomTree(r, 5+r.IntN(30))
		if seed%2 == 1 {
			withRings(r, n, 1+r.IntN(3))
		}
		open := make([]bool, len(n.Nodes))
		for i := range open {
			open[i] = r.IntN(2) == 0
		}
		s, err := NewSolver(n)
		if err != nil {
			t.Fatal(err)
		}
		resp, sol, err := s.Response(open)
		if err != nil {
			t.Fatal(err)
		}
		if held, err := Hold(n, open); err != nil || math.Abs(held.Total-sol.Total) > 1e-9*held.Total {
			t.Fatalf("seed %d: the state is of %g m³/s, and held of %g: %v", seed, sol.Total, held.Total, err)
		}
		at := 1 + r.IntN(len(n.Nodes)-1)
		slope := 0.0
		if sol.Open[at] {
			_, slope = n.Emitters[n.Nodes[at].Emitter].Open(sol.Head[at] - n.Nodes[at].Z)
			slope *= n.Nodes[at].Count
		}
		if got := s.Slope(at); math.Abs(got-slope) > 1e-9*slope {
			t.Errorf("seed %d: slope at node %d is %g, want %g", seed, at, got, slope)
		}
		// A hundred-thousandth of the flow: the laws are all but straight there.
		taken := 1e-5 * sol.Total
		if taken == 0 {
			continue
		}
		draw := resp.Draw()
		clear(draw)
		draw[at] = -taken
		draw[0] = 5 // of no effect: the source's head is fixed
		heads := resp.Heads()
		if heads[0] != 0 {
			t.Fatalf("seed %d: the source's head rises by %g m", seed, heads[0])
		}
		n.Nodes[at].Draw += taken
		after, err := Hold(n, open)
		n.Nodes[at].Draw -= taken
		if err != nil {
			t.Fatal(err)
		}
		most := 0.0
		for i := range heads {
			most = max(most, math.Abs(after.Head[i]-sol.Head[i]))
		}
		if most < 1e-7 {
			continue // the difference is hardly more than rounding
		}
		tried++
		for i := range heads {
			if diff := after.Head[i] - sol.Head[i]; math.Abs(heads[i]-diff) > 0.01*most {
				t.Fatalf("seed %d: %g m³/s more at node %d, and node %d falls by %g m, not by %g", seed, taken, at, i, -diff, -heads[i])
			}
		}
	}
	if tried < 10 {
		t.Errorf("only %d responses were tried", tried)
	}
}
