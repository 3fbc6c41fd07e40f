package startup

import (
	"math"

	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// States are what one zone may settle in: an emitter that is shut opens at a
// higher pressure than that at which an open one shuts, so it matters what was
// before.
type States struct {
	Fewest  *network.Solution // reached from shut while the pressure builds slowly: one opens after another, as long as the next still sees its opening head
	Below   *network.Solution // reached from shut when the pressure is there at once: as many open as stay so
	Above   *network.Solution // held when every emitter was open before
	Few     int               // emitters open in Fewest
	Opened  int               // in Below
	Held    int               // in Above
	Checked bool              // all obey every law of the network, and no emitter has cause to change

	// What opens when the rows are let in one after another, in their order,
	// each at once and while those before it keep running: 0 where it was not tried,
	// because there is only one state.
	InTurn int
}

// Differ says whether more emitters stay open than open by themselves.
func (s *States) Differ() bool { return s.Held != s.Few }

// Unsteady returns how many plants' emitters open and shut in turn at the edge of
// the two: those of the state of which there are more.
func (s *States) Unsteady() int { return max(s.Below.Unsteady, s.Above.Unsteady) }

// statesOf finds the states of a zone.
func statesOf(l *layout.Layout, zone int, below *network.Solution) (States, error) {
	n := l.Zone(zone)
	s := States{Below: below}
	comes := reachOf(l, n, below)
	s.Opened = comes.open(n, below)
	solver, err := network.NewSolver(n)
	if err != nil {
		return s, err
	}
	if s.Fewest, err = slowly(solver, n, make([]bool, len(n.Nodes))); err != nil {
		return s, err
	}
	if s.Above, err = solver.After(everything(n)); err != nil {
		return s, err
	}
	s.Few, s.Held = comes.open(n, s.Fewest), comes.open(n, s.Above)
	if s.Few > s.Opened {
		s.Fewest, s.Few = below, s.Opened
	}
	if s.Held < s.Opened { // too many shut at once: what opened by itself is held too
		s.Above, s.Held = below, s.Opened
	}
	s.Checked = true
	for _, sol := range []*network.Solution{s.Fewest, below, s.Above} {
		s.Checked = s.Checked && sol.Unsteady == 0 && Obeys(n, sol)
	}
	if s.Differ() {
		s.InTurn, err = inTurn(l, n, zone, comes)
	}
	return s, err
}

// slowly opens the emitters that see their opening head one after another, the
// one that sees most above it first, until none that is shut does, and returns
// that state. The given ones are open before, and open is changed. Where one that opens takes the
// closing head from another there is no such state, and the result is that of
// [network.Solver.After].
func slowly(solver *network.Solver, n *network.Network, open []bool) (*network.Solution, error) {
	sol, ok, err := solver.Hold(open)
	if err != nil || ok {
		return sol, err
	}
	var ready []int
	spare := func(k int) float64 {
		node := &n.Nodes[k]
		return sol.Head[k] - node.Z - n.Emitters[node.Emitter].Opens
	}
	for k := range n.Nodes {
		if n.Nodes[k].Emitter != network.None && !sol.Open[k] && spare(k) >= 0 {
			ready = append(ready, k)
		}
	}
	numeric.Sort(len(ready), func(i, j int) bool {
		a, b := spare(ready[i]), spare(ready[j])
		return a > b || a == b && ready[i] < ready[j]
	}, func(i, j int) { ready[i], ready[j] = ready[j], ready[i] })
	// The more are open the lower every head: one number parts too few from enough.
	steady := true
	hold := func(m int) (*network.Solution, bool, error) {
		for i, k := range ready {
			open[k] = i < m
		}
		now, ok, err := solver.Hold(open)
		if err != nil {
			return nil, false, err
		}
		steady = ok
		for _, k := range ready[m:] {
			if now.Head[k]-n.Nodes[k].Z >= n.Emitters[n.Nodes[k].Emitter].Opens {
				return now, false, nil
			}
		}
		return now, true, nil
	}
	least, most := 0, len(ready)
	for least < most {
		m := (least + most) / 2
		_, enough, err := hold(m)
		if err != nil {
			return nil, err
		}
		if enough {
			most = m
		} else {
			least = m + 1
		}
	}
	end, _, err := hold(least)
	if err != nil || steady {
		return end, err
	}
	return solver.After(open)
}

// everything is every emitter of a network open.
func everything(n *network.Network) []bool {
	open := make([]bool, len(n.Nodes))
	for i := range open {
		open[i] = n.Nodes[i].Emitter != network.None
	}
	return open
}

// turns is how many groups of rows are let in one after another at most.
const turns = 12

// inTurn lets the rows of a zone in one after another while the supply runs, at
// most turns groups of them, and returns how many emitters are open in the end.
// A valve that is opened brings the pressure at once.
func inTurn(l *layout.Layout, n *network.Network, zone int, comes reach) (count int, err error) {
	var rows []int
	for r := range l.Plan.Rows {
		if l.ZoneOf(r) == zone {
			rows = append(rows, r)
		}
	}
	groups := min(turns, len(rows))
	open := make([]bool, len(n.Nodes))
	for g := range groups {
		last := rows[(g+1)*len(rows)/groups-1]
		part := *n
		part.Nodes = append([]network.Node(nil), n.Nodes...)
		for i := range l.Plants {
			if p := &l.Plants[i]; p.Row > last {
				part.Nodes[p.Node].Emitter, part.Nodes[p.Node].Count = network.None, 0
			}
		}
		solver, err := network.NewSolver(&part)
		if err != nil {
			return 0, err
		}
		sol, err := solver.After(open)
		if err != nil {
			return 0, err
		}
		open, count = sol.Open, comes.open(n, sol)
	}
	return count, nil
}

// Obeys reports whether a solution is a state that the network stays in: what
// flows into each place flows out of it, each link loses the head between its
// ends, each emitter gives what its law says, each open one sees its closing
// head or more, and each shut one less than its opening head. It takes nothing
// over from the solver.
func Obeys(n *network.Network, s *network.Solution) bool {
	// Of the flow, what the solver allows itself, and of the head as much as
	// the roundings of a sum along a thousand links.
	const ofFlow, ofHead = 1e-8, 1e-9
	least := ofFlow*s.Total + 1e-15
	excess := make([]float64, len(n.Nodes))
	for k := range n.Links {
		l := &n.Links[k]
		q := s.Flow[k]
		excess[l.From] -= q
		excess[l.To] += q
		// Where nothing flows the solver gives no flows for the small heads.
		if gap := s.Head[l.From] - s.Head[l.To] - l.Loss(q, n.Water); s.Total > 0 && math.Abs(gap) > ofHead*(1+math.Abs(s.Head[l.From])) {
			return false
		}
	}
	for i := range n.Nodes {
		node := &n.Nodes[i]
		out := node.Draw
		if node.Emitter != network.None {
			e, h := &n.Emitters[node.Emitter], s.Head[i]-node.Z
			if s.Open[i] {
				q, _ := e.Open(h)
				out += node.Count * q
			}
			if e.Kind == emitter.Compensating && (s.Open[i] && h < e.Closes || !s.Open[i] && h >= e.Opens) {
				return false
			}
		}
		if i > 0 && !(math.Abs(excess[i]-out) <= least) {
			return false
		}
	}
	return true
}
