package surge

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "surge.softWall", Title: "Short-term elastic modulus of soft drip tubing",
			Values: []float64{softWall / 1e9}, Unit: "GPa",
			Used:   "The speed of a pressure surge, and how long the lines take to swell.",
			Source: source.Ref{Work: "tables of plastics", At: "0.2 to 0.3 GPa", Standing: source.Memory},
		},
		{
			Code: "surge.stiffWall", Title: "Short-term elastic modulus of PE pipe, and of measured tubing",
			Values: []float64{stiffWall / 1e9}, Unit: "GPa",
			Used:   "The speed of a pressure surge, and how long the lines take to swell. A stiffer wall makes a stronger surge: the safe side where the kind is not known.",
			Source: source.Ref{Work: "tables of plastics", At: "about 1 GPa", Standing: source.Memory},
		},
		{
			Code: "surge.unknownRatio", Title: "Outside diameter over wall of measured tubing",
			Values: []float64{unknownRatio},
			Used:   "The speed of a surge in it.",
			Source: source.Ref{At: "that of SDR 11, thicker than most: the safe side", Standing: source.Choice},
		},
		{
			Code: "surge.Of", Title: "The pressure surge of a valve that shuts at once",
			Rule:   "The surge is added to the pressure at rest, not to the lower one of flowing water, and the rating is not stretched for short surges. For the closing time all the water from the source on is taken to move as fast as in the stretch.",
			Used:   "The section on pressure surges.",
			Source: source.Ref{At: "the safe side", Standing: source.Choice},
		},
	}
}
