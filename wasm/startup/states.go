package startup

import (
	"math"

	"evenrow/wasm/emitter"
	"evenrow/wasm/layout"
	"evenrow/wasm/network"
)

// States are the two ends of what one zone may settle in: an emitter that is
// shut opens at a higher pressure than that at which an open one shuts.
type States struct {
	Below   *network.Solution // reached with every emitter shut before
	Above   *network.Solution // held when every emitter was open before
	Opened  int               // emitters open in Below
	Held    int               // and in Above
	Checked bool              // both obey every law of the network, and no emitter has cause to change

	// What opens when the rows are let in one after another, in their order,
	// each while those before it keep running: 0 where it was not tried,
	// because both states are the same or no valve can be shut at a row.
	InTurn int
}

// Differ says whether more emitters stay open than open by themselves.
func (s *States) Differ() bool { return s.Held != s.Opened }

// statesOf finds both states of a zone.
func statesOf(l *layout.Layout, zone int, below *network.Solution) (States, error) {
	n := l.Zone(zone)
	s := States{Below: below, Opened: emittersOpen(n, below.Open)}
	solver, err := network.NewSolver(n)
	if err != nil {
		return s, err
	}
	if s.Above, err = solver.After(everything(n)); err != nil {
		return s, err
	}
	s.Held = emittersOpen(n, s.Above.Open)
	s.Checked = below.Unsteady == 0 && s.Above.Unsteady == 0 && Obeys(n, below) && Obeys(n, s.Above)
	if s.Differ() {
		s.InTurn, err = inTurn(l, n, zone)
	}
	return s, err
}

// everything is every emitter of a network open.
func everything(n *network.Network) []bool {
	open := make([]bool, len(n.Nodes))
	for i := range open {
		open[i] = n.Nodes[i].Emitter != network.None
	}
	return open
}

func emittersOpen(n *network.Network, open []bool) int {
	sum := 0
	for i := range n.Nodes {
		if open[i] && n.Nodes[i].Emitter != network.None {
			sum += int(n.Nodes[i].Count)
		}
	}
	return sum
}

// turns is how many groups of rows are let in one after another at most.
const turns = 12

// inTurn lets the rows of a zone in one after another, at most turns groups of
// them, and returns how many emitters are open in the end.
func inTurn(l *layout.Layout, n *network.Network, zone int) (int, error) {
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
		open = sol.Open
	}
	return emittersOpen(n, open), nil
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
