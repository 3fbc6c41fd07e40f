package pipe

import (
	"math"

	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/trade/water"
)

// HoleDischarge is the discharge coefficient of a sharp-edged hole: textbooks
// give 0.60 to 0.62, from memory.
const HoleDischarge = 0.61

// HoleFlow returns the flow in m³/s out of a sharp-edged hole of diameter d m,
// under a head of h m, >= 0.
func HoleFlow(d, h float64) float64 {
	return HoleDischarge * math.Pi / 4 * d * d * math.Sqrt(2*water.Gravity*h)
}

// HoleFlowFormula is the formula "hole-flow".
var HoleFlowFormula = &formula.Formula{
	Name:   "hole-flow",
	Title:  "Flow out of a hole",
	Text:   "Q = 0.61 (π d²/4) √(2 g h)",
	Result: formula.Symbol{Letter: "Q", Meaning: "flow out of the hole", Kind: unit.Flow},
	In: []formula.Symbol{
		{Name: "diameter", Letter: "d", Meaning: "diameter of the hole", Kind: unit.Bore, Min: 1e-4, Max: 0.05},
		{Name: "head", Letter: "h", Meaning: "head of the water there", Kind: unit.Head, Min: 0, Max: 200},
	},
	Note:   "A sharp-edged hole that is small beside the tubing. A torn one differs.",
	Source: source.Ref{Work: "hydraulics textbooks, sharp-edged orifice", Standing: source.Memory},
	Eval:   func(in []float64) float64 { return HoleFlow(in[0], in[1]) },
}
