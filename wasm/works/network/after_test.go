package network

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// With every emitter held open at first, what is left open afterwards keeps its
// closing head, what opens by itself is open, and the laws hold. From the state
// of a start nothing changes.
func TestAfter(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 8))
		n := randomTree(r, 1+r.IntN(80))
		if seed%2 == 1 {
			withRings(r, n, 1+r.IntN(4))
		}
		s, err := NewSolver(n)
		if err != nil {
			t.Fatal(err)
		}
		after, err := s.After(slices.Repeat([]bool{true}, len(n.Nodes)))
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		checkLaws(t, n, after)
		checkOpening(t, n, after)

		start, err := s.Start()
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		same, err := s.After(start.Open)
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if start.Unsteady == 0 && !slices.Equal(same.Open, start.Open) {
			t.Errorf("seed %d: nothing changed, and other emitters are open", seed)
		}
		if t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
}

// One emitter is far too thirsty for its tubing: it shuts, and the others stay.
func TestAfterShutsOnlyWhatLacksHead(t *testing.T) {
	n := field(50)
	n.Links[0].Law = curve{h0: 20, qm: 1} // strong, so that the loss is in the row
	s, err := NewSolver(n)
	if err != nil {
		t.Fatal(err)
	}
	start, err := s.Start()
	if err != nil {
		t.Fatal(err)
	}
	last := len(n.Nodes) - 1
	n.Emitters = append(n.Emitters, orifice(8000))
	n.Nodes[last].Emitter = 1
	after, err := s.After(start.Open)
	if err != nil {
		t.Fatal(err)
	}
	shut := 0
	for i := range n.Nodes {
		if start.Open[i] && !after.Open[i] {
			shut++
			if after.Open[min(i+1, last)] && i+1 < last {
				t.Errorf("node %d shuts, and the next, which has less head, does not", i)
			}
		}
	}
	if !after.Open[last] || !(after.Out[last] > 3*start.Out[last]) || shut == 0 || shut == 49 {
		t.Errorf("%d of 49 emitters shut, %g m³/s leave at the last node", shut, after.Out[last])
	}
}

// From wherever it begins, with whatever lengths were changed since it was made,
// a solver comes to the state of the network as it stands.
func TestRemadeFromAnywhere(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 9))
		n := randomTree(r, 1+r.IntN(60))
		if seed%2 == 1 {
			withRings(r, n, 1+r.IntN(4))
		}
		for i := range n.Nodes {
			if n.Nodes[i].Emitter != None {
				n.Emitters = append(n.Emitters, orifice(1+9*r.Float64()))
				n.Nodes[i].Emitter = len(n.Emitters) - 1
			}
		}
		s, err := NewSolver(n)
		if err != nil {
			t.Fatal(err)
		}
		head, flow := make([]float64, len(n.Nodes)), make([]float64, len(n.Links))
		for range 4 {
			for k := range n.Links {
				if l := &n.Links[k]; l.Law == nil && r.IntN(3) == 0 {
					l.Length *= 0.3 + r.Float64()
					l.K = 5 * r.Float64()
					s.Remake(k)
				}
				flow[k] = 1e-4 * r.NormFloat64()
			}
			for i := range head {
				head[i] = n.Head + 10*r.NormFloat64()
			}
			s.Begin(head, flow)
			got, err := s.After(make([]bool, len(n.Nodes)))
			if err != nil {
				t.Fatalf("seed %d: %v", seed, err)
			}
			checkLaws(t, n, got)
			want, err := Solve(n)
			if err != nil {
				t.Fatal(err)
			}
			for i, h := range want.Head {
				if math.Abs(got.Head[i]-h) > 1e-8*(1+math.Abs(h)) {
					t.Fatalf("seed %d: node %d has %g m, want %g", seed, i, got.Head[i], h)
				}
			}
		}
	}
}

// Links that resist alike, one after the other, are kept as one; where one of
// them changes, only that one does, and changing it again takes no more room.
func TestRemadeAmongAlike(t *testing.T) {
	n := field(100)
	n.Links[0].Law = curve{h0: 60, qm: 1e-3}
	s, err := NewSolver(n)
	if err != nil {
		t.Fatal(err)
	}
	const kinds = 4 // the pump, a row, the header, the other row
	if len(s.links) != kinds {
		t.Errorf("%d links of %d kinds are kept as %d", len(n.Links), kinds, len(s.links))
	}
	others := map[int]bool{}
	for _, k := range []int{1, 50, 30, 31, 60, 30, 51, 99, 52, 30} { // first, last and in the middle of a run
		others[k] = true
		n.Links[k].Length += 40
		s.Remake(k)
		got, err := s.Start()
		if err != nil {
			t.Fatal(err)
		}
		want := mustSolve(t, n)
		if !slices.Equal(got.Head, want.Head) {
			t.Fatalf("after link %d is another, the last emitter has %g m, want %g", k, got.Head[len(n.Nodes)-1], want.Head[len(n.Nodes)-1])
		}
		if most := kinds + len(others); len(s.links) > most {
			t.Errorf("with %d that were changed, %d are kept, want %d at most", len(others), len(s.links), most)
		}
	}
}
