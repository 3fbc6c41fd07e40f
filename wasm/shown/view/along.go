package view

import (
	"strconv"

	"evenrow/wasm/ground/unit"
)

// along draws the pressure along each row, from its first plant to its last.
func (sc *scene) along() {
	if sc.zone == nil || len(sc.plants) == 0 {
		sc.tag("p", "This is worked out as soon as the plan says what drives the water.")
		return
	}
	ts := sc.tallies()
	sc.tag("p", "The pressure at each plant, row by row. The nearer a row's line is to level, the less its plants differ.")
	sc.html(`<figure>`)
	for _, w := range widths {
		sc.profiles(w.class, w.width, ts)
	}
	sc.tag("figcaption", "The thick line is the row with the weakest emitter.")
	sc.html(`</figure>`)
	sc.fold("The same as a table")
	t := sc.table("Head along each row, in "+sc.symbol(unit.Head), "Row", "#First plant", "#Quarter way", "#Half way", "#Three quarters", "#Last plant")
	for r := range ts {
		v := &ts[r]
		if v.plants == 0 || v.in[unknown] == v.plants {
			continue
		}
		cells := []string{strconv.Itoa(r + 1)}
		for k := range 5 {
			cells = append(cells, sc.bare(unit.Head, sc.plants[v.first+(v.plants-1)*k/4].head))
		}
		t.row(cells...)
	}
	t.end()
	sc.html(`</details>`)
}

func (sc *scene) profiles(class markup, width float64, ts []tally) {
	p := plot{left: 44, right: width - 34, top: 14, bottom: 200}
	worst := sc.s.Layout.Plants[sc.zone.Worst].Row
	lo, hi, far := 0.0, 1.0, 0.1
	for r := range ts {
		v, row := &ts[r], &sc.s.Plan.Rows[r]
		if v.plants == 0 || v.in[unknown] == v.plants {
			continue
		}
		lo, hi = span(lo, hi, v.low, v.high)
		far = max(far, row.First+float64(v.plants-1)*row.Spacing)
	}
	var lines []limit
	if e := sc.emitterOf(sc.zone.Worst); e != nil {
		lines = append(lines, limit{e.Lowest, "lowest of its range"})
		if e.Opens > 0 && e.Opens != e.Lowest {
			lines = append(lines, limit{e.Opens, "opens"})
		}
		lo, hi = span(lo, hi, e.Lowest)
	}
	p.y0, p.y1, p.x1 = lo, hi+(hi-lo)*0.08, far
	sc.svg(class, width, p.bottom+40, "Head along each row")
	sc.heads(&p)
	sc.axis(&p, unit.Length, sc.ticks(unit.Length, 0, far, int(width/110)), "from the start of the row")
	sc.limits(&p, sc.plants[sc.zone.Worst].head, lines...)
	var thin, thick path
	for r := range ts {
		v, row := &ts[r], &sc.s.Plan.Rows[r]
		if v.plants == 0 || v.in[unknown] == v.plants {
			continue
		}
		line := &thin
		if r == worst {
			line = &thick
		}
		for i := range v.plants {
			x, y := p.x(row.First+float64(i)*row.Spacing), p.y(sc.plants[v.first+i].head)
			if i == 0 {
				line.move(x, y)
				line.add('h', 0.1) // a row of one plant is a dot
			} else {
				line.line(x, y)
			}
		}
	}
	sc.draw("line line--thin", &thin).draw("line line--head", &thick)
	if v, row := &ts[worst], &sc.s.Plan.Rows[worst]; v.plants > 0 {
		sc.label(p.x(row.First+float64(v.plants-1)*row.Spacing)+4, p.y(sc.plants[v.first+v.plants-1].head)+4, "start", strconv.Itoa(worst+1))
	}
	sc.html(`</svg>`)
}
