package sheet

import (
	"slices"

	"evenrow/wasm/layout"
	"evenrow/wasm/network"
	"evenrow/wasm/plan"
)

// solves says whether the answer to a plan is yes. It first asks the quick
// question, whether every emitter would have its head if all were open, which
// most changes that are not enough already fail.
func solves(p *plan.Plan) bool {
	if len(p.Check()) > 0 {
		return false
	}
	l := layout.New(p)
	open := slices.Repeat([]bool{true}, len(l.Points))
	for _, z := range l.Zones {
		n := l.Zone(z)
		solver, err := network.NewSolver(n)
		if err != nil {
			return false
		}
		sol, _, err := solver.Hold(open)
		if err != nil {
			return false
		}
		if least, _ := margin(l, n, sol); least < p.Limits.Reserve {
			return false
		}
	}
	return assess(p).Verdict == Yes
}
