package network

import (
	"testing"

	"evenrow/wasm/ground/work"
)

// What a solution costs a meter, by hand: where every emitter stays shut, twice
// what it takes to look at each node and link once for preparing, and once for
// looking that nothing flows.
func TestCostOfStillWater(t *testing.T) {
	n := field(20)
	n.Head, n.Links[0].Law = 1, quadratic(0) // too little for any emitter to open
	each := len(n.Nodes) + len(n.Links)
	for units, whole := range map[int]bool{3 * each: true, 3*each - 1: false} {
		n.Nodes[1].Draw = 1e-18 - n.Nodes[1].Draw // nothing or all but nothing
		m := work.New(units, nil)
		n.Meter = m
		var s *Solution
		var err error
		if got := m.Within(func() { s, err = Solve(n) }); got != whole || err != nil {
			t.Errorf("with %d units for %d nodes and links it is solved: %t, %v, want %t", units, each, got, err, whole)
		}
		if whole && (s.Total != 0 || s.Iterations != 0) {
			t.Fatalf("%g m³/s after %d steps: the test is none", s.Total, s.Iterations)
		}
	}
}

// Where water flows, each step costs an evaluation and a pass of elimination
// besides: a tree's pass is two entries a node, but the source.
func TestCostOfSteps(t *testing.T) {
	n := behind(20, orifice(2))
	n.Links[0].Law = quadratic(0)
	var s *Solution
	solve := func(units int) bool {
		m := work.New(units, nil)
		n.Meter = m
		return m.Within(func() {
			var err error
			if s, err = Solve(n); err != nil {
				t.Fatal(err)
			}
		})
	}
	if !solve(1 << 30) {
		t.Fatal("it is not solved")
	}
	least := 0 // units that suffice
	for !solve(least) {
		least++
	}
	each := len(n.Nodes) + len(n.Links)
	if steps := s.Iterations; least < 3*each+steps*(each+2) || steps == 0 {
		t.Errorf("%d steps for %d nodes and links cost %d units, want %d at least", steps, each, least, 3*each+steps*(each+2))
	}
}

// A response costs the state that it is about, and one step's elimination.
func TestCostOfAResponse(t *testing.T) {
	n := field(20)
	n.Head, n.Links[0].Law = 1, quadratic(0)
	s, err := NewSolver(n)
	if err != nil {
		t.Fatal(err)
	}
	n.Meter = work.New(1000, nil)
	if _, _, err := s.Response(make([]bool, len(n.Nodes))); err != nil {
		t.Fatal(err)
	}
	// An evaluation of still water; an entry for each node but the source, and
	// one to its neighbour for all of those but the last.
	if got, want := 1000-n.Meter.Left(), len(n.Nodes)+len(n.Links)+2*(len(n.Nodes)-1)-1; got != want {
		t.Errorf("%d units, want %d", got, want)
	}
}
