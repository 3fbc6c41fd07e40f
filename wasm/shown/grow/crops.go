package grow

import (
	"slices"
	"strconv"

	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/trade/catalogue"
)

// Crops says which method suits which crop, and what is known of each.
func Crops(the *scene.Scene) {
	sc := part{the}
	p := sc.S.Plan
	list := grown(p)
	other := others(p)
	if len(other) == 0 {
		sc.Say("p", "Drip on a medium, as planned here, is the best start for every crop that you grow.")
	} else {
		sc.Say("p", "Drip works for all that you grow, but another method is the usual start for: {crops}. Keep them on drip if they are few; one system is less work than two.", words.List(other...))
	}
	sc.Table(words.Say("Methods, crop by crop"), words.Say("Method, and why"), words.Say("Suits the crop")).Rows(func(t *block.Table) {
		for _, crop := range list {
			t.Group(unit.Capital(p.CropName(crop)))
			for m := range catalogue.Method(catalogue.Methods) {
				fit, why := catalogue.Crops[crop].Suits(m)
				because := words.Say(why)
				if ref := catalogue.Crops[crop].SuitsRef(m); ref.Standing != source.Practice {
					because = words.Sentences(because, words.Say("Source: {source}.", ref.String()))
				}
				t.Explained(words.Say(catalogue.MethodNames[m]), because, words.Say(catalogue.FitnessNames[fit]))
			}
		}
	})
	sc.Say("p", "Where no source is named: common practice, no source.")
	sc.Fold(words.Say("What is known of these crops, and from where"), func() {
		sc.Say("p", "Change any of these under Crops of your own, or describe a crop that is not in the list.")
		sc.Table(words.Say("Numbers of the crops"), words.Say("What"), block.Figures(words.Say("Here")), words.Say("Where it comes from")).Rows(func(k *block.Table) {
			for _, crop := range list {
				c := &catalogue.Crops[crop]
				k.Group(unit.Capital(p.CropName(crop)))
				for i := range catalogue.Traits {
					trait := catalogue.Trait(i)
					label, kind := plan.TraitName(trait)
					v, from := c.Of(trait), c.Ref(trait).String()
					if own, edited := p.Edited(crop, trait); edited {
						v, from = own, words.Say("yours")
					} else if v == 0 && trait != catalogue.Least {
						continue // the table has none
					}
					k.Row(label, sc.Amount(kind, v), from)
				}
				if _, how := c.Emergence(p.Season.Seedbed); how != catalogue.Bought {
					temps, days := c.Tested()
					for i, d := range days {
						if d == 0 {
							continue
						}
						n := strconv.Itoa(int(d))
						if d < 0 {
							n = words.Say("none")
						}
						k.Row(words.Say("Days until seedlings are up at {temperature}", sc.Amount(unit.Temperature, temps[i])), n, c.SeedRef().String())
					}
				}
			}
		})
	})
}

// grown are the crops of a plan, as they come.
func grown(p *plan.Plan) (list []int) {
	note := func(crop int) {
		if !slices.Contains(list, crop) {
			list = append(list, crop)
		}
	}
	for i := range p.Rows {
		note(p.Rows[i].Crop)
	}
	for i := range p.Plantings {
		note(p.Plantings[i].Crop)
	}
	return list
}

// others are those of them that are usually grown by another method than drip.
func others(p *plan.Plan) (names []string) {
	for _, crop := range grown(p) {
		if fit, _ := catalogue.Crops[crop].Suits(catalogue.Drip); fit != catalogue.Best {
			names = append(names, p.CropName(crop))
		}
	}
	return names
}
