package network

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// A network may rest in more than one state: that reached with every emitter
// shut before, and that held with every one open before. Both obey the laws, no
// emitter in them has cause to change, and each is a state to hold.
func FuzzHysteresis(f *testing.F) {
	for seed := range uint64(60) {
		f.Add(seed, uint16(5+seed*5), uint8(seed%5))
	}
	f.Fuzz(func(t *testing.T, seed uint64, nodes uint16, rings uint8) {
		bothStates(t, seed, int(nodes), int(rings))
	})
}

// bothStates checks both states of a random network of up to 300 nodes, and
// says whether they differ.
func bothStates(t *testing.T, seed uint64, nodes, rings int) bool {
	r := rand.New(rand.NewPCG(seed, 41))
	n := randomTree(r, 1+nodes%300)
	withRings(r, n, rings%8)
	withSupply(r, n)
	s, err := NewSolver(n)
	if err != nil {
		t.Fatal(err)
	}
	below, err := s.Start()
	if err != nil {
		t.Fatal(err)
	}
	above, err := s.After(slices.Repeat([]bool{true}, len(n.Nodes)))
	if err != nil {
		t.Fatal(err)
	}
	for _, state := range []*Solution{below, above} {
		checkLaws(t, n, state)
		checkOpening(t, n, state)
		held, rests, err := s.Hold(state.Open)
		if err != nil {
			t.Fatal(err)
		}
		if state.Unsteady == 0 && !rests {
			t.Errorf("seed %d: held as it is, the state changes", seed)
		}
		if !slices.Equal(held.Open, state.Open) {
			t.Errorf("seed %d: other emitters are open when it is held", seed)
		}
	}
	return !slices.Equal(below.Open, above.Open)
}

func TestSomeNetworksHaveTwoStates(t *testing.T) {
	differ := 0
	for seed := range uint64(300) {
		if bothStates(t, seed, int(seed), int(seed%6)) {
			differ++
		}
	}
	if differ < 30 {
		t.Errorf("only %d of 300 networks have two states", differ)
	}
}
