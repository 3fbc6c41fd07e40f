package view

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
)

// pump draws what the supply gives against what the system asks.
func (sc *scene) pump() {
	s := &sc.s.Plan.Supply
	if s.Kind == plan.PumpPower || sc.zone == nil {
		sc.tag("p", "Power is flow times head. A pump of "+sc.amount(unit.Power, s.Power)+
			" may lift much water a little, as a fountain does, or a little water high, as a well pump does. Only the second opens emitters, and the label's power does not say which it is.")
		sc.tag("p", "Find the pump's curve in its leaflet: the greatest head, the greatest flow, and some points between. Then choose how the pump is known in the form, and type them in.")
		return
	}
	if s.Kind == plan.GravityTank {
		sc.tag("p", "Nothing drives the water but its own height. The weakest emitter, "+sc.place(sc.zone.Worst)+", has "+
			sc.head(sc.plants[sc.zone.Worst].head)+" left of it.")
		sc.zoneTable()
		return
	}
	sys, ok := sc.systemOf(sc.zone)
	if _, driven := sc.supplyHead(0); !driven {
		return
	}
	name := sc.sourceName()
	if sc.regulated() {
		name += " with its regulator"
	}
	if ok {
		sc.tag("p", "The falling line is what the "+name+" gives, the rising one what the system asks so that its weakest emitter gets the lowest head of its range. At the flow that the rows draw, the distance between them is the spare head, or what is missing.")
	} else {
		sc.tag("p", "The line is what the "+name+" gives. No emitter opens, so nothing flows.")
	}
	most := sc.zone.Flow * 1.6
	switch s.Kind {
	case plan.PumpPoints:
		for _, p := range s.Points {
			most = max(most, p.Flow)
		}
	case plan.PumpTwo:
		most = max(most, s.MaxFlow)
	case plan.Mains:
		most = max(most, s.TapFlow)
	}
	if !(most > 0) {
		return
	}
	sc.html(`<figure>`)
	for _, w := range widths {
		sc.curves(w.class, w.width, most, &sys, ok)
	}
	caption := "The dot is where the " + name + " works: " + sc.head(sc.zone.Head) + " at " + sc.amount(unit.Flow, sc.zone.Flow) + "."
	if len(sc.s.Zones) > 1 {
		caption += " Shown for zone " + strconv.Itoa(sc.zone.Zone) + ", which has the least to spare."
	}
	sc.tag("figcaption", caption+sc.regulatorFirst())
	sc.html(`</figure>`)
	sc.fold("The same as a table")
	t := sc.table("What the "+name+" gives and what the system asks", "#Flow", "#Head given", "#Head asked")
	for i := range 9 {
		q := most * float64(i) / 8
		given, _ := sc.supplyHead(q)
		asked := "–"
		if ok {
			asked = sc.amount(unit.Head, sys.head(q))
		}
		g := "none"
		if given >= 0 {
			g = sc.amount(unit.Head, given)
		}
		t.row(sc.amount(unit.Flow, q), g, asked)
	}
	t.end()
	sc.html(`</details>`)
	sc.zoneTable()
}

func (sc *scene) curves(class markup, width, most float64, sys *system, ok bool) {
	p := plot{left: 44, right: width - 12, top: 14, bottom: 214, x1: most}
	_, p.y1 = span(0, 1, sc.zone.Head)
	h0, _ := sc.supplyHead(0)
	_, p.y1 = span(0, p.y1, h0)
	if ok {
		_, p.y1 = span(0, p.y1, min(sys.head(sc.zone.Flow), 3*p.y1))
	}
	p.y1 *= 1.08
	sc.svg(class, width, p.bottom+40, "Head given and head asked, over the flow")
	sc.heads(&p)
	sc.axis(&p, unit.Flow, sc.ticks(unit.Flow, 0, most, int(width/110)), "flow")
	const n = 48
	var give, ask path
	ax, ay := p.left, p.bottom // where the words of the asked head end
	for i := range n + 1 {
		q := most * float64(i) / n
		if h, _ := sc.supplyHead(q); h >= 0 {
			give.to(p.x(q), p.y(h))
		}
		if ok {
			if h := sys.head(q); h <= p.y1 {
				x, y := p.x(q), p.y(h)
				ask.to(x, y)
				if y > p.top+20 { // room above the line
					ax, ay = x, y
				}
			}
		}
	}
	sc.draw("line line--head", &give).draw("dash dash--curve", &ask)
	asked := markup("end")
	if len(give.b) > 0 {
		g, _ := sc.supplyHead(most * 0.15)
		gx, gy := p.x(most*0.15)+6, p.y(g)-8
		sc.label(gx, gy, "start", "the "+sc.sourceName()+" gives")
		if ok && math.Abs(ay-10-gy) < 16 && ax < gx+210 { // as long as the words of both
			asked, ax, ay = "start", p.left+6, p.y(sys.head(0))+28
		}
	}
	if len(ask.b) > 0 {
		sc.label(ax, ay-10, asked, "the system asks")
	}
	x, y := p.x(sc.zone.Flow), p.y(sc.zone.Head)
	spare := &path{}
	if ok {
		spare.move(x, y)
		spare.line(x, p.y(min(sys.head(sc.zone.Flow), p.y1)))
	}
	sc.draw("spare", spare)
	sc.html(`<circle class="dot" r="5" cx="`).at(x).html(`" cy="`).at(y).html(`"/></svg>`)
}

// zoneTable compares the zones, if there are several.
func (sc *scene) zoneTable() {
	if len(sc.s.Zones) < 2 {
		return
	}
	t := sc.table("The zones", "Zone", "#Emitters open", "#Flow", "#Head of the supply", "#To spare", "#EU")
	for i := range sc.s.Zones {
		z := &sc.s.Zones[i]
		t.row(strconv.Itoa(z.Zone), strconv.Itoa(z.Open)+" of "+strconv.Itoa(z.Emitters), sc.amount(unit.Flow, z.Flow),
			sc.amount(unit.Head, z.Head), sc.amount(unit.Head, z.Margin), sc.evenness1(z))
	}
	t.end()
}

func (sc *scene) evenness1(z *sheet.ZoneResult) string {
	if z.Open == 0 {
		return "–"
	}
	return sc.amount(unit.Share, z.Alike.EU)
}
