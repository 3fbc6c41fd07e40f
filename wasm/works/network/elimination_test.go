package network

import (
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"
)

// around is a network as the neighbours of each node, without the source.
func around(nodes int, links []ends) []map[int32]bool {
	near := make([]map[int32]bool, nodes)
	for i := range near {
		near[i] = map[int32]bool{}
	}
	for _, l := range links {
		if l.from != 0 && l.to != 0 {
			near[l.from][l.to], near[l.to][l.from] = true, true
		}
	}
	return near
}

// The order of elimination, followed with sets: every leaf goes first, then each
// time a node with the fewest neighbours, which are joined to each other. A
// node's entries are its neighbours of that time.
func TestOrderOfElimination(t *testing.T) {
	used := &system{} // its memory goes from one to the next
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 14))
		nodes := 2 + r.IntN(60)
		var links []ends
		for i := 1; i < nodes; i++ {
			from := max(0, i-1-r.IntN(3))
			links = append(links, ends{int32(from), int32(i)})
		}
		for range r.IntN(2+nodes/2) * int(seed%3) / 2 {
			if a, b := r.IntN(nodes), r.IntN(nodes); a != b {
				links = append(links, ends{int32(a), int32(b)})
			}
		}
		used.prepare(nodes, links)
		s := &system{}
		if s.prepare(nodes, links); !slices.Equal(used.order, s.order) || !slices.Equal(used.to, s.to) || !slices.Equal(used.pair, s.pair) || !slices.Equal(used.entry, s.entry) || used.cut != s.cut || used.trees != s.trees {
			t.Fatalf("seed %d: what was there before makes a difference", seed)
		}
		if s.cut != -1 {
			t.Fatalf("seed %d: water does not reach node %d", seed, s.cut)
		}
		near := around(nodes, links)
		many := make([]int, nodes) // links by node, two to one neighbour counted twice
		for _, l := range links {
			if l.from != 0 && l.to != 0 {
				many[l.from]++
				many[l.to]++
			}
		}
		left, fill := map[int32]bool{}, 0
		for i := range nodes - 1 {
			left[int32(i+1)] = true
		}
		for p, n := range s.order {
			if !left[n] {
				t.Fatalf("seed %d: node %d is eliminated twice, or is the source", seed, n)
			}
			delete(left, n)
			var to []int32
			if p < s.trees {
				if to = s.to[p : p+1]; many[n] != 1 {
					t.Fatalf("seed %d: node %d is no leaf", seed, n)
				}
				many[to[0]]--
			} else {
				lo, hi := s.row(p)
				to = s.to[lo:hi]
				for o := range left {
					if many[o] == 1 || len(near[o]) < len(near[n]) {
						t.Fatalf("seed %d: node %d goes before node %d, which is a leaf or has fewer neighbours", seed, n, o)
					}
				}
				many[n] = 0
				fill += len(to) * (len(to) - 1) / 2
			}
			if len(to) != len(near[n]) {
				t.Fatalf("seed %d: node %d has the entries %v, and the neighbours %v", seed, n, to, near[n])
			}
			for _, a := range to {
				if !near[n][a] {
					t.Fatalf("seed %d: node %d is no neighbour of %d", seed, a, n)
				}
				delete(near[a], n)
				for _, b := range to {
					if a != b {
						near[a][b] = true
					}
				}
			}
		}
		if len(left) > 0 || len(s.pair) != fill || s.cost() != nodes-1+len(s.to)+fill {
			t.Errorf("seed %d: %d nodes are left, %d pairs, want %d; it costs %d", seed, len(left), len(s.pair), fill, s.cost())
		}
	}
}

// What a step costs, by hand: an entry for each node of a row but the first,
// which only the source is left to; and of a ring of ten, in the end two nodes
// with one entry between them, before that two for each, and a pair that changes.
func TestCostOfElimination(t *testing.T) {
	var row, ring []ends
	for i := range int32(10) {
		row = append(row, ends{i, i + 1})
		ring = append(ring, ends{1 + i, 1 + (i+1)%10})
	}
	s := &system{}
	if s.prepare(11, row); s.cost() != 10+9 || s.trees != 9 {
		t.Errorf("a row of ten costs %d", s.cost())
	}
	if s.prepare(11, append(ring, ends{0, 1})); s.cost() != 10+(8*2+1)+8 || s.trees != 0 {
		t.Errorf("a ring of ten costs %d", s.cost())
	}
	// Two links between the same nodes are one entry.
	if s.prepare(3, []ends{{0, 1}, {1, 2}, {2, 1}}); s.cost() != 2+1 {
		t.Errorf("a double link costs %d", s.cost())
	}
}

// A solver that has solved other networks solves the next as a new one does,
// to the last bit, whatever their sizes and rings.
func TestUsedSolverIsLikeANewOne(t *testing.T) {
	used := &Solver{}
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 15))
		n := randomTree(r, 1+r.IntN(60))
		withRings(r, n, r.IntN(5))
		if seed%4 == 0 {
			n.Links[1].Law = Drop(5 * r.Float64())
		}
		if err := used.prepare(n); err != nil {
			t.Fatal(err)
		}
		fresh, err := NewSolver(n)
		if err != nil {
			t.Fatal(err)
		}
		if len(used.links) != len(fresh.links) {
			t.Errorf("seed %d: a used solver has %d links, a new one %d", seed, len(used.links), len(fresh.links))
		}
		hold := func(s *Solver) (*Solution, error) {
			sol, _, err := s.Hold(slices.Repeat([]bool{true}, len(n.Nodes)))
			return sol, err
		}
		after := func(s *Solver) (*Solution, error) { s.rest(); return s.After(make([]bool, len(n.Nodes))) }
		first := map[int]*Solution{}
		finds := []func(s *Solver) (*Solution, error){(*Solver).Start, after, hold}
		for _, i := range []int{0, 1, 2, 1, 0, 2, 2, 0, 0} {
			find := finds[i]
			got, err := find(used)
			if err != nil {
				t.Fatal(err)
			}
			want, err := find(fresh)
			if err != nil {
				t.Fatal(err)
			}
			if !reflect.DeepEqual(got, want) {
				t.Fatalf("seed %d: a used solver finds %g m³/s in %d steps, a new one %g in %d", seed, got.Total, got.Iterations, want.Total, want.Iterations)
			}
			// What it is asked again it finds again, with as many steps,
			// whatever it was asked between.
			if again := first[i]; again != nil && !reflect.DeepEqual(got, again) {
				t.Fatalf("seed %d: asked again, it finds %g m³/s in %d steps, and found %g in %d", seed, got.Total, got.Iterations, again.Total, again.Iterations)
			}
			first[i] = got
		}
	}
}

// Whoever solves network after network throws no memory away but the solutions,
// and none is held on to.
func TestSolvingIsDoneInBorrowedMemory(t *testing.T) {
	n := field(50)
	solve := func() { mustSolve(t, n) }
	solve()
	const solution = 5 // the struct and four slices
	if got := testing.AllocsPerRun(5, solve); got != solution {
		t.Errorf("%g allocations, %d of them the solution", got, solution)
	}
	if s := idle.Load(); s == nil || s.net != nil {
		t.Errorf("the idle solver: %t, with a network", s != nil)
	}
	n.Links[0].Law = straight(math.NaN())
	if _, err := Solve(n); err == nil || idle.Load() == nil || idle.Load().net != nil {
		t.Error("nothing to solve, and the memory is gone, or holds on to the network")
	}
}
