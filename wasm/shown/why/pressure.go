// Package why shows how the answer came to be: pressure, flow, evenness, zones,
// the first minutes and the last, and chance.
package why

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
)

// Pressure draws the hydraulic grade line from the source to the weakest
// emitter, over the height of the tubing, with the head at which the emitter
// opens and the lowest head of its range.
func Pressure(the *scene.Scene) {
	sc := part{the}
	z := sc.Zone
	if z == nil {
		sc.Tag("p", "There is no line to draw until the plan says what drives the water.")
		return
	}
	start, steps := sc.trail(z, z.Worst)
	e := sc.EmitterOf(z.Worst)
	if len(steps) == 0 || e == nil {
		return
	}
	sc.Tag("p", "From the "+sc.from()+" to the weakest emitter, "+sc.Place(z.Worst)+
		". The line falls with friction and at bends. Its height above the tubing is the pressure there; it must end above the dashes.")
	last := steps[len(steps)-1].spots
	end := last[len(last)-1]
	lines := []block.Limit{{At: end.z + e.Lowest, Text: "even from " + sc.Amount(unit.Head, e.Lowest) + " on"}}
	if e.Opens > 0 && e.Opens != e.Lowest {
		lines = append(lines, block.Limit{At: end.z + e.Opens, Text: "opens at " + sc.Amount(unit.Head, e.Opens)})
	}
	caption := "Heads above the " + sc.from() + ", in " + words.Say(unit.Of(unit.Head, sc.Sys).Words) + "."
	if end.z > 0 {
		caption += " The weakest emitter stands " + sc.Amount(unit.Head, end.z) + " above it."
	} else if end.z < 0 {
		caption += " The weakest emitter stands " + sc.Amount(unit.Head, -end.z) + " below it."
	}
	sc.Picture(caption, func(class block.Markup, width float64) {
		sc.gradeLine(class, width, start, steps, lines)
	})
	sc.gradeTable(start, steps)
}

// from says where heads are counted from.
func (sc part) from() string {
	if sc.SourceName() == "tap" {
		return "tap"
	}
	return "water in the tank"
}

func (sc part) gradeLine(class block.Markup, width float64, start spot, steps []step, lines []block.Limit) {
	p := block.Plot{Left: 44, Right: width - 8, Top: 14, Bottom: 214}
	if class == "wide" {
		p.Left, p.Bottom = 52, 244
	}
	lo, hi := block.Span(0, 1, start.head, start.z)
	for i := range steps {
		for _, s := range steps[i].spots {
			lo, hi = block.Span(lo, hi, s.head, s.z)
		}
	}
	for _, l := range lines {
		lo, hi = block.Span(lo, hi, l.At)
	}
	p.Y0, p.Y1 = lo, hi+(hi-lo)*0.08

	// Each step gets at least a share of the width, so that a pump and a filter,
	// which have no length, can be seen.
	total, sum := 0.0, 0.0
	for i := range steps {
		total += steps[i].length
	}
	if total == 0 {
		total = 1
	}
	share := make([]float64, len(steps))
	for i := range steps {
		share[i] = max(steps[i].length, total*0.12)
		sum += share[i]
	}
	p.X1 = sum

	sc.SVG(class, width, p.Bottom+40, "Head from the "+sc.from()+" to the weakest emitter", func() {
		grade, ground := &block.Path{}, &block.Path{}
		x := 0.0
		grade.Move(p.Left, p.Y(start.head))
		ground.Move(p.Left, p.Y(start.z))
		for i := range steps {
			for _, s := range steps[i].spots {
				at := p.X(x + s.along*share[i])
				grade.Line(at, p.Y(s.head))
				ground.Line(at, p.Y(s.z))
			}
			x += share[i]
		}
		// The area between the line and the tubing is the pressure in it.
		area := grade.Copy()
		x = sum
		for i := len(steps) - 1; i >= 0; i-- {
			x -= share[i]
			for j := len(steps[i].spots) - 1; j >= 0; j-- {
				s := steps[i].spots[j]
				area.Line(p.X(x+s.along*share[i]), p.Y(s.z))
			}
		}
		area.Line(p.Left, p.Y(start.z))
		area.Close()
		sc.Draw("soft", area)
		sc.Heads(&p)
		sc.Draw("ground", ground).Draw("line line--main", grade)
		end := steps[len(steps)-1].spots
		sc.Limits(&p, end[len(end)-1].head, lines...)

		x = 0
		head := start.head
		for i := range steps {
			s := steps[i].spots[len(steps[i].spots)-1]
			a, b := p.X(x), p.X(x+share[i])
			row := 16.0
			if i%2 == 1 && (i == 1 || class == "narrow") {
				row = 30 // names of neighbours do not touch: that of a supply with a regulator is long
			}
			name := sc.stepName(&steps[i])
			if name == "supply line" {
				name = "supply" // the names of short stretches do not touch
			}
			sc.Label((a+b)/2, p.Bottom+row, "middle", name)
			if class == "wide" && b-a > 54 {
				if d := s.head - head; d > 0.05 || d < -0.05 {
					sc.Label((a+b)/2, max(p.Y(max(s.head, head))-6, p.Top), "middle", signed(sc.Bare(unit.Head, d), d))
				}
			}
			head = s.head
			x += share[i]
		}
		sc.HTML(`<circle class="dot" r="4.5" cx="`).At(p.Right).HTML(`" cy="`).At(p.Y(end[len(end)-1].head)).HTML(`"/>`)
	})
}

func signed(s string, v float64) string {
	if v > 0 {
		return "+" + s
	}
	return s
}

// gradeTable says the same as the grade line.
func (sc part) gradeTable(start spot, steps []step) {
	sc.SameAsTable(func() {
		t := sc.Table("Head along the way to the weakest emitter", "Stretch", "#Length", "#Change", "#Head at its end", "#Pressure at its end")
		head := start.head
		for i := range steps {
			s := steps[i].spots[len(steps[i].spots)-1]
			length := "–"
			if steps[i].length > 0 {
				length = sc.Amount(unit.Length, steps[i].length)
			}
			d := s.head - head
			t.Row(unit.Capital(sc.stepName(&steps[i])), length, signed(sc.Amount(unit.Head, d), d),
				sc.Amount(unit.Head, s.head), sc.Amount(unit.Pressure, (s.head-s.z)*sc.Weight))
			head = s.head
		}
		t.End()
	})
}
