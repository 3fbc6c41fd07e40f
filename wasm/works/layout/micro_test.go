package layout

import (
	"math"
	"slices"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/network"
)

// Micro tubing is not laid as tubing, for its loss is small by what a plan is held to.
// Laid as tubing all the same, as long as it may be, from the row to every emitter, no
// emitter gives less by more than that share, and compensating ones lose nothing.
func TestMicroTubingTakesLittle(t *testing.T) {
	for _, x := range plan.Examples() {
		for _, flow := range []float64{1, 2, 8, 20} {
			p := x.Plan
			e := &p.Emitters[0]
			e.Flow = flow / 3.6e6
			e.Micro = plan.MicroShare * e.Lowest / plan.MicroLoss(e.Flow)
			if e.Kind == plan.NonCompensating {
				e.Micro = min(e.Micro, e.Micro*e.Nominal/e.Lowest)
			}
			least := e.Micro
			e.Micro *= 1.001
			refused := len(p.Check()) > 0
			e.Micro = least * 0.999
			if errs := p.Check(); !refused && least < 2.9 || e.Micro < 3 && len(errs) > 0 {
				t.Fatalf("%s, %g L/h: %g m are refused: %v", x.Key, flow, least, errs)
			}
			l := New(p)
			bare, err := network.Solve(&l.Network)
			if err != nil {
				t.Fatal(err)
			}
			laid := l.Network
			laid.Nodes, laid.Links = slices.Clone(laid.Nodes), slices.Clone(laid.Links)
			ends := map[int]int{}
			for i, node := range l.Network.Nodes {
				if node.Emitter == network.None {
					continue
				}
				ends[i] = len(laid.Nodes)
				laid.Nodes = append(laid.Nodes, node)
				laid.Nodes[i].Emitter, laid.Nodes[i].Count = network.None, 0
				if node.Count != 1 { // they would share one tubing here
					t.Fatalf("%s: %g emitters at a node", x.Key, node.Count)
				}
				laid.Links = append(laid.Links, network.Link{From: i, To: ends[i], Length: e.Micro, Bore: plan.MicroBore})
			}
			with, err := network.Solve(&laid)
			if err != nil {
				t.Fatal(err)
			}
			most, opened := 0.0, 0
			for i, end := range ends {
				if bare.Out[i] > 0 && with.Out[end] > 0 {
					opened++
					most = max(most, math.Abs(with.Out[end]/bare.Out[i]-1))
				}
			}
			t.Logf("%s, %s, %.2f m: %d of %d emitters open, %.4f at most", x.Key, unit.Text(unit.EmitterFlow, unit.Metric, e.Flow), e.Micro, opened, len(ends), most)
			if most > plan.MicroShare || opened == 0 && bare.Total > 0 {
				t.Errorf("%s, %g L/h: micro tubing changes what an emitter gives by %g", x.Key, flow, most)
			}
		}
	}
}
