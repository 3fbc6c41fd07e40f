package view

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/works/startup"
)

// filling draws when the water comes to each row and to its end.
func (sc *scene) filling(class markup, width float64, u *startup.Startup) {
	rows, last := 0, 0.0
	for i := range u.Zones {
		for _, r := range u.Zones[i].Rows {
			rows++
			for _, t := range [...]float64{r.Start, r.End} {
				if finite(t) {
					last = max(last, t)
				}
			}
		}
	}
	if last == 0 {
		last = 1
	}
	each := min(max(300/float64(max(rows, 1)), 6), 24)
	p := plot{left: 56, right: width - 20, top: 8, bottom: 16 + each*float64(rows), x1: last}
	sc.svg(class, width, p.bottom+40, "When the water comes to the start and to the end of each row")
	ts := secondTicks(last)
	var grid, run, ends path
	for _, t := range ts {
		grid.move(p.x(t.v), p.top)
		grid.line(p.x(t.v), p.bottom)
	}
	sc.draw("grid", &grid)
	every := int(math.Ceil(14 / each))
	y, k := p.top+each/2, 0
	for i := range u.Zones {
		for _, r := range u.Zones[i].Rows {
			if finite(r.Start) {
				run.move(p.x(r.Start), y)
				if finite(r.End) {
					run.line(p.x(r.End), y)
					ends.move(p.x(r.End), y-each/3)
					ends.line(p.x(r.End), y+each/3)
				} else {
					run.line(p.right, y)
					ends.move(p.right, y-each/3)
					ends.line(p.right+6, y)
					ends.line(p.right, y+each/3)
				}
			}
			if k%every == 0 {
				sc.label(p.left-6, y+4, "end", "row "+strconv.Itoa(r.Row+1))
			}
			y += each
			k++
		}
	}
	sc.draw("line line--lead", &run).draw("bar", &ends)
	for _, t := range ts {
		sc.label(p.x(t.v), p.bottom+16, "middle", t.text)
	}
	sc.label(p.right, p.bottom+32, "end", "s after the start")
	sc.html(`</svg>`)
}

// secondTicks are round numbers of seconds up to last, four or so.
func secondTicks(last float64) []tick {
	step := roundStep(last / 4)
	decimals := 0
	if step < 1 {
		decimals = 1
	}
	var ts []tick
	for i := 0; float64(i)*step <= last; i++ {
		v := float64(i) * step
		ts = append(ts, tick{v, strconv.FormatFloat(v, 'f', decimals, 64)})
	}
	return ts
}

// openSpan returns the least and the greatest head over 0 at which an emitter
// opens.
func (sc *scene) openSpan() (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for i := range sc.s.Startup.Zones {
		for _, h := range sc.s.Startup.Zones[i].Opens {
			if h > 0 && finite(h) {
				lo, hi = min(lo, h), max(hi, h)
			}
		}
	}
	return lo, hi
}

// opening draws at which head of the supply each emitter opens.
func (sc *scene) opening(class markup, width, lo, hi float64) {
	l := sc.s.Layout
	p := plot{left: 56, right: width - 12, top: 22, bottom: 180, y0: lo - (hi-lo)/10, y1: hi + (hi-lo)/10}
	for i := range l.Plants {
		p.x1 = max(p.x1, float64(l.Plants[i].Number))
	}
	p.x1 = max(p.x1, 2)
	p.x0 = 1
	sc.svg(class, width, p.bottom+40, "Head at the supply at which each emitter opens")
	sc.heads(&p)
	var lines path
	type end struct {
		x, y float64
		row  int
	}
	var ends []end
	for z := range sc.s.Startup.Zones {
		row := -1
		for i, h := range sc.s.Startup.Zones[z].Opens {
			if !(h > 0) || !finite(h) {
				row = -1
				continue
			}
			pl := &l.Plants[i]
			x, y := p.x(float64(pl.Number)), p.y(h)
			if pl.Row == row {
				lines.line(x, y)
			} else {
				lines.move(x-2, y)
				lines.line(x, y)
			}
			row = pl.Row
			if i == len(l.Plants)-1 || l.Plants[i+1].Row != row {
				ends = append(ends, end{x, y, row})
			}
		}
	}
	sc.draw("line line--lead", &lines)
	// A row is named at its last plant, unless another's name stands there.
next:
	for i, e := range ends {
		for _, o := range ends[:i] {
			if math.Abs(o.y-e.y) < 14 && math.Abs(o.x-e.x) < 48 {
				continue next
			}
		}
		sc.label(e.x, e.y-6, "end", "row "+strconv.Itoa(e.row+1))
	}
	sc.axis(&p, unit.None, sc.ticks(unit.None, p.x0, p.x1, 5), "plant in its row")
	sc.html(`</svg>`)
}
