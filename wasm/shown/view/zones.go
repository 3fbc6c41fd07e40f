package view

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/layout"
)

// zones says which rows are watered together, how long a round takes, and
// whether fewer zones would do.
func (sc *scene) zones(link Linker) {
	s, z := sc.s, sc.s.Zoning
	if z == nil || len(s.Zones) == 0 {
		sc.tag("p", "This is worked out as soon as the plan says what drives the water.")
		return
	}
	round, each := s.Round()
	words := "All rows are watered together."
	if n := len(s.Zones); n > 1 {
		words = "The rows are watered in " + strconv.Itoa(n) + " zones, one after another."
	}
	if round > 0 {
		words += " A litre for every plant takes " + sc.amount(unit.Duration, round) + "."
	}
	sc.tag("p", words)
	sc.html(`<p>`).text(sc.fewest(z))
	if z.Plan != nil && link != nil {
		sc.html(` <a`).attr("href", link(z.Plan)).html(`>Open the plan with `).text(count(z.Fewest, "zone", "zones")).html(`</a>`)
	}
	sc.html(`</p>`)
	if round > 0 {
		sc.html(`<figure>`)
		for _, w := range widths {
			sc.round(w.class, w.width, round, each)
		}
		sc.tag("figcaption", "One round, from left to right: each line is a zone while it is watered, with its rows above it.")
		sc.html(`</figure>`)
	}
	sc.fold("The same as a table")
	t := sc.table("The zones, one after another", "Zone, and its rows", "#Plants", "#Flow, "+sc.symbol(unit.Flow),
		"#Head at the "+sc.sourceName()+", "+sc.symbol(unit.Head), "#To spare at its weakest, "+sc.symbol(unit.Pressure), "#Begins after", "#Runs for")
	start := 0.0
	for i := range s.Zones {
		v, long := &s.Zones[i], each[i]
		if long == 0 {
			long = math.NaN() // nothing runs
		}
		t.explained("Zone "+strconv.Itoa(v.Zone), sc.zoneRows(v.Zone), strconv.Itoa(v.Even.N), sc.bare(unit.Flow, v.Flow), sc.bare(unit.Head, v.Head),
			sc.bare(unit.Pressure, v.Margin*sc.weight), sc.amount(unit.Duration, start), sc.amount(unit.Duration, long))
		start += each[i]
	}
	if len(s.Zones) > 1 {
		if round == 0 {
			round = math.NaN() // it has no end
		}
		t.total("One round", strconv.Itoa(len(s.Layout.Plants)), "", "", "", "", sc.amount(unit.Duration, round))
	}
	t.end()
	sc.html(`</details>`)
	if k := firstLink(s.Layout, layout.RunOf, 0); k >= 0 && sc.zone != nil && sc.zone.Solution.Flow[k] > 0 {
		q := sc.zone.Solution.Flow[k]
		sc.fold("Show the working")
		sc.tag("p", "Fewer rows at once draw less, and the supply line takes less. In its first run, with the flow of "+sc.zoneName(sc.zone)+":")
		sc.friction(s.Layout, k, q)
		sc.tag("p", "With half of it:")
		sc.friction(s.Layout, k, q/2)
		sc.html(`</details>`)
	}
}

// fewest says how many zones the plan needs.
func (sc *scene) fewest(z *sheet.Zoning) string {
	now := len(sc.s.Zones)
	switch {
	case z.Alone && z.Fewest == 1:
		return "One zone is enough. Here no valve can shut off a row alone in any case."
	case z.Alone:
		return "Zones are no help here: no valve can shut off a row alone. With a header, and rows that end by themselves, each can have a valve."
	case z.Fewest == 0 && z.Large:
		return "How few zones would do is not looked for any further: the plan is large. With up to " + strconv.Itoa(z.Tried) + " the answer is not Yes."
	case z.Fewest == 0:
		if z.Tried == 1 {
			return "One row cannot be split into zones."
		}
		return "No number of zones up to " + strconv.Itoa(z.Tried) + " is enough by itself." + sc.helped()
	case z.Plan != nil && sc.s.Verdict == sheet.Yes:
		return "You use " + strconv.Itoa(now) + " zones, and " + strconv.Itoa(z.Fewest) + " would do." + sc.thirsts()
	case z.Plan != nil && z.Fewest == now:
		return "The number of zones is enough, but not with the rows as they are grouped: put rows that stand together into each zone, with about the same flow."
	case z.Plan != nil:
		return "With " + count(z.Fewest, "zone the answer is Yes", "zones the answer is Yes, and with no fewer") + together(z.Fewest) + "."
	case now == 1:
		return "One zone is enough."
	}
	return "You need all " + strconv.Itoa(now) + ": with fewer the answer is not Yes" + together(now) + "."
}

// helped points to what helps, where something does.
func (sc *scene) helped() string {
	if len(sc.s.Fixes) == 0 {
		return ""
	}
	return " The answer says what helps."
}

// together is how fewer zones than so many were tried: with one there is no
// choice, with more only rows that stand together share a zone.
func together(zones int) string {
	if zones <= 2 {
		return ""
	}
	return ", as long as rows that stand together share a zone"
}

// thirsts is a reason to keep zones that the water does not need.
func (sc *scene) thirsts() string {
	for i := range sc.s.Plan.Rows {
		if sc.s.Plan.Rows[i].Crop != sc.s.Plan.Rows[0].Crop {
			return " Crops that need different amounts are a reason to keep them."
		}
	}
	return ""
}

// zoneRows names the rows of a zone: "rows 1 to 3 and 7".
func (sc *scene) zoneRows(zone int) string {
	var parts []string
	n := len(sc.s.Plan.Rows)
	all := 0
	for i := 0; i < n; i++ {
		if sc.s.Layout.ZoneOf(i) != zone {
			continue
		}
		last := i
		for last+1 < n && sc.s.Layout.ZoneOf(last+1) == zone {
			last++
		}
		all += last - i + 1
		switch name := strconv.Itoa(i + 1); last - i {
		case 0:
			parts = append(parts, name)
		case 1:
			parts = append(parts, name, strconv.Itoa(last+1))
		default:
			parts = append(parts, name+" to "+strconv.Itoa(last+1))
		}
		i = last
	}
	words := "rows "
	if all == 1 {
		words = "row "
	}
	for i, p := range parts {
		switch {
		case i == 0:
		case i == len(parts)-1:
			words += " and "
		default:
			words += ", "
		}
		words += p
	}
	return words
}

// round draws the zones one below another over the time of one round.
func (sc *scene) round(class markup, width, round float64, each []float64) {
	p := plot{left: 8, right: width - 12, bottom: barHeight*float64(len(each)) + 8, x1: round}
	sc.svg(class, width, p.bottom+40, "One round of the zones, one litre for every plant")
	ts := sc.ticks(unit.Duration, 0, round, 4)
	var grid, run, ends path
	for _, t := range ts {
		grid.move(p.x(t.v), 4)
		grid.line(p.x(t.v), p.bottom)
	}
	start := 0.0
	for i, long := range each {
		y := barHeight*float64(i) + 34
		run.move(p.x(start), y)
		run.line(p.x(start+long), y)
		ends.move(p.x(start+long), y-6)
		ends.add('v', 12)
		start += long
	}
	sc.draw("grid", &grid).draw("line line--lead", &run).draw("bar", &ends)
	start = 0
	for i, long := range each {
		v := &sc.s.Zones[i]
		name := sc.zoneRows(v.Zone)
		if len(each) > 1 {
			name = "zone " + strconv.Itoa(v.Zone) + ": " + name
		}
		// Words that would run over the edge, at about 6 px a letter, end at it.
		// Rows that the picture has no room to name stand in the table.
		switch x, wide := p.x(start), 6.2*float64(len(name)); {
		case x+wide < p.right:
			sc.label(x, barHeight*float64(i)+24, "start", name)
		case wide < p.right-p.left:
			sc.label(p.right, barHeight*float64(i)+24, "end", name)
		default:
			sc.label(p.left, barHeight*float64(i)+24, "start", "zone "+strconv.Itoa(v.Zone))
		}
		start += long
	}
	sc.axis(&p, unit.Duration, ts, "time")
	sc.html(`</svg>`)
}
