package network

import (
	"math/rand/v2"
	"testing"

	"evenrow/wasm/trade/filter"
	"evenrow/wasm/trade/pump"
)

// steady is a regulator behind a tank: it takes the same head from any flow.
type steady float64

func (s steady) Loss(float64) (loss, slope float64) { return float64(s), 0 }

// spring takes all its head from all but the smallest flows.
type spring float64

func (s spring) Loss(q float64) (loss, slope float64) {
	const half = 1e-6 // m³/s
	sum := half + max(q, -q)
	return float64(s) * q / sum, float64(s) * half / (sum * sum)
}

// withSupply gives a network another supply, with the laws that plans have, and
// some nodes a draw.
func withSupply(r *rand.Rand, n *Network) {
	most := 1e-5 + 3e-3*r.Float64()*r.Float64()
	curve, err := pump.ByTwo(1+60*r.Float64(), most)
	if r.IntN(2) == 0 {
		top := 2 + 100*r.Float64()
		curve, err = pump.ByPoints([]pump.Point{
			{Flow: 0, Head: top}, {Flow: most * (0.2 + 0.3*r.Float64()), Head: top * (0.6 + 0.3*r.Float64())}, {Flow: most, Head: top * 0.5 * r.Float64()},
		})
	}
	if err != nil {
		panic(err)
	}
	if r.IntN(2) == 0 {
		curve = pump.Regulated(curve, 1+30*r.Float64())
	}
	n.Links[0].Law = curve
	n.Links[1].Law = filter.Filter{Rated: most, Clean: 5 * r.Float64() * r.Float64(), Extra: 10 * r.Float64() * float64(r.IntN(2))}
	// A regulator that takes the same from still water belongs in the way of
	// all water: in a ring it would drive it round.
	if r.IntN(4) == 0 {
		n.Links[0].Law = steady(10 * r.Float64())
		n.Head += 60 * r.Float64()
	}
	for range r.IntN(3) {
		l := &n.Links[1+r.IntN(len(n.Links)-1)]
		*l = Link{From: l.From, To: l.To, Law: spring(10 * r.Float64())}
	}
	for range r.IntN(4) {
		n.Nodes[2+r.IntN(len(n.Nodes)-2)].Draw = 2e-5 * r.Float64() * r.Float64() // what 3 mm of bore still carries at 3 m/s
	}
	for i := range n.Emitters {
		n.Emitters[i].Closes -= n.Emitters[i].Closes * r.Float64()
		if i != 0 {
			n.Emitters[i].Flow *= 4 * r.Float64()
		}
	}
	n.Emitters[1].Exponent = 0.3 + 0.7*r.Float64()
}

// Whatever the network, its flows settle, from shut emitters and from open
// ones, and they obey the laws.
func FuzzNetwork(f *testing.F) {
	for seed := range uint64(200) {
		f.Add(seed, uint16(1+seed*7), uint8(seed%4))
	}
	f.Fuzz(func(t *testing.T, seed uint64, nodes uint16, rings uint8) {
		r := rand.New(rand.NewPCG(seed, 5))
		n := randomTree(r, 1+int(nodes%300))
		withRings(r, n, int(rings%8))
		withSupply(r, n)
		s, err := NewSolver(n)
		if err != nil {
			t.Fatal(err)
		}
		start, err := s.Start()
		if err != nil {
			t.Fatal(err)
		}
		checkLaws(t, n, start)
		checkOpening(t, n, start)
		open := make([]bool, len(n.Nodes))
		for i := range open {
			open[i] = r.IntN(2) == 0
		}
		after, err := s.After(open)
		if err != nil {
			t.Fatal(err)
		}
		checkLaws(t, n, after)
		checkOpening(t, n, after)
	})
}
