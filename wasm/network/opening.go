package network

import (
	"slices"

	"evenrow/wasm/emitter"
	"evenrow/wasm/numeric"
)

// Solve finds the state that n comes to when the water is turned on with every
// emitter shut. See [Solver.Start].
func Solve(n *Network) (*Solution, error) {
	s, err := NewSolver(n)
	if err != nil {
		return nil, err
	}
	return s.Start()
}

// Start finds the state that the network comes to when the water is turned on
// with every emitter shut.
//
// Those that see the highest head above their opening head open first. As many
// open as can stay open: where one more would open and pull itself or another
// below the closing head, that one opens and shuts in turn. It is counted in
// Solution.Unsteady and as shut, for a plant cannot rely on it.
func (s *Solver) Start() (*Solution, error) {
	s.steps = 0
	s.rest()
	for i, node := range s.net.Nodes {
		s.open[i] = node.Emitter != None && s.net.Emitters[node.Emitter].Kind == emitter.NonCompensating
	}
	if err := s.settle(); err != nil {
		return nil, err
	}
	return s.openReady()
}

// After finds the state that the network comes to when something changes while
// the given emitters, by node, are open: an end is opened, a pipe bursts. Those
// that fall below their closing head shut, all at once, until the others keep
// theirs; then those that see their opening head open, as in [Solver.Start].
// Between two calls the nodes may be given other emitters.
func (s *Solver) After(open []bool) (*Solution, error) {
	s.steps = 0
	s.choose(open)
	for {
		if err := s.settle(); err != nil {
			return nil, err
		}
		if s.shutLow() == 0 {
			return s.openReady()
		}
	}
}

// choose marks the given emitters open, and those that are always open.
func (s *Solver) choose(open []bool) {
	for i, node := range s.net.Nodes {
		s.open[i] = node.Emitter != None &&
			(open[i] || s.net.Emitters[node.Emitter].Kind == emitter.NonCompensating)
	}
}

// shutLow shuts the open emitters that see less than their closing head, and
// returns how many nodes have such.
func (s *Solver) shutLow() (n int) {
	for i, node := range s.net.Nodes {
		if s.open[i] && !s.net.Emitters[node.Emitter].Stays(s.now.head[i]-node.Z, true) {
			s.open[i] = false
			n++
		}
	}
	return n
}

// openReady opens what is ready until nothing more stays open.
func (s *Solver) openReady() (*Solution, error) {
	for {
		ready := s.ready()
		if len(ready) == 0 {
			return s.solution(0), nil
		}
		opened, err := s.openMost(ready)
		if err != nil {
			return nil, err
		}
		if opened == 0 {
			return s.solution(len(ready)), nil
		}
	}
}

// Hold finds the state with the given emitters open, by node, whatever the
// heads. The second result is whether they stay open and the others shut.
func (s *Solver) Hold(open []bool) (*Solution, bool, error) {
	s.steps = 0
	s.rest()
	s.choose(open)
	if err := s.settle(); err != nil {
		return nil, false, err
	}
	return s.solution(0), s.stay() && len(s.ready()) == 0, nil
}

// ready returns the nodes whose shut emitters see their opening head, those
// with most to spare first.
func (s *Solver) ready() []int {
	var nodes []int
	spare := func(i int) float64 {
		node := &s.net.Nodes[i]
		return s.now.head[i] - node.Z - s.net.Emitters[node.Emitter].Opens
	}
	for i, node := range s.net.Nodes {
		if node.Emitter != None && !s.open[i] && spare(i) >= 0 {
			nodes = append(nodes, i)
		}
	}
	numeric.Sort(len(nodes), func(i, j int) bool {
		a, b := spare(nodes[i]), spare(nodes[j])
		return a > b || a == b && nodes[i] < nodes[j]
	}, func(i, j int) { nodes[i], nodes[j] = nodes[j], nodes[i] })
	return nodes
}

// stay reports whether every open emitter keeps its closing head.
func (s *Solver) stay() bool {
	for i, node := range s.net.Nodes {
		if !s.open[i] {
			continue
		}
		if e := &s.net.Emitters[node.Emitter]; e.Kind == emitter.Compensating && s.now.head[i]-node.Z < e.Closes {
			return false
		}
	}
	return true
}

// openMost opens the longest run of the nodes, from the first, that stays
// open, settles the network with it, and returns its length. Opening more
// lowers every head, so the run is found by halving.
func (s *Solver) openMost(nodes []int) (int, error) {
	try := func(n int) (bool, error) {
		for i, node := range nodes {
			s.open[node] = i < n
		}
		err := s.settle()
		return err == nil && s.stay(), err
	}
	most, least := len(nodes), 0
	for n := most; ; n = (least + most + 1) / 2 {
		ok, err := try(n)
		if err != nil {
			return 0, err
		}
		if ok {
			least = n
		} else {
			most = n - 1
		}
		if least == most {
			if ok {
				return least, nil
			}
			_, err = try(least)
			return least, err
		}
	}
}

// solution copies the present state.
func (s *Solver) solution(unsteady int) *Solution {
	st := &s.now
	sol := &Solution{
		Head:       slices.Clone(st.head),
		Flow:       slices.Clone(st.flow),
		Out:        slices.Clone(st.out),
		Open:       slices.Clone(s.open),
		Total:      st.total,
		Iterations: s.steps,
		Unsteady:   unsteady,
	}
	if st.total > 1000*stillFlow {
		sol.Imbalance = st.imbalance() / st.total
	} else { // what flows is rounding
		sol.Total = 0
		clear(sol.Flow)
		clear(sol.Out)
	}
	return sol
}
