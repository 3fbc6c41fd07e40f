package water

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/ground/source"
)

// Oxygen returns how much oxygen fresh water holds in contact with air at
// 101.325 kPa, in mg/L, at t °C, 0 to 40. Feed holds a little less.
func Oxygen(t float64) float64 {
	k := 1 / (t + 273.15)
	return numeric.Exp(-139.34411 + k*(1.575701e5+k*(-6.642308e7+k*(1.243800e10-k*8.621949e11))))
}

var oxygenFormula = &formula.Formula{
	Name:   "dissolved-oxygen",
	Title:  "Oxygen that water holds",
	Text:   "ln C = -139.34411 + 1.575701e5/T - 6.642308e7/T² + 1.243800e10/T³ - 8.621949e11/T⁴, T = t + 273.15",
	Result: formula.Symbol{Letter: "C", Meaning: "oxygen in water that the air keeps full", Unit: "mg/L"},
	In:     []formula.Symbol{{Name: "temperature", Letter: "t", Meaning: "temperature of the water", Kind: temperature.Kind, Min: 0, Max: 40}},
	Note:   "Fresh water at sea level: salts and height above the sea leave less.",
	Source: source.Ref{Work: "APHA, Standard Methods for the Examination of Water and Wastewater (1985)", At: "polynomial for dissolved oxygen"},
	Eval:   func(in []float64) float64 { return Oxygen(in[0]) },
}
