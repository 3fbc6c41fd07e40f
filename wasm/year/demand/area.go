package demand

import (
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
)

// Bounds of the floor that a plant is counted to use, over the floor that it
// has at the usual density of its crop. A plant that stands alone does not fill
// a wide floor, and one that is crowded shades beyond its own (common practice,
// no source).
const (
	mostFloor  = 1.5
	leastFloor = 0.3
)

// aside is how far from a row its plants reach at most where there is no other
// row, in m: half of the widest usual distance of single rows (common practice,
// no source).
const aside = 0.8

// Area returns the floor in m² that a plant of a row is counted to use: from
// half way to the plant before it to half way to the next, and from half way to
// the row before to half way to the next. At the side of the place a row reaches
// as far out as inwards, or to the side.
func Area(p *plan.Plan, row, crop int) float64 {
	r := &p.Rows[row]
	usual := 1 / p.Trait(crop, catalogue.Crowd)
	before, after := halves(p, row)
	return max(leastFloor*usual, min(mostFloor*usual, r.Spacing*(before+after)))
}

// halves returns how far a row reaches on its two sides, in m.
func halves(p *plan.Plan, row int) (before, after float64) {
	left := p.Place.Width // of the place beyond the row
	for i := 0; i <= row; i++ {
		left -= p.Rows[i].Gap
	}
	left = max(0, left)
	first, last := row == 0, row == len(p.Rows)-1
	before, after = aside, aside
	if !first {
		before = min(aside, p.Rows[row].Gap/2)
	}
	if !last {
		after = min(aside, p.Rows[row+1].Gap/2)
	}
	if first {
		before = min(p.Rows[row].Gap, after)
	}
	if last {
		after = min(left, before)
		if first {
			after = min(left, aside)
		}
	}
	return before, after
}
