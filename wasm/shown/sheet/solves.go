package sheet

import (
	"math"
	"slices"

	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/limit"
	"evenrow/wasm/works/network"
)

// solves says whether the answer to a plan is yes. It first asks the quick
// question, whether every emitter would have its head if all were open, which
// most changes that are not enough already fail.
func solves(p *plan.Plan, m *work.Meter) bool {
	if len(p.Check()) > 0 {
		return false
	}
	return (p.Supply.Sought() || !limit.MarginOf(p, false).Broken(allOpen(p, m))) && assess(p, m).Verdict == Yes
}

// allOpen returns the least head in m that an emitter has above its lowest
// while all of its zone are held open. Where the flows do not settle it is
// without end below.
func allOpen(p *plan.Plan, m *work.Meter) float64 {
	l := layout.Metered(p, m)
	open := slices.Repeat([]bool{true}, len(l.Points))
	worst := math.Inf(1)
	for _, z := range l.Zones {
		n := l.Zone(z)
		sol, err := network.Hold(n, open)
		if err != nil {
			return math.Inf(-1)
		}
		least, _ := margin(l, n, sol)
		worst = min(worst, least)
	}
	return worst
}
