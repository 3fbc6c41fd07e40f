package view

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "view.legible", Title: "Least change that shows on an ordinary gauge",
			Values: []float64{legible}, Kind: unit.Pressure,
			Used:   "The section on faults.",
			Source: source.Ref{At: "half of one of its marks", Standing: source.Practice},
		},
		{
			Code: "view.metered", Title: "Least change of the flow that shows on a meter",
			Values: []float64{metered}, Kind: unit.Share,
			Used:   "The section on faults.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "view.taken", Title: "Largest shot that a medium takes in, as a share of it",
			Values: []float64{taken}, Kind: unit.Share,
			Used:   "The section on the timer.",
			Source: source.Ref{Work: "handbooks", At: "the upper end of what is usual on coco", Standing: source.Memory},
		},
		{
			Code: "view.luck", Title: "Standard deviations that a plant must be short more often than the mean before it is named",
			Values: []float64{luck},
			Used:   "The section on emitters that differ.",
			Source: source.Ref{Standing: source.Choice},
		},
	}
}
