package flush

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "flush.Wanted", Title: "Least speed at an open end that carries dirt out",
			Values: []float64{Wanted}, Kind: unit.Speed,
			Used:   "The section on flushing, and which designs are offered.",
			Source: source.Ref{Work: "ASABE EP405 and NRCS conservation practice standard 441", At: "1 ft/s", Standing: source.Memory},
		},
		{
			Code: "flush.Mouth", Title: "Loss coefficient of an end that is open",
			Values: []float64{Mouth},
			Used:   "The speed at an end that is opened to flush it, and the flow out of an end that has come off.",
			Source: source.Ref{At: "the velocity head that leaves, and as much again, since a hand holds the end into a can: the safe side", Standing: source.Choice},
		},
	}
}
