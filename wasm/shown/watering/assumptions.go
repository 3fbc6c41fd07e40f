package watering

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "watering.taken", Title: "Largest shot that a medium takes in, as a share of it",
			Values: []float64{taken}, Kind: unit.Share,
			Used:   "The section on the timer.",
			Source: source.Ref{Work: "handbooks", At: "the upper end of what is usual on coco", Standing: source.Memory},
		},
	}
}
