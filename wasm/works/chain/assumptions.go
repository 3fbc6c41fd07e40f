package chain

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "chain.UnionLoss", Title: "Loss coefficient of a threaded joint, on the velocity within it",
			Values: []float64{UnionLoss},
			Used:   "Each part between the supply and the supply line, besides a contraction and an expansion where it is narrower than the supply line.",
			Source: source.Ref{Work: "Munson, Young & Okiishi, Fundamentals of Fluid Mechanics", At: "table 8.2, threaded union", Standing: source.Memory},
		},
		{
			Code: "chain.Chains.Loss", Title: "Which parts are counted",
			Rule:   "Those that are listed, and of each gauge the way straight through its tee. Of a pump those that it may come to with another pump, or with a regulator, if they lose more. Parts between two kinds of tubing behind the supply line count as the fitting that they stand at.",
			Used:   "The head that is lost before the supply line.",
			Source: source.Ref{At: "which errs on the safe side", Standing: source.Choice},
		},
		{
			Code: "chain.Sight", Title: "Height of still water up to which a clear hose is listed and no gauge",
			Values: []float64{Sight}, Kind: unit.Head,
			Used:   "The list of parts, and the gauges at the supply.",
			Source: source.Ref{At: "a hose shows so little better", Standing: source.Practice},
		},
	}
}
