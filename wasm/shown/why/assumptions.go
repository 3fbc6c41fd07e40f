package why

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "why.luck", Title: "Standard deviations that a plant must be short more often than the mean before it is named",
			Values: []float64{luck},
			Used:   "The section on emitters that differ.",
			Source: source.Ref{Standing: source.Choice},
		},
	}
}
