package why

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
)

// Along draws the pressure along each row, from its first plant to its last.
func Along(the *scene.Scene) {
	sc := part{the}
	if sc.Zone == nil || len(sc.Plants) == 0 {
		sc.Tag("p", "This is worked out as soon as the plan says what drives the water.")
		return
	}
	rows := sc.S.Rows
	sc.Tag("p", "The pressure at each plant, row by row. The nearer a row's line is to level, the less its plants differ.")
	sc.Picture("The thick line is the row with the weakest emitter.", func(class block.Markup, width float64) {
		sc.profiles(class, width, rows)
	})
	sc.SameAsTable(func() {
		sc.Table("Head along each row, in "+sc.Symbol(unit.Head), "Row", "#First plant", "#Quarter way", "#Half way", "#Three quarters", "#Last plant").Rows(func(t *block.Table) {
			for r := range rows {
				v := &rows[r]
				if v.Plants == 0 || v.In[sheet.Unknown] == v.Plants {
					continue
				}
				cells := []string{strconv.Itoa(r + 1)}
				for k := range 5 {
					cells = append(cells, sc.Bare(unit.Head, sc.Plants[v.First+(v.Plants-1)*k/4].Head))
				}
				t.Row(cells...)
			}
		})
	})
}

func (sc part) profiles(class block.Markup, width float64, rows []sheet.RowFare) {
	p := block.Plot{Left: 44, Right: width - 34, Top: 14, Bottom: 200}
	worst := sc.S.Layout.Plants[sc.Zone.Worst].Row
	lo, hi, far := 0.0, 1.0, 0.1
	for r := range rows {
		v, row := &rows[r], &sc.S.Plan.Rows[r]
		if v.Plants == 0 || v.In[sheet.Unknown] == v.Plants {
			continue
		}
		lo, hi = block.Span(lo, hi, v.LeastHead, v.MostHead)
		far = max(far, row.First+float64(v.Plants-1)*row.Spacing)
	}
	var lines []block.Limit
	if e := sc.EmitterOf(sc.Zone.Worst); e != nil {
		lines = append(lines, block.Limit{At: e.Lowest, Text: "lowest of its range"})
		if e.Opens > 0 && e.Opens != e.Lowest {
			lines = append(lines, block.Limit{At: e.Opens, Text: "opens"})
		}
		lo, hi = block.Span(lo, hi, e.Lowest)
	}
	p.Y0, p.Y1, p.X1 = lo, hi+(hi-lo)*0.08, far
	sc.SVG(class, width, p.Bottom+40, "Head along each row", func() {
		sc.Heads(&p)
		sc.Axis(&p, unit.Length, sc.Ticks(unit.Length, 0, far, int(width/110)), "from the start of the row")
		sc.Limits(&p, sc.Plants[sc.Zone.Worst].Head, lines...)
		var thin, thick block.Path
		for r := range rows {
			v, row := &rows[r], &sc.S.Plan.Rows[r]
			if v.Plants == 0 || v.In[sheet.Unknown] == v.Plants {
				continue
			}
			line := &thin
			if r == worst {
				line = &thick
			}
			for i := range v.Plants {
				x, y := p.X(row.First+float64(i)*row.Spacing), p.Y(sc.Plants[v.First+i].Head)
				if i == 0 {
					line.Move(x, y)
					line.Add('h', 0.1) // a row of one plant is a dot
				} else {
					line.Line(x, y)
				}
			}
		}
		sc.Draw("line line--thin", &thin).Draw("line line--head", &thick)
		if v, row := &rows[worst], &sc.S.Plan.Rows[worst]; v.Plants > 0 {
			sc.Label(p.X(row.First+float64(v.Plants-1)*row.Spacing)+4, p.Y(sc.Plants[v.First+v.Plants-1].Head)+4, "start", strconv.Itoa(worst+1))
		}
	})
}
