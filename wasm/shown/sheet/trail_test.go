package sheet

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/layout"
)

// The steps of the default plan, whose lead is one run with a filter, and the
// length of each by hand.
func TestTrailOfThePlan(t *testing.T) {
	p := plan.Default()
	s := Answer(p)
	z := &s.Zones[s.Critical]
	trail := s.Trail(z, z.Worst)
	worst := &s.Layout.Plants[z.Worst]
	row := &p.Rows[worst.Row]
	var kinds []layout.StretchKind
	for i := range trail.Steps {
		step := &trail.Steps[i]
		kinds = append(kinds, step.Kind)
		switch step.Kind {
		case layout.RunOf:
			if step.Length != p.Runs[step.Index].Length {
				t.Errorf("run of %g m, want %g", step.Length, p.Runs[step.Index].Length)
			}
		case layout.Filter, layout.Source:
			if step.Length != 0 || step.End().Along != 1 {
				t.Errorf("%+v has a length", step)
			}
		case layout.RowOf:
			if want := row.First + float64(worst.Number-1)*row.Spacing; step.Index != worst.Row || math.Abs(step.Length-want) > 1e-9 {
				t.Errorf("row %d of %g m, want %g", step.Index+1, step.Length, want)
			}
		}
		if end := step.End().Along; math.Abs(end-1) > 1e-12 {
			t.Errorf("step %d ends at %g of itself", i, end)
		}
	}
	if n := len(kinds); kinds[0] != layout.Source || kinds[n-1] != layout.RowOf || kinds[n-2] != layout.HeaderOf {
		t.Errorf("%v", kinds)
	}
	if end := trail.End(); end.Head != z.Solution.Head[worst.Node] || end.Z != s.Layout.Points[worst.Node].Z {
		t.Errorf("%+v", end)
	}
	if s.Trail(z, -1) != nil || s.Trail(z, len(s.Layout.Plants)) != nil || s.Trail(nil, 0) != nil {
		t.Error("a way to no plant")
	}

	// Up one row and down the next is one step, however many rows it passes.
	p.Header.Layout = plan.OneLine
	s = Answer(p)
	z = &s.Zones[0]
	last := 0
	for i := range s.Layout.Plants {
		if s.Layout.Plants[i].Row == len(p.Rows)-1 {
			last = i
		}
	}
	rows := 0
	for _, step := range s.Trail(z, last).Steps {
		if step.Kind == layout.RowOf || step.Kind == layout.Between {
			rows++
		}
	}
	if rows != 1 {
		t.Errorf("the line has %d steps", rows)
	}
}

// At the flow that runs, what the system asks is what the supply gives less what
// the weakest emitter has to spare: one law of a link for the solver and for the
// curve. At no flow it is the lift and the emitter's own head, and more flow
// never asks for less.
func TestTheSystemAsksWhatTheSolverLoses(t *testing.T) {
	tried := 0
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 12))
		p := plan.Default()
		p.Header.Layout = r.IntN(3)
		p.Header.Feed = r.IntN(2)
		p.Filter.Present = r.IntN(2)
		p.Runs[0].Rise = 3*r.Float64() - 1
		for i := range p.Rows {
			p.Rows[i].Plants = 5 + r.IntN(40)
			p.Rows[i].Height = 0.4 * r.Float64()
		}
		if len(p.Check()) > 0 {
			continue
		}
		s := Answer(p)
		if s.Critical < 0 || s.Critical >= len(s.Zones) {
			continue
		}
		z := &s.Zones[s.Critical]
		sys := s.System(z)
		if sys == nil {
			continue
		}
		tried++
		// What the solver leaves, node by node, adds up along the way.
		if got, want := sys.Head(z.Flow), z.Head-z.Margin; math.Abs(got-want) > 1e-4 {
			t.Errorf("seed %d: asks %.6f m, the supply gives that and the margin is left: %.6f", seed, got, want)
		}
		node := &s.Layout.Network.Nodes[s.Layout.Plants[z.Worst].Node]
		if got, want := sys.Head(0), node.Z+s.Layout.Network.Emitters[node.Emitter].Lowest; got != want {
			t.Errorf("seed %d: at rest %g m, want %g", seed, got, want)
		}
		for q := 0.0; q < 2; q += 0.1 {
			if sys.Head(q*z.Flow) > sys.Head((q+0.1)*z.Flow) {
				t.Errorf("seed %d: more flow than %.1f asks for less", seed, q)
			}
		}
	}
	if tried < 30 {
		t.Errorf("only %d plans were tried", tried)
	}
}
