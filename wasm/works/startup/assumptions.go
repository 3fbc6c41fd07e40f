package startup

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "startup.lines.fill", Title: "How lines fill",
			Rule:   "At each moment the flow is that of water at rest in the wet length: the supply on its curve, and every front open to the air with the head of its speed as all that is left. Inertia is left out, and so is what holds the air back.",
			Used:   "The times of the starting section.",
			Source: source.Ref{Standing: source.Choice},
		},
		{
			Code: "startup.Flushing", Title: "Emitters that flush themselves at low pressure",
			Rule:   "The flow goes with the root of the head, up to the pressure at which they stop.",
			Used:   "The starting section.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "startup.reachOf", Title: "How high the water comes",
			Rule:   "Where it flows it has come over each height of its way to the rows that still water gets up to. In the rows, and where nothing flows, it stands at its heads. What lies higher stays dry.",
			Used:   "Which emitters stay shut from the start, and what can run out after a shot.",
			Source: source.Ref{Standing: source.Choice},
		},
		{
			Code: "startup.drainOf", Title: "What runs out after a shot",
			Rule:   "Each open emitter lets water out down to its own height plus its closing head. The water of a height is shared alike by the open emitters below it. Tubing has no thickness here.",
			Used:   "The stopping section.",
			Source: source.Ref{Standing: source.Choice},
		},
		{
			Code: "startup.tooSlow", Title: "Time of a step of the filling after which the water is said to stand",
			Values: []float64{tooSlow / 3600}, Kind: unit.None, Unit: "h",
			Used:   "Rows that are said never to fill.",
			Source: source.Ref{Standing: source.Choice},
		},
		{
			Code: "startup.turns", Title: "Groups in which rows are let in one after another, at most",
			Values: []float64{turns},
			Used:   "Whether that opens all emitters.",
			Source: source.Ref{Standing: source.Choice},
		},
	}
}
