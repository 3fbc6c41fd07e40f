package why

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/works/layout"
)

// Ring says what a far header gains.
func Ring(the *scene.Scene) {
	sc := part{the}
	l := sc.S.Loop
	if l == nil {
		sc.Tag("p", "A loop ties the far ends of rows that are watered together from one header. "+sc.noRing())
		return
	}
	with, without := &l.Side[sheet.Tied], &l.Side[sheet.Untied]
	gain := l.Gain()
	tubing := sc.Amount(unit.Length, l.More) + " more tubing"
	var words string
	switch now := l.Now == sheet.Tied; {
	case gain.Worth == sheet.WorthNothing:
		words = "Next to nothing: the weakest emitter has as much pressure without the far header as with it. "
		if now {
			words += "You could leave it out and save " + sc.Amount(unit.Length, l.More) + " of tubing."
		} else {
			words += "It is not worth its " + tubing + "."
		}
	case gain.Worth == sheet.WorthLess:
		words = "Nothing: with a far header the weakest emitter has " + sc.Head(-gain.Head) + " less."
	case now:
		words = "The far header gives the weakest emitter " + sc.Head(gain.Head) + " more, for " + tubing + "."
	default:
		words = "A far header would give the weakest emitter " + sc.Head(gain.Head) + " more, for " + tubing + "."
	}
	switch {
	case gain.Plants > 0:
		words += " Every row could be " + wording.Count(gain.Plants, "plant", "plants") + " longer than without it."
	case gain.Plants < 0:
		words += " Rows could be longer without it."
	}
	switch gain.Only {
	case sheet.Tied:
		words += " The answer is Yes with it, and not without."
	case sheet.Untied:
		words += " The answer is Yes without it, and not with it."
	}
	sc.HTML(`<p>`).Text(words)
	if sc.Link != nil {
		sc.HTML(` <a`).Attr("href", sc.Link(l.Plan)).HTML(`>Open the plan `)
		if l.Now == sheet.Tied {
			sc.HTML(`without the far header</a>`)
		} else {
			sc.HTML(`with a far header</a>`)
		}
	}
	sc.HTML(`</p>`)
	sc.Picture("Each row from its least pressure to its most. The thick line is with the far header, the thin one below it without.", func(class block.Markup, width float64) {
		sc.sides(class, width, l)
	})
	sc.SameAsTable(func() {
		sc.Table("The rows closed into loops, and not", "What", "#Without a far header", "#With one").Rows(func(t *block.Table) {
			both := func(name string, f func(*sheet.Looped) string) { t.Row(name, f(without), f(with)) }
			both("Answer", func(s *sheet.Looped) string { return [...]string{"Yes", "Nearly", "No", "Cannot say"}[s.Verdict] })
			both("To spare at the weakest emitter", func(s *sheet.Looped) string { return sc.Amount(unit.Pressure, s.Zone.Margin*sc.Weight) })
			both("From the least pressure to the most", func(s *sheet.Looped) string { return sc.Amount(unit.Pressure, (s.High-s.Low)*sc.Weight) })
			both("Evenness (EU)", func(s *sheet.Looped) string {
				if !(s.Zone.Flow > 0) {
					return "–"
				}
				return sc.Amount(unit.Share, s.Zone.Alike.EU)
			})
			both("Plants more in every row", sc.longer)
			both("Longest row then", func(s *sheet.Looped) string {
				if !s.Sought {
					return "–"
				}
				long := 0.0
				for i := range sc.S.Plan.Rows {
					r := sc.S.Plan.Rows[i]
					r.Plants += s.Longer
					long = max(long, r.Length())
				}
				return sc.Amount(unit.Length, long)
			})
			t.Row("Tubing more", "", sc.Amount(unit.Length, l.More))
		})
		sc.Tag("p", "How long rows may be is calculated with all rows longer alike, every emitter open, at its lowest pressure and your safety margin; the place is not looked at.")
	})
	row := without.Layout.Plants[without.Zone.Worst].Row
	a, b := firstLink(without.Layout, layout.RowOf, row), firstLink(with.Layout, layout.RowOf, row)
	if a < 0 || b < 0 {
		return
	}
	if qa, qb := without.Zone.Solution.Flow[a], with.Zone.Solution.Flow[b]; qa > 0 && qb > 0 {
		sc.Working(func() {
			sc.Tag("p", "Row "+strconv.Itoa(row+1)+" is the weakest without a far header. At its start, without one:")
			sc.friction(without.Layout, a, qa)
			sc.Tag("p", "With one, a part of its water comes from the other end:")
			sc.friction(with.Layout, b, qb)
		})
	}
}

// longer is how many plants every row may have more.
func (sc part) longer(s *sheet.Looped) string {
	switch n := strconv.Itoa(s.Longer); {
	case !s.Sought:
		return "–"
	case s.Bounded:
		return n + " or more"
	case s.Longer < 0:
		return wording.Count(-s.Longer, "fewer", "fewer")
	default:
		return n
	}
}

// noRing says why there is nothing to compare.
func (sc part) noRing() string {
	switch s := sc.S; {
	case len(s.Zones) > 1:
		return "With several zones there is none: the valves would not shut a row off any more."
	case len(s.Plan.Rows) < 2:
		return "One row alone has nothing to be tied to."
	case len(s.Zones) == 0:
		return "What it gains is worked out as soon as the plan says what drives the water."
	}
	return "This plan has no header to make one of."
}

// sides draws the span of heads in each row, with and without the far header.
func (sc part) sides(class block.Markup, width float64, l *sheet.Loop) {
	rows := len(sc.S.Plan.Rows)
	const tall = 22.0
	every := (rows + 19) / 20 // no more than twenty rows are drawn
	drawn := (rows + every - 1) / every
	p := block.Plot{Left: 56, Right: width - 16, Top: 8, Bottom: 8 + tall*float64(drawn) + 8}
	p.X0, p.X1 = block.Span(math.Inf(1), math.Inf(-1), l.Side[0].Low, l.Side[1].Low, l.Side[0].High, l.Side[1].High)
	if !(p.X1 > p.X0) || !wording.Finite(p.X1-p.X0) {
		p.X0, p.X1 = p.X0-1, p.X0+1
	}
	pad := (p.X1 - p.X0) / 20
	p.X0, p.X1 = p.X0-pad, p.X1+pad
	sc.SVG(class, width, p.Bottom+40, "Heads in each row, closed into loops and not", func() {
		ts := sc.Ticks(unit.Head, p.X0, p.X1, 4)
		var grid, thick, thin block.Path
		for _, t := range ts {
			grid.Move(p.X(t.V), p.Top)
			grid.Line(p.X(t.V), p.Bottom)
		}
		sc.Draw("grid", &grid)
		for side := range l.Side {
			at, to, dy := &l.Side[side], &thin, 13.0
			if side == sheet.Tied {
				to, dy = &thick, 6
			}
			lows, highs := rowSpans(at.Layout, at.Zone.Solution.Head, rows)
			for r := 0; r < rows; r += every {
				y := p.Top + tall*float64(r/every) + dy
				if side == sheet.Tied {
					sc.Label(p.Left-8, y+7, "end", "row "+strconv.Itoa(r+1))
				}
				if wording.Finite(lows[r]) {
					to.Move(p.X(lows[r])-1, y)
					to.Line(p.X(highs[r])+1, y)
				}
			}
		}
		sc.Draw("line line--lead", &thick).Draw("line", &thin)
		sc.Axis(&p, unit.Head, ts, "head above the emitters")
	})
}

// rowSpans returns the least and the most head above the emitters of each row.
func rowSpans(l *layout.Layout, head []float64, rows int) (low, high []float64) {
	low, high = make([]float64, rows), make([]float64, rows)
	for r := range low {
		low[r], high[r] = math.Inf(1), math.Inf(-1)
	}
	for i := range l.Plants {
		pl := &l.Plants[i]
		h := head[pl.Node] - l.Network.Nodes[pl.Node].Z
		low[pl.Row], high[pl.Row] = min(low[pl.Row], h), max(high[pl.Row], h)
	}
	return low, high
}
