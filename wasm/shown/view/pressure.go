package view

import (
	"evenrow/wasm/ground/unit"
)

// pressure draws the hydraulic grade line from the source to the weakest
// emitter, over the height of the tubing, with the head at which the emitter
// opens and the lowest head of its range.
func (sc *scene) pressure() {
	z := sc.zone
	if z == nil {
		sc.tag("p", "There is no line to draw until the plan says what drives the water.")
		return
	}
	start, steps := sc.trail(z, z.Worst)
	e := sc.emitterOf(z.Worst)
	if len(steps) == 0 || e == nil {
		return
	}
	sc.tag("p", "From the "+sc.from()+" to the weakest emitter, "+sc.place(z.Worst)+
		". The line falls with friction and at bends. Its height above the tubing is the pressure there; it must end above the dashes.")
	last := steps[len(steps)-1].spots
	end := last[len(last)-1]
	lines := []limit{{end.z + e.Lowest, "even from " + sc.amount(unit.Head, e.Lowest) + " on"}}
	if e.Opens > 0 && e.Opens != e.Lowest {
		lines = append(lines, limit{end.z + e.Opens, "opens at " + sc.amount(unit.Head, e.Opens)})
	}
	sc.html(`<figure>`)
	for _, w := range widths {
		sc.gradeLine(w.class, w.width, start, steps, lines)
	}
	caption := "Heads above the " + sc.from() + ", in " + unit.Of(unit.Head, sc.sys).Words + "."
	if end.z > 0 {
		caption += " The weakest emitter stands " + sc.amount(unit.Head, end.z) + " above it."
	} else if end.z < 0 {
		caption += " The weakest emitter stands " + sc.amount(unit.Head, -end.z) + " below it."
	}
	sc.tag("figcaption", caption)
	sc.html(`</figure>`)
	sc.gradeTable(start, steps)
}

// from says where heads are counted from.
func (sc *scene) from() string {
	if sc.sourceName() == "tap" {
		return "tap"
	}
	return "water in the tank"
}

func (sc *scene) gradeLine(class markup, width float64, start spot, steps []step, lines []limit) {
	p := plot{left: 44, right: width - 8, top: 14, bottom: 214}
	if class == "wide" {
		p.left, p.bottom = 52, 244
	}
	lo, hi := span(0, 1, start.head, start.z)
	for i := range steps {
		for _, s := range steps[i].spots {
			lo, hi = span(lo, hi, s.head, s.z)
		}
	}
	for _, l := range lines {
		lo, hi = span(lo, hi, l.head)
	}
	p.y0, p.y1 = lo, hi+(hi-lo)*0.08

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
	p.x1 = sum

	sc.svg(class, width, p.bottom+40, "Head from the "+sc.from()+" to the weakest emitter")
	grade, ground := &path{}, &path{}
	x := 0.0
	grade.move(p.left, p.y(start.head))
	ground.move(p.left, p.y(start.z))
	for i := range steps {
		for _, s := range steps[i].spots {
			at := p.x(x + s.along*share[i])
			grade.line(at, p.y(s.head))
			ground.line(at, p.y(s.z))
		}
		x += share[i]
	}
	// The area between the line and the tubing is the pressure in it.
	area := &path{b: append([]byte(nil), grade.b...)}
	x = sum
	for i := len(steps) - 1; i >= 0; i-- {
		x -= share[i]
		for j := len(steps[i].spots) - 1; j >= 0; j-- {
			s := steps[i].spots[j]
			area.line(p.x(x+s.along*share[i]), p.y(s.z))
		}
	}
	area.line(p.left, p.y(start.z))
	area.close()
	sc.draw("soft", area)
	sc.heads(&p)
	sc.draw("ground", ground).draw("line line--main", grade)
	end := steps[len(steps)-1].spots
	sc.limits(&p, end[len(end)-1].head, lines...)

	x = 0
	head := start.head
	for i := range steps {
		s := steps[i].spots[len(steps[i].spots)-1]
		a, b := p.x(x), p.x(x+share[i])
		row := 16.0
		if i%2 == 1 && (i == 1 || class == "narrow") {
			row = 30 // names of neighbours do not touch: that of a supply with a regulator is long
		}
		name := sc.stepName(&steps[i])
		if name == "supply line" {
			name = "supply" // the names of short stretches do not touch
		}
		sc.label((a+b)/2, p.bottom+row, "middle", name)
		if class == "wide" && b-a > 54 {
			if d := s.head - head; d > 0.05 || d < -0.05 {
				sc.label((a+b)/2, max(p.y(max(s.head, head))-6, p.top), "middle", signed(sc.bare(unit.Head, d), d))
			}
		}
		head = s.head
		x += share[i]
	}
	sc.html(`<circle class="dot" r="4.5" cx="`).at(p.right).html(`" cy="`).at(p.y(end[len(end)-1].head)).html(`"/></svg>`)
}

func signed(s string, v float64) string {
	if v > 0 {
		return "+" + s
	}
	return s
}

// gradeTable says the same as the grade line.
func (sc *scene) gradeTable(start spot, steps []step) {
	sc.fold("The same as a table")
	t := sc.table("Head along the way to the weakest emitter", "Stretch", "#Length", "#Change", "#Head at its end", "#Pressure at its end")
	head := start.head
	for i := range steps {
		s := steps[i].spots[len(steps[i].spots)-1]
		length := "–"
		if steps[i].length > 0 {
			length = sc.amount(unit.Length, steps[i].length)
		}
		d := s.head - head
		t.row(unit.Capital(sc.stepName(&steps[i])), length, signed(sc.amount(unit.Head, d), d),
			sc.amount(unit.Head, s.head), sc.amount(unit.Pressure, (s.head-s.z)*sc.weight))
		head = s.head
	}
	t.end()
	sc.html(`</details>`)
}
