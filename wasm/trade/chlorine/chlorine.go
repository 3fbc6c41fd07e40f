// Package chlorine reckons bleach for lines that slime has grown in. Strengths
// are shares of one: household bleach of 5.25 % is 0.0525.
package chlorine

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Injection returns the flow of stock to inject into a flow of water, in the
// same unit, so that the water holds so many mg/L of chlorine. strength is that
// of the stock, taken as 10 g/L for each per cent.
func Injection(flow, milligrams, strength float64) float64 {
	return flow * milligrams * 1e-6 / strength
}

// Diluted returns the strength of one part of stock with so many parts of
// water.
func Diluted(strength, parts float64) float64 { return strength / (1 + parts) }

// Formulas are the formulas of this package.
var Formulas = []*formula.Formula{injectionFormula, dilutedFormula}

var stock = formula.Symbol{Name: "strength", Letter: "S", Meaning: "strength of the stock, as chlorine", Kind: unit.Share, Min: 0.001, Max: 0.15}

var injectionFormula = &formula.Formula{
	Name:   "chlorine-injection",
	Title:  "Bleach to inject into running water",
	Text:   "q = Q C/S, C in parts of a million",
	Result: formula.Symbol{Letter: "q", Meaning: "flow of the stock", Kind: unit.EmitterFlow},
	In: []formula.Symbol{
		{Name: "flow", Letter: "Q", Meaning: "flow of the water", Kind: unit.Flow, Max: 1},
		{Name: "chlorine", Letter: "C", Meaning: "chlorine wanted in the water", Unit: "mg/L", Max: 500},
		stock,
	},
	Note:   "Take the strength from the label and the date: bleach weakens within months. Never together with acid.",
	Source: source.Ref{Work: "Goyal (ed.), Management, Performance and Applications of Micro Irrigation Systems", At: "table 3, injection rate of chlorine"},
	Eval:   func(in []float64) float64 { return Injection(in[0], in[1], in[2]) },
}

var dilutedFormula = &formula.Formula{
	Name:   "diluted-strength",
	Title:  "Strength of bleach let down with water",
	Text:   "D = S/(1 + n)",
	Result: formula.Symbol{Letter: "D", Meaning: "strength after dilution", Kind: unit.Share},
	In:     []formula.Symbol{stock, {Name: "parts", Letter: "n", Meaning: "parts of water to one of stock", Max: 10000}},
	Source: source.Ref{Work: "definition", Standing: source.Derived},
	Eval:   func(in []float64) float64 { return Diluted(in[0], in[1]) },
}
