package emitter

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

var (
	nominal  = formula.Symbol{Name: "nominal-flow", Letter: "q₀", Meaning: "nominal flow of the emitter", Kind: unit.EmitterFlow, Min: 1e-9, Max: 1e-3}
	head     = formula.Symbol{Name: "head", Letter: "h", Meaning: "head at the emitter", Kind: unit.Head, Min: 0, Max: 200}
	exponent = formula.Symbol{Name: "exponent", Letter: "x", Meaning: "exponent of the emitter", Min: 0, Max: 1}
	flow     = formula.Symbol{Letter: "q", Meaning: "flow of one emitter", Kind: unit.EmitterFlow}
	keller   = source.Ref{Work: source.Keller, At: "chapter 20", Standing: source.Memory}
)

// Formulas are the formulas of this package. A part of the page that shows one
// names its variable instead, so that the browser need not load the rest.
var Formulas = []*formula.Formula{
	EmitterFlowFormula,
	CompensatingFlowFormula,
	emitterCoefficientFormula,
	emitterExponentFormula,
}

// EmitterFlowFormula is the formula "emitter-flow".
var EmitterFlowFormula = &formula.Formula{
	Name:   "emitter-flow",
	Title:  "Flow of a non-compensating emitter",
	Text:   "q = q₀ (h/h₀)ˣ",
	Result: flow,
	In: []formula.Symbol{
		nominal,
		{Name: "nominal-head", Letter: "h₀", Meaning: "head at which the nominal flow was read", Kind: unit.Head, Min: 0.01, Max: 200},
		exponent, head,
	},
	Note:   "Below 1 % of h₀ a straight line to zero, which is our own choice.",
	Source: keller,
	Eval: func(in []float64) float64 {
		e := Emitter{Kind: NonCompensating, Flow: in[0], Nominal: in[1], Exponent: in[2]}
		q, _ := e.Open(in[3])
		return q
	},
}

// CompensatingFlowFormula is the formula "compensating-flow".
var CompensatingFlowFormula = &formula.Formula{
	Name:   "compensating-flow",
	Title:  "Flow of an open compensating emitter",
	Text:   "q = q₀ (h/h₁)ˣ from h₁ upwards, q₀ √(h/h₁) below",
	Result: flow,
	In: []formula.Symbol{
		nominal,
		{Name: "lowest", Letter: "h₁", Meaning: "lower end of the range", Kind: unit.Head, Min: 0.01, Max: 200},
		exponent, head,
	},
	Note:   "Below the range the emitter is taken for a plain orifice. Self-flushing kinds give more than that while they start.",
	Source: source.Ref{Standing: source.Practice},
	Eval: func(in []float64) float64 {
		e := Emitter{Kind: Compensating, Flow: in[0], Lowest: in[1], Exponent: in[2]}
		q, _ := e.Open(in[3])
		return q
	},
}

var emitterCoefficientFormula = &formula.Formula{
	Name:   "emitter-coefficient",
	Title:  "Flow of an emitter at a head of 1 m",
	Text:   "k = q/hˣ, h in m",
	Result: formula.Symbol{Letter: "k", Meaning: "flow at 1 m of head", Kind: unit.EmitterFlow},
	In: []formula.Symbol{
		{Name: "flow", Letter: "q", Meaning: "flow that was read", Kind: unit.EmitterFlow, Min: 1e-9, Max: 1e-3},
		{Name: "head", Letter: "h", Meaning: "head at which it was read", Kind: unit.Head, Min: 0.01, Max: 200},
		exponent,
	},
	Source: keller,
	Eval:   func(in []float64) float64 { return Coefficient(in[0], in[1], in[2]) },
}

var emitterExponentFormula = &formula.Formula{
	Name:   "emitter-exponent",
	Title:  "Exponent of an emitter from two readings",
	Text:   "x = ln(q₁/q₂)/ln(h₁/h₂)",
	Result: formula.Symbol{Letter: "x", Meaning: "exponent of the emitter"},
	In: []formula.Symbol{
		{Name: "flow-1", Letter: "q₁", Meaning: "flow of the first reading", Kind: unit.EmitterFlow, Min: 1e-9, Max: 1e-3},
		{Name: "head-1", Letter: "h₁", Meaning: "its head", Kind: unit.Head, Min: 0.01, Max: 200},
		{Name: "flow-2", Letter: "q₂", Meaning: "flow of the second reading", Kind: unit.EmitterFlow, Min: 1e-9, Max: 1e-3},
		{Name: "head-2", Letter: "h₂", Meaning: "its head, not the same", Kind: unit.Head, Min: 0.01, Max: 200},
	},
	Note:   "About 0.5 for a plain orifice, 1 for laminar flow, near 0 for a compensating emitter in its range.",
	Source: keller,
	Eval:   func(in []float64) float64 { return ExponentFrom(in[0], in[1], in[2], in[3]) },
}
