package design

import (
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
)

// The plan with most candidates, all tubing to be had, two runs, rows of several
// sizes, and a grouping of its own beside that into each number of zones: its sums
// stay below three hundred thousand, so that they need no bound. What is counted is what
// run spends: for each zone the leads, with each size of the rows and four more.
func TestSumsOfTheLargestPlan(t *testing.T) {
	p := plan.Default()
	plan.SectionNamed("runs").Resize(p, 2)
	plan.SectionNamed("rows").Resize(p, plan.MaxRows)
	p.Header.Layout = plan.HeaderAndRows
	kinds := 0
	for i := range catalogue.Tubes {
		p.Prices.Tubes[i] = 1
		if catalogue.Tubes[i].Row && kinds < 2 { // rows of two sizes, so that they may also stay as they are
			p.Rows[kinds].Tube = i
			kinds++
		}
	}
	for i := range p.Rows {
		p.Rows[i].Zone = 1 + i%plan.MaxZones // no neighbours in one zone
	}
	s := newSearch(p, split, nil)
	if len(s.zoned) != plan.MaxZones+1 || kinds < 2 {
		t.Fatalf("%d groupings, rows of %d sizes", len(s.zoned), kinds)
	}
	sums, candidates := 0, 0
	for _, q := range s.zoned {
		n := len(q.Zones())
		fields := s.rows[min(n-1, 1)]
		for h := range s.all {
			sums += len(s.all[h].leads) * (len(fields) + 4) * n
			candidates += len(s.all[h].leads) * len(fields)
		}
	}
	if sums > 300_000 || candidates < 10_000 {
		t.Errorf("%d sums of %d candidates", sums, candidates)
	}
}
