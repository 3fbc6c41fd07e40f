package startup

import (
	"math/rand/v2"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// weak is the pump of the wrong-pump example with a head in m: it opens some
// emitters and would hold more.
func weak(head float64) *plan.Plan {
	p := plan.Examples()[1].Plan
	p.Supply.ShutOff = head
	p.Supply.MaxFlow = 5.0 / 6e4
	return p
}

// A pump too weak for all at once starts few emitters, and holds more when they
// were open: both are states that last.
func TestWeakPumpHasTwoStates(t *testing.T) {
	differ, climbed := 0, 0
	for head := 6.0; head < 14; head += 0.25 {
		l, s := of(t, weak(head))
		st := &s.Zones[0].States
		if st.Held < st.Opened || st.Opened < st.Few {
			t.Errorf("%g m: %d open slowly, %d at once and %d are held", head, st.Few, st.Opened, st.Held)
		}
		n := l.Zone(1)
		for i, sol := range []*network.Solution{st.Fewest, st.Below, st.Above} {
			if sol.Unsteady == 0 && !Obeys(n, sol) {
				t.Errorf("%g m: state %d is none", head, i)
			}
		}
		if st.Differ() {
			differ++
			if st.InTurn > st.Few {
				climbed++
			}
			if st.InTurn > st.Held {
				t.Errorf("%g m: row by row %d open, and %d are held", head, st.InTurn, st.Held)
			}
		}
	}
	if differ < 5 || climbed < 1 {
		t.Errorf("%d plans have two states, and in %d more open row by row", differ, climbed)
	}
}

// The example of the wrong pump: none of its emitters opens, all would stay.
func TestTheWrongPumpWouldHoldAll(t *testing.T) {
	_, s := of(t, plan.Examples()[1].Plan)
	st := &s.Zones[0].States
	if st.Opened != 0 || st.Held != 120 || !st.Checked || st.InTurn != 0 {
		t.Errorf("%d open, %d held, checked %t, %d in turn", st.Opened, st.Held, st.Checked, st.InTurn)
	}
}

// What is said to be a state is refused when anything in it is changed.
func TestObeysRefusesWhatIsNoState(t *testing.T) {
	l := layout.New(plan.Default())
	n := l.Zone(1)
	good, err := network.Solve(n)
	if err != nil || !Obeys(n, good) {
		t.Fatal("the state itself is refused")
	}
	node := l.Plants[17].Node
	for name, change := range map[string]func(s *network.Solution){
		"a flow":          func(s *network.Solution) { s.Flow[node-1] *= 1.001 },
		"a head":          func(s *network.Solution) { s.Head[node] += 0.001 },
		"an open emitter": func(s *network.Solution) { s.Open[node] = false },
	} {
		s := *good
		s.Flow, s.Head, s.Open = append([]float64(nil), good.Flow...), append([]float64(nil), good.Head...), append([]bool(nil), good.Open...)
		change(&s)
		if Obeys(n, &s) {
			t.Errorf("with %s changed it still obeys", name)
		}
	}
}

func TestStatesOfRandomPlans(t *testing.T) {
	differ := 0
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 77))
		p := random(r)
		l := layout.New(p)
		for _, zone := range l.Zones {
			n := l.Zone(zone)
			below, err := network.Solve(n)
			if err != nil {
				t.Fatal(err)
			}
			st, err := statesOf(l, zone, below)
			if err != nil {
				t.Fatal(err)
			}
			if below.Unsteady == 0 && st.Above.Unsteady == 0 && st.Fewest.Unsteady == 0 && !st.Checked {
				t.Errorf("seed %d, zone %d: a state is none", seed, zone)
			}
			if st.Differ() {
				differ++
			}
		}
	}
	if differ < 10 {
		t.Errorf("only %d zones have two states", differ)
	}
}

// The head at which an emitter opens is at least its own opening head and its
// height, and each that is open in the end has one. Where a zone can come to rest in
// several states, which emitters open depends on the steps in which the head was raised.
func TestOrder(t *testing.T) {
	for _, e := range plan.Examples() {
		l, s := of(t, e.Plan)
		for k := range s.Zones {
			z := &s.Zones[k]
			for i := range l.Plants {
				node := l.Plants[i].Node
				h, em := z.Opens[i], &l.Network.Emitters[l.Network.Nodes[node].Emitter]
				if em.Opens == 0 {
					continue
				}
				if h < l.Points[node].Z+em.Opens-1e-9 {
					t.Errorf("%s, plant %d opens at %g m", e.Key, i, h)
				}
				if open := z.States.Fewest.Open[node]; open != (h < 1e6) && !z.States.Differ() {
					t.Errorf("%s, plant %d opens at %g m, open in the end: %t", e.Key, i, h, open)
				}
			}
		}
	}
}

// On a slope the rows' low ends open first, and with the head raised each in
// turn; a higher one never before a lower one of the same row that falls.
func TestLowerOpensFirst(t *testing.T) {
	p := plan.Default()
	p.Rows[0].Slope = 0.1
	plan.SectionNamed("rows").Resize(p, 1)
	l, s := of(t, p)
	z := &s.Zones[0]
	for i := 1; i < len(l.Plants); i++ {
		if z.Opens[i] < z.Opens[i-1] {
			t.Errorf("plant %d opens at %g m, the one below it at %g m", i+1, z.Opens[i], z.Opens[i-1])
		}
	}
	if !(z.Opens[29] > z.Opens[0]) {
		t.Error("the top opens with the bottom")
	}
}
