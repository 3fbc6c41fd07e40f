// Package oracle works out in a plain way what the calculation works out in a
// quick one, by solving whole networks; for tests.
package oracle

import (
	"slices"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/flush"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// Flushes says whether each row's end that is opened runs fast enough while the
// other rows take nothing, and of its own emitters those are open that keep
// their closing head.
func Flushes(t *testing.T, p *plan.Plan) bool {
	t.Helper()
	l := layout.New(p)
	for r, end := range l.Ends {
		if end < 0 {
			continue
		}
		n := l.Network
		n.Nodes = slices.Clone(n.Nodes)
		for i := range l.Plants {
			if p.Header.Layout != plan.OneLine && l.Plants[i].Row != r {
				n.Nodes[l.Plants[i].Node].Emitter = network.None
			}
		}
		bore := n.Links[end-1].Bore
		n.Emitters = append(slices.Clone(n.Emitters), emitter.Emitter{
			Kind: emitter.NonCompensating, Exponent: 0.5,
			Flow: pipe.FlowAt(flush.Wanted, bore), Nominal: pipe.LocalHead(flush.Mouth, flush.Wanted),
		})
		n.Nodes[end].Emitter, n.Nodes[end].Count = len(n.Emitters)-1, 1
		open := slices.Repeat([]bool{true}, len(n.Nodes))
		for at := 0; at >= 0; {
			sol, err := network.Hold(&n, open)
			if err != nil {
				t.Fatal(err)
			}
			least := 0.0
			at = -1 // the emitter that lacks most of its closing head
			for i, node := range n.Nodes {
				if node.Emitter == network.None || !open[i] || n.Emitters[node.Emitter].Kind == emitter.NonCompensating {
					continue
				}
				if spare := sol.Head[i] - node.Z - n.Emitters[node.Emitter].Closes; spare < least {
					least, at = spare, i
				}
			}
			if at >= 0 {
				open[at] = false
			} else if pipe.Velocity(sol.Out[end], bore) < flush.Wanted {
				return false
			}
		}
	}
	return true
}
