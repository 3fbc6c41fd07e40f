package sheet

import (
	"slices"

	"evenrow/wasm/design"
	"evenrow/wasm/plan"
)

// Designs are what a search for cheaper designs found, each worked out again
// as a whole plan.
type Designs struct {
	design.Result
	Best    []Best // at most one that the plan's own supply carries, then the few of List that differ most, cheapest first
	Unequal int    // designs that were left out because the plan as a whole gave another answer
}

// A Best is one design, with the answer to the plan as a whole.
type Best struct {
	design.Design
	Take   *plan.Plan // ready to be taken over: with the supply that stands, where it carries the design, else with one of the least duty
	Margin float64    // m, of the weakest emitter
	Even   float64    // EU
	Round  float64    // s, for one litre to every plant, zones one after another
}

// listed is how many designs of the list are shown.
const listed = 6

// Designs that take so much less are shown beside a cheaper one: in m of a tank,
// or W of a pump; and as a share of its power. Our own choice.
const (
	littleHead  = 0.05
	littlePower = 0.02
)

// searched looks for cheaper designs; nil where a row does not fit the place,
// which no tubing mends, says so in Forbids.
func searched(s *Sheet) *Designs {
	d := &Designs{}
	if (&trial{s: s}).has(OutsidePlace) {
		d.Forbids = design.Outside
		return d
	}
	d.Result = *design.Of(s.Plan, split)
	for i := range d.Own {
		d.check(&d.Own[i])
	}
	for _, k := range few(d.List, listed) {
		if c := &d.List[k]; len(d.Own) == 0 || c.Cost != d.Own[0].Cost || c.Power != d.Own[0].Power {
			d.check(c)
		}
	}
	return d
}

// check works a design out as a whole.
func (d *Designs) check(c *design.Design) {
	b := Best{Design: *c, Take: c.Plan}
	s := assess(b.Take)
	if b.Present = s.Verdict == Yes; !b.Present {
		b.Take = c.Plan.Clone()
		design.Strengthen(b.Take, c.Head, c.Flow)
		s = assess(b.Take)
	}
	if s.Verdict != Yes || len(b.Take.Check()) > 0 {
		d.Unequal++
		return
	}
	b.Margin, b.Even = s.Zones[s.Critical].Margin, 1
	for i := range s.Zones {
		b.Even = min(b.Even, s.Zones[i].Even.EU)
	}
	b.Round, _ = s.Round()
	d.Best = append(d.Best, b)
}

// few returns the places in a list, in order, of the designs that differ most:
// the first, the last, and those whose loss would leave the largest gap, as the
// product of what the neighbours differ by in cost and in head and flow.
func few(list []design.Design, most int) []int {
	var kept []int
	for i := range list {
		kept = append(kept, i)
	}
	effort := func(i int) float64 {
		if list[i].Power > 0 {
			return list[i].Power
		}
		return list[i].Head
	}
	for len(kept) > most {
		least, at := 0.0, 0
		for k := 1; k < len(kept)-1; k++ {
			gap := (list[kept[k+1]].Cost - list[kept[k]].Cost) * (effort(kept[k-1]) - effort(kept[k]))
			if at == 0 || gap < least {
				least, at = gap, k
			}
		}
		kept = slices.Delete(kept, at, at+1)
	}
	// What hardly takes less than the one before is not worth reading.
	for k := 1; k < len(kept); {
		if before := effort(kept[k-1]); before-effort(kept[k]) < max(littleHead, littlePower*before) {
			kept = slices.Delete(kept, k, k+1)
		} else {
			k++
		}
	}
	return kept
}
