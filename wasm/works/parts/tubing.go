package parts

import (
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
		c.add(Line{Item: ATube, Size: c.size(tube), Name: c.tubeName(tube), Length: total, Rolls: len(c.cuts[tube].Rolls), Roll: c.cuts[tube].Length, Uses: fromRolls(&c.cuts[tube]), Why: words.Notes(words.List(why...), words.Say("opaque, so that nothing grows in it, and fit for drinking water")), Stretches: where, By: by})
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
