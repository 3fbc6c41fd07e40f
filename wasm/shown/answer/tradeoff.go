package answer

import (
	"math"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/design"
)

// tradeOff draws the designs by cost and power, or head for a tank.
func (sc part) tradeOff(class block.Markup, width float64, d *sheet.Designs) {
	tank, symbol := sc.S.Plan.Supply.Kind == plan.GravityTank, "W"
	if tank {
		symbol = sc.Symbol(unit.Head)
	}
	of := func(b *design.Design) float64 {
		if tank {
			return unit.Of(unit.Head, sc.Sys).FromInner(b.Head)
		}
		return b.Power
	}
	p := block.Plot{Left: 56, Right: width - 24, Top: 26, Bottom: 240}
	p.X0, p.X1 = block.Span(math.Inf(1), math.Inf(-1), d.Now)
	p.Y0, p.Y1 = math.Inf(1), math.Inf(-1)
	for i := range d.Best {
		b := &d.Best[i].Design
		p.X0, p.X1 = block.Span(p.X0, p.X1, b.Cost)
		p.Y0, p.Y1 = block.Span(p.Y0, p.Y1, of(b))
	}
	if !tank {
		p.Y0 = 0
	}
	pad := max((p.X1-p.X0)/12, 0.5)
	p.X0, p.X1 = p.X0-pad, p.X1+pad
	pad = max((p.Y1-p.Y0)/8, 0.01)
	p.Y1 += pad
	if tank {
		p.Y0 -= pad
	}
	sc.SVG(class, width, p.Bottom+40, words.Say("Designs by cost and by what they take of {source}", sc.TheSource()), func() {
		var grid, now block.Path
		ys := sc.Ticks(unit.None, p.Y0, p.Y1, 4)
		for _, t := range ys {
			grid.Move(p.Left, p.Y(t.V))
			grid.Line(p.Right, p.Y(t.V))
		}
		sc.Draw("grid", &grid)
		for i, t := range ys {
			mark := t.Text
			if i == len(ys)-1 {
				mark += " " + symbol
			}
			sc.Label(p.Left-6, p.Y(t.V)+4, "end", mark)
		}
		now.Move(p.X(d.Now), p.Top)
		now.Line(p.X(d.Now), p.Bottom)
		sc.Draw("dash", &now)
		for i := range d.Best {
			b := &d.Best[i]
			x, y := p.X(b.Cost), p.Y(of(&b.Design))
			mark := block.Markup("drop drop--empty")
			if b.Present {
				mark = "drop"
			}
			var m block.Path
			m.Move(x-5, y)
			m.Line(x, y-5)
			m.Line(x+5, y)
			m.Line(x, y+5)
			m.Close()
			sc.Draw(mark, &m)
			// Beside a mark that stands close, the number goes to the right.
			crowded := false
			for j := range i {
				o := &d.Best[j]
				crowded = crowded || math.Abs(p.X(o.Cost)-x) < 14 && math.Abs(p.Y(of(&o.Design))-y) < 14
			}
			if crowded {
				sc.Label(x+9, y+4, "start", words.N(i+1))
			} else {
				sc.Label(x, y-9, "middle", words.N(i+1))
			}
		}
		sc.Axis(&p, unit.Money, sc.Ticks(unit.Money, p.X0, p.X1, 5), words.Say("cost"))
	})
}
