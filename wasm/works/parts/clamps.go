package parts

import (
	"slices"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/works/layout"
)

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
					if !c.clamped(j, end) {
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
		if n := c.tees[tube]; n > 0 {
			kinds, barbs, total = append(kinds, &gaugeTee), append(barbs, 2*n), total+2*n
			for i := range c.lines {
				if g := &c.lines[i]; g.Item == AGaugeTee && g.Size == c.size(tube) {
					where = append(where, g.Nodes...)
					for site := range by {
						by[site] += float64(2*each) * g.By[site]
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

// clampFor names the clamp of a tube, by its size in shops and by what it goes around.
// In US units it has its number of the trade.
func clampFor(t layout.Tube, sys unit.System) string {
	if t.Outside == 0 {
		return words.Say("Hose clamp for {tubing}, its outside measured on the barb", t.Name(sys))
	}
	sizes := catalogue.ClampsMM
	if sys == unit.US {
		sizes = catalogue.ClampsSAE
	}
	around := unit.Text(unit.Bore, sys, t.Outside)
	fits := catalogue.ClampFor(sizes, t.Outside)
	if fits == nil {
		return words.Say("Stainless hose clamp for tubing of {size} outside", around)
	}
	if fits.SAE == "" {
		return words.Say("Stainless hose clamp, {range}, for tubing of {size} outside", fits.Range, around)
	}
	return words.Say("Stainless hose clamp, SAE {number}, {range}, for tubing of {size} outside", fits.SAE, fits.Range, around)
}
