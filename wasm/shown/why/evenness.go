package why

import (
	"slices"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/wording"
)

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
	sc.Table("Measures of evenness", columns...).Rows(func(t *block.Table) {
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
	})

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
	sc.Table("What each row gets, and what its crop needs", "Row", "#Flow per plant, "+sc.Symbol(unit.EmitterFlow),
		"#A plant takes up at most, "+sc.Symbol(unit.PlantWater)+" a typical day", "#So it runs, to give that").Rows(func(t *block.Table) {
		for i := range sc.S.Water {
			w := &sc.S.Water[i]
			need, long := "–", "–"
			if w.Need > 0 {
				need = sc.Bare(unit.PlantWater, w.Need)
				long = sc.Amount(unit.Duration, w.Need/w.Mean)
			}
			t.Row("Row "+strconv.Itoa(i+1), sc.Bare(unit.EmitterFlow, w.Mean), need, long)
		}
	})
}
