// Package medium reckons what a medium holds once it has drained: water and
// air, from weights that a kitchen scale gives.
package medium

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Held returns the water in a drained bag, in m³, from its weight in kg then
// and dry: a litre weighs a kilogram.
func Held(drained, dry float64) float64 { return (drained - dry) / 1000 }

// Capacity returns the share of the volume, in m³, that the held water takes.
func Capacity(held, volume float64) float64 { return held / volume }

// Air returns the share of the volume that is air: what neither the solids nor
// the held water take, all in m³.
func Air(volume, solids, held float64) float64 { return (volume - solids - held) / volume }

// Formulas are the formulas of this package.
var Formulas = []*formula.Formula{heldFormula, capacityFormula, airFormula}

var (
	volume = formula.Symbol{Name: "volume", Letter: "V", Meaning: "volume of the wet medium", Kind: unit.Volume, Min: 1e-5, Max: 1}
	held   = formula.Symbol{Name: "held", Letter: "W", Meaning: "water held after draining", Kind: unit.Volume, Max: 1}
	scale  = source.Ref{Work: "definition", At: "a litre of water weighs a kilogram", Standing: source.Derived}
)

var heldFormula = &formula.Formula{
	Name:   "water-held",
	Title:  "Water that a medium holds after draining",
	Text:   "W = (m - m0)/1 kg/L",
	Result: formula.Symbol{Letter: "W", Meaning: "water held after draining", Kind: unit.Volume},
	In: []formula.Symbol{
		{Name: "drained", Letter: "m", Meaning: "weight after draining", Unit: "kg", Max: 1000},
		{Name: "dry", Letter: "m0", Meaning: "weight when dry", Unit: "kg", Max: 1000},
	},
	Source: scale,
	Eval:   func(in []float64) float64 { return Held(in[0], in[1]) },
}

var capacityFormula = &formula.Formula{
	Name:   "container-capacity",
	Title:  "Share of a medium that is water after draining",
	Text:   "C = W/V",
	Result: formula.Symbol{Letter: "C", Meaning: "container capacity", Kind: unit.Share},
	In:     []formula.Symbol{held, volume},
	Source: scale,
	Eval:   func(in []float64) float64 { return Capacity(in[0], in[1]) },
}

var airFormula = &formula.Formula{
	Name:   "air-space",
	Title:  "Share of a medium that is air after draining",
	Text:   "A = (V - F - W)/V",
	Result: formula.Symbol{Letter: "A", Meaning: "air space", Kind: unit.Share},
	In: []formula.Symbol{volume,
		{Name: "solids", Letter: "F", Meaning: "volume of the solids", Kind: unit.Volume, Max: 1}, held},
	Source: scale,
	Eval:   func(in []float64) float64 { return Air(in[0], in[1], in[2]) },
}
