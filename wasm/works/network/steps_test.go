package network

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// How many of Newton's steps solutions take, whole families of them together: a
// change that makes them take another way should not make it a longer one.
//
// The bounds are what the steps come to, and half a percent for processors that
// round in another way.
func TestFewSteps(t *testing.T) {
	check := func(name string, steps, known int) {
		t.Helper()
		if most := known + known/200; steps > most {
			t.Errorf("%s: %d steps, want %d at most", name, steps, most)
		}
	}

	// Pumps too weak for all emitters: how many open is searched for, so that
	// ten times as many emitters take some more steps and not ten times as many.
	weak := map[int]int{}
	for _, size := range []int{100, 1000} {
		for _, flow := range []float64{1e-5, 3e-5, 1e-4, 3e-4, 1e-3} {
			n := field(size)
			n.Links[0].Law = curve{h0: 9, qm: flow}
			weak[size] += mustSolve(t, n).Iterations
		}
	}
	check("a hundred emitters at weak pumps", weak[100], 102)
	check("a thousand emitters at weak pumps", weak[1000], 230)

	for _, c := range []struct {
		name               string
		supplies           bool
		start, after, held int
	}{
		{"thirsty emitters, narrow between opening and closing", false, 8076, 8391, 2188},
		{"supplies of every kind", true, 3580, 3102, 2586},
	} {
		start, after, held := 0, 0, 0
		for seed := range uint64(300) {
			var n *Network
			if c.supplies {
				r := rand.New(rand.NewPCG(seed, 5))
				n = randomTree(r, 1+r.IntN(40))
				withRings(r, n, r.IntN(8))
				withSupply(r, n)
			} else {
				n = thirsty(rand.New(rand.NewPCG(seed, 12)))
			}
			s, err := NewSolver(n)
			if err != nil {
				t.Fatal(err)
			}
			all := slices.Repeat([]bool{true}, len(n.Nodes))
			for steps, find := range map[*int]func() (*Solution, error){
				&start: s.Start,
				&held:  func() (*Solution, error) { sol, _, err := s.Hold(all); return sol, err },
				&after: func() (*Solution, error) { s.rest(); return s.After(all) },
			} {
				sol, err := find()
				if err != nil {
					t.Fatal(err)
				}
				*steps += sol.Iterations
			}
		}
		check(c.name+", from shut emitters", start, c.start)
		check(c.name+", from open emitters", after, c.after)
		check(c.name+", open emitters held", held, c.held)
	}
}
