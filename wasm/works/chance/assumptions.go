package chance

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "chance.Enough", Title: "Share of the mean below which a plant is short of water",
			Values: []float64{Enough}, Kind: unit.Share,
			Used:   "The number of plants that are short because emitters differ.",
			Source: source.Ref{Standing: source.Choice},
		},
		{
			Code: "chance.Luck", Title: "Standard deviations that a plant must be short more often than the mean before it is named",
			Values: []float64{Luck},
			Used:   "The section on emitters that differ.",
			Source: source.Ref{Standing: source.Choice},
		},
		{
			Code: "chance.Many", Title: "Share of plants that are short from which on something is to be done about it",
			Values: []float64{Many}, Kind: unit.Share,
			Used:   "The section on emitters that differ.",
			Source: source.Ref{Standing: source.Choice},
		},
		{
			Code: "chance.Draws", Title: "Trials of each zone's emitters",
			Values: []float64{Draws},
			Used:   "The number of plants that are short; large plans have fewer, and the page says how many.",
			Source: source.Ref{Standing: source.Choice},
		},
		{
			Code: "chance.Seed", Title: "Seed of the random numbers",
			Values: []float64{Seed},
			Used:   "The same plan gives the same numbers.",
			Source: source.Ref{Standing: source.Choice},
		},
	}
}
