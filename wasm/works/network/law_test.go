package network

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"evenrow/wasm/trade/emitter"
)

// checkLaws fails unless the solution obeys continuity at every node and
// energy along every link, worked out here again from the links themselves.
func checkLaws(t *testing.T, n *Network, s *Solution) {
	t.Helper()
	excess := make([]float64, len(n.Nodes))
	total := 0.0
	for k, l := range n.Links {
		q := s.Flow[k]
		excess[l.From] -= q
		excess[l.To] += q
		if l.From == 0 || l.To == 0 {
			total += math.Abs(q)
		}
		r := newResistance(&l, n.Water)
		loss, _ := r.loss(&l, q)
		if drop := s.Head[l.From] - s.Head[l.To]; l.Law == nil && drop*q < -1e-8*(1+math.Abs(n.Head))*math.Abs(q) {
			t.Errorf("link %d: head rises by %g m along the flow", k, -drop)
		}
		if gap := s.Head[l.From] - s.Head[l.To] - loss; !(math.Abs(gap) < 1e-7) {
			t.Errorf("link %d: the drop in head is %g m off its loss", k, gap)
		}
	}
	for i, node := range n.Nodes {
		if i == 0 {
			continue
		}
		want := node.Draw
		if s.Open[i] {
			q, _ := n.Emitters[node.Emitter].Open(s.Head[i] - node.Z)
			want += node.Count * q
		}
		// Mass balance: below 1e-9 of the total flow.
		if !(math.Abs(excess[i]-want) <= 1e-9*total+stillFlow) {
			t.Errorf("node %d: inflow %g, outflow %g m³/s, of %g in all", i, excess[i], want, total)
		}
	}
	if !(s.Imbalance <= 1e-9) {
		t.Errorf("imbalance %g of the total flow", s.Imbalance)
	}
}

// checkOpening fails unless every emitter's state fits its head: open above
// its closing head, shut below its opening head unless it is unsteady.
func checkOpening(t *testing.T, n *Network, s *Solution) {
	t.Helper()
	unsteady := 0
	for i, node := range n.Nodes {
		if node.Emitter == None {
			continue
		}
		e, h := &n.Emitters[node.Emitter], s.Head[i]-node.Z
		switch {
		case e.Kind == emitter.NonCompensating:
			if !s.Open[i] {
				t.Errorf("node %d: a non-compensating emitter is shut", i)
			}
		case s.Open[i] && h < e.Closes:
			t.Errorf("node %d: open at %g m, below its closing head", i, h)
		case !s.Open[i] && h >= e.Opens:
			unsteady++
		}
	}
	if unsteady != s.Unsteady {
		t.Errorf("%d emitters shut at their opening head, %d reported unsteady", unsteady, s.Unsteady)
	}
}

func FuzzSolve(f *testing.F) {
	for seed := range uint64(40) {
		f.Add(seed, uint16(1+seed*7), uint8(seed%4))
	}
	f.Fuzz(func(t *testing.T, seed uint64, nodes uint16, rings uint8) {
		r := rand.New(rand.NewPCG(seed, 1))
		n := randomTree(r, 1+int(nodes%300))
		withRings(r, n, int(rings%8))
		s, err := Solve(n)
		if err != nil {
			t.Fatal(err)
		}
		checkLaws(t, n, s)
		checkOpening(t, n, s)
	})
}

// With the same emitters open, a stronger pump never lowers any emitter's flow.
func FuzzMoreHead(f *testing.F) {
	for seed := range uint64(20) {
		f.Add(seed, uint16(5+seed*11), 0.5+float64(seed))
	}
	f.Fuzz(func(t *testing.T, seed uint64, nodes uint16, more float64) {
		if !(more >= 0 && more < 100) {
			return
		}
		n := randomTree(rand.New(rand.NewPCG(seed, 2)), 1+int(nodes%200))
		all := slices.Repeat([]bool{true}, len(n.Nodes))
		hold := func() *Solution {
			s, err := NewSolver(n)
			if err != nil {
				t.Fatal(err)
			}
			sol, _, err := s.Hold(all)
			if err != nil {
				t.Fatal(err)
			}
			return sol
		}
		before := hold()
		pump := n.Links[0].Law.(curve)
		pump.qm *= math.Sqrt((pump.h0 + more) / pump.h0) // the same fall with flow, more metres higher
		pump.h0 += more
		n.Links[0].Law = pump
		after := hold()
		for i := range n.Nodes {
			// Heads are exact to 1e-9 of the greatest; flows follow them.
			if after.Out[i] < before.Out[i]*(1-1e-6)-1e-9*after.Total {
				t.Errorf("node %d: %g m more at the pump lowers its flow from %g to %g", i, more, before.Out[i], after.Out[i])
			}
		}
	})
}

// The order of links and nodes must not matter.
func TestReversedLinks(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	for range 20 {
		n := randomTree(r, 100)
		a, err := Solve(n)
		if err != nil {
			t.Fatal(err)
		}
		for k := 2; k < len(n.Links); k++ {
			n.Links[k].From, n.Links[k].To = n.Links[k].To, n.Links[k].From
		}
		slices.Reverse(n.Links)
		b, err := Solve(n)
		if err != nil {
			t.Fatal(err)
		}
		for i := range n.Nodes {
			if math.Abs(a.Head[i]-b.Head[i]) > 1e-7 {
				t.Fatalf("node %d: %g and %g m", i, a.Head[i], b.Head[i])
			}
		}
	}
}

// Where every emitter is shut nothing flows, not even rounding.
func TestAllShutIsStill(t *testing.T) {
	n := field(200)
	n.Links[0].Law = curve{h0: 6.5, qm: 1.5e-3}
	s, err := Solve(n)
	if err != nil {
		t.Fatal(err)
	}
	if s.Total != 0 || slices.ContainsFunc(s.Flow, func(q float64) bool { return q != 0 }) || slices.Contains(s.Open, true) {
		t.Errorf("total %g", s.Total)
	}
	if h := s.Head[len(s.Head)-1]; math.Abs(h-6.5) > 1e-9 {
		t.Errorf("%g m at the last emitter, want the pump's 6.5", h)
	}
}

// One emitter of 0.1 L/h, the least that a plan may hold, is no rounding.
func TestOneSmallEmitter(t *testing.T) {
	n := field(1)
	n.Emitters[0] = compensating(0.1)
	s, err := Solve(n)
	if err != nil {
		t.Fatal(err)
	}
	checkLaws(t, n, s)
	if math.Abs(s.Total*3.6e6-0.1) > 1e-9 {
		t.Errorf("%g L/h", s.Total*3.6e6)
	}
}

// However many steps and rounds it takes, a solver that has its memory
// allocates its solution and nothing else.
func TestSolvingAgainAllocatesNothing(t *testing.T) {
	n := field(300)
	n.Links[0].Law = curve{h0: 9, qm: 1e-4} // too weak for all
	s, err := NewSolver(n)
	if err != nil {
		t.Fatal(err)
	}
	start := func() {
		if _, err := s.Start(); err != nil {
			t.Fatal(err)
		}
	}
	start()
	if s.steps < 20 {
		t.Fatalf("%d steps", s.steps)
	}
	const solution = 5 // the struct and four slices
	if got := testing.AllocsPerRun(20, start); got != solution {
		t.Errorf("%g allocations, %d of them the solution", got, solution)
	}
	for i, node := range n.Nodes {
		s.open[i] = node.Emitter != None
	}
	if got := testing.AllocsPerRun(20, func() {
		s.rest()
		if err := s.settle(); err != nil {
			t.Fatal(err)
		}
	}); got != 0 {
		t.Errorf("%g allocations in %d steps of Newton's", got, s.steps)
	}
}
