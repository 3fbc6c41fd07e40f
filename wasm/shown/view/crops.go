package view

import (
	"slices"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
)

// crops says which method suits which crop, and what is known of each.
func (sc *scene) crops() {
	p := sc.s.Plan
	var list []int
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
	other := ""
	for _, crop := range list {
		if fit, _ := catalogue.Crops[crop].Suits(catalogue.Drip); fit != catalogue.Best {
			if other != "" {
				other += ", "
			}
			other += p.CropName(crop)
		}
	}
	if other == "" {
		sc.tag("p", "Drip on a medium, as planned here, is the best start for every crop that you grow.")
	} else {
		sc.tag("p", "Drip works for all that you grow, but another method is the usual start for: "+other+". Keep them on drip if they are few; one system is less work than two.")
	}
	t := sc.table("Methods, crop by crop", "Method, and why", "Suits the crop")
	for _, crop := range list {
		t.group(unit.Capital(p.CropName(crop)))
		for m := range catalogue.Method(catalogue.Methods) {
			fit, why := catalogue.Crops[crop].Suits(m)
			t.explained(unit.Capital(catalogue.MethodNames[m]), why, catalogue.FitnessNames[fit])
		}
	}
	t.end()
	sc.tag("p", "Common practice, no source, but for lettuce and basil, which FAO Fisheries and Aquaculture Technical Paper 589 (2014) has in film and deep water.")
	sc.fold("What is known of these crops, and from where")
	sc.tag("p", "Change any of these under Crops of your own, or describe a crop that is not in the list.")
	k := sc.table("Numbers of the crops", "What", "#Here", "Where it comes from")
	for _, crop := range list {
		c := &catalogue.Crops[crop]
		k.group(unit.Capital(p.CropName(crop)))
		for i := range catalogue.Traits {
			trait := catalogue.Trait(i)
			label, kind := plan.TraitName(trait)
			v, from := c.Of(trait), c.Ref(trait).String()
			if own, edited := p.Edited(crop, trait); edited {
				v, from = own, "yours"
			} else if v == 0 && trait != catalogue.Least {
				continue // the table has none
			}
			k.row(label, sc.amount(kind, v), from)
		}
		if _, how := c.Emergence(p.Season.Seedbed); how != catalogue.Bought {
			temps, days := c.Tested()
			for i, d := range days {
				if d == 0 {
					continue
				}
				n := strconv.Itoa(int(d))
				if d < 0 {
					n = "none"
				}
				k.row("Days until seedlings are up at "+sc.amount(unit.Temperature, temps[i]), n, c.SeedRef().String())
			}
		}
	}
	k.end()
	sc.html(`</details>`)
}
