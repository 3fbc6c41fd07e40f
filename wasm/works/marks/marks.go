// Package marks says where along the rows emitters are punched in.
package marks

import (
	"math"

	"evenrow/wasm/grower/plan"
)

// A Group is rows that are marked alike.
type Group struct {
	Rows     []int // from 0
	Plants   int
	PerPlant int     // holes at each mark
	First    float64 // m from the start of the row
	Spacing  float64 // m
}

// At is where mark n stands, from 0, in m from the start of the row.
func (g *Group) At(n int) float64 { return g.First + float64(n)*g.Spacing }

// Last is where the last mark stands.
func (g *Group) Last() float64 { return g.At(max(0, g.Plants-1)) }

// Of returns the marks of a plan, rows that are alike together, in order of the first
// of each.
func Of(p *plan.Plan) (all []Group) {
next:
	for i := range p.Rows {
		r := &p.Rows[i]
		if r.Plants == 0 {
			continue
		}
		g := Group{Plants: r.Plants, PerPlant: r.PerPlant, First: r.First, Spacing: r.Spacing}
		for k := range all {
			o := &all[k]
			if o.Plants == g.Plants && o.PerPlant == g.PerPlant && o.First == g.First && (o.Spacing == g.Spacing || g.Plants == 1) {
				o.Rows = append(o.Rows, i)
				continue next
			}
		}
		g.Rows = []int{i}
		all = append(all, g)
	}
	return all
}

// Lath is the greatest length in m of a lath that one person lays along a row:
// common practice, no source.
const Lath = 2.5

// Stick returns how many spacings a lath takes; 0 where not even two fit on it.
func Stick(spacing float64) int {
	n := int(math.Floor(Lath/spacing + 1e-9))
	if n < 2 {
		return 0
	}
	return n
}

// Strip is the length in m of a strip on paper: the long side of a Letter sheet, the
// shorter of Letter and A4, less its margins.
const Strip = 0.2

// LongestStrip is the longest spacing in m that strips are drawn for: what four of
// them, side by side on a sheet, come to.
const LongestStrip = 4 * Strip
