package parts

import (
	"slices"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/works/cuts"
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
		total, why := 0.0, []string(nil)
		var by [Sites]float64
		for u, m := range length {
			if pieces[u] == 0 {
				continue
			}
			by[siteOf[u]] += m
			why = append(why, used(u, pieces[u], unit.Text(unit.Length, c.sys, m)))
			total += m
		}
		c.add(Line{Item: ATube, Size: c.size(tube), Name: c.tubeName(tube), Length: total, Rolls: len(c.cuts[tube].Rolls), Roll: c.cuts[tube].Length, Uses: fromRolls(&c.cuts[tube]), Why: words.List(why...), Stretches: where, By: by})
	}
}

// fromRolls is how much is cut from each roll, the least first.
func fromRolls(c *cuts.Cutting) []float64 {
	var list []float64
	for i := len(c.Rolls) - 1; i >= 0; i-- {
		list = append(list, c.Length-c.Rolls[i].Left)
	}
	return list
}

// tubeName is what to ask for.
func (c *count) tubeName(tube int) string {
	t := c.Tubes[tube]
	if t.Entry == catalogue.Custom {
		return words.Say("Tubing of {size}", t.Short(c.sys))
	}
	return t.Name(c.sys)
}

// used says what pieces of a length in all are used for.
func used(use, pieces int, length string) string {
	switch use {
	case inLead:
		return words.Say("supply line {length}", length)
	case inHeader:
		return words.Say("header {length}", length)
	case inStubs:
		return words.Say("{n} {n|short piece at the header's end|short pieces at the header's ends} {length}", words.N(pieces), length)
	case inRows:
		return words.Say("{n} {n|row|rows} {length}", words.N(pieces), length)
	case inFar:
		return words.Say("far header {length}", length)
	}
	return words.Say("{n} {n|turn between rows|turns between rows} {length}", words.N(pieces), length)
}

// clamps adds the clamps for each end of tubing on a barb, by the outside size
// of the tubing, and one more of each size. Compression fittings take none.
func (c *count) clamps() {
	for tube := range c.Tubes {
		each := catalogue.Tubes[c.Tubes[tube].Entry].Takes.Clamps()
		if each == 0 {
			continue
		}
		var kinds []*layout.Noun // of parts, in the order of their joints
		var barbs []int
		total := 0
		var where []int
		var by [Sites]float64
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
					part := c.noun(j)
					if end > 0 && end == c.threadedEnd(j) {
						part = adapter
					}
					at := slices.Index(kinds, part)
					if at < 0 {
						at = len(kinds)
						kinds, barbs = append(kinds, part), append(barbs, 0)
					}
					barbs[at] += j.N
					total += j.N
					by[c.site(j)] += float64(each * j.N)
					if len(where) == 0 || where[len(where)-1] != j.Node {
						where = append(where, j.Node)
					}
				}
			}
		}
		list := make([]string, len(barbs))
		for i, n := range barbs {
			list[i] = words.Say("{part} {n}", words.Say(kinds[i].Name), words.N(n))
		}
		why := words.Say("one on each barb ({parts}), and one to spare; a barb that locks with a ring or a nut of its own needs none", words.List(list...))
		if each > 1 {
			why = words.Say("two on each barb, their screws on opposite sides ({parts}), and one to spare", words.List(list...))
		}
		c.add(Line{Item: AClamp, Size: c.size(tube), Name: clampFor(c.Tubes[tube], c.sys), Count: each*total + 1, Spare: 1, Why: why, Nodes: where, By: by})
	}
}

// clampFor names a clamp by what it goes around.
func clampFor(t layout.Tube, sys unit.System) string {
	if t.Outside == 0 {
		return words.Say("Hose clamp for {tubing}, its outside measured on the barb", t.Name(sys))
	}
	return words.Say("Hose clamp for tubing of {size} outside", unit.Text(unit.Bore, sys, t.Outside))
}
