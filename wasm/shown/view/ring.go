package view

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/layout"
)

// ring says what a far header gains.
func (sc *scene) ring(link Linker) {
	l := sc.s.Loop
	if l == nil {
		sc.tag("p", "A loop ties the far ends of rows that are watered together from one header. "+sc.noRing())
		return
	}
	with, without := &l.Side[sheet.Tied], &l.Side[sheet.Untied]
	gain := with.Zone.Margin - without.Zone.Margin
	tubing := sc.amount(unit.Length, l.More) + " more tubing"
	var words string
	switch now := l.Now == sheet.Tied; {
	case math.Abs(gain) < 0.05: // m, half of the last digit that is shown
		words = "Next to nothing: the weakest emitter has as much pressure without the far header as with it. "
		if now {
			words += "You could leave it out and save " + sc.amount(unit.Length, l.More) + " of tubing."
		} else {
			words += "It is not worth its " + tubing + "."
		}
	case gain < 0:
		words = "Nothing: with a far header the weakest emitter has " + sc.head(-gain) + " less."
	case now:
		words = "The far header gives the weakest emitter " + sc.head(gain) + " more, for " + tubing + "."
	default:
		words = "A far header would give the weakest emitter " + sc.head(gain) + " more, for " + tubing + "."
	}
	if with.Sought && without.Sought {
		switch more := with.Longer - without.Longer; {
		case more > 0 && !with.Bounded:
			words += " Every row could be " + count(more, "plant", "plants") + " longer than without it."
		case more < 0 && !without.Bounded:
			words += " Rows could be longer without it."
		}
	}
	switch {
	case with.Verdict == sheet.Yes && without.Verdict != sheet.Yes:
		words += " The answer is Yes with it, and not without."
	case without.Verdict == sheet.Yes && with.Verdict != sheet.Yes:
		words += " The answer is Yes without it, and not with it."
	}
	sc.html(`<p>`).text(words)
	if link != nil {
		sc.html(` <a`).attr("href", link(l.Plan)).html(`>Open the plan `)
		if l.Now == sheet.Tied {
			sc.html(`without the far header</a>`)
		} else {
			sc.html(`with a far header</a>`)
		}
	}
	sc.html(`</p><figure>`)
	for _, w := range widths {
		sc.sides(w.class, w.width, l)
	}
	sc.tag("figcaption", "Each row from its least pressure to its most. The thick line is with the far header, the thin one below it without.")
	sc.html(`</figure>`)
	sc.fold("The same as a table")
	t := sc.table("The rows closed into loops, and not", "What", "#Without a far header", "#With one")
	both := func(name string, f func(*sheet.Looped) string) { t.row(name, f(without), f(with)) }
	both("Answer", func(s *sheet.Looped) string { return [...]string{"Yes", "Nearly", "No", "Cannot say"}[s.Verdict] })
	both("To spare at the weakest emitter", func(s *sheet.Looped) string { return sc.amount(unit.Pressure, s.Zone.Margin*sc.weight) })
	both("From the least pressure to the most", func(s *sheet.Looped) string { return sc.amount(unit.Pressure, (s.High-s.Low)*sc.weight) })
	both("Evenness (EU)", func(s *sheet.Looped) string {
		if !(s.Zone.Flow > 0) {
			return "–"
		}
		return sc.amount(unit.Share, s.Zone.Alike.EU)
	})
	both("Plants more in every row", sc.longer)
	both("Longest row then", func(s *sheet.Looped) string {
		if !s.Sought {
			return "–"
		}
		long := 0.0
		for i := range sc.s.Plan.Rows {
			r := sc.s.Plan.Rows[i]
			r.Plants += s.Longer
			long = max(long, r.Length())
		}
		return sc.amount(unit.Length, long)
	})
	t.row("Tubing more", "", sc.amount(unit.Length, l.More))
	t.end()
	sc.tag("p", "How long rows may be is calculated with all rows longer alike, every emitter open, at its lowest pressure and your safety margin; the place is not looked at.")
	sc.html(`</details>`)
	row := without.Layout.Plants[without.Zone.Worst].Row
	a, b := firstLink(without.Layout, layout.RowOf, row), firstLink(with.Layout, layout.RowOf, row)
	if a < 0 || b < 0 {
		return
	}
	if qa, qb := without.Zone.Solution.Flow[a], with.Zone.Solution.Flow[b]; qa > 0 && qb > 0 {
		sc.fold("Show the working")
		sc.tag("p", "Row "+strconv.Itoa(row+1)+" is the weakest without a far header. At its start, without one:")
		sc.friction(without.Layout, a, qa)
		sc.tag("p", "With one, a part of its water comes from the other end:")
		sc.friction(with.Layout, b, qb)
		sc.html(`</details>`)
	}
}

// longer is how many plants every row may have more.
func (sc *scene) longer(s *sheet.Looped) string {
	switch n := strconv.Itoa(s.Longer); {
	case !s.Sought:
		return "–"
	case s.Bounded:
		return n + " or more"
	case s.Longer < 0:
		return count(-s.Longer, "fewer", "fewer")
	default:
		return n
	}
}

// noRing says why there is nothing to compare.
func (sc *scene) noRing() string {
	switch s := sc.s; {
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
func (sc *scene) sides(class markup, width float64, l *sheet.Loop) {
	rows := len(sc.s.Plan.Rows)
	const tall = 22.0
	every := (rows + 19) / 20 // no more than twenty rows are drawn
	drawn := (rows + every - 1) / every
	p := plot{left: 56, right: width - 16, top: 8, bottom: 8 + tall*float64(drawn) + 8}
	p.x0, p.x1 = span(math.Inf(1), math.Inf(-1), l.Side[0].Low, l.Side[1].Low, l.Side[0].High, l.Side[1].High)
	if !(p.x1 > p.x0) || !finite(p.x1-p.x0) {
		p.x0, p.x1 = p.x0-1, p.x0+1
	}
	pad := (p.x1 - p.x0) / 20
	p.x0, p.x1 = p.x0-pad, p.x1+pad
	sc.svg(class, width, p.bottom+40, "Heads in each row, closed into loops and not")
	ts := sc.ticks(unit.Head, p.x0, p.x1, 4)
	var grid, thick, thin path
	for _, t := range ts {
		grid.move(p.x(t.v), p.top)
		grid.line(p.x(t.v), p.bottom)
	}
	sc.draw("grid", &grid)
	for side := range l.Side {
		at, to, dy := &l.Side[side], &thin, 13.0
		if side == sheet.Tied {
			to, dy = &thick, 6
		}
		lows, highs := rowSpans(at.Layout, at.Zone.Solution.Head, rows)
		for r := 0; r < rows; r += every {
			y := p.top + tall*float64(r/every) + dy
			if side == sheet.Tied {
				sc.label(p.left-8, y+7, "end", "row "+strconv.Itoa(r+1))
			}
			if finite(lows[r]) {
				to.move(p.x(lows[r])-1, y)
				to.line(p.x(highs[r])+1, y)
			}
		}
	}
	sc.draw("line line--lead", &thick).draw("line", &thin)
	sc.axis(&p, unit.Head, ts, "head above the emitters")
	sc.html(`</svg>`)
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
