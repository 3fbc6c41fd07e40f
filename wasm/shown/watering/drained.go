package watering

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/year/drain"
)

// logged draws the drain, and the EC of drain and feed, day by day, and says
// the same as a table.
func (sc part) logged(log []drain.Entry, a *drain.Advice) {
	sc.Picture("Above, the share that drained. Below, EC: thick of the drain, dashed of the feed.", func(class block.Markup, width float64) {
		p := block.Plot{Left: 56, Right: width - 16, Top: 14, Bottom: 110, X1: float64(max(len(log)-1, 1)), Y1: a.Wanted * 1.5}
		q := block.Plot{Left: p.Left, Right: p.Right, Top: 140, Bottom: 236, X1: p.X1, Y1: 2}
		for i := range log {
			_, p.Y1 = block.Span(0, p.Y1, log[i].Out)
			_, q.Y1 = block.Span(0, q.Y1, log[i].EC, log[i].Feed)
		}
		p.Y1 = max(p.Y1, 0.1)
		sc.SVG(class, width, q.Bottom+24, "Share that drained, and EC of drain and feed, day by day", func() {
			sc.Side(&p, unit.Share)
			sc.Side(&q, unit.None)
			var out, ec, feed block.Path
			series(&p, &out, log, func(e *drain.Entry) float64 { return e.Out })
			series(&q, &ec, log, func(e *drain.Entry) float64 { return e.EC })
			series(&q, &feed, log, func(e *drain.Entry) float64 { return e.Feed })
			sc.Draw("line line--lead", &out).Draw("line line--lead", &ec).Draw("dash", &feed)
			sc.Limits(&p, 0, block.Limit{At: a.Wanted, Text: "wanted"})
			sc.Label(q.Left, q.Top-8, "start", "EC, mS/cm")
			sc.Label(q.Right, q.Bottom+18, "end", "day by day")
		})
	})
	sc.SameAsTable(func() {
		sc.Table("The log", "Day", "Weather", "#Timer", "#Drain", "#EC of the drain", "#pH of the drain", "#EC of the feed").Rows(func(t *block.Table) {
			plain := func(v float64) string { return sc.Bare(unit.None, v) }
			for i := range log {
				e := &log[i]
				name := strconv.Itoa(i + 1)
				if e.Day != 0 {
					name = e.Day.Words()
				}
				given := "–"
				if wording.Finite(e.Shots) && wording.Finite(e.Long) {
					given = plain(e.Shots) + "\u00a0×\u00a0" + wording.Shot(e.Long)
				}
				t.Row(name, orNot(drain.SkyNames[e.Sky]), given, sc.Amount(unit.Share, e.Out), plain(e.EC), plain(e.PH), plain(e.Feed))
			}
		})
	})
}

// series draws what was measured, with short strokes so that a single day
// shows.
func series(p *block.Plot, line *block.Path, log []drain.Entry, of func(*drain.Entry) float64) {
	open := false
	for i := range log {
		v := of(&log[i])
		if !wording.Finite(v) {
			continue
		}
		x, y := p.X(float64(i)), p.Y(v)
		if open {
			line.Line(x, y)
		} else {
			line.Move(x-3, y)
			line.Line(x, y)
		}
		open = true
	}
	if open {
		line.Add('h', 3)
	}
}
