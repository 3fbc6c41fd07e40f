package demand

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/trade/climate"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "demand.mostFloor", Title: "Most floor that a plant is counted to use, over what it has at its crop's usual density",
			Values: []float64{mostFloor},
			Used:   "The water of plants that stand alone.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "demand.leastFloor", Title: "Least floor that a plant is counted to use, likewise",
			Values: []float64{leastFloor},
			Used:   "The water of crowded plants.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "demand.aside", Title: "How far plants reach from a row where there is no other",
			Values: []float64{aside}, Kind: unit.Length,
			Used:   "The floor of a plant.",
			Source: source.Ref{At: "half of the widest usual distance of single rows", Standing: source.Practice},
		},
		{
			Code: "demand.planted", Title: "Share of its full canopy that a crop has when it is planted out",
			Values: []float64{planted},
			Used:   "The water of young plants.",
			Source: source.Ref{Work: "handbooks, by the water of young plants", Standing: source.Memory},
		},
		{
			Code: "demand.rooted", Title: "Share of its full canopy that a crop has when it begins to grow fast",
			Values: []float64{rooted},
			Used:   "The water of young plants.",
			Source: source.Ref{Work: "handbooks, by the water of young plants", Standing: source.Memory},
		},
		{
			Code: "demand.sunnier", Title: "How far sunshine is on the way to a clear sky, on hot and record-hot days, and to an overcast one on cool days",
			Values: []float64{sunnier[climate.Hot], sunnier[climate.Record], -sunnier[climate.Cool]},
			Used:   "The water of those days, where the sunshine is known.",
			Source: source.Ref{Standing: source.Practice},
		},
	}
}
