package evapo

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// PlantWater returns what one plant takes up in a day, in m³: reference is the
// depth of water in m, cover, canopy and adjust are shares of one, kc is the crop
// coefficient and area the floor of the plant in m².
func PlantWater(reference, cover, kc, canopy, area, adjust float64) float64 {
	return reference * cover * kc * canopy * area * adjust
}

// PlantWaterFormula is the formula "plant-water".
var PlantWaterFormula = &formula.Formula{
	Name:   "plant-water",
	Title:  "Water that a plant takes up in a day",
	Text:   "V = ETo t Kc c A m, a litre for each mm and m²",
	Result: formula.Symbol{Letter: "V", Meaning: "water for a plant and day", Kind: unit.PlantWater},
	In: []formula.Symbol{
		{Name: "reference", Letter: "ETo", Meaning: "reference evapotranspiration of the day, in the open", Kind: unit.Evaporation, Max: 0.03},
		{Name: "cover", Letter: "t", Meaning: "light let through by the cover", Kind: unit.Share, Max: 1},
		{Name: "coefficient", Letter: "Kc", Meaning: "crop coefficient", Min: 0.05, Max: 2},
		{Name: "canopy", Letter: "c", Meaning: "share of the canopy that has grown", Kind: unit.Share, Max: 1},
		{Name: "area", Letter: "A", Meaning: "floor of the plant", Kind: unit.Area, Max: 20},
		{Name: "adjust", Letter: "m", Meaning: "correction from your drain readings", Kind: unit.Share, Max: 4},
	},
	Note:   "The coefficients are for fields in the open. Under cover the wind is less and the air damper: measure, and correct the last factor.",
	Source: source.Ref{Work: source.FAO56, At: "equation 58; scaled by cover, canopy and floor", Standing: source.Derived},
	Eval:   func(in []float64) float64 { return PlantWater(in[0], in[1], in[2], in[3], in[4], in[5]) },
}
