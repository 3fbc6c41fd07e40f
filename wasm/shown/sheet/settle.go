package sheet

import (
	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/design"
)

// Judged works out the water and the verdict of a plan that has been checked, and
// nothing else, at the cost of a meter.
func Judged(p *plan.Plan, m *work.Meter) *Sheet { return assess(p, m) }

// Settled returns a plan with the cheapest tubing, feed and zones that its own
// supply carries, as it is or behind a regulator set anew, and with which the
// answer is Yes; nil where the search finds none.
func Settled(p *plan.Plan, m *work.Meter) *plan.Plan {
	s := assess(p, m)
	s.found = design.Of(p, split, m)
	d := &Designs{Result: *s.found}
	for i := range d.Own {
		d.check(s, &d.Own[i])
	}
	for i := range d.Best {
		if d.Best[i].Carried() {
			return d.Best[i].Take
		}
	}
	return nil
}

// Mend looks for what would help, at the cost of the meter that the sheet was
// worked out with.
func (s *Sheet) Mend() { s.Fixes = fixes(s) }
