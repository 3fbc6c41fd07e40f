package parts

import (
	"strconv"

	"evenrow/wasm/layout"
	"evenrow/wasm/unit"
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
		return "lead"
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

// clamps adds one clamp for each end of tubing on a barb, by the outside size
// of the tubing, and one more of each size.
func (c *count) clamps() {
	for tube := range c.Tubes {
		var barbs [layout.JointKinds]int
		total := 0
		var where []int
		for i := range c.Joints {
			j := &c.Joints[i]
			for _, t := range j.Ends {
				if t == tube {
					barbs[j.Kind] += j.N
					total += j.N
				}
			}
			if on(j, tube) {
				where = append(where, j.Node)
			}
		}
		why := ""
		for k, n := range barbs {
			// Kinds that are the same part are counted with the first of them.
			for other := range k {
				if nouns[other] == nouns[k] && barbs[other] > 0 {
					n = 0
				}
			}
			if n == 0 {
				continue
			}
			for other := k + 1; other < len(barbs); other++ {
				if nouns[other] == nouns[k] {
					n += barbs[other]
				}
			}
			if why != "" {
				why += ", "
			}
			why += unit.Uncapital(nouns[k]) + " " + strconv.Itoa(n)
		}
		c.add(Line{
			Group: Fittings,
			Name:  "Hose clamp for " + outside(c.Tubes[tube], c.sys),
			Count: total + 1,
			Spare: 1,
			Why:   "one on each barb (" + why + ") and one to spare",
			Nodes: where,
		})
	}
}

// on says whether tubing of a size is on one of a joint's barbs.
func on(j *layout.Joint, tube int) bool {
	return j.Ends[0] == tube || j.Ends[1] == tube || j.Ends[2] == tube
}

// outside names tubing by what a clamp goes around.
func outside(t layout.Tube, sys unit.System) string {
	if t.Outside == 0 {
		return t.Name(sys) + ", its outside measured on the barb"
	}
	return "tubing of " + unit.Text(unit.Bore, sys, t.Outside) + " outside"
}
