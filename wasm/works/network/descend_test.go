package network

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenrow/wasm/ground/work"
	"evenrow/wasm/trade/filter"
)

// counted counts how often a law is asked.
type counted struct {
	Law
	asked *int
}

func (c counted) Loss(q float64) (loss, slope float64) {
	*c.asked++
	return c.Law.Loss(q)
}

// From still water, and from heads that are anything, the descent comes near to
// rest by itself: what flows into a node leaves it, but for a millionth of all
// that flows, and each flow is the one that the heads at its ends drive.
func TestDescentComesNear(t *testing.T) {
	steps, asked, hidden := 0, 0, 0
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 91))
		n := randomTree(r, 1+r.IntN(60))
		withRings(r, n, r.IntN(4))
		if seed%2 == 0 {
			withSupply(r, n)
		}
		n.Links[0].Law = counted{n.Links[0].Law, &asked}
		open := make([]bool, len(n.Nodes))
		for i := range open {
			open[i] = r.IntN(4) != 0
		}
		s, err := NewSolver(n)
		if err != nil {
			t.Fatal(err)
		}
		s.choose(open)
		if seed%4 > 1 {
			head := make([]float64, len(n.Nodes))
			for i := range head {
				head[i] = n.Head + 10*r.NormFloat64()
			}
			s.Begin(head, nil)
		}
		s.descend()
		steps += s.steps
		excess, through, greatest, finding := make([]float64, len(n.Nodes)), 0.0, 0.0, asked
		for i, node := range n.Nodes {
			greatest = max(greatest, math.Abs(s.now.head[i]))
			excess[i] -= node.Draw
			if s.open[i] {
				q, _ := n.Emitters[node.Emitter].Open(s.now.head[i] - node.Z)
				excess[i] -= node.Count * q
			}
		}
		for k, l := range n.Links {
			q := s.now.flow[k]
			excess[l.From] -= q
			excess[l.To] += q
			if l.From == 0 || l.To == 0 {
				through += math.Abs(q)
			}
			loss, _ := NewDrag(l, n.Water).Loss(q)
			// The last digits of a head, and of a flow times a steep slope.
			if drop := s.now.head[l.From] - s.now.head[l.To]; math.Abs(loss-drop) > 1e-12*(1+greatest) {
				t.Errorf("seed %d, link %d: the flow loses %g m, the heads differ by %g", seed, k, loss, drop)
			}
		}
		worst := 0.0
		for _, e := range excess[1:] {
			worst = max(worst, math.Abs(e))
		}
		if worst > 1e-6*through+stillFlow {
			// All that may be left is what the last bit of a head drives
			// through a link that has the least resistance only.
			hidden++
			if worst > 0x1p-51*greatest/leastSlope {
				t.Errorf("seed %d: at a node are %g m³/s too much of %g", seed, worst, through)
			}
			continue
		}
		was := s.steps
		if s.descend(); s.steps != was {
			t.Errorf("seed %d: near to rest it takes %d steps more", seed, s.steps-was)
		}
		asked = finding
	}
	// As many as they are; some more for processors that round in another way.
	if steps > 2040 || asked > 24500 || hidden == 0 || hidden > 4 {
		t.Errorf("%d steps, a law asked for %d flows, and %d of 200 that rounding hides", steps, asked, hidden)
	}
}

// The descent goes by the heads alone, ends where a millionth of the flow is
// out of place and no sooner, and takes a straight law in one step.
func TestDescentGoesByTheHeads(t *testing.T) {
	for _, c := range []struct {
		driven float64 // m³/s, by the heads
		steps  int
	}{
		{1e-3, 0}, {1e-3 * (1 + 0.9e-6), 0}, {1e-3 * (1 - 0.9e-6), 0}, {1e-3 * (1 + 1.1e-6), 1}, {1e-3 * (1 - 1.1e-6), 1}, {0, 1}, {-3e-3, 1},
	} {
		s, err := NewSolver(line(10, 1e-3))
		if err != nil {
			t.Fatal(err)
		}
		s.Begin([]float64{0, 10 - 1000*c.driven}, []float64{7e-3})
		s.descend()
		want := c.driven
		if c.steps > 0 {
			want = 1e-3
		}
		// Half a digit of the head, which is of 10 m.
		if s.steps != c.steps || math.Abs(s.now.flow[0]-want) > 1e-17 {
			t.Errorf("from heads that drive %g m³/s: %d steps to %g m³/s, want %d to %g", c.driven, s.steps, s.now.flow[0], c.steps, want)
		}
	}
}

// Still water is at rest, and so is what is no flow.
func TestDescentLeavesStillWater(t *testing.T) {
	for draw, want := range map[float64]int{0: 0, 1e-18: 0, 1.1e-18: 1} {
		s, err := NewSolver(line(10, draw))
		if err != nil {
			t.Fatal(err)
		}
		if s.descend(); s.steps != want {
			t.Errorf("%d steps for a draw of %g m³/s, want %d", s.steps, draw, want)
		}
	}
}

// What a descent costs a meter, by hand, with 3 nodes and links: 3 to evaluate and
// 8 times that to find the flows, at first and after its one step, and for the
// step the one node whose head is not fixed and no entry besides.
func TestCostOfDescent(t *testing.T) {
	n := line(10, 1e-3)
	s, err := NewSolver(n)
	if err != nil {
		t.Fatal(err)
	}
	n.Meter = work.New(1000, nil)
	s.descend()
	if got, want := 1000-n.Meter.Left(), 2*9*3+1; got != want || s.steps != 1 {
		t.Errorf("%d units for %d steps, want %d", got, s.steps, want)
	}
}

// The flow that a head drives through a link is the one that loses it, found
// from whatever guess, and at no more cost than the meter counts.
func TestFlowOfAHead(t *testing.T) {
	asked, found := 0, 0
	for name, law := range map[string]Law{
		"a filter": quadratic(3e6), "a clogged filter": filter.Filter{Rated: 1e-3, Clean: 2, Extra: 3}, "a pump": curve{h0: 30, qm: 1e-3},
		"a regulator": steady(4), "a check valve": spring(5), "a weir": power{1e4, 1.5}, "tubing": nil,
	} {
		l := Link{Length: 20, Bore: 0.0136, K: 3, Law: law}
		r := newResistance(&l, water20)
		for _, q := range []float64{0, 1e-12, 1e-8, 1e-6, 3e-5, 1e-4, 1e-3, 1e-2} {
			for _, q := range []float64{q, -q} {
				for _, guess := range []float64{0, q, -q, 1.1 * q, 1000 * q, 1e-9, -1e-3} {
					head, _ := r.loss(&l, q)
					if law != nil {
						l.Law = counted{law, &asked}
						found++
					}
					got := r.flow(&l, head, guess)
					l.Law = law
					near := 1e-12*math.Abs(got) + 1e-18
					below, _ := r.loss(&l, got-near)
					above, _ := r.loss(&l, got+near)
					if !(below <= head && head <= above) {
						t.Errorf("%s: %g m³/s, and from a guess of %g it is %.15g for its head", name, q, guess, got)
					}
				}
			}
		}
	}
	// It is 8.19 times a flow, from guesses that are worse than a descent's.
	if most := found * 82 / 10; asked > most {
		t.Errorf("laws are asked %d times for %d flows, want %d at most", asked, found, most)
	}
}
