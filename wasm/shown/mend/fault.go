// Package mend says what wear and faults do, and how to flush.
package mend

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/fault"
)

// Faults says what wear, dirt, blockage and leaks do, and how to tell.
func Faults(the *scene.Scene) {
	sc := part{the}
	f := sc.S.Faults
	if f == nil {
		sc.Tag("p", sc.Idle())
		return
	}
	for i := range f.Slow {
		s := &f.Slow[i]
		if s.Kind == fault.Dirt {
			sc.Tag("p", sc.dirt(s, f))
		} else {
			sc.Tag("p", sc.weaker(s))
		}
	}
	hidden := ""
	for i := range f.Sudden {
		if s := &f.Sudden[i]; s.Hidden() {
			if hidden != "" {
				hidden += ", "
			}
			hidden += names[s.Kind].sudden(sc, s)
		}
	}
	if hidden != "" {
		sc.Tag("p", "No gauge at the supply shows these: "+hidden+". Walk the rows and look at every plant.")
	}
	var bs []block.Bar
	for i := range f.Sudden {
		s := &f.Sudden[i]
		all := max(1, s.Plants)
		none, some := s.Cut+s.Dry, s.Harmed()
		bs = append(bs, block.Bar{Name: unit.Capital(names[s.Kind].sudden(sc, s)), Text: strconv.Itoa(some), Solid: float64(none) / float64(all), All: float64(some) / float64(all)})
	}
	if len(bs) > 0 {
		caption := "The worst of each kind, and how many plants of the zone it reaches. The thick part gets nothing, its own plant among them; the thin part runs outside the emitters' range."
		if f.Every > 1 {
			caption += " Of the rows, one in " + strconv.Itoa(f.Every) + " was tried."
		}
		sc.Picture(caption, func(class block.Markup, width float64) {
			p := block.Plot{Left: 8, Right: width - 60, X1: 1, Bottom: block.BarHeight * float64(len(bs))}
			sc.SVG(class, width, p.Bottom+6, "Plants that a fault leaves without their water", func() {
				sc.Bars(&p, bs)
			})
		})
	}
	sc.Fold("What you would see, as a table", func() {
		sc.Table("What gauges and a flow meter show with each fault", "Fault", "#Before the filter", "#After it", "#At the header", "#Flow", "#Plants without water", "#Out of range", "Tell it by").Rows(func(t *block.Table) {
			for i := range f.Slow {
				if s := &f.Slow[i]; !s.Already && !s.Never {
					sc.faultRow(t, names[s.Kind].slow(sc, s), "when the first emitter leaves its range", &s.Was, &s.Now, "0", "1", "the gauge")
				}
			}
			for i := range f.Sudden {
				s := &f.Sudden[i]
				small := "the worst of " + wording.Count(s.Tried, "place", "places") + " tried"
				if s.Lost > 0 {
					small += "; loses " + sc.Amount(unit.Flow, s.Lost)
				}
				sc.faultRow(t, names[s.Kind].sudden(sc, s), small, &s.Was, &s.Now, strconv.Itoa(s.Cut+s.Dry), strconv.Itoa(s.Below+s.Above), signs[s.Sign])
			}
		})
		words := "Read while the zone is watered. Two figures are as it should be, and with the fault."
		if sc.S.Layout.Curve == nil {
			words += " A gauge at the tank shows nothing of use: put it at the header."
		} else if sc.S.Layout.FilterLink < 0 {
			words += " Without a filter both gauges are one."
		}
		sc.Tag("p", words+" What changes by less than "+sc.Amount(unit.Pressure, fault.Legible)+" counts as not to be seen on a gauge, and less than "+sc.Amount(unit.Share, fault.Metered)+" of the flow as not to be seen on a meter: common practice, no source.")
	})
	for i := range f.Sudden {
		if s := &f.Sudden[i]; s.Kind == fault.Hole {
			sc.Working(func() {
				h := s.Lost / pipe.HoleFlow(fault.HoleBore, 1)
				sc.Tag("p", "What runs out where an emitter has come out, "+sc.Place(s.Plant)+":")
				sc.Formula(pipe.HoleFlowFormula, fault.HoleBore, h*h)
			})
		}
	}
}

// signs are how a fault is told, in words.
var signs [fault.Signs]string = [...]string{fault.NobodyShort: "no plant is short", fault.OnGauge: "the gauge", fault.OnMeter: "a flow meter", fault.OnFoot: "walking the rows"}

// dirt says when to clean the filter, by the gauge.
func (sc part) dirt(s *fault.Slow, f *fault.Faults) string {
	switch {
	case s.Already:
		return "Even with a clean filter an emitter is outside its range. Look at the answer first."
	case s.Never:
		return "Dirt in the filter takes no emitter out of its range, however much there is."
	}
	pressure := func(h float64) string { return sc.Amount(unit.Pressure, h*sc.Weight) }
	gauges := func(r *fault.Reading) string {
		if sc.S.Layout.Curve == nil {
			return pressure(r.Across()) + " between the two sides of the filter"
		}
		return pressure(r.Before) + " before the filter, " + pressure(r.After) + " after it, " + pressure(r.Across()) + " between them"
	}
	words := "A dirty filter first fails " + sc.where(s.Plant) + ": it leaves its range"
	if s.Opening {
		words = "With a dirty filter not every emitter opens any more"
	}
	words += " when the gauges show " + gauges(&s.Now) + ". With a clean filter they show " + gauges(&s.Was) + "."
	if first := sc.RegulatorFirst(); first != "" {
		words += " " + first
	}
	switch f.Clean {
	case fault.InTime:
		words += " The loss at which you clean comes before: write " + pressure(f.Due.Across()) + " of difference on the gauge, and clean when it is reached."
	case fault.Unread:
		words += " The loss at which you clean comes before: " + pressure(f.Due.Across()) + " between the gauges, which is too little to read. Clean by the calendar, and at once when a difference shows."
	case fault.TooLate:
		words += " That comes before the loss at which you meant to clean. Write less than " + pressure(s.Now.Across()) + " of difference on the gauge, and clean before it is reached."
	}
	return words
}

// weaker says how much less a supply may give.
func (sc part) weaker(s *fault.Slow) string {
	source := "the " + sc.SourceName()
	switch {
	case s.Already:
		return unit.Capital(source) + " cannot lose anything: even now an emitter is outside its range."
	case s.Never:
		return "Every emitter stays in its range however much " + source + " loses."
	}
	then := ", " + sc.where(s.Plant) + " leaves its range"
	if s.Opening {
		then = ", not every emitter opens any more"
	}
	pressure := func(h float64) string { return sc.Amount(unit.Pressure, h*sc.Weight) }
	if s.Kind == fault.Sinking {
		return "When the level in the tank falls by " + sc.Amount(unit.Head, s.Amount) + then + ". A gauge at the header then shows " + pressure(s.Now.Header) + " while watering, and " + pressure(s.Was.Header) + " as it should be."
	}
	at := "before the filter"
	if sc.S.Layout.FilterLink < 0 {
		at = "at the supply"
		if sc.S.Regulated() {
			at = "behind the regulator"
		}
	}
	return "When " + source + " has lost " + sc.Amount(unit.Share, s.Amount) + " of its head at every flow" + then + ". A gauge " + at + " then shows " + pressure(s.Now.Still) + " with every row shut, and " +
		pressure(s.Now.Before) + " while watering. As it should be, it shows " + pressure(s.Was.Still) + " and " + pressure(s.Was.Before) + "."
}

// where names a plant, if there is one.
func (sc part) where(plant int) string {
	if plant < 0 {
		return "an emitter"
	}
	return "the emitter of " + sc.Place(plant)
}

// A fault grows, or is there from one day to the next: it is named by what it
// is, and by its place.
type named struct {
	slow   func(sc part, s *fault.Slow) string
	sudden func(sc part, s *fault.Sudden) string
}

// names has a row for each kind, of the one or of the other.
var names [fault.Kinds]named = [...]named{
	fault.Dirt: {slow: func(part, *fault.Slow) string { return "Dirty filter" }},
	fault.Wear: {slow: func(sc part, s *fault.Slow) string {
		return unit.Capital(sc.SourceName()) + " weaker by " + sc.Amount(unit.Share, s.Amount)
	}},
	fault.Sinking: {slow: func(sc part, s *fault.Slow) string { return "Tank lower by " + sc.Amount(unit.Head, s.Amount) }},
	fault.Emitter: {sudden: func(sc part, s *fault.Sudden) string { return "one emitter blocked (" + sc.Place(s.Plant) + ")" }},
	fault.Row:     {sudden: func(_ part, s *fault.Sudden) string { return rowOf(s) + " blocked at its start" }},
	fault.Hole:    {sudden: func(sc part, s *fault.Sudden) string { return "an emitter out (" + sc.Place(s.Plant) + ")" }},
	fault.End:     {sudden: func(_ part, s *fault.Sudden) string { return "the end of " + rowOf(s) + " open" }},
}

func rowOf(s *fault.Sudden) string { return "row " + strconv.Itoa(s.Row+1) }

// faultRow writes what the gauges show.
func (sc part) faultRow(t *block.Table, name, small string, was, now *fault.Reading, dry, out, by string) {
	change := func(k unit.Kind, a, b float64) string {
		if x, y := sc.Amount(k, a), sc.Amount(k, b); x != y {
			return x + " to " + y
		}
		return sc.Amount(k, a)
	}
	before, after := "–", "–"
	if sc.S.Layout.Curve != nil {
		before, after = change(unit.Pressure, was.Before*sc.Weight, now.Before*sc.Weight), change(unit.Pressure, was.After*sc.Weight, now.After*sc.Weight)
	}
	t.Explained(unit.Capital(name), small, before, after, change(unit.Pressure, was.Header*sc.Weight, now.Header*sc.Weight), change(unit.Flow, was.Flow, now.Flow), dry, out, by)
}
