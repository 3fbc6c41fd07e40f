package why

import (
	"slices"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/wording"
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
	t := sc.Table("Where the head of the supply goes", "Where", "#Pressure", "#Head", "#Share")
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
	t.End()
	if errs := sc.RegulatorFirst(); errs != "" {
		sc.Tag("p", errs)
	}
	sc.softest(lines)
}

// softest warns where the answer hangs on what nobody knows well: where
// fittings take more than there is beyond the safety margin, or than is missing.
func (sc part) softest(lines []sheet.Loss) {
	var fittings, spare float64
	for i := range lines {
		switch lines[i].Kind {
		case sheet.InFittings:
			fittings = lines[i].Head
		case sheet.Spare:
			spare = lines[i].Head
		}
	}
	words := " beyond the safety margin"
	if spare < 0 {
		spare, words = -spare, " that is missing"
	}
	if fittings > spare {
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
	}
	if b.Head < 0 {
		return "Short of the safety margin"
	}
	return "Beyond the safety margin"
}

// Evenness says how alike the plants' water is, and how true each emitter is to
// what it is made to give: one where all emitters are of a kind.
func Evenness(the *scene.Scene) {
	sc := part{the}
	z := sc.S.LeastAlike()
	if z == nil || z.Open == 0 {
		sc.Tag("p", "There is nothing to compare until emitters open.")
		return
	}
	e, made := &z.Alike, &z.Even
	words := "How alike the plants' water is"
	if len(sc.S.Zones) > 1 {
		words += " in " + sc.ZoneName(z) + ", where "
		if z == sc.Zone {
			words += "the weakest emitter stands"
		} else {
			words += "they are least alike"
		}
	}
	if z.Mixed {
		words += "; and how true each emitter is to what it is made to give, since the rows have different ones."
	} else {
		words += ". All plants here have the same emitters, so this is also how true each is to what it is made to give."
	}
	sc.Tag("p", words+" EU counts the difference between one emitter and the next as they are made. 100 % would be the same everywhere.")
	columns := []string{"Measure", "#Plants alike", "#True to make", "What it says"}
	if !z.Mixed {
		columns = slices.Delete(columns, 2, 3)
	}
	t := sc.Table("Measures of evenness", columns...)
	row := func(name string, alike, true float64, says string) {
		cells := []string{name, sc.Amount(unit.Share, alike), sc.Amount(unit.Share, true), says}
		if !z.Mixed {
			cells = slices.Delete(cells, 2, 3)
		}
		t.Row(cells...)
	}
	row("Emission uniformity, EU", e.EU, made.EU, "The least flow against the mean, with the spread of manufacture. Your limit is "+sc.Amount(unit.Share, sc.S.Plan.Limits.Evenness)+" or more.")
	row("Distribution uniformity, DU", e.DU, made.DU, "The mean of the lowest quarter of plants against the mean of all.")
	row("Christiansen's coefficient, CU", e.CU, made.CU, "100 % less the mean deviation.")
	row("Statistical uniformity, Us", e.Us, made.Us, "100 % less the coefficient of variation.")
	t.End()

	sc.HTML(`<dl class="figures">`)
	sc.Figure("Flow per plant", sc.Amount(unit.EmitterFlow, e.Mean), "mean of "+wording.Count(e.N, "plant", "plants"))
	sc.Figure("Least", sc.Amount(unit.EmitterFlow, z.Least), "of any plant")
	if round, _ := sc.S.Round(); round > 0 {
		litre := "one litre"
		if sc.Sys == unit.US {
			litre = "one litre (0.26 gal)"
		}
		sc.Figure("Time for "+litre, sc.Amount(unit.Duration, round), "until the last plant has it")
	}
	sc.HTML(`</dl>`)
	sc.needs()
	sc.working()
}

// needs sets what each row gets beside what its crop takes up, where rows that
// are watered together have different emitters.
func (sc part) needs() {
	if sc.S.Water == nil {
		return
	}
	t := sc.Table("What each row gets, and what its crop needs", "Row", "#Flow per plant, "+sc.Symbol(unit.EmitterFlow),
		"#A plant takes up at most, "+sc.Symbol(unit.PlantWater)+" a typical day", "#So it runs, to give that")
	for i := range sc.S.Water {
		w := &sc.S.Water[i]
		need, long := "–", "–"
		if w.Need > 0 {
			need = sc.Bare(unit.PlantWater, w.Need)
			long = sc.Amount(unit.Duration, w.Need/w.Mean)
		}
		t.Row("Row "+strconv.Itoa(i+1), sc.Bare(unit.EmitterFlow, w.Mean), need, long)
	}
	t.End()
}

// Speeds compares the water's speeds with the limit.
func Speeds(the *scene.Scene) {
	sc := part{the}
	if len(sc.S.Zones) == 0 {
		sc.Tag("p", "Nothing runs yet.")
		return
	}
	limit := sc.S.Plan.Limits.Speed
	sc.Tag("p", "Slow water costs little pressure. Fast water costs much, and causes water hammer when a valve shuts.")
	t := sc.Table("Greatest speeds of the water", "Where", "#Speed", "#Limit", "Verdict")
	for i := range sc.S.Zones {
		z := &sc.S.Zones[i]
		zone := ""
		if len(sc.S.Zones) > 1 {
			zone = ", zone " + strconv.Itoa(z.Zone)
		}
		for _, r := range [...]struct {
			name    string
			v       float64
			limited bool
		}{{"Supply line", z.LeadSpeed, true}, {"Header", z.HeaderSpeed, true}, {"Rows", z.RowSpeed, false}} {
			if r.name == "Header" && sc.S.Plan.Header.Layout == plan.OneLine {
				continue
			}
			most, verdict := "–", "no limit set"
			if r.limited {
				most, verdict = sc.Amount(unit.Speed, limit), "within"
				if r.v > limit {
					verdict = "too fast"
				}
			}
			t.Row(r.name+zone, sc.Amount(unit.Speed, r.v), most, verdict)
		}
	}
	t.End()
}
