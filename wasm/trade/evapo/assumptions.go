package evapo

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "evapo.UsualWind", Title: "Wind at 2 m where none is typed",
			Values: []float64{UsualWind}, Kind: unit.Wind,
			Used:   "The evaporative demand of a day of which more than the temperatures is known.",
			Source: source.Ref{Work: source.FAO56, At: "chapter 3"},
		},
		{
			Code: "evapo.Inland", Title: "Coefficient of radiation from temperatures",
			Values: []float64{Inland},
			Used:   "Radiation at the ground where the sunshine is not known.",
			Source: source.Ref{Work: source.FAO56, At: "equation 50, far from the sea; by the sea it names 0.19, which is not used"},
		},
	}
}
