package why

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/works/startup"
)

// filling draws when the water comes to each row and to its end.
func (sc part) filling(class block.Markup, width float64, u *startup.Startup) {
	rows, last := 0, 0.0
	for i := range u.Zones {
		for _, r := range u.Zones[i].Rows {
			rows++
			for _, t := range [...]float64{r.Start, r.End} {
				if wording.Finite(t) {
					last = max(last, t)
				}
			}
		}
	}
	if last == 0 {
		last = 1
	}
	each := min(max(300/float64(max(rows, 1)), 6), 24)
	p := block.Plot{Left: 56, Right: width - 20, Top: 8, Bottom: 16 + each*float64(rows), X1: last}
	sc.SVG(class, width, p.Bottom+40, "When the water comes to the start and to the end of each row", func() {
		ts := secondTicks(last)
		var grid, run, ends block.Path
		for _, t := range ts {
			grid.Move(p.X(t.V), p.Top)
			grid.Line(p.X(t.V), p.Bottom)
		}
		sc.Draw("grid", &grid)
		every := int(math.Ceil(14 / each))
		y, k := p.Top+each/2, 0
		for i := range u.Zones {
			for _, r := range u.Zones[i].Rows {
				if wording.Finite(r.Start) {
					run.Move(p.X(r.Start), y)
					if wording.Finite(r.End) {
						run.Line(p.X(r.End), y)
						ends.Move(p.X(r.End), y-each/3)
						ends.Line(p.X(r.End), y+each/3)
					} else {
						run.Line(p.Right, y)
						ends.Move(p.Right, y-each/3)
						ends.Line(p.Right+6, y)
						ends.Line(p.Right, y+each/3)
					}
				}
				if k%every == 0 {
					sc.Label(p.Left-6, y+4, "end", "row "+strconv.Itoa(r.Row+1))
				}
				y += each
				k++
			}
		}
		sc.Draw("line line--lead", &run).Draw("bar", &ends)
		for _, t := range ts {
			sc.Label(p.X(t.V), p.Bottom+16, "middle", t.Text)
		}
		sc.Label(p.Right, p.Bottom+32, "end", "s after the start")
	})
}

// secondTicks are round numbers of seconds up to last, four or so.
func secondTicks(last float64) []block.Tick {
	step := block.RoundStep(last / 4)
	decimals := 0
	if step < 1 {
		decimals = 1
	}
	var ts []block.Tick
	for i := 0; float64(i)*step <= last; i++ {
		v := float64(i) * step
		ts = append(ts, block.Tick{V: v, Text: strconv.FormatFloat(v, 'f', decimals, 64)})
	}
	return ts
}

// opening draws at which head of the supply each emitter opens.
func (sc part) opening(class block.Markup, width, lo, hi float64) {
	l := sc.S.Layout
	p := block.Plot{Left: 56, Right: width - 12, Top: 22, Bottom: 180, Y0: lo - (hi-lo)/10, Y1: hi + (hi-lo)/10}
	for i := range l.Plants {
		p.X1 = max(p.X1, float64(l.Plants[i].Number))
	}
	p.X1 = max(p.X1, 2)
	p.X0 = 1
	sc.SVG(class, width, p.Bottom+40, "Head at the supply at which each emitter opens", func() {
		sc.Heads(&p)
		var lines block.Path
		type end struct {
			x, y float64
			row  int
		}
		var ends []end
		for z := range sc.S.Startup.Zones {
			row := -1
			for i, h := range sc.S.Startup.Zones[z].Opens {
				if !(h > 0) || !wording.Finite(h) {
					row = -1
					continue
				}
				pl := &l.Plants[i]
				x, y := p.X(float64(pl.Number)), p.Y(h)
				if pl.Row == row {
					lines.Line(x, y)
				} else {
					lines.Move(x-2, y)
					lines.Line(x, y)
				}
				row = pl.Row
				if i == len(l.Plants)-1 || l.Plants[i+1].Row != row {
					ends = append(ends, end{x, y, row})
				}
			}
		}
		sc.Draw("line line--lead", &lines)
		// A row is named at its last plant, unless another's name stands there.
	next:
		for i, e := range ends {
			for _, o := range ends[:i] {
				if math.Abs(o.y-e.y) < 14 && math.Abs(o.x-e.x) < 48 {
					continue next
				}
			}
			sc.Label(e.x, e.y-6, "end", "row "+strconv.Itoa(e.row+1))
		}
		sc.Axis(&p, unit.None, sc.Ticks(unit.None, p.X0, p.X1, 5), "plant in its row")
	})
}
