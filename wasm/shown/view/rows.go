package view

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/works/layout"
)

// A tally sums up one row.
type tally struct {
	plants           int
	first            int // index into Layout.Plants
	low, high, sum   float64
	qlow, qhigh, qum float64
	in               [states]int
}

// tallies sums up the plants of every row.
func (sc *scene) tallies() []tally {
	ts := make([]tally, len(sc.s.Plan.Rows))
	for i := range sc.plants {
		t, v := &ts[sc.s.Layout.Plants[i].Row], &sc.plants[i]
		if t.plants == 0 {
			t.first, t.low, t.high, t.qlow, t.qhigh = i, v.head, v.head, v.flow, v.flow
		}
		t.plants++
		t.low, t.high, t.sum = min(t.low, v.head), max(t.high, v.head), t.sum+v.head
		t.qlow, t.qhigh, t.qum = min(t.qlow, v.flow), max(t.qhigh, v.flow), t.qum+v.flow
		t.in[v.state]++
	}
	return ts
}

// rows draws the rows from above, to scale, with a drop for every plant.
func (sc *scene) rows() {
	l := sc.s.Layout
	if l == nil || len(l.Plants) == 0 {
		sc.tag("p", "There are no rows to draw yet.")
		return
	}
	ts := sc.tallies()
	var all [states]int
	for i := range ts {
		for s, n := range ts[i].in {
			all[s] += n
		}
	}
	sc.tag("p", "Seen from above, to scale except for the supply line. Pick a row to read its plants one by one.")
	sc.html(`<figure>`)
	for i, w := range widths {
		sc.ground(w.class, w.width, i == 0, ts)
	}
	sc.legend(&all)
	sc.html(`</figure>`)
	sc.rowTable(ts)
	sc.plantTables(ts)
}

// legend explains the signs that are in use, with how many there are.
func (sc *scene) legend(all *[states]int) {
	sc.html(`<figcaption><ul class="legend">`)
	for s := unknown; s < states; s++ {
		if all[s] == 0 {
			continue
		}
		sc.html(`<li><svg width="18" height="22" viewBox="0 0 18 22" aria-hidden="true">`)
		var d drops
		d.add(s, 9, 5, 1.1)
		sc.drawDrops(&d)
		sc.html(`</svg> `).text(strconv.Itoa(all[s]) + " " + stateWords[s]).html(`</li>`)
	}
	if sc.zone != nil {
		sc.html(`<li><svg width="18" height="22" viewBox="0 0 18 22" aria-hidden="true"><circle class="ring" cx="9" cy="11" r="7.5"/></svg> the weakest: `).
			text(sc.place(sc.zone.Worst)).html(`</li>`)
	}
	sc.html(`</ul></figcaption>`)
}

// A drops collects the drops of many plants in a path for each way of drawing.
type drops struct {
	full, outline, half, bar path
}

// add draws a drop whose tip is at x, y, or a small ring where nothing is
// known. At scale 1 a drop is 10 px wide and 14 px high.
func (d *drops) add(s state, x, y, scale float64) {
	drop := func(p *path) {
		p.move(x, y)
		p.add('c', 4*scale, 5*scale, 5*scale, 7*scale, 5*scale, 9*scale)
		p.add('a', 5*scale, 5*scale, 0, 0, 1, -10*scale, 0)
		p.add('c', 0, -2*scale, scale, -4*scale, 5*scale, -9*scale)
		p.close()
	}
	switch s {
	case unknown:
		d.outline.move(x-2.5*scale, y+9*scale)
		d.outline.add('a', 2.5*scale, 2.5*scale, 0, 0, 1, 5*scale, 0)
		d.outline.add('a', 2.5*scale, 2.5*scale, 0, 0, 1, -5*scale, 0)
		d.outline.close()
	case within, above:
		drop(&d.full)
	case below:
		drop(&d.outline)
		// The lower half, which is a half circle.
		d.half.move(x-5*scale, y+9*scale)
		d.half.add('h', 10*scale)
		d.half.add('a', 5*scale, 5*scale, 0, 0, 1, -10*scale, 0)
		d.half.close()
	default:
		drop(&d.outline)
	}
	if s == above {
		d.bar.move(x-5*scale, y-3*scale)
		d.bar.add('h', 10*scale)
	}
}

func (sc *scene) drawDrops(d *drops) {
	sc.draw("drop", &d.full).draw("drop drop--empty", &d.outline).draw("drop", &d.half).draw("bar", &d.bar)
}

// ground draws the place, the tubing and the plants. Narrow, the rows run down
// the page, so that a phone shows them as large as it can.
func (sc *scene) ground(class markup, width float64, turned bool, ts []tally) {
	l := sc.s.Layout
	// What has to be on the picture, in m.
	x0, x1 := span(0, max(sc.s.Plan.Place.Length, 0.1))
	y0, y1 := span(0, max(sc.s.Plan.Place.Width, 0.1))
	for _, p := range l.Points {
		x0, x1 = span(x0, x1, p.X)
		y0, y1 = span(y0, y1, p.Y)
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
	most := 900.0
	if turned {
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

	title := "Plan view: " + count(len(ts), "row", "rows") + ", " + count(len(l.Plants), "plant", "plants")
	sc.html(`<svg class="picture `).html(class).html(`" width="`).at(width).html(`" height="`).at(height).
		html(`" viewBox="0 0 `).at(width).html(` `).at(height).html(`" role="group"`).attr("aria-label", title).html(`>`)

	outline := &path{}
	px, py := sc.s.Plan.Place.Length, sc.s.Plan.Place.Width
	for i, c := range [...][2]float64{{0, 0}, {px, 0}, {px, py}, {0, py}} {
		x, y := at(c[0], c[1])
		if i == 0 {
			outline.move(x, y)
		} else {
			outline.line(x, y)
		}
	}
	outline.close()
	sc.draw("place", outline)
	sc.tubing(at)

	size := sc.dropScale(scale, turned)
	last := math.Inf(-1)
	for r := range ts {
		if ts[r].plants == 0 {
			continue
		}
		// Rows too near to the last numbered one go without their number.
		name, first := strconv.Itoa(r+1), l.Plants[ts[r].first].At
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
		sc.rowOfDrops(r, &ts[r], at, turned, size, name)
	}
	if sc.zone != nil && sc.zone.Worst >= 0 && sc.zone.Worst < len(l.Plants) {
		w := &l.Plants[sc.zone.Worst]
		x, y := at(w.At.X, w.At.Y)
		x, y = beside(x, y, turned, size)
		r := 8*size + 4
		sc.html(`<circle class="ring" cx="`).at(x).html(`" cy="`).at(y + 8*size).html(`" r="`).at(r).html(`"/>`)
		sc.label(min(x+r+3, width-14), y+8*size+r+6, "middle", strconv.Itoa(w.Number))
	}
	sc.scaleBar(width, height, scale)
	sc.html(`</svg>`)
}

// dropScale is the size of the drops, so that neighbours do not touch.
func (sc *scene) dropScale(scale float64, turned bool) float64 {
	along, across := 11.5, 18.0 // px that a drop takes at scale 1
	if turned {
		along, across = across, 20
	}
	size := 1.1
	for i := range sc.s.Plan.Rows {
		r := &sc.s.Plan.Rows[i]
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

// rowOfDrops draws the plants of a row as one link that leads to its table,
// with a name at its end.
func (sc *scene) rowOfDrops(r int, t *tally, at func(x, y float64) (float64, float64), turned bool, size float64, name string) {
	l := sc.s.Layout
	title := "Row " + strconv.Itoa(r+1) + ": " + tallyWords(t)
	sc.html(`<a href="#plants-`).num(r+1).html(`"`).attr("aria-label", title).html(`><title>`).text(title).html(`</title>`)
	var d drops
	x1, y1 := math.Inf(-1), math.Inf(-1)
	x0, y0 := math.Inf(1), math.Inf(1)
	for i := t.first; i < len(l.Plants) && l.Plants[i].Row == r; i++ {
		x, y := at(l.Plants[i].At.X, l.Plants[i].At.Y)
		x0, y0, x1, y1 = min(x0, x), min(y0, y), max(x1, x), max(y1, y)
		x, y = beside(x, y, turned, size)
		d.add(sc.plants[i].state, x, y, size)
	}
	// The whole strip can be picked, not only its drops.
	strip := &path{}
	if turned {
		strip.move(x0-4, y0-12)
		strip.line(x1+12*size+6, y0-12)
		strip.line(x1+12*size+6, y1+12)
		strip.line(x0-4, y1+12)
	} else {
		strip.move(x0-12, y0-5)
		strip.line(x1+12, y0-5)
		strip.line(x1+12, y1+16*size+3)
		strip.line(x0-12, y1+16*size+3)
	}
	strip.close()
	sc.draw("strip", strip)
	sc.drawDrops(&d)
	switch {
	case name == "":
	case turned:
		sc.label((x0+x1)/2+2, y1+26, "middle", name)
	default:
		sc.label(x1+16, (y0+y1)/2+10, "start", name)
	}
	sc.html(`</a>`)
}

func tallyWords(t *tally) string {
	s := ""
	for i, n := range t.in {
		if n > 0 {
			if s != "" {
				s += ", "
			}
			s += strconv.Itoa(n) + " " + stateWords[i]
		}
	}
	return s
}

// tubing draws the lead, the header and the rows, wider by rank.
func (sc *scene) tubing(at func(x, y float64) (float64, float64)) {
	l := sc.s.Layout
	var lead, main, lateral path
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
				p.move(x, y)
			}
			x, y := at(l.Points[to].X, l.Points[to].Y)
			p.line(x, y)
			last = to
		}
	}
	sc.draw("line line--lead", &lead).draw("line line--head", &main).draw("line line--row", &lateral)
	if len(l.Points) > 0 {
		x, y := at(l.Points[0].X, l.Points[0].Y)
		sc.html(`<rect class="source" width="12" height="12" x="`).at(x - 6).html(`" y="`).at(y - 6).html(`"/>`)
		anchor, dx := markup("start"), 10.0
		if x < 40 {
			dx = -6
		}
		sc.label(x+dx, y-10, anchor, sc.sourceName())
	}
}

// scaleBar draws a round length to scale.
func (sc *scene) scaleBar(width, height, scale float64) {
	u := unit.Of(unit.Length, sc.sys)
	shown := roundStep(u.FromInner(90/scale) / 2)
	long := u.ToInner(shown) * scale
	bar := &path{}
	bar.move(width-12-long, height-10)
	bar.add('v', 5)
	bar.add('h', long)
	bar.add('v', -5)
	sc.draw("scale", bar)
	sc.label(width-18-long, height-4, "end", sc.amount(unit.Length, u.ToInner(shown)))
}

// rowTable says how each row fares.
func (sc *scene) rowTable(ts []tally) {
	t := sc.table("The rows in figures", "Row", "Zone", "Plants", "#Pressure, "+sc.symbol(unit.Pressure)+": least", "#mean", "#most",
		"#Flow per plant, "+sc.symbol(unit.EmitterFlow)+": least", "#mean", "#most")
	for r := range ts {
		v := &ts[r]
		if v.plants == 0 {
			continue
		}
		n := float64(v.plants)
		cells := []string{strconv.Itoa(r + 1), strconv.Itoa(sc.s.Layout.ZoneOf(r)), tallyWords(v)}
		if v.in[unknown] == v.plants {
			cells = append(cells, "–", "–", "–", "–", "–", "–")
		} else {
			cells = append(cells, sc.bare(unit.Pressure, v.low*sc.weight), sc.bare(unit.Pressure, v.sum/n*sc.weight), sc.bare(unit.Pressure, v.high*sc.weight),
				sc.bare(unit.EmitterFlow, v.qlow), sc.bare(unit.EmitterFlow, v.qum/n), sc.bare(unit.EmitterFlow, v.qhigh))
		}
		t.row(cells...)
	}
	t.end()
}

// plantTables lists every plant, row by row.
func (sc *scene) plantTables(ts []tally) {
	sc.html(`<details id="plants"><summary>Every plant</summary>`)
	for r := range ts {
		v := &ts[r]
		if v.plants == 0 {
			continue
		}
		name := "Row " + strconv.Itoa(r+1)
		sc.foldAs("plants-"+strconv.Itoa(r+1), name+": "+tallyWords(v))
		t := sc.table(name+", plant by plant", "Plant", "#From the start, "+sc.symbol(unit.Length), "#Head, "+sc.symbol(unit.Head),
			"#Pressure, "+sc.symbol(unit.Pressure), "#Flow, "+sc.symbol(unit.EmitterFlow), "State")
		row := &sc.s.Plan.Rows[r]
		for i := v.first; i < v.first+v.plants; i++ {
			p, s := &sc.s.Layout.Plants[i], &sc.plants[i]
			t.row(strconv.Itoa(p.Number), sc.bare(unit.Length, row.First+float64(p.Number-1)*row.Spacing),
				sc.bare(unit.Head, s.head), sc.bare(unit.Pressure, s.head*sc.weight), sc.bare(unit.EmitterFlow, s.flow), stateWords[s.state])
		}
		t.end()
		sc.html(`</details>`)
	}
	sc.html(`</details>`)
}
