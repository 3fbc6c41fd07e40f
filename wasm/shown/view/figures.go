package view

import (
	"slices"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/parts"
)

// budget says what the head of the supply is spent on. Its lines add up.
func (sc *scene) budget() {
	z := sc.zone
	if z == nil || len(z.Budget) == 0 {
		return
	}
	given, lines := z.Head, z.Budget
	if sc.s.Plan.Supply.Kind == plan.GravityTank && lines[0].Kind == sheet.Lift && lines[0].Head < 0 {
		given -= lines[0].Head // a tank gives what its water falls
		lines = lines[1:]
	}
	sc.html(`<h3>`).text("Where the " + sc.head(given) + " go").html(`</h3>`)
	t := sc.table("Where the head of the supply goes", "Where", "#Pressure", "#Head", "#Share")
	sum := 0.0
	for i := range lines {
		b := &lines[i]
		sum += b.Head
		share := "–"
		if given > 0 {
			share = sc.amount(unit.Share, b.Head/given)
		}
		t.row(sc.lossName(b), sc.amount(unit.Pressure, b.Head*sc.weight), sc.amount(unit.Head, b.Head), share)
	}
	by := "by the " + sc.sourceName()
	if sc.regulated() {
		by = "behind the regulator"
	}
	t.total("Given "+by, sc.amount(unit.Pressure, sum*sc.weight), sc.amount(unit.Head, sum), "")
	t.end()
	if words := sc.regulatorFirst(); words != "" {
		sc.tag("p", words[1:])
	}
	sc.softest(lines)
}

// regulated says whether a regulator follows a pump or a tap, so that the head
// that zones are given is that behind it.
func (sc *scene) regulated() bool {
	l := sc.s.Layout
	return l != nil && l.Curve != nil && sc.s.Plan.Supply.Regulator > 0
}

// regulatorFirst says on which side it errs that package layout puts a regulator
// before what stands before it in truth; nothing where there is no such thing.
func (sc *scene) regulatorFirst() string {
	if sc.regulated() && (sc.s.Layout.FilterLink >= 0 || sc.s.Plan.Supply.Devices > 0) {
		return " Counted as if the regulator stood before the filter: the safe side."
	}
	return ""
}

// softest warns where the answer hangs on what nobody knows well: where
// fittings take more than there is beyond the safety margin, or than is missing.
func (sc *scene) softest(lines []sheet.Loss) {
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
		sc.tag("p", "Fittings take "+sc.head(fittings)+", more than the "+sc.head(spare)+words+
			", so the answer hangs on their coefficients and on how far barbs narrow the tubing, which the method page lists with their standing: take fittings with a wide bore, or keep a larger safety margin.")
	}
}

func (sc *scene) lossName(b *sheet.Loss) string {
	switch b.Kind {
	case sheet.Lift:
		return "Lift to the emitter"
	case sheet.InRun:
		if len(sc.s.Plan.Runs) > 1 {
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
		if sc.s.Plan.Header.Layout == plan.OneLine {
			return "Friction in the line"
		}
		if sc.s.Plan.Header.Layout == plan.Ring {
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

// evenness says how alike the plants' water is, and how true each emitter is to
// what it is made to give: one where all emitters are of a kind.
func (sc *scene) evenness() {
	z := sc.least()
	if z == nil || z.Open == 0 {
		sc.tag("p", "There is nothing to compare until emitters open.")
		return
	}
	e, made := &z.Alike, &z.Even
	words := "How alike the plants' water is"
	if len(sc.s.Zones) > 1 {
		words += " in " + sc.zoneName(z) + ", where "
		if z == sc.zone {
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
	sc.tag("p", words+" EU counts the difference between one emitter and the next as they are made. 100 % would be the same everywhere.")
	columns := []string{"Measure", "#Plants alike", "#True to make", "What it says"}
	if !z.Mixed {
		columns = slices.Delete(columns, 2, 3)
	}
	t := sc.table("Measures of evenness", columns...)
	row := func(name string, alike, true float64, says string) {
		cells := []string{name, sc.amount(unit.Share, alike), sc.amount(unit.Share, true), says}
		if !z.Mixed {
			cells = slices.Delete(cells, 2, 3)
		}
		t.row(cells...)
	}
	row("Emission uniformity, EU", e.EU, made.EU, "The least flow against the mean, with the spread of manufacture. Your limit is "+sc.amount(unit.Share, sc.s.Plan.Limits.Evenness)+" or more.")
	row("Distribution uniformity, DU", e.DU, made.DU, "The mean of the lowest quarter of plants against the mean of all.")
	row("Christiansen's coefficient, CU", e.CU, made.CU, "100 % less the mean deviation.")
	row("Statistical uniformity, Us", e.Us, made.Us, "100 % less the coefficient of variation.")
	t.end()

	sc.html(`<dl class="figures">`)
	sc.figure("Flow per plant", sc.amount(unit.EmitterFlow, e.Mean), "mean of "+count(e.N, "plant", "plants"))
	sc.figure("Least", sc.amount(unit.EmitterFlow, z.Least), "of any plant")
	if round, _ := sc.s.Round(); round > 0 {
		litre := "one litre"
		if sc.sys == unit.US {
			litre = "one litre (0.26 gal)"
		}
		sc.figure("Time for "+litre, sc.amount(unit.Duration, round), "until the last plant has it")
	}
	sc.html(`</dl>`)
	sc.needs()
	sc.working()
}

// least is the zone whose plants are least alike, of several the critical one.
func (sc *scene) least() *sheet.ZoneResult {
	z := sc.zone
	for i := range sc.s.Zones {
		if v := &sc.s.Zones[i]; v.Open > 0 && v.Alike.EU < z.Alike.EU-1e-6 {
			z = v
		}
	}
	return z
}

// needs sets what each row gets beside what its crop takes up, where rows that
// are watered together have different emitters.
func (sc *scene) needs() {
	if sc.s.Water == nil {
		return
	}
	t := sc.table("What each row gets, and what its crop needs", "Row", "#Flow per plant, "+sc.symbol(unit.EmitterFlow),
		"#A plant takes up at most, "+sc.symbol(unit.PlantWater)+" a typical day", "#So it runs, to give that")
	for i := range sc.s.Water {
		w := &sc.s.Water[i]
		need, long := "–", "–"
		if w.Need > 0 {
			need = sc.bare(unit.PlantWater, w.Need)
			long = sc.amount(unit.Duration, w.Need/w.Mean)
		}
		t.row("Row "+strconv.Itoa(i+1), sc.bare(unit.EmitterFlow, w.Mean), need, long)
	}
	t.end()
}

// speeds compares the water's speeds with the limit.
func (sc *scene) speeds() {
	if len(sc.s.Zones) == 0 {
		sc.tag("p", "Nothing runs yet.")
		return
	}
	limit := sc.s.Plan.Limits.Speed
	sc.tag("p", "Slow water costs little pressure. Fast water costs much, and causes water hammer when a valve shuts.")
	t := sc.table("Greatest speeds of the water", "Where", "#Speed", "#Limit", "Verdict")
	for i := range sc.s.Zones {
		z := &sc.s.Zones[i]
		zone := ""
		if len(sc.s.Zones) > 1 {
			zone = ", zone " + strconv.Itoa(z.Zone)
		}
		for _, r := range [...]struct {
			name    string
			v       float64
			limited bool
		}{{"Supply line", z.LeadSpeed, true}, {"Header", z.HeaderSpeed, true}, {"Rows", z.RowSpeed, false}} {
			if r.name == "Header" && sc.s.Plan.Header.Layout == plan.OneLine {
				continue
			}
			most, verdict := "–", "no limit set"
			if r.limited {
				most, verdict = sc.amount(unit.Speed, limit), "within"
				if r.v > limit {
					verdict = "too fast"
				}
			}
			t.row(r.name+zone, sc.amount(unit.Speed, r.v), most, verdict)
		}
	}
	t.end()
}

// GroupNames are the headings of the list of parts, by [parts.Group].
var GroupNames = [...]string{
	parts.Tubing:        "Tubing",
	parts.Fittings:      "Fittings",
	parts.EmittersGroup: "Emitters",
	parts.WaterPath:     "Water path",
	parts.Growing:       "Growing",
	parts.Tools:         "Tools",
}

// parts lists what to buy, by group.
func (sc *scene) parts() {
	if len(sc.s.Parts) == 0 {
		sc.tag("p", "There is nothing to buy yet.")
		return
	}
	sc.tag("p", "Counted from the layout above, spares included. Check each thread against the part it meets before you pay.")
	t := sc.table("Parts to buy", "Part, and where its number comes from", "#Number or length", "#Spare in it")
	last := -1
	for i := range sc.s.Parts {
		p := &sc.s.Parts[i]
		if int(p.Group) != last {
			last = int(p.Group)
			if last < len(GroupNames) {
				t.group(GroupNames[last])
			}
		}
		n, spare := strconv.Itoa(p.Count), ""
		if p.Length > 0 {
			n = sc.amount(unit.Length, p.Length)
			if p.Count > 0 {
				n = strconv.Itoa(p.Count) + " × " + n
			}
		}
		if p.Spare > 0 {
			spare = strconv.Itoa(p.Spare)
		}
		t.explained(p.Name, p.Why, n, spare)
	}
	t.end()
}
