package why

import (
	"math"
	"slices"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/startup"
)

// Starting says how the system starts: how its lines fill, and which emitters
// open when.
func Starting(the *scene.Scene) {
	sc := part{the}
	u := sc.S.Startup
	if u == nil {
		sc.Tag("p", "This is worked out as soon as the plan says what drives the water.")
		return
	}
	for i := range u.Zones {
		z := &u.Zones[i]
		sc.Tag("p", sc.zoneAs(z)+sc.fills(z)+" "+sc.opens(z))
		for _, words := range sc.bothStates(z) {
			sc.Tag("p", words)
		}
		if z.Flood != nil {
			sc.Tag("p", sc.floods(z.Flood))
		}
		if i == scene.MostWords-1 && len(u.Zones) > scene.MostWords {
			sc.Tag("p", "The other zones stand in the table.")
			break
		}
	}
	// Where it was given up to follow the water a zone has no rows.
	if slices.ContainsFunc(u.Zones, func(z startup.Zone) bool { return len(z.Rows) > 0 }) {
		sc.Picture("Each line is a row, from when the water comes to its start to when it is at its end, all lines empty at first. A bar marks the end; an arrow, that the water never gets there.", func(class block.Markup, width float64) {
			sc.filling(class, width, u)
		})
	}
	lo, hi := u.Heads()
	if hi > lo {
		sc.Picture("The head at the supply at which each emitter opens, along the rows. What is lower opens first; where a line is missing the emitters stay shut or drip at any pressure. Of rows that open alike one is named.", func(class block.Markup, width float64) {
			sc.opening(class, width, lo, hi)
		})
	}
	sc.SameAsTable(func() {
		// Of a tank they are levels of its water.
		kind, per, words := unit.Pressure, sc.Weight, "Pressures are those at the supply's outlet, above the water it draws from; 0 means from the first drop."
		if sc.S.Plan.Supply.Kind == plan.GravityTank {
			kind, per, words = unit.Head, 1, "Opening heads are levels of the water in the tank, above where it stands; a minus sign means that a lower level would do, and 0 from the first drop."
		}
		t := sc.Table("Start of each row", "Row", "#Water at its start after", "#At its end after", "#Its first emitter opens at", "#Its last opens at", "#Plants whose emitters stay shut")
		for i := range u.Zones {
			z := &u.Zones[i]
			for row := range sc.S.Plan.Rows {
				if sc.S.Layout.ZoneOf(row) != z.Zone {
					continue
				}
				start, end := "–", "–"
				for _, r := range z.Rows {
					if r.Row == row {
						start, end = brief(r.Start, sc.Scene), brief(r.End, sc.Scene)
					}
				}
				o := z.Opening(func(i int) bool { return sc.S.Layout.Plants[i].Row == row })
				t.Row("Row "+strconv.Itoa(row+1), start, end, sc.Amount(kind, o.Least*per), sc.Amount(kind, o.Most*per), strconv.Itoa(o.Shut))
			}
		}
		t.End()
		sc.Tag("p", words)
	})
	sc.Working(func() {
		sc.Tag("p", "The water that row 1 takes to fill, and how long the flow of a running shot would take to fill it alone:")
		row := &sc.S.Plan.Rows[0]
		bore := sc.S.Layout.Tubes[sc.rowTube()].Bore
		sc.Formula(pipe.VolumeFormula, row.Length(), bore)
		if f := sc.Zone; f != nil && wording.Finite(f.Flow) && f.Flow > 1e-9 { // the range of the formula
			sc.Formula(pipe.FillTimeFormula, row.Length(), bore, f.Flow)
		}
		sc.Tag("p", "The water is followed as it advances. At each moment it runs as fast as the supply's curve and the losses of the wet length let it, with air before it that leaves freely through emitters and open ends. Its inertia, and air that is trapped, are left out: both make the start slower. In tubing that falls the water is taken to fill the bore.")
	})
}

// rowTube is the tubing of row 1.
func (sc part) rowTube() int {
	l := sc.S.Layout
	n := l.Plants[0].Node - 1 // the link that leads to its first plant
	return l.Stretches[l.StretchOf(n)].Tube
}

func (sc part) zoneAs(z *startup.Zone) string {
	if len(sc.S.Layout.Zones) < 2 {
		return ""
	}
	return "Zone " + strconv.Itoa(z.Zone) + ": "
}

// brief is a time of the start: seconds up to two minutes.
func brief(t float64, sc *scene.Scene) string {
	switch {
	case math.IsInf(t, 1):
		return "never"
	case t < 10:
		return strconv.FormatFloat(t, 'f', 1, 64) + "\u00a0s"
	case t < 120:
		return strconv.FormatFloat(t, 'f', 0, 64) + "\u00a0s"
	}
	return sc.Amount(unit.Duration, t)
}

// fills says how long the lines take to fill.
func (sc part) fills(z *startup.Zone) string {
	switch {
	case len(z.Rows) == 0:
		return "How the lines fill could not be worked out."
	case math.IsInf(z.Filled, 1):
		if len(z.Rows) == 1 {
			return "From empty lines, the water never reaches the end of the row."
		}
		return "From empty lines, the water never reaches the end of " + strconv.Itoa(z.NeverFull()) + " of " + wording.Count(len(z.Rows), "row", "rows") + "."
	}
	last := z.LastRow()
	words := "From empty lines, the water is at the end of every row after " + brief(last.End, sc.Scene)
	if len(z.Rows) > 1 {
		words += ", in row " + strconv.Itoa(last.Row+1) + " last"
	}
	words += "."
	if z.FillsOn() {
		words += " All is full after " + brief(z.Filled, sc.Scene) + "."
	}
	words += " That takes " + sc.Amount(unit.Volume, z.Holds) + "."
	if !math.IsInf(z.Swell, 1) {
		words += " When the lines are still full from the shot before, there is nothing to fill, and the pressure is up after " + brief(z.Swell, sc.Scene) + "."
	}
	return words
}

// opens says in which order the emitters open.
func (sc part) opens(z *startup.Zone) string {
	o := z.Opening(startup.All)
	stay := sc.stay(o.Shut)
	switch o.Order {
	case startup.Nobody:
		return ""
	case startup.NoneOpens:
		return "No emitter opens."
	case startup.NoneByItself:
		return "No emitter opens by itself."
	case startup.AtOnce:
		return "The emitters drip as soon as the water is there, the nearest first." + stay
	case startup.Sooner:
		return "The emitters open as soon as the pressure stands, and would with the water in the tank " + sc.Amount(unit.Head, -o.Most) + " lower." + stay
	case startup.Together:
		return "Then all emitters open together, as soon as the supply holds " + sc.Head(o.Least) + "."
	case startup.SomeAtOnce:
		return "Some drip as soon as the water is there. The last open at " + sc.Place(o.Last) + ", when the supply holds " + sc.Head(o.Most) + "." + stay
	}
	return "Then, as the pressure builds, the emitters open one after another: first at " + sc.Place(o.First) + ", when the supply holds " + sc.Head(o.Least) + ", last at " + sc.Place(o.Last) + ", at " + sc.Head(o.Most) + "." + stay
}

// stay says how many plants' emitters stay shut.
func (sc part) stay(shut int) string {
	if shut == 0 {
		return ""
	}
	return " Those of " + wording.Count(shut, "plant", "plants") + " stay shut."
}

// bothStates says whether more emitters can be held open than open by
// themselves, and how to get there.
func (sc part) bothStates(z *startup.Zone) []string {
	st := &z.States
	if !st.Differ() {
		return nil
	}
	words := []string{"This plan can run in two ways. From the start, " + sc.emittersOpen(st.Few, z) + " open when the pressure builds slowly"}
	if st.Opened != st.Few {
		words[0] += ", and up to " + strconv.Itoa(st.Opened) + " when it comes at once"
	}
	words[0] += ". Once all are open, " + sc.emittersOpen(st.Held, z) + " stay open, because an emitter shuts at a lower pressure than it opens at. Either lasts as long as the supply runs."
	if n := max(st.Below.Unsteady, st.Above.Unsteady); n > 0 {
		words[0] += " At the edge of it the emitters of up to " + wording.Count(n, "plant", "plants") + " open and shut in turn."
	}
	switch st.Route() {
	case startup.ByRows:
		words = append(words, "To get from one to the other, let the rows in one after another: shut each with a valve or a fold, start, and open the next at once when the one before it drips. That opens "+strconv.Itoa(st.InTurn)+".")
	case startup.ByRowsPart:
		words = append(words, "Letting the rows in one after another, each shut with a valve or a fold until the one before it drips, opens "+strconv.Itoa(st.InTurn)+". For the rest the pressure must be up for a moment: a stronger supply, or other rows kept shut meanwhile.")
	case startup.ByMorePower:
		words = append(words, "Letting the rows in one after another does not get there: even the first row does not get the pressure at which its emitters open. It takes a stronger supply, if only for the first minute of every shot. Do not rely on it; emitters that open at a lower pressure, or a pump that opens them, are the cure.")
	}
	return append(words, "The better state is soon lost. A flush, an open end or a stopped pump shuts the emitters, and they do not open again by themselves.")
}

func (sc part) emittersOpen(n int, z *startup.Zone) string {
	all := 0
	for i := range sc.S.Zones {
		if sc.S.Zones[i].Zone == z.Zone {
			all = sc.S.Zones[i].Emitters
		}
	}
	switch n {
	case 0:
		return "no emitters"
	case all:
		return "all " + strconv.Itoa(all) + " emitters"
	}
	return strconv.Itoa(n) + " of the " + strconv.Itoa(all) + " emitters"
}

// floods says whether the supply gets past emitters that flush themselves.
func (sc part) floods(f *startup.Flood) string {
	words := "At low pressure " + wording.Count(f.Emitters, "emitter flushes itself", "emitters flush themselves") + ". Together with the rest they take up to " + sc.Amount(unit.Flow, f.Wanted) + " meanwhile. "
	if f.Stuck == 0 {
		return words + "The supply gets past that: all stop flushing."
	}
	words += "The supply does not get past that: " + strconv.Itoa(f.Stuck) + " flush on for ever. They get " + sc.Head(f.Least)
	if f.Most > f.Least+0.005 {
		words += " to " + sc.Head(f.Most)
	}
	words += " and would stop at " + sc.Head(f.Stops) + ". The supply then gives " + sc.Amount(unit.Flow, f.Total) + "."
	if f.Zones > 0 {
		return words + " In " + strconv.Itoa(f.Zones) + " zones of rows that stand together it gets past it, zone by zone. So does a supply that gives the whole flow at that pressure and what is lost on the way."
	}
	return words + " Fewer emitters at once, or a supply that gives the whole flow at that pressure and what is lost on the way, would help."
}
