package dose

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Formulas are the formulas of this package. A part of the page that shows one
// names its variable instead, so that the browser need not load the rest.
var Formulas = []*formula.Formula{
	AppliedFormula,
	drainFormula,
	shotFormula,
	CountFormula,
	MinutesFormula,
	NextFormula,
	DryFormula,
}

var (
	fraction = source.Ref{Work: "definition of the leaching fraction, read in reprints of an extension article"}
	algebra  = source.Ref{Work: "arithmetic", Standing: source.Derived}

	given  = formula.Symbol{Name: "given", Letter: "W", Meaning: "water given to a plant", Kind: unit.PlantWater, Min: 1e-9, Max: 1}
	use    = formula.Symbol{Name: "use", Letter: "U", Meaning: "water that the plant takes up", Kind: unit.PlantWater, Min: 0, Max: 1}
	wanted = formula.Symbol{Name: "drain", Letter: "LF", Meaning: "share that is to drain", Kind: unit.Share, Min: 0, Max: 0.9}
	shot   = formula.Symbol{Name: "shot", Letter: "v", Meaning: "water of one shot for a plant", Kind: unit.Dose, Min: 1e-9, Max: 1}
	medium = formula.Symbol{Name: "volume", Letter: "V", Meaning: "medium that a plant has", Kind: unit.PlantWater, Min: 1e-6, Max: 1}
)

// AppliedFormula is the formula "water-to-apply".
var AppliedFormula = &formula.Formula{
	Name:   "water-to-apply",
	Title:  "Water to give for a share that drains",
	Text:   "W = U/(1 - LF)",
	Result: formula.Symbol{Letter: "W", Meaning: "water to give to a plant", Kind: unit.PlantWater},
	In:     []formula.Symbol{use, wanted},
	Note:   "The share that drains, or leaching fraction, is the volume drained over the volume given.",
	Source: fraction,
	Eval:   func(in []float64) float64 { return Applied(in[0], in[1]) },
}

var drainFormula = &formula.Formula{
	Name:   "drain-share",
	Title:  "Share that drains",
	Text:   "LF = 1 - U/W, at least 0",
	Result: formula.Symbol{Letter: "LF", Meaning: "share that drains", Kind: unit.Share},
	In:     []formula.Symbol{use, given},
	Source: fraction,
	Eval:   func(in []float64) float64 { return Drain(in[0], in[1]) },
}

var shotFormula = &formula.Formula{
	Name:   "shot-volume",
	Title:  "Water of one shot",
	Text:   "v = s V",
	Result: formula.Symbol{Letter: "v", Meaning: "water of one shot for a plant", Kind: unit.Dose},
	In: []formula.Symbol{
		medium,
		{Name: "share", Letter: "s", Meaning: "share of the medium's volume", Kind: unit.Share, Min: 0, Max: 1},
	},
	Note:   "From memory, 3 to 6 % in coco and 2 to 4 % in stone wool.",
	Source: algebra,
	Eval:   func(in []float64) float64 { return in[0] * in[1] },
}

// CountFormula is the formula "shots-a-day".
var CountFormula = &formula.Formula{
	Name:   "shots-a-day",
	Title:  "Shots in a day",
	Text:   "n = W/v, rounded up",
	Result: formula.Symbol{Letter: "n", Meaning: "shots", Kind: unit.Count},
	In:     []formula.Symbol{given, shot},
	Source: algebra,
	Eval:   func(in []float64) float64 { return float64(Count(in[0], in[1])) },
}

// MinutesFormula is the formula "shot-minutes".
var MinutesFormula = &formula.Formula{
	Name:   "shot-minutes",
	Title:  "Minutes of one shot",
	Text:   "t = v/q",
	Result: formula.Symbol{Letter: "t", Meaning: "time of one shot", Kind: unit.Duration},
	In: []formula.Symbol{
		shot,
		{Name: "flow", Letter: "q", Meaning: "flow of the plant's emitters", Kind: unit.EmitterFlow, Min: 1e-9, Max: 1},
	},
	Source: algebra,
	Eval:   func(in []float64) float64 { return in[0] / in[1] },
}

// NextFormula is the formula "next-water".
var NextFormula = &formula.Formula{
	Name:   "next-water",
	Title:  "Water to give next, from the drain that was measured",
	Text:   "W2 = W1 (1 - d)/(1 - LF)",
	Result: formula.Symbol{Letter: "W2", Meaning: "water to give next to a plant", Kind: unit.PlantWater},
	In: []formula.Symbol{
		{Name: "given", Letter: "W1", Meaning: "water given to a plant so far", Kind: unit.PlantWater, Min: 1e-9, Max: 1},
		{Name: "measured", Letter: "d", Meaning: "share that drained", Kind: unit.Share, Min: 0, Max: 1},
		wanted,
	},
	Note:   "The plant is taken to use as much as on the day that was measured.",
	Source: algebra,
	Eval:   func(in []float64) float64 { return Next(in[0], in[1], in[2]) },
}

// DryFormula is the formula "dry-time".
var DryFormula = &formula.Formula{
	Name:   "dry-time",
	Title:  "Time until the easily available water is gone",
	Text:   "t = V e/u",
	Result: formula.Symbol{Letter: "t", Meaning: "time", Kind: unit.Hours},
	In: []formula.Symbol{
		medium,
		{Name: "easy", Letter: "e", Meaning: "share of the medium that is easily available water", Kind: unit.Share, Min: 0, Max: 1},
		{Name: "rate", Letter: "u", Meaning: "water that the plant takes up in that hour", Kind: unit.EmitterFlow, Min: 1e-12, Max: 1},
	},
	Note:   "Easily available is what the medium gives up between 10 and 50 cm of suction. It is about half as much in strong feed.",
	Source: algebra,
	Eval:   func(in []float64) float64 { return Dry(in[0], in[1], in[2]) },
}
