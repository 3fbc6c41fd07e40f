package why

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/water"
	"evenrow/wasm/works/startup"
	"evenrow/wasm/year/shots"
)

// Stopping says what runs out of the lines after a shot, and who gets it.
func Stopping(the *scene.Scene) {
	sc := part{the}
	u := sc.S.Startup
	if u == nil {
		return
	}
	sc.Tag("h3", "After the shot")
	for i := range min(len(u.Zones), scene.MostWords) {
		sc.Tag("p", sc.zoneAs(&u.Zones[i])+sc.runsOut(&u.Zones[i]))
	}
	siphon, back, level := u.After()
	if back > 0 {
		sc.Tag("p", "No check valve stands in the supply line, so when the pump stops up to "+sc.Amount(unit.Volume, back)+" runs back through it into the tank. How much depends on the air that comes in behind it: emitters that shut tightly hold it up, an open end does not. Each start has to fill again what left. A check valve in the supply line keeps it, and keeps dirty water out of the tank.")
	}
	if siphon {
		sc.Tag("p", "The water in the tank stands above open emitters. When the pump stops, the tank runs on through it, until it is empty or the inlet draws air. Put a valve that shuts into the supply line, or a hole above the water into the pipe, which breaks the siphon.")
	}
	if level > 0 {
		sc.Tag("p", "Level tubing beside emitters that do not hold back stays full in this calculation. If they hang below it, up to "+sc.Amount(unit.Volume, level)+" more runs out.")
	}
	sc.Fold("What runs out, as a table", func() {
		sc.Table("After a shot, zone by zone", "Zone", "#The lines hold", "#Runs out of emitters", "#Of plants", "#Most to one plant", "#Share of "+wording.Shot(shots.LeastShot)+" to "+wording.Shot(shots.MostShot)+" there", "#Runs back to the tank", "#Filled again after", "#Held by emitters that close at").Rows(func(t *block.Table) {
			for i := range u.Zones {
				z := &u.Zones[i]
				d := &z.Drain
				most, share, holds := "–", "–", "–"
				if d.Most >= 0 {
					most = sc.Amount(unit.Dose, d.Extra[d.Most])
					share = sc.shareOf(d.Extra[d.Most], sc.Plants[d.Most].Flow)
					holds = sc.Amount(unit.Pressure, d.Prevents*sc.Weight)
				}
				held := "–"
				if !z.Waterless() {
					held = sc.Amount(unit.Volume, z.Holds)
				}
				t.Row("Zone "+strconv.Itoa(z.Zone), held, sc.Amount(unit.Volume, d.Volume), strconv.Itoa(d.Outlets), most, share, sc.Amount(unit.Volume, d.Back), sc.refillTime(z), holds)
			}
		})
	})
	sc.Fold("Show the working of what stays", func() {
		sc.Tag("p", "An emitter that shuts at a pressure holds a column of water of this height above it:")
		sc.Formula(water.HeadOfPressureFormula, sc.S.Layout.Network.Water.Density, sc.closes())
		sc.Tag("p", "Water that stands higher runs out, at every emitter below it that is open. What leaves is the tubing above that level, and each height of it is shared alike by the emitters below.")
	})
	sc.HTML(`<p>More about it: <a href="starting.html">Starting and stopping</a>.</p>`)
}

// closes is the closing pressure in Pa of the first emitter that has one.
func (sc part) closes() float64 {
	for i := range sc.S.Plan.Emitters {
		if e := &sc.S.Plan.Emitters[i]; e.Kind == plan.Compensating {
			return e.Closes
		}
	}
	return 0
}

// shareOf is a volume as shares of the shortest and the longest shot at a flow.
func (sc part) shareOf(v, flow float64) string {
	if !(flow > 0) {
		return "–"
	}
	return sc.Amount(unit.Share, v/(flow*shots.MostShot)) + " to " + sc.Amount(unit.Share, v/(flow*shots.LeastShot))
}

func (sc part) refillTime(z *startup.Zone) string {
	if d := &z.Drain; z.Waterless() || d.Volume+d.Back > 0 {
		return sc.Elapsed(d.Refill)
	}
	return "at once"
}

// runsOut says what runs out of one zone.
func (sc part) runsOut(z *startup.Zone) string {
	d := &z.Drain
	switch d.Stay {
	case startup.NoWater:
		return "No water comes to the rows, so nothing runs out."
	case startup.NoneOpen:
		return "No emitter was open, so nothing runs out."
	case startup.HeldBack:
		return "Nothing runs out of the emitters: each shuts while the water that still stands above it is no more than its closing pressure holds."
	case startup.NoneHigher:
		return "Nothing runs out: no tubing lies above the emitters."
	case startup.RunsOut:
		return sc.runs(d)
	}
	return ""
}

// runs says what runs out, and what it costs the next shot.
func (sc part) runs(d *startup.Drain) string {
	words := sc.Amount(unit.Volume, d.Volume) + " runs out of the lines, through the emitters of " + wording.Count(d.Outlets, "plant", "plants") + ". No plant gets more of it than " + sc.Place(d.Most) + ": " + sc.Amount(unit.Dose, d.Extra[d.Most])
	if flow := sc.Plants[d.Most].Flow; flow > 0 {
		words += ", which is " + sc.shareOf(d.Extra[d.Most], flow) + " of a shot of " + wording.Shot(shots.MostShot) + " to " + wording.Shot(shots.LeastShot)
	}
	words += "."
	if !math.IsInf(d.Refill, 1) {
		words += " The next shot has to put it back first, which takes about " + sc.Elapsed(d.Refill) + ". For so long the highest plants wait: they miss " +
			sc.Amount(unit.Share, min(d.Refill/shots.MostShot, 1)) + " to " + sc.Amount(unit.Share, min(d.Refill/shots.LeastShot, 1)) + " of it."
	}
	return words + " Emitters that close at " + sc.Amount(unit.Pressure, d.Prevents*sc.Weight) + " or more would hold it. Few long shots lose less than many short ones."
}
