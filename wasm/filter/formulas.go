package filter

import (
	"evenrow/wasm/formula"
	"evenrow/wasm/source"
	"evenrow/wasm/unit"
)

// Formulas are the formulas of this package.
var Formulas = []*formula.Formula{
	{
		Name:   "filter-head",
		Title:  "Head lost in a filter",
		Text:   "h = (c + d) (Q/Q₀)²",
		Result: formula.Result("h", "head lost", unit.Head),
		In: []formula.Symbol{
			formula.Quantity("flow", "Q", "flow", unit.Flow, 0, 1),
			formula.Quantity("rated", "Q₀", "flow at which the losses were read", unit.Flow, 1e-7, 1),
			formula.Quantity("clean", "c", "loss of the clean filter at that flow", unit.Head, 0, 100),
			formula.Quantity("dirt", "d", "further loss of dirt at that flow", unit.Head, 0, 100),
		},
		Note:   "Below 1/1000 of the rated flow a straight line, which is our own choice.",
		Source: source.Ref{Standing: source.Practice},
		Eval: func(in []float64) float64 {
			h, _ := Filter{Rated: in[1], Clean: in[2], Extra: in[3]}.Loss(in[0])
			return h
		},
	},
	{
		Name:   "filter-opening",
		Title:  "Largest opening of a filter before an emitter",
		Text:   "a = s b",
		Result: formula.Result("a", "largest opening of the filter", unit.Opening),
		In: []formula.Symbol{
			formula.Quantity("passage", "b", "smallest passage of the emitter", unit.Bore, 1e-4, 0.01),
			formula.Quantity("share", "s", "share of the passage", unit.Share, 0.02, 0.5),
		},
		Note:   "The usual share is 10 %; some texts take 1/7, and makers allow up to 1/4. A mesh count is not one opening: go by the opening that the maker states.",
		Source: source.Ref{Work: source.NEH, Standing: source.Memory},
		Eval:   func(in []float64) float64 { return LargestOpening(in[0], in[1]) },
	},
}
