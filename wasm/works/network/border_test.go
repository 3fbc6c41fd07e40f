package network

import (
	"math"
	"testing"
)

// straight is a loss of k q.
type straight float64

func (k straight) Loss(q float64) (loss, slope float64) { return float64(k) * q, float64(k) }

// line returns a source of a head in m, a device that loses a metre for each
// L/s, and a draw behind it, in m³/s.
func line(head, draw float64) *Network {
	return &Network{
		Head: head, Water: water20,
		Nodes: []Node{{Emitter: None}, {Emitter: None, Draw: draw}},
		Links: []Link{{From: 0, To: 1, Law: straight(1000 - leastSlope)}},
	}
}

// A drop in a thousand years is no flow, and nothing is done for it; of what is
// less than a thousand of those nobody could tell it from rounding, so it is
// said to be still.
func TestStillWater(t *testing.T) {
	for _, c := range []struct {
		draw    float64
		settles bool // at once
		total   float64
	}{
		{0, true, 0}, {1e-18, true, 0}, {1.1e-18, false, 0}, {0.9e-15, false, 0}, {1.1e-15, false, 1.1e-15}, {1e-3, false, 1e-3},
	} {
		for _, drop := range []bool{false, true} {
			n, want := line(10, c.draw), 10-1000*c.total
			if drop {
				// A device takes its head from what counts as flow only.
				if n.Links[0].Law, want = Drop(4), 10; c.total > 0 {
					want = 6 - leastSlope*c.total
				}
			}
			s := mustSolve(t, n)
			// Half a digit of the head of 10 m, through 1,000 s/m².
			if at := !drop && (s.Iterations == 0) != c.settles; at || math.Abs(s.Total-c.total) > 1e-18 || math.Abs(s.Flow[0]-c.total) > 1e-18 || math.Abs(s.Out[1]-c.total) > 1e-18 || math.Abs(s.Head[1]-want) > 1e-11 {
				t.Errorf("a draw of %g m³/s, drop %t: %d steps to %+v", c.draw, drop, s.Iterations, s)
			}
		}
	}
}

// The border of what counts as flow, to the last bit: what is just at it is
// still, and a device takes nothing from it.
func TestLeastFlow(t *testing.T) {
	for draw, flows := range map[float64]bool{1e-15: false, 1.0005e-15: true} {
		for _, law := range []Law{straight(1000), Drop(4)} {
			n := line(10, draw)
			n.Links[0].Law = law
			s, err := NewSolver(n)
			if err != nil {
				t.Fatal(err)
			}
			head := 10.0
			if law == Drop(4) {
				head = 6
			}
			s.Begin([]float64{0, head}, []float64{draw})
			sol, err := s.After([]bool{false, false})
			if err != nil {
				t.Fatal(err)
			}
			if !flows {
				head, draw = 10, 0
			}
			if sol.Total != draw || sol.Head[1] != head || sol.Iterations > 0 && flows {
				t.Errorf("%v, %g m³/s: %+v", law, draw, sol)
			}
		}
	}
}

// A new solver is at rest, in still water.
func TestNewSolverIsAtRest(t *testing.T) {
	n := field(20)
	n.Links[0].Law = quadratic(1)
	n.Head = 3
	s, err := NewSolver(n)
	if err != nil {
		t.Fatal(err)
	}
	sol, err := s.After(make([]bool, len(n.Nodes)))
	if err != nil || sol.Iterations != 0 || sol.Head[9] != 3 {
		t.Errorf("%g m after %d steps: %v", sol.Head[9], sol.Iterations, err)
	}
}

// What is at rest but for less than the tolerances is left as it is, and what is
// beyond one of them is mended.
func TestAtRest(t *testing.T) {
	const draw = 1e-3
	for _, head := range []float64{10, -10, 0.5} {
		// One metre and the greatest head, which a head below nothing is too.
		most := 1e-12 * (1 + math.Max(math.Abs(head), math.Abs(head-1)))
		for _, c := range []struct {
			name            string
			flow, head      float64 // how far from rest: a share of the flow; in m, from the head that goes with it
			settled, nearly bool
		}{
			{"at rest", 0, 0, true, true},
			{"a little much", 0.9e-12, 0, true, true},
			{"a little short", -0.9e-12, 0, true, true},
			{"too much", 1.1e-12, 0, false, true},
			{"too little", -1.1e-12, 0, false, true},
			{"all but too far", 0.9e-9, 0, false, true},
			{"too far", 1.1e-9, 0, false, false},
			{"a little high", 0, 0.95 * most, true, true},
			{"a little low", 0, -0.95 * most, true, true},
			{"too high", 0, 1.05 * most, false, false},
			{"too low", 0, -1.05 * most, false, false},
		} {
			s, err := NewSolver(line(head, draw))
			if err != nil {
				t.Fatal(err)
			}
			flow := draw * (1 + c.flow)
			s.Begin([]float64{0, head - 1000*flow + c.head}, []float64{flow})
			s.evaluate(&s.now)
			if s.now.settled != c.settled || s.now.near != c.nearly {
				t.Errorf("from %g m, %s: settled %t, near %t", head, c.name, s.now.settled, s.now.near)
			}
			sol, err := s.After([]bool{false, false})
			if err != nil || (sol.Iterations == 0) != c.settled || math.Abs(sol.Flow[0]-draw) > 1e-12*draw {
				t.Errorf("from %g m, %s: %d steps to %+v, %v", head, c.name, sol.Iterations, sol, err)
			}
		}
	}
}

// The imbalance that a solution tells of is the greatest at a node, as a share
// of all that flows.
func TestImbalance(t *testing.T) {
	const draw = 1e-3
	n := line(10, draw)
	n.Nodes = append(n.Nodes, Node{Emitter: None, Draw: draw})
	n.Links = append(n.Links, Link{From: 1, To: 2, Law: straight(1000 - leastSlope)})
	s, err := NewSolver(n)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ first, second, want float64 }{ // flows as shares of a draw; what is out of place at the worse node
		{2, 1, 0}, {2 + 1e-12, 1, 1e-12}, {2, 1 + 1e-12, 1e-12}, {2, 1 - 1.5e-12, 1.5e-12}, {2 - 1e-12, 1 - 1.5e-12, 1.5e-12}, {2 - 1e-12, 1 + 0.5e-12, 1.5e-12},
	} {
		first, second := c.first*draw, c.second*draw
		s.Begin([]float64{0, 8, 7}, []float64{first, second})
		sol, err := s.After([]bool{false, false, false})
		// The last bits of flows that are 2,000 times the least of these.
		if want := c.want / c.first; err != nil || sol.Iterations != 0 || math.Abs(sol.Imbalance-want) > 1e-15 {
			t.Errorf("with %g and %g of a draw: imbalance %g after %d steps, want %g; %v", c.first, c.second, sol.Imbalance, sol.Iterations, want, err)
		}
	}
}

// A law that is none settles nowhere, and that is said after 40 steps of
// Newton's, one of the descent, which finds no way down, and 40 more.
func TestWhatDoesNotSettleIsAnError(t *testing.T) {
	for name, law := range map[string]Law{"no number": straight(math.NaN()), "no end": straight(math.Inf(1))} {
		n := line(10, 1e-3)
		n.Links[0].Law = law
		if sol, err := Solve(n); sol != nil || err != ErrUnsettled {
			t.Errorf("%s, by a borrowed solver: %+v, %v", name, sol, err)
		}
		if sol, err := Hold(n, []bool{false, false}); sol != nil || err != ErrUnsettled {
			t.Errorf("%s, held by one: %+v, %v", name, sol, err)
		}
		s, err := NewSolver(n)
		if err != nil {
			t.Fatal(err)
		}
		if sol, err := s.Start(); sol != nil || err != ErrUnsettled || s.steps != 81 {
			t.Errorf("%s: %+v, %v after %d steps", name, sol, err, s.steps)
		}
		if sol, ok, err := s.Hold([]bool{false, false}); sol != nil || ok || err != ErrUnsettled {
			t.Errorf("%s, held: %+v, %t, %v", name, sol, ok, err)
		}
		if sol, err := s.After([]bool{false, false}); sol != nil || err != ErrUnsettled {
			t.Errorf("%s, after: %+v, %v", name, sol, err)
		}
		if r, sol, err := s.Response([]bool{false, false}); r != nil || sol != nil || err != ErrUnsettled {
			t.Errorf("%s, its response: %+v, %+v, %v", name, r, sol, err)
		}
	}
}

// Nor does a device at the supply hide what does not settle behind it.
func TestWhatDoesNotSettleBehindADrop(t *testing.T) {
	n := behind(20, orifice(2))
	n.Links[1].Law = straight(math.NaN())
	if sol, err := Solve(n); sol != nil || err != ErrUnsettled {
		t.Errorf("%+v, %v", sol, err)
	}
}

// No number is at rest, also where nothing flows: neither a loss nor what an
// emitter gives.
func TestNoNumberIsNotAtRest(t *testing.T) {
	still := line(10, 0)
	still.Links[0].Law = straight(math.NaN())
	thirsty := behind(20, orifice(math.NaN()))
	thirsty.Links[0].Law = quadratic(0)
	for name, n := range map[string]*Network{"a law": still, "an emitter": thirsty} {
		if sol, err := Solve(n); sol != nil || err != ErrUnsettled {
			t.Errorf("%s: %+v, %v", name, sol, err)
		}
	}
}

// Which end of a link is named first makes no difference, at the source neither.
func TestLinkToTheSource(t *testing.T) {
	n := behind(20, orifice(2))
	n.Links[0] = Link{From: 0, To: 1, Length: 30, Bore: 0.004}
	want := mustSolve(t, n)
	n.Links[0].From, n.Links[0].To = 1, 0
	// Some digits more than the tolerances leave.
	if got := mustSolve(t, n); got.Iterations != want.Iterations || math.Abs(got.Flow[0]+want.Flow[0]) > 1e-11*want.Total || math.Abs(got.Head[2]-want.Head[2]) > 1e-9 || math.Abs(got.Total-want.Total) > 1e-11*want.Total {
		t.Errorf("%+v the other way round, %+v", got, want)
	}
}

// bursting is a loss of nothing up to a flow, and no number beyond it.
type bursting float64

func (b bursting) Loss(q float64) (loss, slope float64) {
	if q > float64(b) {
		return math.NaN(), math.NaN()
	}
	return 0, 0
}

// What settles while all is shut, and not once it opens, is an error too.
func TestWhatDoesNotSettleOnceOpen(t *testing.T) {
	n := behind(20, compensating(2))
	n.Links[0].Law = bursting(1e-9)
	if sol, err := Solve(n); sol != nil || err != ErrUnsettled {
		t.Errorf("%+v, %v", sol, err)
	}
}
