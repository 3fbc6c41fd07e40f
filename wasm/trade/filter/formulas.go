package filter

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Formulas are the formulas of this package. A part of the page that shows one
// names its variable instead, so that the browser need not load the rest.
var Formulas = []*formula.Formula{
	FilterHeadFormula,
	FilterOpeningFormula,
}

// FilterHeadFormula is the formula "filter-head".
var FilterHeadFormula = &formula.Formula{
	Name:   "filter-head",
	Title:  "Head lost in a filter",
	Text:   "h = (c + d) (Q/Q₀)²",
	Result: formula.Symbol{Letter: "h", Meaning: "head lost", Kind: unit.Head},
	In: []formula.Symbol{
		{Name: "flow", Letter: "Q", Meaning: "flow", Kind: unit.Flow, Min: 0, Max: 1},
		{Name: "rated", Letter: "Q₀", Meaning: "flow at which the losses were read", Kind: unit.Flow, Min: 1e-7, Max: 1},
		{Name: "clean", Letter: "c", Meaning: "loss of the clean filter at that flow", Kind: unit.Head, Min: 0, Max: 100},
		{Name: "dirt", Letter: "d", Meaning: "further loss of dirt at that flow", Kind: unit.Head, Min: 0, Max: 100},
	},
	Note:   "Below 1/1000 of the rated flow a straight line, which is our own choice.",
	Source: source.Ref{Standing: source.Practice},
	Eval: func(in []float64) float64 {
		h, _ := Filter{Rated: in[1], Clean: in[2], Extra: in[3]}.Loss(in[0])
		return h
	},
}

// FilterOpeningFormula is the formula "filter-opening".
var FilterOpeningFormula = &formula.Formula{
	Name:   "filter-opening",
	Title:  "Largest opening of a filter before an emitter",
	Text:   "a = s b",
	Result: formula.Symbol{Letter: "a", Meaning: "largest opening of the filter", Kind: unit.Opening},
	In: []formula.Symbol{
		{Name: "passage", Letter: "b", Meaning: "smallest passage of the emitter", Kind: unit.Bore, Min: 1e-4, Max: 0.01},
		{Name: "share", Letter: "s", Meaning: "share of the passage", Kind: unit.Share, Min: 0.02, Max: 0.5},
	},
	Note:   "The usual share is 10 %; some texts take 1/7, and makers allow up to 1/4. A mesh count is not one opening: go by the opening that the maker states.",
	Source: source.Ref{Work: source.NEH, Standing: source.Memory},
	Eval:   func(in []float64) float64 { return LargestOpening(in[0], in[1]) },
}
