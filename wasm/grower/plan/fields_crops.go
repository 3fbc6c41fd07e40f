package plan

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/trade/catalogue"
)

// traitFields declares what may be changed of a crop. The metric limits hold
// for all crops.
var traitFields = [catalogue.Traits]struct {
	name      string
	label     words.Text
	kind      unit.Kind
	low, high float64
}{
	catalogue.Spacing:  {"spacing", "Spacing in the row", unit.Length, 0.05, 3},
	catalogue.Crowd:    {"crowd", "Density of plants", unit.Crowd, 0.1, 200},
	catalogue.PerSlab:  {"per-slab", "Plants to a slab", unit.None, 1, 20},
	catalogue.Medium1:  {"medium", "Medium for each plant", unit.Volume, 0.1, 200},
	catalogue.Height:   {"height", "Height", unit.Length, 0.05, 8},
	catalogue.Emerge:   {"emerge", "Days until seedlings are up", unit.None, 1, 90},
	catalogue.InPlug:   {"plug", "Days in the plug", unit.None, 0, 200},
	catalogue.InBlock:  {"block", "Days in the block", unit.None, 0, 200},
	catalogue.Wait:     {"wait", "Days from planting out to the first harvest", unit.None, 1, 400},
	catalogue.Picking:  {"picking", "Weeks of harvest", unit.None, 0.1, 104},
	catalogue.KcIni:    {"kc-ini", "Crop coefficient, just planted", unit.None, 0.05, 2},
	catalogue.KcMid:    {"kc-mid", "Crop coefficient, grown", unit.None, 0.05, 2},
	catalogue.KcTied:   {"kc-tied", "Crop coefficient, grown and tied up", unit.None, 0.05, 2},
	catalogue.KcEnd:    {"kc-end", "Crop coefficient, at the end", unit.None, 0.05, 2},
	catalogue.Ini:      {"ini", "Days just planted", unit.None, 1, 400},
	catalogue.Dev:      {"dev", "Days until the canopy is full", unit.None, 1, 400},
	catalogue.Mid:      {"mid", "Days grown", unit.None, 1, 400},
	catalogue.Late:     {"late", "Days to the end", unit.None, 1, 400},
	catalogue.Young:    {"young", "Water a day, just planted", unit.Volume, 0.001, 20},
	catalogue.Grown:    {"grown", "Water a day, grown", unit.Volume, 0.001, 20},
	catalogue.SeedLow:  {"seed-low", "Seeds come up well from", unit.Temperature, 0, 45},
	catalogue.SeedHigh: {"seed-high", "Seeds come up well to", unit.Temperature, 0, 45},
	catalogue.Least:    {"least", "Suffers below", unit.Temperature, -20, 25},
	catalogue.Most:     {"most", "Suffers above", unit.Temperature, 10, 50},
}

// TraitName returns what the page calls a trait, and its kind.
func TraitName(t catalogue.Trait) (label string, kind unit.Kind) {
	return words.Say(traitFields[t].label), traitFields[t].kind
}

// The first numbers of a changed crop are which crop and its name; those of
// its traits follow.
const firstTrait = 3

var cropFields = changedCrops()

func changedCrops() []*Field {
	list := []*Field{
		choice(1, "of", "Crop", cropOptions, catalogue.FirstOwn,
			"One of the list, or a place for your own.", func(p *Plan, i int) *int { return &p.Crops[i].Of }),
		{ID: 2, Name: "name", Label: "Name", Type: Text, Max: 40, Help: "Empty to keep the name.",
			Text: func(p *Plan, i int) *string { return &p.Crops[i].Name }},
	}
	for t := range traitFields {
		d := &traitFields[t]
		f := number(firstTrait+t, d.name, d.label, d.kind, d.low, d.high, 0, "", func(p *Plan, i int) *float64 { return &p.Crops[i].Traits[t] })
		f.Empty, f.Default = true, Unset
		list = append(list, f)
	}
	return list
}
