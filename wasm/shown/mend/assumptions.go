package mend

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "mend.legible", Title: "Least change that shows on an ordinary gauge",
			Values: []float64{legible}, Kind: unit.Pressure,
			Used:   "The section on faults.",
			Source: source.Ref{At: "half of one of its marks", Standing: source.Practice},
		},
		{
			Code: "mend.metered", Title: "Least change of the flow that shows on a meter",
			Values: []float64{metered}, Kind: unit.Share,
			Used:   "The section on faults.",
			Source: source.Ref{Standing: source.Practice},
		},
	}
}
