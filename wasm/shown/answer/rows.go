package answer

import (
	"math"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/layout"
)

// Map draws the rows from above, to scale, with a drop for every plant.
func Map(the *scene.Scene) {
	sc := part{the}
	l := sc.S.Layout
	if l == nil || len(l.Plants) == 0 {
		sc.Say("p", "There are no rows to draw yet.")
		return
	}
	ts := sc.S.Rows
	var all [sheet.States]int
	for i := range ts {
		for s, n := range ts[i].In {
			all[s] += n
		}
	}
	sc.Say("p", "Seen from above, to scale except for the supply line.")
	if sc.ByRow {
		sc.HTML(`<p class="screen">`).Text(words.Say("Pick a row to read its plants one by one.")).HTML(`</p>`)
	}
	sc.PictureWith(func() { sc.legend(&all) }, func(class block.Markup, width float64) {
		sc.ground(class, width, ts, nil)
	})
	sc.ways()
}

// Fares says in figures how each row of the map fares. They change with nearly
// every change of the plan, and the picture with few.
func Fares(the *scene.Scene) {
	sc := part{the}
	if sc.S.Layout == nil || len(sc.S.Layout.Plants) == 0 {
		return
	}
	sc.SameAsTable(func() { sc.rowTable(sc.S.Rows) })
}

// Rows says in figures how each plant fares, row by row.
func Rows(the *scene.Scene) {
	sc := part{the}
	if sc.S.Layout == nil || len(sc.S.Layout.Plants) == 0 {
		sc.Say("p", "There are no rows yet.")
		return
	}
	sc.plantTables(sc.S.Rows)
}

// legend explains the signs that are in use, with how many there are.
func (sc part) legend(all *[sheet.States]int) {
	sc.HTML(`<ul class="legend">`)
	for s := sheet.Unknown; s < sheet.States; s++ {
		if all[s] == 0 {
			continue
		}
		sc.HTML(`<li><svg width="18" height="22" viewBox="0 0 18 22" aria-hidden="true">`)
		var d drops
		d.add(s, 9, 5, 1.1)
		sc.drawDrops(&d)
		sc.HTML(`</svg> `).Text(scene.CountIn(s, all[s])).HTML(`</li>`)
	}
	if sc.Zone != nil {
		sc.HTML(`<li><svg width="18" height="22" viewBox="0 0 18 22" aria-hidden="true"><circle class="ring" cx="9" cy="11" r="7.5"/></svg> `).
			Text(words.Say("the weakest: {place}", sc.Place(sc.Zone.Worst))).HTML(`</li>`)
	}
	sc.HTML(`</ul>`)
}

// A drops collects the drops of many plants in a path for each way of drawing.
type drops struct {
	full, outline, half, bar block.Path
}

// add draws a drop whose tip is at x, y, or a small ring where nothing is
// known. At scale 1 a drop is 10 px wide and 14 px high.
func (d *drops) add(s sheet.State, x, y, scale float64) {
	drop := func(p *block.Path) {
		p.Move(x, y)
		p.Add('c', 4*scale, 5*scale, 5*scale, 7*scale, 5*scale, 9*scale)
		p.Add('a', 5*scale, 5*scale, 0, 0, 1, -10*scale, 0)
		p.Add('c', 0, -2*scale, scale, -4*scale, 5*scale, -9*scale)
		p.Close()
	}
	switch s {
	case sheet.Unknown:
		d.outline.Move(x-2.5*scale, y+9*scale)
		d.outline.Add('a', 2.5*scale, 2.5*scale, 0, 0, 1, 5*scale, 0)
		d.outline.Add('a', 2.5*scale, 2.5*scale, 0, 0, 1, -5*scale, 0)
		d.outline.Close()
	case sheet.Within, sheet.Above:
		drop(&d.full)
	case sheet.Below:
		drop(&d.outline)
		// The lower half, which is a half circle.
		d.half.Move(x-5*scale, y+9*scale)
		d.half.Add('h', 10*scale)
		d.half.Add('a', 5*scale, 5*scale, 0, 0, 1, -10*scale, 0)
		d.half.Close()
	default:
		drop(&d.outline)
	}
	if s == sheet.Above {
		d.bar.Move(x-5*scale, y-3*scale)
		d.bar.Add('h', 10*scale)
	}
}

func (sc part) drawDrops(d *drops) {
	sc.Draw("drop", &d.full).Draw("drop drop--empty", &d.outline).Draw("drop", &d.half).Draw("bar", &d.bar)
}

// ground draws the place, the tubing and the plants. Narrow, the rows run down
// the page, so that a phone shows them as large as it can. With numbers, which stand on
// top, the weakest plant has no ring: its number would read as one of them.
func (sc part) ground(class block.Markup, width float64, ts []sheet.RowFare, numbers *numbers) {
	turned := class == block.Narrow
	l := sc.S.Layout
	// What has to be on the picture, in m.
	x0, x1 := block.Span(0, max(sc.S.Plan.Place.Length, 0.1))
	y0, y1 := block.Span(0, max(sc.S.Plan.Place.Width, 0.1))
	for _, p := range l.Points {
		x0, x1 = block.Span(x0, x1, p.X)
		y0, y1 = block.Span(y0, y1, p.Y)
	}
	const edge, number, leads = 22.0, 34.0, 44.0
	// The lead, which comes from x < 0, is drawn short: to scale it would
	// leave little room for the rows.
	lead := 0.0
	if x0 < 0 {
		lead = leads
	}
	wide, deep := x1, y1-y0
	scale := (width - edge - number - lead) / wide
	most := 560.0 // px: what stands below it is in reach
	if turned {
		most = 480
		scale = (width - edge - number) / deep
		wide, deep = deep, wide
	}
	if deep*scale > most {
		scale = most / deep
	}
	height := deep*scale + 2*edge + 14
	if turned {
		height += lead
	}
	// at turns a place into a point of the picture.
	at := func(x, y float64) (float64, float64) {
		if x < 0 {
			x = lead * (1 - x/x0)
		} else {
			x = lead + x*scale
		}
		y = (y - y0) * scale
		if turned {
			return edge + y, edge + x
		}
		return edge + x, edge + y
	}

	title := words.Say("Plan view: {rows} {rows|row|rows}, {plants} {plants|plant|plants}", words.N(len(ts)), words.N(len(l.Plants)))
	sc.SVGOfParts(class, width, height, title, func() {
		var had *taken
		if numbers != nil {
			had = &taken{wide: width, high: height}
		}
		sc.walls(at)
		sc.tubing(at)
		sc.scaleBar(width, height, scale, had)
		if numbers != nil {
			numbers.rings(l, at, had)
		}
		sc.sourceName(at, had)

		size := sc.dropScale(scale, turned)
		last := math.Inf(-1)
		for r := range ts {
			if ts[r].Plants == 0 {
				continue
			}
			// Rows too near to the last numbered one go without their number.
			name, first := words.N(r+1), l.Plants[ts[r].First].At
			x, y := at(first.X, first.Y)
			room := 13.0
			if turned {
				y, room = x, float64(4+8*len(name))
			}
			if y-last < room {
				name = ""
			} else {
				last = y
			}
			sc.rowOfDrops(r, &ts[r], at, turned, size, name, had)
		}
		if numbers != nil {
			sc.stubs(at)
			sc.names(numbers.pieces, at, had)
			sc.spots(numbers, at)
		} else if sc.Zone != nil && sc.Zone.Worst >= 0 && sc.Zone.Worst < len(l.Plants) {
			w := &l.Plants[sc.Zone.Worst]
			x, y := at(w.At.X, w.At.Y)
			x, y = beside(x, y, turned, size)
			r := 8*size + 4
			sc.HTML(`<circle class="ring" cx="`).At(x).HTML(`" cy="`).At(y + 8*size).HTML(`" r="`).At(r).HTML(`"/>`)
			sc.Label(min(x+r+3, width-14), y+8*size+r+6, "middle", words.N(w.Number))
		}
	})
}

// walls draws the outline of the place, open where the door is, and a thin line
// where rows may begin.
func (sc part) walls(at func(x, y float64) (float64, float64)) {
	place := &sc.S.Plan.Place
	through := func(corners ...[2]float64) *block.Path {
		line := &block.Path{}
		for _, c := range corners {
			line.To(at(c[0], c[1]))
		}
		return line
	}
	long, wide := place.Length, place.Width
	if place.Door > 0 {
		from, to := max(0, (wide-place.Door)/2), min(wide, (wide+place.Door)/2)
		sc.Draw("place", through([2]float64{0, to}, [2]float64{0, wide}, [2]float64{long, wide}, [2]float64{long, 0}, [2]float64{0, 0}, [2]float64{0, from}))
	} else {
		outline := through([2]float64{0, 0}, [2]float64{long, 0}, [2]float64{long, wide}, [2]float64{0, wide})
		outline.Close()
		sc.Draw("place", outline)
	}
	if m := place.Margin; m > 0 && 2*m < min(long, wide) {
		strip := through([2]float64{m, m}, [2]float64{long - m, m}, [2]float64{long - m, wide - m}, [2]float64{m, wide - m})
		strip.Close()
		sc.Draw("grid", strip)
	}
}

// ways says in words what the walls show.
func (sc part) ways() {
	place := &sc.S.Plan.Place
	var said []string
	if place.Door > 0 {
		said = append(said, words.Say("The gap in the wall is the door, {wide} wide.", sc.Amount(unit.Length, place.Door)))
	}
	if place.Margin > 0 {
		said = append(said, words.Say("The thin line keeps {strip} from the walls.", sc.Amount(unit.Length, place.Margin)))
	}
	if beds := sc.S.Layout.Beds(); place.Path > 0 && len(beds) > 1 {
		least, found := math.Inf(1), false
		for i := range beds {
			if free, _, ok := layout.Walk(beds, i); ok {
				least, found = min(least, free), true
			}
		}
		if found && least > 0 {
			said = append(said, words.Say("The narrowest path between rows is {free} wide, from edge to edge of what the plants stand in.", sc.Amount(unit.Length, least)))
		}
	}
	if len(said) > 0 {
		sc.Tag("p", words.Sentences(said...))
	}
}

// dropScale is the size of the drops, so that neighbours do not touch.
func (sc part) dropScale(scale float64, turned bool) float64 {
	along, across := 11.5, 18.0 // px that a drop takes at scale 1
	if turned {
		along, across = across, 20
	}
	size := 1.1
	for i := range sc.S.Plan.Rows {
		r := &sc.S.Plan.Rows[i]
		size = min(size, r.Spacing*scale/along)
		if i > 0 && r.Gap > 0 {
			size = min(size, r.Gap*scale/across)
		}
	}
	return max(0.3, size)
}

// beside is where a plant's drop hangs: below its row, or right of it.
func beside(x, y float64, turned bool, size float64) (float64, float64) {
	if turned {
		return x + 5*size + 3, y - 8*size
	}
	return x, y + 2
}

// rowAndTally names a row with how many of its plants are in each state.
func rowAndTally(r int, t *sheet.RowFare) string {
	return words.Say("Row {row}: {tally}", words.N(r+1), scene.Tally(t))
}

// rowOfDrops draws the plants of a row as one link that leads to its table,
// with a name at its end, as near to it as nothing else is written.
func (sc part) rowOfDrops(r int, t *sheet.RowFare, at func(x, y float64) (float64, float64), turned bool, size float64, name string, had *taken) {
	l := sc.S.Layout
	title := rowAndTally(r, t)
	if sc.ByRow {
		sc.HTML(`<a href="#plants-`).Num(r+1).HTML(`"`).Attr("aria-label", title).HTML(`>`)
	} else {
		sc.HTML(`<g role="img"`).Attr("aria-label", title).HTML(`>`)
	}
	var d drops
	x1, y1 := math.Inf(-1), math.Inf(-1)
	x0, y0 := math.Inf(1), math.Inf(1)
	for i := t.First; i < len(l.Plants) && l.Plants[i].Row == r; i++ {
		x, y := at(l.Plants[i].At.X, l.Plants[i].At.Y)
		x0, y0, x1, y1 = min(x0, x), min(y0, y), max(x1, x), max(y1, y)
		x, y = beside(x, y, turned, size)
		d.add(sc.Plants[i].State, x, y, size)
	}
	// The whole strip can be picked, not only its drops.
	strip := &block.Path{}
	if turned {
		strip.Move(x0-4, y0-12)
		strip.Line(x1+12*size+6, y0-12)
		strip.Line(x1+12*size+6, y1+12)
		strip.Line(x0-4, y1+12)
	} else {
		strip.Move(x0-12, y0-5)
		strip.Line(x1+12, y0-5)
		strip.Line(x1+12, y1+16*size+3)
		strip.Line(x0-12, y1+16*size+3)
	}
	strip.Close()
	sc.Draw("strip", strip)
	sc.drawDrops(&d)
	for further := 0.0; name != "" && further < 30; further += 6 {
		x, y, anchor := x1+16+further, (y0+y1)/2+10, block.Markup("start")
		if turned {
			x, y, anchor = (x0+x1)/2+2, y1+26+further, "middle"
		}
		if had.text(x, y, anchor, name) {
			sc.Label(x, y, anchor, name)
			break
		}
	}
	if sc.ByRow {
		sc.HTML(`</a>`)
	} else {
		sc.HTML(`</g>`)
	}
}

// tubing draws the lead, the header and the rows, wider by rank.
func (sc part) tubing(at func(x, y float64) (float64, float64)) {
	l := sc.S.Layout
	var lead, main, lateral block.Path
	for i := range l.Stretches {
		st := &l.Stretches[i]
		p := &lateral
		switch st.Rank() {
		case layout.Lead:
			p = &lead
		case layout.Main:
			p = &main
		}
		last := -1
		for _, k := range st.Links {
			from, to := l.Network.Links[k].From, l.Network.Links[k].To
			if from != last {
				x, y := at(l.Points[from].X, l.Points[from].Y)
				p.Move(x, y)
			}
			x, y := at(l.Points[to].X, l.Points[to].Y)
			p.Line(x, y)
			last = to
		}
	}
	sc.Draw("line line--lead", &lead).Draw("line line--head", &main).Draw("line line--row", &lateral)
	if len(l.Points) > 0 {
		x, y := at(l.Points[0].X, l.Points[0].Y)
		sc.HTML(`<rect class="source" width="12" height="12" x="`).At(x - 6).HTML(`" y="`).At(y - 6).HTML(`"/>`)
	}
}

// sourceName writes what drives the water above it, or beside or below a number there.
func (sc part) sourceName(at func(x, y float64) (float64, float64), had *taken) {
	x, y := at(sc.S.Layout.Points[0].X, sc.S.Layout.Points[0].Y)
	dx := 10.0
	if x < 40 {
		dx = -6
	}
	for _, by := range [...][2]float64{{dx, -10}, {dx, -14}, {14, 4}, {dx, 24}} {
		if had.text(x+by[0], y+by[1], "start", sc.SourceName()) {
			sc.Label(x+by[0], y+by[1], "start", sc.SourceName())
			break
		}
	}
}

// scaleBar draws a round length to scale.
func (sc part) scaleBar(width, height, scale float64, had *taken) {
	u := unit.Of(unit.Length, sc.Sys)
	shown := block.RoundStep(u.FromInner(90/scale) / 2)
	long := u.ToInner(shown) * scale
	bar := &block.Path{}
	bar.Move(width-12-long, height-10)
	bar.Add('v', 5)
	bar.Add('h', long)
	bar.Add('v', -5)
	sc.Draw("scale", bar)
	said := sc.Amount(unit.Length, u.ToInner(shown))
	had.text(width-18-long, height-4, "end", said)
	sc.Label(width-18-long, height-4, "end", said)
}

// rowTable says how each row fares.
func (sc part) rowTable(ts []sheet.RowFare) {
	mean, most := block.Figures(words.Say("mean")), block.Figures(words.Say("most"))
	sc.Table(words.Say("The rows in figures"), words.Say("Row"), words.Say("Zone"), words.Say("Plants"),
		block.Figures(words.Say("Pressure, {unit}: least", sc.Symbol(unit.Pressure))), mean, most,
		block.Figures(words.Say("Flow per plant, {unit}: least", sc.Symbol(unit.EmitterFlow))), mean, most).Rows(func(t *block.Table) {
		for r := range ts {
			v := &ts[r]
			if v.Plants == 0 {
				continue
			}
			cells := []string{words.N(r + 1), words.N(sc.S.Layout.ZoneOf(r)), scene.Tally(v)}
			if v.In[sheet.Unknown] == v.Plants {
				cells = append(cells, "–", "–", "–", "–", "–", "–")
			} else {
				cells = append(cells, sc.Bare(unit.Pressure, v.LeastHead*sc.Weight), sc.Bare(unit.Pressure, v.MeanHead*sc.Weight), sc.Bare(unit.Pressure, v.MostHead*sc.Weight),
					sc.Bare(unit.EmitterFlow, v.LeastFlow), sc.Bare(unit.EmitterFlow, v.MeanFlow), sc.Bare(unit.EmitterFlow, v.MostFlow))
			}
			t.Row(cells...)
		}
	})
}

// plantTables lists every plant, row by row.
func (sc part) plantTables(ts []sheet.RowFare) {
	for r := range ts {
		v := &ts[r]
		if v.Plants == 0 {
			continue
		}
		sc.FoldAs("plants-"+words.N(r+1), rowAndTally(r, v), func() {
			sc.Table(words.Say("Row {row}, plant by plant", words.N(r+1)), words.Say("Plant"),
				block.Figures(words.Say("From the start, {unit}", sc.Symbol(unit.Length))), block.Figures(words.Say("Head, {unit}", sc.Symbol(unit.Head))),
				block.Figures(words.Say("Pressure, {unit}", sc.Symbol(unit.Pressure))), block.Figures(words.Say("Flow, {unit}", sc.Symbol(unit.EmitterFlow))), words.Say("State")).Rows(func(t *block.Table) {
				row := &sc.S.Plan.Rows[r]
				for i := v.First; i < v.First+v.Plants; i++ {
					p, s := &sc.S.Layout.Plants[i], &sc.Plants[i]
					t.Row(words.N(p.Number), sc.Bare(unit.Length, row.First+float64(p.Number-1)*row.Spacing),
						sc.Bare(unit.Head, s.Head), sc.Bare(unit.Pressure, s.Head*sc.Weight), sc.Bare(unit.EmitterFlow, s.Flow), scene.State(s.State))
				}
			})
		})
	}
}
