package network

import (
	"cmp"
	"math/rand/v2"
	"slices"
	"testing"
)

// The rule of [Solver.Start], followed here word by word: of the emitters that
// see their opening head, in the order of what they have to spare, one more is
// opened as long as all that are open stay so.
func TestOpeningRule(t *testing.T) {
	unsteady, rounds := 0, 0
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 12))
		n := randomTree(r, 1+r.IntN(40))
		withRings(r, n, r.IntN(3))
		// Narrow between opening and closing, thirsty and far: some will be unsteady.
		n.Emitters[0].Closes = n.Emitters[0].Opens - r.Float64()
		n.Emitters[2].Flow *= 10 * r.Float64()
		s, err := NewSolver(n)
		if err != nil {
			t.Fatal(err)
		}
		open := make([]bool, len(n.Nodes))
		hold := func() bool {
			if _, _, err := s.Hold(open); err != nil {
				t.Fatalf("seed %d: %v", seed, err)
			}
			return s.stay()
		}
		left := 0
		for opened := 1; opened > 0; {
			hold()
			s.findReady()
			order := slices.Clone(s.ready)
			slices.SortFunc(order, func(a, b waiting) int {
				return cmp.Or(cmp.Compare(b.spare, a.spare), a.node-b.node)
			})
			opened, left = 0, len(order)
			for _, w := range order {
				open[w.node] = true
				if !hold() {
					open[w.node] = false
					break
				}
				opened++
			}
			rounds += min(opened, 1)
		}
		hold()
		sol, err := s.Start()
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		unsteady += left
		for i, node := range n.Nodes {
			if want := node.Emitter == 1 || open[i]; sol.Open[i] != want {
				t.Errorf("seed %d, node %d: open %t, by the rule %t", seed, i, sol.Open[i], want)
			}
		}
		if sol.Unsteady != left {
			t.Errorf("seed %d: %d unsteady, by the rule %d", seed, sol.Unsteady, left)
		}
		if t.Failed() {
			t.FailNow()
		}
	}
	if unsteady < 500 || rounds < 200 {
		t.Errorf("%d emitters unsteady, %d rounds: these networks try little", unsteady, rounds)
	}
}
