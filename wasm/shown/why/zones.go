package why

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/works/layout"
)

// Zones says which rows are watered together, how long a round takes, and
// whether fewer zones would do.
func Zones(the *scene.Scene) {
	sc := part{the}
	s, z := sc.S, sc.S.Zoning
	if z == nil || len(s.Zones) == 0 {
		sc.Tag("p", "This is worked out as soon as the plan says what drives the water.")
		return
	}
	round, each := s.Round()
	words := "All rows are watered together."
	if n := len(s.Zones); n > 1 {
		words = "The rows are watered in " + strconv.Itoa(n) + " zones, one after another."
	}
	if round > 0 {
		words += " A litre for every plant takes " + sc.Amount(unit.Duration, round) + "."
	}
	sc.Tag("p", words)
	sc.HTML(`<p>`).Text(sc.fewest(z))
	if z.Plan != nil && sc.Link != nil {
		sc.HTML(` <a`).Attr("href", sc.Link(z.Plan)).HTML(`>Open the plan with `).Text(wording.Count(z.Fewest, "zone", "zones")).HTML(`</a>`)
	}
	sc.HTML(`</p>`)
	if round > 0 {
		sc.Picture("One round, from left to right: each line is a zone while it is watered, with its rows above it.", func(class block.Markup, width float64) {
			sc.round(class, width, round, each)
		})
	}
	sc.SameAsTable(func() {
		sc.Table("The zones, one after another", "Zone, and its rows", "#Plants", "#Flow, "+sc.Symbol(unit.Flow),
			"#Head at the "+sc.SourceName()+", "+sc.Symbol(unit.Head), "#To spare at its weakest, "+sc.Symbol(unit.Pressure), "#Begins after", "#Runs for").Rows(func(t *block.Table) {
			start := 0.0
			for i := range s.Zones {
				v, long := &s.Zones[i], each[i]
				if long == 0 {
					long = math.NaN() // nothing runs
				}
				t.Explained("Zone "+strconv.Itoa(v.Zone), sc.zoneRows(v.Zone), strconv.Itoa(v.Even.N), sc.Bare(unit.Flow, v.Flow), sc.Bare(unit.Head, v.Head),
					sc.Bare(unit.Pressure, v.Margin*sc.Weight), sc.Amount(unit.Duration, start), sc.Amount(unit.Duration, long))
				start += each[i]
			}
			if len(s.Zones) > 1 {
				if round == 0 {
					round = math.NaN() // it has no end
				}
				t.Total("One round", strconv.Itoa(len(s.Layout.Plants)), "", "", "", "", sc.Amount(unit.Duration, round))
			}
		})
	})
	if k := firstLink(s.Layout, layout.RunOf, 0); k >= 0 && sc.Zone != nil && sc.Zone.Solution.Flow[k] > 0 {
		q := sc.Zone.Solution.Flow[k]
		sc.Working(func() {
			sc.Tag("p", "Fewer rows at once draw less, and the supply line takes less. In its first run, with the flow of "+sc.ZoneName(sc.Zone)+":")
			sc.friction(s.Layout, k, q)
			sc.Tag("p", "With half of it:")
			sc.friction(s.Layout, k, q/2)
		})
	}
}

// fewest says how many zones the plan needs.
func (sc part) fewest(z *sheet.Zoning) string {
	now := len(sc.S.Zones)
	switch n := sc.S.Enough(); n.Kind {
	case sheet.OneAlone:
		return "One zone is enough. Here no valve can shut off a row alone in any case."
	case sheet.NoneAlone:
		return "Zones are no help here: no valve can shut off a row alone. With a header, and rows that end by themselves, each can have a valve."
	case sheet.TooLarge:
		return "How few zones would do is not looked for any further: the plan is large. With up to " + strconv.Itoa(z.Tried) + " the answer is not Yes."
	case sheet.OneRow:
		return "One row cannot be split into zones."
	case sheet.NoneEnough:
		return words.Sentences("No number of zones up to "+strconv.Itoa(z.Tried)+" is enough by itself.", sc.Helped())
	case sheet.FewerDo:
		said := "You use " + strconv.Itoa(now) + " zones, and " + strconv.Itoa(z.Fewest) + " would do."
		if n.Crops {
			said += " Crops that need different amounts are a reason to keep them."
		}
		return said
	case sheet.Regroup:
		return "The number of zones is enough, but not with the rows as they are grouped: put rows that stand together into each zone, with about the same flow."
	case sheet.OthersDo:
		return "With " + wording.Count(z.Fewest, "zone the answer is Yes", "zones the answer is Yes, and with no fewer") + together(n) + "."
	case sheet.OneDoes:
		return "One zone is enough."
	case sheet.AllNeeded:
		return "You need all " + strconv.Itoa(now) + ": with fewer the answer is not Yes" + together(n) + "."
	}
	return ""
}

// together is how fewer zones were tried.
func together(n sheet.Enough) string {
	if n.Together {
		return ", as long as rows that stand together share a zone"
	}
	return ""
}

// zoneRows names the rows of a zone: "rows 1 to 3 and 7".
func (sc part) zoneRows(zone int) string {
	var rows []int
	for i := range sc.S.Plan.Rows {
		if sc.S.Layout.ZoneOf(i) == zone {
			rows = append(rows, i)
		}
	}
	return wording.Rows(rows)
}

// round draws the zones one below another over the time of one round.
func (sc part) round(class block.Markup, width, round float64, each []float64) {
	p := block.Plot{Left: 8, Right: width - 12, Bottom: block.BarHeight*float64(len(each)) + 8, X1: round}
	sc.SVG(class, width, p.Bottom+40, "One round of the zones, one litre for every plant", func() {
		ts := sc.Ticks(unit.Duration, 0, round, 4)
		var grid, run, ends block.Path
		for _, t := range ts {
			grid.Move(p.X(t.V), 4)
			grid.Line(p.X(t.V), p.Bottom)
		}
		start := 0.0
		for i, long := range each {
			y := block.BarHeight*float64(i) + 34
			run.Move(p.X(start), y)
			run.Line(p.X(start+long), y)
			ends.Move(p.X(start+long), y-6)
			ends.Add('v', 12)
			start += long
		}
		sc.Draw("grid", &grid).Draw("line line--lead", &run).Draw("bar", &ends)
		start = 0
		for i, long := range each {
			v := &sc.S.Zones[i]
			name := sc.zoneRows(v.Zone)
			if len(each) > 1 {
				name = "zone " + strconv.Itoa(v.Zone) + ": " + name
			}
			// Words that would run over the edge, at about 6 px a letter, end at it.
			// Rows that the picture has no room to name stand in the table.
			switch x, wide := p.X(start), 6.2*float64(len(name)); {
			case x+wide < p.Right:
				sc.Label(x, block.BarHeight*float64(i)+24, "start", name)
			case wide < p.Right-p.Left:
				sc.Label(p.Right, block.BarHeight*float64(i)+24, "end", name)
			default:
				sc.Label(p.Left, block.BarHeight*float64(i)+24, "start", "zone "+strconv.Itoa(v.Zone))
			}
			start += long
		}
		sc.Axis(&p, unit.Duration, ts, "time")
	})
}
