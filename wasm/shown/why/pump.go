package why

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
)

// Pump draws what the supply gives against what the system asks.
func Pump(the *scene.Scene) {
	sc := part{the}
	if told := &sc.S.Plan.Supply; told.Kind == plan.PumpPower {
		sc.Say("p", "Power is flow times head. A pump of {power} may lift much water a little, as a fountain does, or a little water high, as a well pump does. Only the second opens emitters, and the label's power does not say which it is.", sc.Amount(unit.Power, told.Power))
		sc.Say("p", "Find the pump's curve in its leaflet: the greatest head, the greatest flow, and some points between. Then choose how the pump is known in the form, and type them in.")
	}
	if sc.Zone == nil {
		sc.Tag("p", sc.Idle())
		return
	}
	s := &sc.S.Layout.Plan.Supply
	if s.Kind == plan.GravityTank {
		sc.Tag("p", "Nothing drives the water but its own height. The weakest emitter, "+sc.Place(sc.Zone.Worst)+", has "+
			sc.Head(sc.Plants[sc.Zone.Worst].Head)+" left of it.")
		sc.zoneTable()
		return
	}
	sc.wanted()
	sys := sc.S.System(sc.Zone)
	if _, driven := sc.supplyHead(0); !driven {
		return
	}
	name := sc.SourceName()
	if sc.S.Regulated() {
		name += " with its regulator"
	}
	if sys != nil {
		sc.Tag("p", "The falling line is what the "+name+" gives, the rising one what the system asks so that its weakest emitter gets the lowest head of its range. At the flow that the rows draw, the distance between them is the spare head, or what is missing.")
	} else {
		sc.Tag("p", "The line is what the "+name+" gives. No emitter opens, so nothing flows.")
	}
	most := sc.Zone.Flow * 1.6
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
	if w := sc.S.Wanted; w != nil && w.Does {
		most = max(most, w.Flow*1.2)
	}
	if !(most > 0) {
		return
	}
	caption := "The dot is where the " + name + " works: " + sc.Head(sc.Zone.Head) + " at " + sc.Amount(unit.Flow, sc.Zone.Flow) + "."
	if len(sc.S.Zones) > 1 {
		caption += " Shown for zone " + strconv.Itoa(sc.Zone.Zone) + ", which has the least to spare."
	}
	if w := sc.S.Wanted; w != nil && w.Does {
		caption = words.Sentences(caption, words.Say("The cross is what to ask for at the least."))
		if w.Regulator == 0 {
			caption = words.Sentences(caption, words.Say("The dashes at the left are the most that it may give with everything shut."))
		}
	}
	sc.Picture(words.Sentences(caption, sc.RegulatorFirst()), func(class block.Markup, width float64) {
		sc.curves(class, width, most, sys)
	})
	sc.SameAsTable(func() {
		sc.Table("What the "+name+" gives and what the system asks", "#Flow", "#Head given", "#Head asked").Rows(func(t *block.Table) {
			for i := range 9 {
				q := most * float64(i) / 8
				given, _ := sc.supplyHead(q)
				asked := "–"
				if sys != nil {
					asked = sc.Amount(unit.Head, sys.Head(q))
				}
				g := "none"
				if given >= 0 {
					g = sc.Amount(unit.Head, given)
				}
				t.Row(sc.Amount(unit.Flow, q), g, asked)
			}
		})
	})
	sc.zoneTable()
}

// wanted says which pump the curve is of where it is sought.
func (sc part) wanted() {
	w := sc.S.Wanted
	if w == nil {
		return
	}
	s := &sc.S.Layout.Plan.Supply
	least, flow := sc.Amount(unit.Head, w.Least), sc.Amount(unit.Flow, w.Flow)
	switch {
	case w.Does && w.Regulator > 0:
		sc.Say("p", "The curve is one of many that will do: a parabola through {least} at {flow}, with {shut} with everything shut, and a regulator set to {pressure} behind it. Any pump will do that gives as much at that flow.",
			least, flow, sc.Amount(unit.Head, s.ShutOff), sc.Amount(unit.Pressure, w.Regulator))
	case w.Does:
		sc.Say("p", "The curve is one of many that will do: a parabola through {least} at {flow}, with {shut} with everything shut. Any pump will do that gives as much at that flow, and at most {most} with everything shut.",
			least, flow, sc.Amount(unit.Head, s.ShutOff), sc.Amount(unit.Head, w.Most))
	default:
		sc.Say("p", "No pump does it as the plan stands. The curve is that of one that would give enough, and with it something is too much: see the answer.")
	}
}

func (sc part) curves(class block.Markup, width, most float64, sys *sheet.System) {
	p := block.Plot{Left: 44, Right: width - 12, Top: 14, Bottom: 214, X1: most}
	_, p.Y1 = block.Span(0, 1, sc.Zone.Head)
	h0, _ := sc.supplyHead(0)
	_, p.Y1 = block.Span(0, p.Y1, h0)
	w := sc.S.Wanted
	if w != nil && !w.Does {
		w = nil
	}
	if w != nil && w.Regulator == 0 {
		_, p.Y1 = block.Span(0, p.Y1, w.Most)
	}
	if sys != nil {
		_, p.Y1 = block.Span(0, p.Y1, min(sys.Head(sc.Zone.Flow), 3*p.Y1))
	}
	p.Y1 *= 1.08
	sc.SVG(class, width, p.Bottom+40, "Head given and head asked, over the flow", func() {
		sc.Heads(&p)
		sc.Axis(&p, unit.Flow, sc.Ticks(unit.Flow, 0, most, int(width/110)), "flow")
		const n = 48
		var give, ask block.Path
		ax, ay := p.Left, p.Bottom // where the words of the asked head end
		for i := range n + 1 {
			q := most * float64(i) / n
			if h, _ := sc.supplyHead(q); h >= 0 {
				give.To(p.X(q), p.Y(h))
			}
			if sys != nil {
				if h := sys.Head(q); h <= p.Y1 {
					x, y := p.X(q), p.Y(h)
					ask.To(x, y)
					if y > p.Top+20 { // room above the line
						ax, ay = x, y
					}
				}
			}
		}
		sc.Draw("line line--head", &give).Draw("dash dash--curve", &ask)
		asked := block.Markup("end")
		if !give.Empty() {
			g, _ := sc.supplyHead(most * 0.15)
			gx, gy := p.X(most*0.15)+6, p.Y(g)-8
			sc.Label(gx, gy, "start", "the "+sc.SourceName()+" gives")
			if sys != nil && math.Abs(ay-10-gy) < 16 && ax < gx+210 { // as long as the words of both
				asked, ax, ay = "start", p.Left+6, p.Y(sys.Head(0))+28
			}
		}
		if !ask.Empty() {
			sc.Label(ax, ay-10, asked, "the system asks")
		}
		x, y := p.X(sc.Zone.Flow), p.Y(sc.Zone.Head)
		spare := &block.Path{}
		if sys != nil {
			spare.Move(x, y)
			spare.Line(x, p.Y(min(sys.Head(sc.Zone.Flow), p.Y1)))
		}
		sc.Draw("spare", spare)
		sc.HTML(`<circle class="dot" r="5" cx="`).At(x).HTML(`" cy="`).At(y).HTML(`"/>`)
		if w != nil && w.Regulator == 0 {
			var shut block.Path
			shut.Move(p.Left, p.Y(w.Most))
			shut.Line(p.X(most*0.12), p.Y(w.Most))
			sc.Draw("dash dash--curve", &shut)
			sc.Label(p.X(most*0.12)+6, p.Y(w.Most)+4, "start", words.Say("at most {head} shut", sc.Amount(unit.Head, w.Most)))
		}
		if w != nil {
			x, y := p.X(w.Flow), p.Y(w.Least)
			var cross block.Path
			for _, side := range [...]float64{-1, 1} {
				cross.Move(x-8, y-8*side)
				cross.Line(x+8, y+8*side)
			}
			sc.Draw("bar", &cross)
		}
	})
}

// zoneTable compares the zones, if there are several.
func (sc part) zoneTable() {
	if len(sc.S.Zones) < 2 {
		return
	}
	sc.Table("The zones", "Zone", "#Emitters open", "#Flow", "#Head of the supply", "#To spare", "#EU").Rows(func(t *block.Table) {
		for i := range sc.S.Zones {
			z := &sc.S.Zones[i]
			t.Row(strconv.Itoa(z.Zone), strconv.Itoa(z.Open)+" of "+strconv.Itoa(z.Emitters), sc.Amount(unit.Flow, z.Flow),
				sc.Amount(unit.Head, z.Head), sc.Amount(unit.Head, z.Margin), sc.evenness1(z))
		}
	})
}

func (sc part) evenness1(z *sheet.ZoneResult) string {
	if z.Open == 0 {
		return "–"
	}
	return sc.Amount(unit.Share, z.Alike.EU)
}

// supplyHead returns the head in m that the pump or the tap gives at flow q,
// and whether there is one.
func (sc part) supplyHead(q float64) (h float64, ok bool) {
	c := sc.S.Layout.Curve
	if c == nil {
		return 0, false
	}
	h, _ = c.Head(q)
	return h, true
}
