package emitter

import (
	"evenrow/wasm/formula"
	"evenrow/wasm/source"
	"evenrow/wasm/unit"
)

var (
	nominal  = formula.Quantity("nominal-flow", "q₀", "nominal flow of the emitter", unit.EmitterFlow, 1e-9, 1e-3)
	head     = formula.Quantity("head", "h", "head at the emitter", unit.Head, 0, 200)
	exponent = formula.Number("exponent", "x", "exponent of the emitter", "", 0, 1)
	flow     = formula.Result("q", "flow of one emitter", unit.EmitterFlow)
	keller   = source.Ref{Work: source.Keller, At: "chapter 20", Standing: source.Memory}
)

// Formulas are the formulas of this package.
var Formulas = []*formula.Formula{
	{
		Name:   "emitter-flow",
		Title:  "Flow of a non-compensating emitter",
		Text:   "q = q₀ (h/h₀)ˣ",
		Result: flow,
		In: []formula.Symbol{
			nominal,
			formula.Quantity("nominal-head", "h₀", "head at which the nominal flow was read", unit.Head, 0.01, 200),
			exponent, head,
		},
		Note:   "Below 1 % of h₀ a straight line to zero, which is our own choice.",
		Source: keller,
		Eval: func(in []float64) float64 {
			e := Emitter{Kind: NonCompensating, Flow: in[0], Nominal: in[1], Exponent: in[2]}
			q, _ := e.Open(in[3])
			return q
		},
	},
	{
		Name:   "compensating-flow",
		Title:  "Flow of an open compensating emitter",
		Text:   "q = q₀ (h/h₁)ˣ from h₁ upwards, q₀ √(h/h₁) below",
		Result: flow,
		In: []formula.Symbol{
			nominal,
			formula.Quantity("lowest", "h₁", "lower end of the range", unit.Head, 0.01, 200),
			exponent, head,
		},
		Note:   "Below the range the emitter is taken for a plain orifice. Self-flushing kinds give more than that while they start.",
		Source: source.Ref{Standing: source.Practice},
		Eval: func(in []float64) float64 {
			e := Emitter{Kind: Compensating, Flow: in[0], Lowest: in[1], Exponent: in[2]}
			q, _ := e.Open(in[3])
			return q
		},
	},
	{
		Name:   "emitter-coefficient",
		Title:  "Flow of an emitter at a head of 1 m",
		Text:   "k = q/hˣ, h in m",
		Result: formula.Result("k", "flow at 1 m of head", unit.EmitterFlow),
		In: []formula.Symbol{
			formula.Quantity("flow", "q", "flow that was read", unit.EmitterFlow, 1e-9, 1e-3),
			formula.Quantity("head", "h", "head at which it was read", unit.Head, 0.01, 200),
			exponent,
		},
		Source: keller,
		Eval:   func(in []float64) float64 { return Coefficient(in[0], in[1], in[2]) },
	},
	{
		Name:   "emitter-exponent",
		Title:  "Exponent of an emitter from two readings",
		Text:   "x = ln(q₁/q₂)/ln(h₁/h₂)",
		Result: formula.Result("x", "exponent of the emitter", unit.None),
		In: []formula.Symbol{
			formula.Quantity("flow-1", "q₁", "flow of the first reading", unit.EmitterFlow, 1e-9, 1e-3),
			formula.Quantity("head-1", "h₁", "its head", unit.Head, 0.01, 200),
			formula.Quantity("flow-2", "q₂", "flow of the second reading", unit.EmitterFlow, 1e-9, 1e-3),
			formula.Quantity("head-2", "h₂", "its head, not the same", unit.Head, 0.01, 200),
		},
		Note:   "About 0.5 for a plain orifice, 1 for laminar flow, near 0 for a compensating emitter in its range.",
		Source: keller,
		Eval:   func(in []float64) float64 { return ExponentFrom(in[0], in[1], in[2], in[3]) },
	},
}
