package why

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/works/startup"
)

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
	case startup.OneByOne:
		return "Then, as the pressure builds, the emitters open one after another: first at " + sc.Place(o.First) + ", when the supply holds " + sc.Head(o.Least) + ", last at " + sc.Place(o.Last) + ", at " + sc.Head(o.Most) + "." + stay
	}
	return ""
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
	if n := st.Unsteady(); n > 0 {
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
