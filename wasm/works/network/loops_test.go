package network

import (
	"math"
	"testing"

	"evenrow/wasm/trade/pipe"
)

// twoLoops returns the network of Alperovits & Shamir (1977), Water Resources
// Research 13(6), in which a reservoir feeds six demands through two loops of
// eight pipes of 1,000 m, C = 130, with the bores of Savic & Walters (1997), J.
// Water Resources Planning and Management 123(2). All of it is from memory.
//
// The book's friction is that of Hazen & Williams, h = 10.667 L Q^1.852 /
// (C^1.852 D^4.871), in SI. Of the constants that are in print, 10.5088 to
// 10.9031, this one gives the heads that are.
func twoLoops() *Network {
	n := &Network{Head: 210, Water: water20, Nodes: []Node{{Emitter: None}}}
	for _, at := range []struct{ z, demand float64 }{ // m, m³/h; nodes 2 to 7
		{150, 100}, {160, 100}, {155, 120}, {150, 270}, {165, 330}, {160, 200},
	} {
		n.Nodes = append(n.Nodes, Node{Emitter: None, Z: at.z, Draw: at.demand / 3600})
	}
	for _, p := range []struct {
		from, to int
		inches   float64
	}{
		{1, 2, 18}, {2, 3, 10}, {2, 4, 16}, {4, 5, 4}, {4, 6, 16}, {6, 7, 10}, {3, 5, 10}, {7, 5, 1},
	} {
		k := 10.667 * 1000 / (math.Pow(130, 1.852) * math.Pow(p.inches*inch, 4.871))
		n.Links = append(n.Links, Link{From: p.from - 1, To: p.to - 1, Law: power{k, 1.852}})
	}
	return n
}

// The heads in print are from memory too, so the loops are solved again with
// gonum, in the oracle's formulation: by the flow round each loop.
func TestTwoLoops(t *testing.T) {
	n := twoLoops()
	s := mustSolve(t, n)
	checkLaws(t, n, s)
	print := []float64{53.25, 30.46, 43.45, 33.81, 30.44, 30.55} // m of pressure head, nodes 2 to 7
	for i, want := range print {
		tolerance := 0.005 // half of the last digit
		if i == 3 {
			// No constant gives this one with the others; ours gives 33.80.
			tolerance = 0.01
		}
		if got := s.Head[i+1] - n.Nodes[i+1].Z; math.Abs(got-want) > tolerance {
			t.Errorf("node %d: %.4f m, in print %.2f m", i+2, got, want)
		}
	}
	// The flows that go with the heads in print, by the book's law. A head in
	// print is right to half a digit, the fall in a pipe to a whole one (two at
	// node 5), and the flow to 1/1.852 of that share.
	level := []float64{210}
	for i, h := range print {
		level = append(level, h+n.Nodes[i+1].Z)
	}
	for k := range n.Links {
		l := &n.Links[k]
		fall, slack := level[l.From]-level[l.To], 0.01
		if l.From == 4 || l.To == 4 {
			slack = 0.02
		}
		want := math.Copysign(math.Pow(math.Abs(fall)/l.Law.(power).k, 1/1.852), fall)
		if got := s.Flow[k]; math.Abs(got-want) > math.Abs(want)*slack/math.Abs(fall)/1.852*1.01 { // a curve, not a line
			t.Errorf("pipe %d: %.2f m³/h, by the heads in print %.2f m³/h", k+1, 3600*got, 3600*want)
		}
		t.Logf("pipe %d: %.2f m³/h, by the heads in print %.2f m³/h", k+1, 3600*s.Flow[k], 3600*want)
	}
	o := newOracle(n, make([]bool, len(n.Nodes)))
	if len(o.chords) != 2 {
		t.Fatalf("%d loops", len(o.chords))
	}
	flow, head := o.solve(t, []float64{0.01, 0.01})
	for k := range flow {
		// The oracle stops at 1e-13 m round each loop.
		if math.Abs(flow[k]-s.Flow[k]) > 1e-9*s.Total {
			t.Errorf("pipe %d: %.6f m³/h, with gonum %.6f", k+1, 3600*s.Flow[k], 3600*flow[k])
		}
	}
	for i := range head {
		if math.Abs(head[i]-s.Head[i]) > 1e-9*n.Head {
			t.Errorf("node %d: %.9f m, with gonum %.9f", i+1, s.Head[i], head[i])
		}
	}
	// What continuity alone says of the flows in print, m³/h.
	within(t, "pipe 1", 3600*s.Flow[0], 1120, 1e-12)
	within(t, "out of node 2", 3600*(s.Flow[1]+s.Flow[2]), 1020, 1e-12)
}

// Lines of 1 to 100 equal outlets against Christiansen's sum, which is exact,
// and his three terms, which are not.
func TestOutletFactorsOfEveryNumber(t *testing.T) {
	for _, m := range []float64{1.75, 1.852, 2} {
		for n := 1; n <= 100; n++ {
			got := outletFactor(t, m, n, 1)
			// The solver's least resistance adds up to 1e-9 of the loss here.
			if want := pipe.Christiansen(n, m); math.Abs(got-want) > 2e-9 {
				t.Errorf("exponent %g, %d outlets: F = %.9f, want %.9f", m, n, got, want)
			}
			if short := pipe.ChristiansenShort(n, m); n > 2 && math.Abs(got-short) > 0.0005 {
				t.Errorf("exponent %g, %d outlets: F = %.5f, by three terms %.5f", m, n, got, short)
			}
		}
	}
	// Christiansen's table for 1.85, three digits, from memory.
	for n, want := range map[int]float64{1: 1, 2: 0.639, 5: 0.457, 10: 0.402, 20: 0.376, 50: 0.361, 100: 0.356} {
		if got := outletFactor(t, 1.85, n, 1); math.Abs(got-want) > 0.0005 {
			t.Errorf("%d outlets: F = %.5f, in the table %.3f", n, got, want)
		}
	}
}
