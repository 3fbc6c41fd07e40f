package pipe

import (
	"evenrow/wasm/formula"
	"evenrow/wasm/source"
	"evenrow/wasm/unit"
)

var (
	modulus = formula.Quantity("modulus", "E", "short-term elastic modulus of the wall", unit.Pressure, 1e7, 3e11)
	ratio   = formula.Number("dimension-ratio", "DR", "outside diameter over wall thickness", "", 3, 60)
	wave    = formula.Quantity("celerity", "a", "speed of the surge", unit.Speed, 10, 1500)
	rise    = formula.Result("Δp", "rise of pressure", unit.Pressure)
	stopped = formula.Quantity("stopped", "Δv", "velocity that is stopped", unit.Speed, 0, 30)
	trade   = source.Ref{Work: source.PlasticPipe, Standing: source.Memory}
)

var surgeFormulas = []*formula.Formula{
	{
		Name:   "celerity",
		Title:  "Speed of a surge in plastic pipe",
		Text:   "a = 4660 ft/s/√(1 + (K/E)(DR - 2)), K = 300 000 psi",
		Result: formula.Result("a", "speed of the surge", unit.Speed),
		In:     []formula.Symbol{modulus, ratio},
		Note:   "Soft tubing slows a surge and so weakens it.",
		Source: trade,
		Eval:   func(in []float64) float64 { return Celerity(in[0], in[1]) },
	},
	{
		Name:   "surge",
		Title:  "Rise of pressure when water is stopped at once",
		Text:   "Δp = ρ a Δv",
		Result: rise,
		In:     []formula.Symbol{density, wave, stopped},
		Source: source.Ref{Work: source.Daugherty, At: "Joukowsky's equation, example 13.4 as retyped"},
		Eval:   func(in []float64) float64 { return Surge(in[0], in[1], in[2]) },
	},
	{
		Name:   "plastic-surge",
		Title:  "Rise of pressure when water in plastic pipe is stopped at once",
		Text:   "Δp = ρ a Δv, a of celerity",
		Result: rise,
		In:     []formula.Symbol{modulus, ratio, density, stopped},
		Source: trade,
		Eval: func(in []float64) float64 {
			return Surge(in[2], Celerity(in[0], in[1]), in[3])
		},
	},
	{
		Name:   "slow-surge",
		Title:  "Rise of pressure when water is stopped over some time",
		Text:   "Δp = ρ a Δv min(1, 2L/(a T))",
		Result: rise,
		In: []formula.Symbol{
			density, wave, stopped, length,
			formula.Quantity("closing", "T", "time of closing", unit.Duration, 0.001, 600),
		},
		Source: source.Ref{Work: source.Daugherty, At: "water hammer, slow closure", Standing: source.Memory},
		Eval: func(in []float64) float64 {
			return SlowSurge(in[0], in[1], in[2], in[3], in[4])
		},
	},
}
