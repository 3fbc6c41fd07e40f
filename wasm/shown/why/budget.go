package why

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
)

// Budget says what the head of the supply is spent on. Its lines add up.
func Budget(the *scene.Scene) {
	sc := part{the}
	z := sc.Zone
	if z == nil || len(z.Budget) == 0 {
		return
	}
	given, lines := z.Head, z.Budget
	if sc.S.Plan.Supply.Kind == plan.GravityTank && lines[0].Kind == sheet.Lift && lines[0].Head < 0 {
		given -= lines[0].Head // a tank gives what its water falls
		lines = lines[1:]
	}
	sc.HTML(`<h3>`).Text("Where the " + sc.Head(given) + " go").HTML(`</h3>`)
	sc.Table("Where the head of the supply goes", "Where", "#Pressure", "#Head", "#Share").Rows(func(t *block.Table) {
		sum := 0.0
		for i := range lines {
			b := &lines[i]
			sum += b.Head
			share := "–"
			if given > 0 {
				share = sc.Amount(unit.Share, b.Head/given)
			}
			t.Row(sc.lossName(b), sc.Amount(unit.Pressure, b.Head*sc.Weight), sc.Amount(unit.Head, b.Head), share)
		}
		by := "by the " + sc.SourceName()
		if sc.S.Regulated() {
			by = "behind the regulator"
		}
		t.Total("Given "+by, sc.Amount(unit.Pressure, sum*sc.Weight), sc.Amount(unit.Head, sum), "")
	})
	if errs := sc.RegulatorFirst(); errs != "" {
		sc.Tag("p", errs)
	}
	sc.softest(z)
}

// softest warns where the answer hangs on what nobody knows well.
func (sc part) softest(z *sheet.ZoneResult) {
	fittings, spare, hangs := z.Softest()
	words := " beyond the safety margin"
	if spare < 0 {
		spare, words = -spare, " that is missing"
	}
	if hangs {
		sc.Tag("p", "Fittings take "+sc.Head(fittings)+", more than the "+sc.Head(spare)+words+
			", so the answer hangs on their coefficients and on how far barbs narrow the tubing, which the method page lists with their standing: take fittings with a wide bore, or keep a larger safety margin.")
	}
}

func (sc part) lossName(b *sheet.Loss) string {
	switch b.Kind {
	case sheet.Lift:
		return "Lift to the emitter"
	case sheet.InRun:
		if len(sc.S.Plan.Runs) > 1 {
			return "Friction in " + sc.runName(b.Index)
		}
		return "Friction in the supply line"
	case sheet.InFilter:
		return "Filter"
	case sheet.InDevices:
		return "Other devices at the supply"
	case sheet.InRegulator:
		return "Taken by the regulator"
	case sheet.InHeader:
		return "Friction in the header"
	case sheet.InRow:
		if sc.S.Plan.Header.Layout == plan.OneLine {
			return "Friction in the line"
		}
		if sc.S.Plan.Header.Layout == plan.Ring {
			return "Friction in the rows" // the way may lead through several
		}
		return "Friction in row " + strconv.Itoa(b.Index+1)
	case sheet.InFittings:
		return "Bends, tees, valves and barbs"
	case sheet.Needed:
		return "Needed by the emitter"
	case sheet.Reserve:
		return "Safety margin"
	case sheet.Spare:
		if b.Head < 0 {
			return "Short of the safety margin"
		}
		return "Beyond the safety margin"
	}
	return ""
}
