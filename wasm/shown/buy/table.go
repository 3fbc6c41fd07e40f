package buy

import (
	"evenrow/wasm/ground/csv"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/sheet"
)

// Table is the parts as a file for a spreadsheet, lengths in the plan's units.
func Table(s *sheet.Sheet) string {
	sys := s.Plan.Units
	long := unit.Of(unit.Length, sys).Symbol
	var t csv.Table
	t.Row(words.Say("Group"), words.Say("Part"), words.Say("Number"), words.Say("Spare in it"),
		words.Say("Length, {unit}", long), words.Say("Rolls"), words.Say("Length of a roll, {unit}", long), words.Say("Where it comes from"))
	count := func(n int) string {
		if n == 0 {
			return ""
		}
		return words.N(n)
	}
	length := func(m float64) string {
		if m == 0 {
			return ""
		}
		return unit.Figure(unit.Length, sys, m)
	}
	for i := range s.Parts {
		p := &s.Parts[i]
		t.Row(words.Say(GroupNames[p.Group]), p.Name, count(p.Count), count(p.Spare), length(p.Length), count(p.Rolls), length(p.Roll), p.Why)
	}
	return t.String()
}
