package marks

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{{
		Code: "marks.Lath", Title: "Longest lath that one person lays along a row",
		Values: []float64{Lath}, Kind: unit.Length,
		Used:   "The story stick.",
		Source: source.Ref{Standing: source.Practice},
	}}
}
