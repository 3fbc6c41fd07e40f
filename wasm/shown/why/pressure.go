// Package why shows how the answer came to be: pressure, flow, evenness, zones,
// the first minutes and the last, and chance.
package why

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
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
	trail := sc.S.Trail(z, z.Worst)
	e := sc.EmitterOf(z.Worst)
	if trail == nil || e == nil {
		return
	}
	sc.Tag("p", "From the "+sc.from()+" to the weakest emitter, "+sc.Place(z.Worst)+
		". The line falls with friction and at bends. Its height above the tubing is the pressure there; it must end above the dashes.")
	end := trail.End()
	lines := []block.Limit{{At: end.Z + e.Lowest, Text: "even from " + sc.Amount(unit.Head, e.Lowest) + " on"}}
	if e.Opens > 0 && e.Opens != e.Lowest {
		lines = append(lines, block.Limit{At: end.Z + e.Opens, Text: "opens at " + sc.Amount(unit.Head, e.Opens)})
	}
	caption := "Heads above the " + sc.from() + ", in " + words.Say(unit.Of(unit.Head, sc.Sys).Words) + "."
	if end.Z > 0 {
		caption += " The weakest emitter stands " + sc.Amount(unit.Head, end.Z) + " above it."
	} else if end.Z < 0 {
		caption += " The weakest emitter stands " + sc.Amount(unit.Head, -end.Z) + " below it."
	}
	sc.Picture(caption, func(class block.Markup, width float64) {
		sc.gradeLine(class, width, trail, lines)
	})
	sc.gradeTable(trail)
}

// from says where heads are counted from.
func (sc part) from() string {
	if sc.S.Plan.Supply.Kind == plan.Mains {
		return "tap"
	}
	return "water in the tank"
}

func (sc part) gradeLine(class block.Markup, width float64, trail *sheet.Trail, lines []block.Limit) {
	p := block.Plot{Left: 44, Right: width - 8, Top: 14, Bottom: 214}
	if class == "wide" {
		p.Left, p.Bottom = 52, 244
	}
	start, steps := trail.Start, trail.Steps
	lo, hi := block.Span(0, 1, start.Head, start.Z)
	for i := range steps {
		for _, s := range steps[i].Spots {
			lo, hi = block.Span(lo, hi, s.Head, s.Z)
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
		total += steps[i].Length
	}
	if total == 0 {
		total = 1
	}
	share := make([]float64, len(steps))
	for i := range steps {
		share[i] = max(steps[i].Length, total*0.12)
		sum += share[i]
	}
	p.X1 = sum

	sc.SVG(class, width, p.Bottom+40, "Head from the "+sc.from()+" to the weakest emitter", func() {
		grade, ground := &block.Path{}, &block.Path{}
		x := 0.0
		grade.Move(p.Left, p.Y(start.Head))
		ground.Move(p.Left, p.Y(start.Z))
		for i := range steps {
			for _, s := range steps[i].Spots {
				at := p.X(x + s.Along*share[i])
				grade.Line(at, p.Y(s.Head))
				ground.Line(at, p.Y(s.Z))
			}
			x += share[i]
		}
		// The area between the line and the tubing is the pressure in it.
		area := grade.Copy()
		x = sum
		for i := len(steps) - 1; i >= 0; i-- {
			x -= share[i]
			for j := len(steps[i].Spots) - 1; j >= 0; j-- {
				s := steps[i].Spots[j]
				area.Line(p.X(x+s.Along*share[i]), p.Y(s.Z))
			}
		}
		area.Line(p.Left, p.Y(start.Z))
		area.Close()
		sc.Draw("soft", area)
		sc.Heads(&p)
		sc.Draw("ground", ground).Draw("line line--main", grade)
		sc.Limits(&p, trail.End().Head, lines...)

		x = 0
		head := trail.Start.Head
		for i := range steps {
			s := steps[i].End()
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
				if d := s.Head - head; d > 0.05 || d < -0.05 {
					sc.Label((a+b)/2, max(p.Y(max(s.Head, head))-6, p.Top), "middle", signed(sc.Bare(unit.Head, d), d))
				}
			}
			head = s.Head
			x += share[i]
		}
		sc.HTML(`<circle class="dot" r="4.5" cx="`).At(p.Right).HTML(`" cy="`).At(p.Y(trail.End().Head)).HTML(`"/>`)
	})
}

func signed(s string, v float64) string {
	if v > 0 {
		return "+" + s
	}
	return s
}

// gradeTable says the same as the grade line.
func (sc part) gradeTable(trail *sheet.Trail) {
	steps := trail.Steps
	sc.SameAsTable(func() {
		sc.Table("Head along the way to the weakest emitter", "Stretch", "#Length", "#Change", "#Head at its end", "#Pressure at its end").Rows(func(t *block.Table) {
			head := trail.Start.Head
			for i := range steps {
				s := steps[i].End()
				length := "–"
				if steps[i].Length > 0 {
					length = sc.Amount(unit.Length, steps[i].Length)
				}
				d := s.Head - head
				t.Row(unit.Capital(sc.stepName(&steps[i])), length, signed(sc.Amount(unit.Head, d), d),
					sc.Amount(unit.Head, s.Head), sc.Amount(unit.Pressure, (s.Head-s.Z)*sc.Weight))
				head = s.Head
			}
		})
	})
}
