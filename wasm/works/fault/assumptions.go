package fault

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "fault.HoleBore", Title: "Diameter of the hole that an emitter leaves",
			Values: []float64{HoleBore}, Kind: unit.Bore,
			Used:   "The faults where an emitter has come out.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "fault.Legible", Title: "Least change that shows on an ordinary gauge",
			Values: []float64{Legible}, Kind: unit.Pressure,
			Used:   "The section on faults.",
			Source: source.Ref{At: "half of one of its marks", Standing: source.Practice},
		},
		{
			Code: "fault.Metered", Title: "Least change of the flow that shows on a meter",
			Values: []float64{Metered}, Kind: unit.Share,
			Used:   "The section on faults.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "fault.worn", Title: "How a supply wears",
			Rule:   "It loses the same share of its head at every flow.",
			Used:   "The loss of head at which the first emitter leaves its range.",
			Source: source.Ref{Standing: source.Practice},
		},
	}
}
