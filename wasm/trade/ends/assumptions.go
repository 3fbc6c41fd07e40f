package ends

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "ends.bores", Title: "Bore that is free within threads of 1/2, 3/4, 1, 1-1/4 and 1-1/2 in",
			Values: bores[:], Kind: unit.Bore,
			Used:   "The loss in the parts between the supply and the supply line.",
			Source: source.Ref{At: "male ones of plastic; makers differ by a tenth", Standing: source.Practice},
		},
		{
			Code: "ends.Seals", Title: "Pressure that joints carry for long: tape, washer, one clamp, two clamps, collar, ring and nut, ring inside, cement",
			Values: []float64{Seals[Tape].Pressure, Seals[Washer].Pressure, Seals[OneClamp].Pressure, Seals[TwoClamps].Pressure, Seals[Collar].Pressure, Seals[Nut].Pressure, Seals[Ring].Pressure, Seals[Cement].Pressure}, Kind: unit.Pressure,
			Used:   "Which parts may stand between the supply and the tubing.",
			Source: source.Ref{At: "of plastic; makers print their own", Standing: source.Practice},
		},
		{
			Code: "ends.Fits", Title: "How far a barb may be from the bore of its tubing, or a grip from its outside",
			Values: []float64{Fits}, Kind: unit.Bore,
			Used:   "Which fittings hold which tubing.",
			Source: source.Ref{At: "less than lies between two sizes of drip tubing", Standing: source.Practice},
		},
	}
}
