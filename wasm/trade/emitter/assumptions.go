package emitter

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "emitter.nearZero", Title: "Share of the reference head below which an emitter's flow is a straight line to zero",
			Values: []float64{nearZero}, Kind: unit.Share,
			Used:   "Emitters that drip at next to no pressure.",
			Source: source.Ref{At: "a root has no slope at 0 that an iteration could follow", Standing: source.Choice},
		},
		{
			Code: "emitter.Emitter.Open", Title: "A compensating emitter that is open, below the lowest of its range",
			Rule:   "The flow goes with the root of the head, as through a plain hole, and meets the nominal flow at the lowest end of its range.",
			Used:   "The flow at low pressure, and with it which emitters open and how lines fill.",
			Source: source.Ref{Standing: source.Practice},
		},
	}
}
