package build

import (
	"math"
	"slices"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/works/marks"
)

// Marks says where emitters are punched in.
func Marks(the *scene.Scene) {
	sc := part{the}
	rows := marks.Of(sc.S.Plan)
	if len(rows) == 0 {
		sc.Say("p", "There are no rows yet.")
		return
	}
	sc.Say("p", "Measured along the tubing from the middle of the fitting at the start of the row, laid out straight and warm from the sun, without pulling. Punch every hole on the same side.")
	sc.Table(words.Say("Marks, row by row"), words.Say("Rows"), block.Figures(words.Say("Holes in each")), block.Figures(words.Say("First at")), block.Figures(words.Say("Then every")), block.Figures(words.Say("Last at"))).Rows(func(t *block.Table) {
		for i := range rows {
			g := &rows[i]
			every := "–"
			if g.Plants > 1 {
				every = unit.Tape(sc.Sys, g.Spacing)
			}
			t.Row(wording.RowsBegin(g.Rows), words.N(g.Plants*g.PerPlant), unit.Tape(sc.Sys, g.First), every, unit.Tape(sc.Sys, g.Last()))
		}
	})
	for i := range rows {
		if rows[i].PerPlant > 1 {
			sc.Say("p", "Where a plant has several emitters, punch them side by side, a thumb's width apart.")
			break
		}
	}
	sc.Fold(words.Say("Every mark"), func() {
		sc.Table(words.Say("Every mark, from the start of the row"), words.Say("Rows"), words.Say("Marks")).Rows(func(t *block.Table) {
			for i := range rows {
				var list []string
				for n := range rows[i].Plants {
					list = append(list, unit.Tape(sc.Sys, rows[i].At(n)))
				}
				t.Row(wording.RowsBegin(rows[i].Rows), words.List(list...))
			}
		})
	})
	sc.Saves("marks")
	sc.stick(rows)
	sc.strips(rows)
}

// MarksLine says how many holes there are.
func MarksLine(the *scene.Scene) (said string, is sheet.Verdict) {
	holes := 0
	for _, g := range marks.Of(the.S.Plan) {
		holes += g.Plants * g.PerPlant * len(g.Rows)
	}
	if holes == 0 {
		return "", sheet.Yes
	}
	return words.Say("{n} {n|hole|holes}", words.N(holes)), sheet.Yes
}

// stick says how to carry a spacing along a row that is longer than a tape.
func (sc part) stick(rows []marks.Group) {
	var had []float64
	for i := range rows {
		g := &rows[i]
		n := marks.Stick(g.Spacing)
		if n == 0 || g.Plants <= n || slices.Contains(had, g.Spacing) {
			continue
		}
		if len(had) == 0 {
			sc.Tag("h3", words.Say("A story stick"))
			sc.Say("p", "A straight lath with the marks on it: a tape is laid once, and each row is marked by laying the lath along it, its first mark on the last one made.")
		}
		had = append(had, g.Spacing)
		sc.Say("p", "For plants every {spacing}: a lath of {long}, with a mark at its end and then every {spacing}, {n} {n|space|spaces} in all. Each time it is laid on it may be off by as much as a pencil is thick: check the last mark of a row with the tape, at the length above.",
			unit.Tape(sc.Sys, g.Spacing), unit.Tape(sc.Sys, float64(n)*g.Spacing), words.N(n))
	}
}

// strips draws the marks of each spacing at full scale, for paper.
func (sc part) strips(rows []marks.Group) {
	var had []float64
	for i := range rows {
		g := &rows[i]
		if g.Plants < 2 || slices.Contains(had, g.Spacing) || g.Spacing > marks.LongestStrip {
			continue
		}
		if len(had) == 0 {
			sc.Tag("h3", words.Say("Strips at full scale"))
		}
		had = append(had, g.Spacing)
		sc.strip(g)
	}
}

// strip draws one spacing, from one mark to the next, in as many pieces as a sheet of
// paper takes.
func (sc part) strip(g *marks.Group) {
	pieces := int(math.Ceil(g.Spacing/marks.Strip - 1e-9))
	sc.HTML(`<figure class="strips">`)
	for n := range pieces {
		from := float64(n) * marks.Strip
		long := min(marks.Strip, g.Spacing-from)
		sc.HTML(`<svg class="strip-of-marks" width="24mm" height="`).At(long*1000).HTML(`mm" viewBox="0 0 24 `).At(long*1000).HTML(`" role="img"`).
			Attr("aria-label", words.Say("Strip {n} of {all} for plants every {spacing}", words.N(n+1), words.N(pieces), unit.Tape(sc.Sys, g.Spacing))).HTML(`>`)
		var fine, thick, joint block.Path
		fine.Move(0.2, 0)
		fine.Line(0.2, long*1000)
		sc.ruler(&fine, from, long)
		end := func(y float64, mark bool) {
			p := &joint
			if mark {
				p = &thick
			}
			p.Move(0, y)
			p.Line(24, y)
		}
		end(0, n == 0)
		end(long*1000, n == pieces-1)
		sc.Draw("strip-fine", &fine).Draw("strip-mark", &thick).Draw("strip-joint", &joint).HTML(`</svg>`)
	}
	sc.HTML(`<figcaption>`).Text(words.Say("Plants every {spacing}: from one thick line to the next. Print it at 100 %, without fitting it to the page, and check the ruler, the short lines, with one of your own before you cut it out. Where there are several pieces, glue them end to end at the dashed lines.", unit.Tape(sc.Sys, g.Spacing))).HTML(`</figcaption></figure>`)
}

// ruler draws the lines of a ruler, in mm of paper: centimetres, or inches with their
// quarters. Where the strip ends it has a line of its own, a dashed one perhaps.
func (sc part) ruler(p *block.Path, from, long float64) {
	step, whole := unit.Of(unit.Bore, unit.Metric).ToInner(5), 2
	if sc.Sys == unit.US {
		step, whole = unit.Of(unit.Bore, unit.US).ToInner(0.25), 4
	}
	for k := int(math.Ceil(from/step - 1e-9)); float64(k)*step <= from+long+1e-9; k++ {
		y := (float64(k)*step - from) * 1000
		if y < 0.05 || y > long*1000-0.05 {
			continue
		}
		out := 4.0
		if k%whole == 0 {
			out = 8
		}
		p.Move(0, y)
		p.Line(out, y)
	}
}
