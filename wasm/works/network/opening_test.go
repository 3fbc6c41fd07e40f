package network

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"evenrow/wasm/trade/emitter"
)

// thirsty returns a network with rings whose emitters are narrow between opening and
// closing, thirsty and far: some will be unsteady.
func thirsty(r *rand.Rand) *Network {
	n := randomTree(r, 1+r.IntN(40))
	withRings(r, n, r.IntN(3))
	n.Emitters[0].Closes = n.Emitters[0].Opens - r.Float64()
	n.Emitters[2].Flow *= 10 * r.Float64()
	return n
}

// The rule of [Solver.Start], followed here word by word: of the emitters that
// see their opening head, in the order of what they have to spare, one more is
// opened as long as all that are open stay so.
func TestOpeningRule(t *testing.T) {
	unsteady, rounds := 0, 0
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 12))
		n := thirsty(r)
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

// A state that is held rests where every open emitter sees its closing head and
// every shut one less than its opening head; none is unsteady, for none moves.
func TestHoldTellsWhetherItRests(t *testing.T) {
	count := map[bool]int{}
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 16))
		n := randomTree(r, 1+r.IntN(12))
		open := make([]bool, len(n.Nodes))
		share := r.Float64() * r.Float64()
		for i := range open {
			open[i] = r.Float64() < share
		}
		s, err := NewSolver(n)
		if err != nil {
			t.Fatal(err)
		}
		sol, rests, err := s.Hold(open)
		if err != nil {
			t.Fatal(err)
		}
		want := true
		for i, node := range n.Nodes {
			if node.Emitter == None || n.Emitters[node.Emitter].Kind == emitter.NonCompensating {
				continue
			}
			e, sees := n.Emitters[node.Emitter], sol.Head[i]-node.Z
			if open[i] && sees < e.Closes || !open[i] && sees >= e.Opens {
				want = false
			}
		}
		count[want]++
		if rests != want || sol.Unsteady != 0 {
			t.Errorf("seed %d: it rests: %t, want %t; %d unsteady", seed, rests, want, sol.Unsteady)
		}
	}
	if count[true] < 50 || count[false] < 50 {
		t.Errorf("%d rest and %d do not: the test tries little", count[true], count[false])
	}
}

// An emitter that sees just its opening head opens, and one that sees just its
// closing head stays open; the last bit of a head makes the difference.
func TestOpeningAndClosingHeadsThemselves(t *testing.T) {
	n := behind(7.5, compensating(2)) // 7 m at the emitter, in still water
	n.Links[0].Law = quadratic(0)
	s, err := NewSolver(n)
	if err != nil {
		t.Fatal(err)
	}
	e := &n.Emitters[0]
	for opens, want := range map[float64]bool{7: true, math.Nextafter(7, 8): false} {
		e.Opens = opens
		shut, rests, err := s.Hold(make([]bool, 3))
		if err != nil || rests == want || shut.Open[2] {
			t.Errorf("opening at %v m: held shut at 7 m it rests: %t, %v", opens, rests, err)
		}
		if start, err := s.Start(); err != nil || start.Open[2] != want {
			t.Errorf("opening at %v m: open at 7 m: %t, %v", opens, start.Open[2], err)
		}
	}
	open := []bool{false, false, true}
	held, _, err := s.Hold(open)
	if err != nil {
		t.Fatal(err)
	}
	sees := held.Head[2] - n.Nodes[2].Z
	for closes, want := range map[float64]bool{sees: true, math.Nextafter(sees, 8): false} {
		e.Opens, e.Closes = 8, closes
		if _, rests, err := s.Hold(open); err != nil || rests != want {
			t.Errorf("closing at %v m: held open at %v m it rests: %t, %v", closes, sees, rests, err)
		}
		if after, err := s.After(open); err != nil || after.Open[2] != want {
			t.Errorf("closing at %v m: open at %v m afterwards: %t, %v", closes, sees, after.Open[2], err)
		}
	}
}

// In still water on the level all emitters see the same head. The nearest along
// the way open, as many as can.
func TestAmongEqualsTheNearestOpen(t *testing.T) {
	for _, size := range []int{10, 100, 300} {
		for _, flow := range []float64{3e-6, 1e-5, 3e-5, 1e-4} {
			n := field(size)
			n.Links[0].Law = curve{h0: 9, qm: flow}
			s := mustSolve(t, n)
			count, gap := 0, false
			for i, node := range n.Nodes {
				if node.Emitter == None {
					continue
				}
				if s.Open[i] && gap {
					t.Fatalf("%d emitters, %g m³/s: that at node %d is open, and not one before it", size, flow, i)
				}
				if gap = !s.Open[i]; !gap {
					count++
				}
			}
			// One more, and some see less than their closing head.
			if count == 0 || count == size {
				continue
			}
			open := append([]bool(nil), s.Open...)
			for i := range n.Nodes {
				if n.Nodes[i].Emitter != None && !open[i] {
					open[i] = true
					break
				}
			}
			if more, err := Hold(n, open); err != nil || lowest(n, more) >= n.Emitters[0].Closes {
				t.Errorf("%d emitters, %g m³/s: %d are open, and one more keeps %g m, %v", size, flow, count, lowest(n, more), err)
			}
		}
	}
}

// lowest returns the least head that an open emitter sees.
func lowest(n *Network, s *Solution) float64 {
	least := math.Inf(1)
	for i, open := range s.Open {
		if open {
			least = min(least, s.Head[i]-n.Nodes[i].Z)
		}
	}
	return least
}
