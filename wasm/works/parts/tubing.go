package parts

import (
	"slices"
	"strconv"
	"strings"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/works/layout"
)

// Uses of tubing, in the order of the water.
const (
	inLead = iota
	inHeader
	inStubs
	inRows
	inTurns
	inFar
	uses
)

// use returns what a stretch uses its tubing for.
func use(k layout.StretchKind) int {
	switch k {
	case layout.HeaderOf:
		return inHeader
	case layout.RowOf:
		return inRows
	case layout.Between:
		return inTurns
	case layout.FarOf:
		return inFar
	}
	return inLead
}

// tubing adds a line for each size, with its length by use.
func (c *count) tubing() {
	for tube := range c.Tubes {
		var length [uses]float64
		var pieces [uses]int
		var where []int
		for i := range c.Stretches {
			s := &c.Stretches[i]
			if s.Tube == tube {
				length[use(s.Kind)] += s.Length
				pieces[use(s.Kind)]++
				where = append(where, i)
			}
		}
		for i := range c.Joints {
			j := &c.Joints[i]
			if j.Stub() == tube {
				length[inStubs] += layout.Stub * float64(j.N)
				pieces[inStubs] += j.N
			}
		}
		total, why := 0.0, ""
		for u, m := range length {
			if pieces[u] == 0 {
				continue
			}
			if why != "" {
				why += ", "
			}
			why += useName(u, pieces[u]) + " " + unit.Text(unit.Length, c.sys, m)
			total += m
		}
		c.lines = append(c.lines, Line{Name: unit.Capital(c.Tubes[tube].Name(c.sys)), Length: total, Why: why, Stretches: where})
	}
}

func useName(u, pieces int) string {
	switch u {
	case inLead:
		return "supply line"
	case inHeader:
		return "header"
	case inStubs:
		return of(pieces, "short piece at the header's end", "short pieces at the header's ends")
	case inRows:
		return of(pieces, "row", "rows")
	case inFar:
		return "far header"
	}
	return of(pieces, "turn between rows", "turns between rows")
}

// clamps adds the clamps for each end of tubing on a barb, by the outside size
// of the tubing, and one more of each size. Compression fittings take none.
func (c *count) clamps() {
	for tube := range c.Tubes {
		each := catalogue.Tubes[c.Tubes[tube].Entry].Takes.Clamps()
		if each == 0 {
			continue
		}
		var kinds []string // of parts, in the order of their joints
		var barbs []int
		total := 0
		var where []int
		for kind := range layout.JointKind(layout.JointKinds) {
			for i := range c.joints {
				j := &c.joints[i]
				if j.Kind != kind {
					continue
				}
				for end, t := range j.Ends {
					if t != tube {
						continue
					}
					noun := c.noun(j)
					if end > 0 && end == c.threadedEnd(j) {
						noun = nouns[layout.Adapter]
					}
					at := slices.Index(kinds, noun)
					if at < 0 {
						at = len(kinds)
						kinds, barbs = append(kinds, noun), append(barbs, 0)
					}
					barbs[at] += j.N
					total += j.N
					if len(where) == 0 || where[len(where)-1] != j.Node {
						where = append(where, j.Node)
					}
				}
			}
		}
		for i, n := range barbs {
			kinds[i] = unit.Uncapital(kinds[i]) + " " + strconv.Itoa(n)
		}
		on, ring := "one on each barb", "; a barb that locks with a ring or a nut of its own needs none"
		if each > 1 {
			on, ring = "two on each barb, their screws on opposite sides", ""
		}
		c.add(Line{
			Group: Fittings,
			Name:  "Hose clamp for " + outside(c.Tubes[tube], c.sys),
			Count: each*total + 1,
			Spare: 1,
			Why:   on + " (" + strings.Join(kinds, ", ") + "), and one to spare" + ring,
			Nodes: where,
		})
	}
}

// outside names tubing by what a clamp goes around.
func outside(t layout.Tube, sys unit.System) string {
	if t.Outside == 0 {
		return t.Name(sys) + ", its outside measured on the barb"
	}
	return "tubing of " + unit.Text(unit.Bore, sys, t.Outside) + " outside"
}
