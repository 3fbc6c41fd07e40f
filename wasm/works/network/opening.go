package network

import (
	"slices"
	"sync/atomic"

	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/trade/emitter"
)

// idle is a solver whose memory the next network takes. Memory that is thrown
// away costs WebAssembly more than solving does: its collector runs only when
// the program pauses. It is kept for good: some 200 bytes for each node of the
// largest network, of which a plan has a few thousand.
var idle atomic.Pointer[Solver]

// Solve finds the state that n comes to when the water is turned on with every
// emitter shut. See [Solver.Start].
func Solve(n *Network) (*Solution, error) { return borrow(n, (*Solver).Start) }

// Hold finds the state with the given emitters open. See [Solver.Hold].
func Hold(n *Network, open []bool) (*Solution, error) {
	return borrow(n, func(s *Solver) (*Solution, error) {
		sol, _, err := s.Hold(open)
		return sol, err
	})
}

// borrow has a solver find a solution.
func borrow(n *Network, find func(*Solver) (*Solution, error)) (*Solution, error) {
	if err := n.check(); err != nil {
		return nil, err
	}
	s := idle.Swap(nil)
	if s == nil {
		s = &Solver{}
	}
	if err := s.prepare(n); err != nil {
		return nil, err
	}
	sol, err := find(s)
	s.net = nil
	idle.Store(s)
	return sol, err
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
// Between two calls the nodes may be given other emitters, and a law may change.
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
	guess := len(s.open)
	for {
		ready := s.findReady()
		if ready == 0 {
			return s.solution(0), nil
		}
		opened, err := s.openMost(ready, guess)
		if err != nil {
			return nil, err
		}
		if opened == 0 {
			return s.solution(ready), nil
		}
		guess = opened
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
	return s.solution(0), s.stay() && s.findReady() == 0, nil
}

// A waiting emitter is shut and sees its opening head.
type waiting struct {
	node  int
	spare float64 // m, how much more it sees
}

// findReady gathers the emitters that wait, and returns how many there are.
func (s *Solver) findReady() int {
	if cap(s.ready) < len(s.open) {
		s.ready = make([]waiting, 0, len(s.open))
	}
	s.ready = s.ready[:0]
	for i := range s.net.Nodes {
		node := &s.net.Nodes[i]
		if node.Emitter == None || s.open[i] {
			continue
		}
		if spare := s.now.head[i] - node.Z - s.net.Emitters[node.Emitter].Opens; spare >= 0 {
			s.ready = append(s.ready, waiting{i, spare})
		}
	}
	return len(s.ready)
}

// order puts those of them with most to spare first.
func (s *Solver) order() {
	numeric.Sort(len(s.ready), func(i, j int) bool {
		a, b := s.ready[i], s.ready[j]
		return a.spare > b.spare || a.spare == b.spare && a.node < b.node
	}, func(i, j int) { s.ready[i], s.ready[j] = s.ready[j], s.ready[i] })
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

// openMost opens the longest run of those that are ready, from the first, that
// stays open, settles the network with it, and returns its length. Opening more
// lowers every head, so one length parts what stays open from what does not. It
// is searched from a guess in steps that double, then by halving.
func (s *Solver) openMost(all, guess int) (int, error) {
	least, most := 0, all
	n, step := min(guess, all), 1
	inOrder := n < all
	if inOrder {
		s.order()
	} else {
		step = (all + 1) / 2
	}
	for ; ; step *= 2 {
		ok, err := s.try(n)
		if err != nil {
			return 0, err
		}
		if ok {
			least = n
		} else {
			most = n - 1
		}
		if !ok && !inOrder {
			inOrder = true
			s.order()
		}
		switch {
		case least == most:
			if !ok {
				_, err = s.try(least)
			}
			return least, err
		case most == all:
			n = min(all, n+step)
		case least == 0:
			n = max(1, n-step)
		default:
			n = (least + most + 1) / 2
		}
	}
}

// try settles the network with the first n of those that are ready open, and
// reports whether all that are open stay so.
func (s *Solver) try(n int) (bool, error) {
	for i, w := range s.ready {
		s.open[w.node] = i < n
	}
	err := s.settle()
	return err == nil && s.stay(), err
}

// solution copies the present state.
func (s *Solver) solution(unsteady int) *Solution {
	st := &s.now
	sol := &Solution{
		Head:       slices.Clone(st.head),
		Flow:       slices.Clone(st.flow),
		Out:        make([]float64, len(st.head)),
		Open:       slices.Clone(s.open),
		Total:      st.total,
		Iterations: s.steps,
		Unsteady:   unsteady,
	}
	if st.total > leastFlow {
		sol.Imbalance = st.imbalance() / st.total
		s.take(st)
		for i, e := range st.excess {
			sol.Out[i] = -e
		}
	} else { // what flows is rounding
		sol.Total = 0
		clear(sol.Flow)
	}
	return sol
}
