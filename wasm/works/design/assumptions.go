package design

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "design.MostHead", Title: "Greatest head that is asked of a supply",
			Values: []float64{MostHead}, Kind: unit.Head,
			Used:   "Remedies and designs.",
			Source: source.Ref{At: "the strongest pump that a plan takes", Standing: source.Choice},
		},
		{
			Code: "design.Through", Title: "A pump, or a tap, of which only the point that it must give is known",
			Rule:   "A parabola through that point, at four fifths of its shut-off head, about where small pumps are meant to run.",
			Used:   "Pumps that the answer and the designs ask for.",
			Source: source.Ref{Standing: source.Practice},
		},
	}
}
