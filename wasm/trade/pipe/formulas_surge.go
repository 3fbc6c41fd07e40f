package pipe

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

var (
	modulus = formula.Symbol{Name: "modulus", Letter: "E", Meaning: "short-term elastic modulus of the wall", Kind: unit.Pressure, Min: 1e7, Max: 3e11}
	ratio   = formula.Symbol{Name: "dimension-ratio", Letter: "DR", Meaning: "outside diameter over wall thickness", Min: 3, Max: 60}
	wave    = formula.Symbol{Name: "celerity", Letter: "a", Meaning: "speed of the surge", Kind: unit.Speed, Min: 10, Max: 1500}
	rise    = formula.Symbol{Letter: "Δp", Meaning: "rise of pressure", Kind: unit.Pressure}
	stopped = formula.Symbol{Name: "stopped", Letter: "Δv", Meaning: "velocity that is stopped", Kind: unit.Speed, Min: 0, Max: 30}
	trade   = source.Ref{Work: source.PlasticPipe, Standing: source.Memory}
)

var celerityFormula = &formula.Formula{
	Name:   "celerity",
	Title:  "Speed of a surge in plastic pipe",
	Text:   "a = 4660 ft/s/√(1 + (K/E)(DR - 2)), K = 300 000 psi",
	Result: formula.Symbol{Letter: "a", Meaning: "speed of the surge", Kind: unit.Speed},
	In:     []formula.Symbol{modulus, ratio},
	Note:   "Soft tubing slows a surge and so weakens it.",
	Source: trade,
	Eval:   func(in []float64) float64 { return Celerity(in[0], in[1]) },
}

// SurgeFormula is the formula "surge".
var SurgeFormula = &formula.Formula{
	Name:   "surge",
	Title:  "Rise of pressure when water is stopped at once",
	Text:   "Δp = ρ a Δv",
	Result: rise,
	In:     []formula.Symbol{density, wave, stopped},
	Source: source.Ref{Work: source.Daugherty, At: "Joukowsky's equation, example 13.4 as retyped"},
	Eval:   func(in []float64) float64 { return Surge(in[0], in[1], in[2]) },
}

var plasticSurgeFormula = &formula.Formula{
	Name:   "plastic-surge",
	Title:  "Rise of pressure when water in plastic pipe is stopped at once",
	Text:   "Δp = ρ a Δv, a of celerity",
	Result: rise,
	In:     []formula.Symbol{modulus, ratio, density, stopped},
	Source: trade,
	Eval: func(in []float64) float64 {
		return Surge(in[2], Celerity(in[0], in[1]), in[3])
	},
}

var slowSurgeFormula = &formula.Formula{
	Name:   "slow-surge",
	Title:  "Rise of pressure when water is stopped over some time",
	Text:   "Δp = ρ a Δv min(1, 2L/(a T))",
	Result: rise,
	In: []formula.Symbol{
		density, wave, stopped, length,
		{Name: "closing", Letter: "T", Meaning: "time of closing", Kind: unit.Duration, Min: 0.001, Max: 600},
	},
	Source: source.Ref{Work: source.Daugherty, At: "water hammer, slow closure", Standing: source.Memory},
	Eval: func(in []float64) float64 {
		return SlowSurge(in[0], in[1], in[2], in[3], in[4])
	},
}
