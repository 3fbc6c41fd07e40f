package sheet

import (
	"math"

	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/design"
)

// moreHead is how much more head in m a design that is proposed for a pump that is
// sought may take than the one that takes least: our own choice.
const moreHead = 3

// Judged works out the water and the verdict of a plan that has been checked, and
// nothing else, at the cost of a meter.
func Judged(p *plan.Plan, m *work.Meter) *Sheet { return assess(p, m) }

// Settled returns a plan with the cheapest tubing, feed and zones that its own
// supply carries, as it is or behind a regulator set anew, and with which the
// answer is Yes; nil where the search finds none. Of designs for a pump that is
// sought, only those count that have the fewest zones, and take not much more head
// than the least of them: the thinnest tubing saves little, and asks for more pump.
func Settled(p *plan.Plan, m *work.Meter) *plan.Plan {
	s := assess(p, m)
	s.found = design.Of(p, split, m)
	d := &Designs{Result: *s.found}
	for i := range d.Own {
		d.check(s, &d.Own[i])
	}
	if p.Supply.Sought() && len(d.List) > 0 {
		fewest, least := d.List[0].Zones, math.Inf(1)
		for i := range d.List {
			fewest = min(fewest, d.List[i].Zones)
		}
		for i := range d.List {
			if c := &d.List[i]; c.Zones == fewest {
				least = min(least, c.Head)
			}
		}
		for i := range d.List {
			if c := &d.List[i]; c.Zones == fewest && c.Head <= least+moreHead && assess(c.Plan, m).Verdict == Yes {
				return c.Plan
			}
		}
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
