package filter

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "filter.lowShare", Title: "Share of the rated flow below which a filter's loss is a straight line",
			Values: []float64{lowShare},
			Used:   "Less than a millionth of the loss at the rated flow.",
			Source: source.Ref{At: "so that it has a slope at no flow", Standing: source.Choice},
		},
		{
			Code: "filter.Filter.Loss", Title: "A filter's loss",
			Rule:   "By the square of the flow, from the loss at the rated flow: see the formula for the head lost in a filter.",
			Used:   "The loss of the filter, clean and fouled.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "filter.Share", Title: "Opening of a filter, as a share of the emitter's smallest passage",
			Values: []float64{Share},
			Used:   "The opening that the page advises.",
			Source: source.Ref{Work: source.NEH, At: "a tenth", Standing: source.Memory},
		},
		{
			Code: "filter.Loosest", Title: "Opening from which a filter is called too coarse, as a share of the smallest passage",
			Values: []float64{Loosest},
			Used:   "The finding that a filter is too coarse.",
			Source: source.Ref{Work: "texts on drip irrigation", At: "a seventh; makers allow up to a quarter", Standing: source.Memory},
		},
		{
			Code: "filter.Meshes", Title: "Openings of the usual meshes of 40, 60, 80, 100, 120, 140, 155, 170 and 200 wires to the inch, the widest by any maker",
			Values: []float64{mesh(0), mesh(1), mesh(2), mesh(3), mesh(4), mesh(5), mesh(6), mesh(7), mesh(8)}, Kind: unit.Opening,
			Used:   "The mesh that the page names for an opening.",
			Source: source.Ref{Work: "ASTM E11, and the trade in filters", Standing: source.Memory},
		},
	}
}

// mesh returns the widest opening of a mesh of the table, in m.
func mesh(i int) float64 { return max(Meshes[i].Sieve, Meshes[i].Most) }
