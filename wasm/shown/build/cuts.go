package build

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/cuts"
	"evenrow/wasm/works/layout"
)

// Cuts says which pieces are cut from which rolls.
func Cuts(the *scene.Scene) {
	sc := part{the}
	l := sc.S.Layout
	if l == nil || len(l.Stretches) == 0 {
		sc.Say("p", "There is no tubing to cut yet.")
		return
	}
	sc.Say("p", "Each length is from the middle of one fitting to the middle of the next, as the plan has it. Cut ends square, and write the piece's name on it. A piece of the supply line is cut again where its bends and valves come.")
	all := cuts.Of(l)
	for i := range all {
		c := &all[i]
		sc.Tag("h3", c.Letter()+": "+l.Tubes[c.Tube].Name(sc.Sys))
		sc.Tag("p", sc.rolls(c))
		if len(c.Rolls) > 0 {
			sc.Table(words.Say("What is cut from each roll of {letter}", c.Letter()), words.Say("Roll"), words.Say("Pieces, the longest first"), block.Figures(words.Say("Left over"))).Rows(func(t *block.Table) {
				for k := range c.Rolls {
					var list []string
					for _, n := range c.Rolls[k].Pieces {
						p := &c.Pieces[n]
						list = append(list, words.Say("{piece}: {length}", c.Name(p), sc.cut(p.Length)))
					}
					t.Row(words.N(k+1), words.List(list...), sc.cut(c.Rolls[k].Left))
				}
			})
		}
		sc.Table(words.Say("The pieces of {letter}, in the order of the water", c.Letter()), words.Say("Piece"), words.Say("Where"), block.Figures(words.Say("Length"))).Rows(func(t *block.Table) {
			for k := range c.Pieces {
				p := &c.Pieces[k]
				t.Row(c.Name(p), sc.where(p), sc.cut(p.Length))
			}
		})
	}
	sc.Saves("cuts")
}

// CutsLine says how many pieces there are, of how many rolls.
func CutsLine(the *scene.Scene) (said string, is sheet.Verdict) {
	if the.S.Layout == nil {
		return "", sheet.Yes
	}
	pieces, rolls := 0, 0
	for _, c := range cuts.Of(the.S.Layout) {
		pieces += len(c.Pieces)
		rolls += len(c.Rolls)
	}
	if rolls == 0 {
		return words.Say("{n} {n|piece|pieces}", words.N(pieces)), sheet.Yes
	}
	return words.Say("{n} {n|piece|pieces} of {rolls} {rolls|roll|rolls}", words.N(pieces), words.N(rolls)), sheet.Yes
}

// rolls says how many rolls there are, and whether fewer would do.
func (sc part) rolls(c *cuts.Cutting) string {
	if len(c.Rolls) == 0 {
		return words.Say("It is sold by length: buy the pieces cut, or what they add up to.")
	}
	n, least, roll, left := words.N(len(c.Rolls)), words.N(c.Least), sc.Amount(unit.Length, c.Length), sc.Amount(unit.Length, c.Left())
	var said string
	switch {
	case len(c.Rolls) == 1:
		said = words.Say("One roll of {roll} holds it all; {left} of it is left over.", roll, left)
	case c.Least == len(c.Rolls):
		said = words.Say("{n} {n|roll|rolls} of {roll}, and no fewer do: every other way was ruled out. {left} is left over.", n, roll, left)
	default:
		said = words.Say("{n} {n|roll|rolls} of {roll}. At least {least} are needed; whether so few do was not found out. {left} is left over.", n, roll, least, left)
	}
	if c.Joined > 0 {
		said = words.Sentences(said, words.Say("{n} {n|piece is|pieces are} longer than a roll: {n|a joiner goes|joiners go} where {n|it goes|they go} on.", words.N(c.Joined)))
	}
	return said
}

// cut is a length as a tape measure shows it: to the millimetre, or the eighth of an
// inch.
func (sc part) cut(m float64) string { return unit.Tape(sc.Sys, m) }

// where says what a piece is.
func (sc part) where(p *cuts.Piece) string {
	l := sc.S.Layout
	if p.Stretch < 0 {
		if l.Joints[p.Joint].Kind == layout.HeaderCap {
			return words.Say("short piece at the header's end, to flush it")
		}
		return words.Say("short piece before row 1")
	}
	s := &l.Stretches[p.Stretch]
	row := words.N(s.Index + 1)
	switch s.Kind {
	case layout.RunOf:
		if len(sc.S.Plan.Runs) == 1 {
			return words.Say("supply line")
		}
		return words.Say("supply line, part {n}", row)
	case layout.HeaderOf:
		return words.Say("header, to row {n}", row)
	case layout.RowOf:
		return words.Say("row {n}", row)
	case layout.Between:
		return words.Say("to row {n}", row)
	case layout.FarOf:
		return words.Say("far header, to row {n}", row)
	case layout.Source, layout.Filter, layout.Devices:
	}
	return ""
}
