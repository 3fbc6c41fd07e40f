package network

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenrow/wasm/trade/emitter"
)

// behind returns one emitter behind a device that takes 5 m, from a source of a
// head in m, over 1 m of wide tubing.
func behind(head float64, e emitter.Emitter) *Network {
	return &Network{
		Head: head, Water: water20, Emitters: []emitter.Emitter{e},
		Nodes: []Node{{Emitter: None}, {Emitter: None}, {Z: 0.5, Count: 1}},
		Links: []Link{{From: 0, To: 1, Law: Drop(5)}, {From: 1, To: 2, Length: 1, Bore: 0.05}},
	}
}

// A device of 5 m by hand. A plain emitter of 2 L/h at 10 m, 0.5 m up, gives
// 2 √(h/10) L/h of what is left, however little; where less than 5 m is there,
// nothing flows, and the water stands at the emitter. One that opens at 7 m sees
// all of the source while it is shut, and must keep 5 m once it is open.
func TestDropByHand(t *testing.T) {
	for _, tt := range []struct {
		head     float64
		e        emitter.Emitter
		out, see float64 // L/h, and m at the emitter
		open     bool
		unsteady int
	}{
		{15.5, orifice(2), 2, 10, true, 0},
		{5.7, orifice(2), 2 * math.Sqrt(0.02), 0.2, true, 0},
		{5.5001, orifice(2), 2 * 0.0001, 0.0001, true, 0}, // in the straight line below a hundredth
		{5.5, orifice(2), 0, 0, true, 0},
		{3, orifice(2), 0, 0, true, 0},
		{0.5001, orifice(2), 0, 0, true, 0},
		{0.2, orifice(2), 0, -0.3, true, 0},
		{7.4, compensating(2), 0, 6.9, false, 0},
		{8, compensating(2), 0, 7.5, false, 1},
		{10.4, compensating(2), 0, 9.9, false, 1},
		{10.6, compensating(2), 2 * math.Sqrt(5.1/10.5), 5.1, true, 0},
		{17, compensating(2), 2, 11.5, true, 0},
	} {
		s, err := Solve(behind(tt.head, tt.e))
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(s.Total*3.6e6-tt.out) > 1e-5*tt.out || math.Abs(s.Head[2]-0.5-tt.see) > 1e-6 || s.Open[2] != tt.open || s.Unsteady != tt.unsteady {
			t.Errorf("a source of %g m: %g L/h, it sees %g m, open %t, %d unsteady; want %+v", tt.head, s.Total*3.6e6, s.Head[2]-0.5, s.Open[2], s.Unsteady, tt)
		}
		// What holds the water back leaves the emitter a nanometre short, so that
		// no rounding lets any through.
		if tt.open && tt.out == 0 && tt.see == 0 && math.Abs(s.Head[2]-0.5+1e-9) > 1e-12 {
			t.Errorf("a source of %g m: held back, the emitter sees %g m, want a nanometre less than none", tt.head, s.Head[2]-0.5)
		}
		if flows := s.Total > 0; flows && math.Abs(s.Head[0]-s.Head[1]-5) > 1e-6 || !flows && (s.Head[0]-s.Head[1] < -1e-9 || s.Head[0]-s.Head[1] > 5+1e-6) {
			t.Errorf("a source of %g m: the device takes %g m of %g L/h", tt.head, s.Head[0]-s.Head[1], s.Total*3.6e6)
		}
	}
}

// In random networks a device is no more than a source that is lower by what it
// takes, wherever water flows; and it flows against the device if it would from
// that source.
func TestDropIsALowerSource(t *testing.T) {
	flowing, held, still := 0, 0, 0
	for seed := range uint64(600) {
		r := rand.New(rand.NewPCG(seed, 31))
		n := randomTree(r, 1+r.IntN(60))
		taken := 12 * r.Float64()
		if seed%3 == 0 {
			n.Links[0].Law, n.Head = curve{h0: 4 * r.Float64(), qm: 1e-3}, 4*r.Float64()-4
		}
		open := make([]bool, len(n.Nodes))
		for i := range open {
			open[i] = r.IntN(4) == 0
		}
		lower, with := *n, *n
		lower.Head -= taken
		with.Links = append([]Link(nil), n.Links...)
		// In the place of the filter, which the pump then takes with it.
		with.Links[1].Law = Drop(taken)
		lower.Links = append([]Link(nil), n.Links...)
		lower.Links[1].Law = quadratic(0)
		want, err := Hold(&lower, open)
		if err != nil {
			t.Fatal(err)
		}
		got, err := Hold(&with, open)
		if err != nil {
			t.Fatal(err)
		}
		drop := got.Head[1] - got.Head[2]
		switch {
		case want.Total > 0:
			flowing++
			if math.Abs(got.Total-want.Total) > 1e-9*want.Total || math.Abs(drop-taken) > 1e-6 {
				t.Errorf("seed %d: %g m³/s and a drop of %g m, want %g and %g", seed, got.Total, drop, want.Total, taken)
			}
		case got.Total != 0:
			t.Errorf("seed %d: %g m³/s, want none", seed, got.Total)
		default:
			most := math.Inf(-1) // that an open emitter sees
			for i := range n.Nodes {
				if got.Open[i] {
					most = max(most, got.Head[i]-n.Nodes[i].Z)
				}
			}
			if drop < -1e-9 || drop > taken+1e-6 || most > 0 || drop > 1e-6 && most < -1e-6 {
				t.Errorf("seed %d: nothing flows, a drop of %g m of %g, and the lowest open emitter sees %g m", seed, drop, taken, most)
			}
			if drop > 1e-6 {
				held++
			} else {
				still++
			}
		}
	}
	if flowing < 100 || held < 20 || still < 20 {
		t.Errorf("%d flowed, %d were held back, %d were still: too little was tried", flowing, held, still)
	}
}

func TestTwoDropsAreAFault(t *testing.T) {
	n := behind(10, orifice(2))
	n.Links[1].Law = Drop(1)
	if _, err := Solve(n); err == nil {
		t.Error("solved")
	}
}
