package build

import (
	"evenrow/wasm/ground/csv"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/cuts"
	"evenrow/wasm/works/marks"
)

// short is the unit of lengths that are cut, in which files have them: millimetres or
// inches.
func short(sys unit.System, m float64) string { return unit.Figure(unit.Bore, sys, m) }

// CutsTable is the pieces of tubing, each with its roll, as a file for a spreadsheet.
func CutsTable(s *sheet.Sheet) string {
	sys, symbol := s.Plan.Units, unit.Of(unit.Bore, s.Plan.Units).Symbol
	sc := part{scene.New(s, nil)}
	var t csv.Table
	t.Row(words.Say("Piece"), words.Say("Tubing"), words.Say("Where"), words.Say("Length, {unit}", symbol), words.Say("Roll"))
	for _, c := range cuts.Of(s.Layout) {
		roll := make([]string, len(c.Pieces))
		for k := range c.Rolls {
			for _, n := range c.Rolls[k].Pieces {
				roll[n] = words.N(k + 1)
			}
		}
		for k := range c.Pieces {
			p := &c.Pieces[k]
			t.Row(c.Name(p), s.Layout.Tubes[c.Tube].Name(sys), sc.where(p), short(sys, p.Length), roll[k])
		}
	}
	return t.String()
}

// MarksTable is every mark of every row, as a file for a spreadsheet.
func MarksTable(s *sheet.Sheet) string {
	sys, symbol := s.Plan.Units, unit.Of(unit.Bore, s.Plan.Units).Symbol
	groups := marks.Of(s.Plan)
	var t csv.Table
	t.Row(words.Say("Row"), words.Say("Plant"), words.Say("From the start of the row, {unit}", symbol), words.Say("Holes"))
	for row := range s.Plan.Rows {
		for i := range groups {
			g := &groups[i]
			for _, of := range g.Rows {
				for n := 0; of == row && n < g.Plants; n++ {
					t.Row(words.N(row+1), words.N(n+1), short(sys, g.At(n)), words.N(g.PerPlant))
				}
			}
		}
	}
	return t.String()
}
