package sheet_test

import (
	"testing"
	"time"

	"evenrow/build/hostile"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
)

// What a grower waits for, of plans as most growers have one and of the largest:
// the mean, and the longest wait among them.
func BenchmarkAnswer(b *testing.B) {
	each(b, func(p *plan.Plan) func() { return func() { sheet.Answer(p) } })
}

// All explorations of one plan together.
func BenchmarkExplorations(b *testing.B) {
	each(b, func(p *plan.Plan) func() {
		s := sheet.Answer(p)
		return func() {
			for which := range sheet.Exploration(sheet.Explorations) {
				s.Explore(which)
			}
		}
	})
}

func each(b *testing.B, prepared func(*plan.Plan) (timed func())) {
	for _, c := range []struct {
		name string
		draw func(n int) *plan.Plan
	}{
		{"ordinary", func(n int) *plan.Plan { return hostile.Ordinary(hostile.Numbered(8, n)) }},
		{"ring of 4000", func(n int) *plan.Plan { return hostile.Ring(hostile.Numbered(8, n), plan.MaxPlants) }},
		{"any", func(n int) *plan.Plan { p, _ := hostile.Plan(hostile.Numbered(8, n)); return p }},
	} {
		b.Run(c.name, func(b *testing.B) {
			longest := time.Duration(0)
			for n := range b.N {
				b.StopTimer()
				do := prepared(c.draw(n % 50))
				b.StartTimer()
				at := time.Now()
				do()
				longest = max(longest, time.Since(at))
			}
			b.ReportMetric(longest.Seconds(), "s-longest")
		})
	}
}
