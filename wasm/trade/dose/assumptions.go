package dose

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "dose.shortest", Title: "Least time between sunrise and sunset over which water is spread",
			Values: []float64{shortest / 3600}, Kind: unit.None, Unit: "h",
			Used:   "Shots near a pole in winter.",
			Source: source.Ref{Standing: source.Choice},
		},
		{
			Code: "dose.Sunlit.Share", Title: "Water that plants take up over the day",
			Rule:   "In step with the radiation above the air, by the sine of the sun's altitude, and none at night.",
			Used:   "When shots are due.",
			Source: source.Ref{At: "a clear day keeps to it, clouds do not", Standing: source.Choice},
		},
	}
}
