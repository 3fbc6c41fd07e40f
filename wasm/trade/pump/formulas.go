package pump

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

var (
	shutOff    = formula.Symbol{Name: "shut-off", Letter: "H₀", Meaning: "head at no flow", Kind: unit.Head, Min: 0.1, Max: 1000}
	most       = formula.Symbol{Name: "max-flow", Letter: "Qₘ", Meaning: "flow at no head", Kind: unit.Flow, Min: 1e-7, Max: 10}
	flow       = formula.Symbol{Name: "flow", Letter: "Q", Meaning: "flow", Kind: unit.Flow, Min: 0, Max: 10}
	lift       = formula.Symbol{Name: "head", Letter: "H", Meaning: "head", Kind: unit.Head, Min: 0, Max: 1000}
	density    = formula.Symbol{Name: "density", Letter: "ρ", Meaning: "density of the water", Kind: unit.Density, Min: 950, Max: 1200}
	efficiency = formula.Symbol{Name: "efficiency", Letter: "η", Meaning: "efficiency of the pump", Kind: unit.Share, Min: 0.01, Max: 1}
	turning    = formula.Symbol{Name: "speed", Letter: "ω", Meaning: "speed of turning", Unit: "rad/s", Min: 1, Max: 3000}
	impeller   = formula.Symbol{Name: "impeller", Letter: "d", Meaning: "diameter of the impeller", Kind: unit.Bore, Min: 0.01, Max: 5}

	headGiven  = formula.Symbol{Letter: "H", Meaning: "head", Kind: unit.Head}
	flowGiven  = formula.Symbol{Letter: "Q", Meaning: "flow", Kind: unit.Flow}
	practice   = source.Ref{Standing: source.Practice}
	munson     = source.Ref{Work: source.Munson, At: "similarity laws, example 12.5 as retyped"}
	definition = source.Ref{Work: "definition", Standing: source.Derived}
)

// system are the symbols of a pump by two figures on a system.
var system = []formula.Symbol{
	shutOff, most,
	{Name: "static", Letter: "Hₛ", Meaning: "head that the system needs at no flow", Kind: unit.Head, Min: -100, Max: 1000},
	{Name: "losses", Letter: "Hₗ", Meaning: "head that the system loses at the flow Qₘ", Kind: unit.Head, Min: 0, Max: 1e5},
}

// duty returns the duty point for values of system.
func duty(in []float64) Point {
	return Duty(&parabola{in[0], in[1]}, in[2], in[3], in[1])
}

// Formulas are the formulas of this package. A part of the page that shows one
// names its variable instead, so that the browser need not load the rest.
var Formulas = []*formula.Formula{
	PumpHeadFormula,
	TapHeadFormula,
	dutyFlowFormula,
	dutyHeadFormula,
	HydraulicPowerFormula,
	shaftPowerFormula,
	similarFlowFormula,
	similarHeadFormula,
	similarPowerFormula,
	speedFlowFormula,
	speedHeadFormula,
}

// PumpHeadFormula is the formula "pump-head".
var PumpHeadFormula = &formula.Formula{
	Name:   "pump-head",
	Title:  "Head of a pump known by two figures",
	Text:   "H = H₀ (1 - (Q/Qₘ)²)",
	Result: headGiven,
	In:     []formula.Symbol{shutOff, most, flow},
	Note:   "Points of the maker's curve are better. Horsepower alone gives no head at all.",
	Source: practice,
	Eval: func(in []float64) float64 {
		h, _ := (&parabola{in[0], in[1]}).Head(in[2])
		return h
	},
}

// TapHeadFormula is the formula "tap-head".
var TapHeadFormula = &formula.Formula{
	Name:   "tap-head",
	Title:  "Head of a tap",
	Text:   "H = H₀ (1 - (Q/Qₘ)²)",
	Result: headGiven,
	In: []formula.Symbol{
		{Name: "static", Letter: "H₀", Meaning: "head with every tap closed", Kind: unit.Head, Min: 0.1, Max: 200},
		{Name: "tap-flow", Letter: "Qₘ", Meaning: "flow of the open tap into a bucket", Kind: unit.Flow, Min: 1e-7, Max: 1},
		flow,
	},
	Note:   "Neighbours who draw water lower both figures: measure when they do.",
	Source: practice,
	Eval: func(in []float64) float64 {
		h, _ := (&parabola{in[0], in[1]}).Head(in[2])
		return h
	},
}

var dutyFlowFormula = &formula.Formula{
	Name:   "duty-flow",
	Title:  "Flow where a pump meets its system",
	Text:   "H₀ (1 - (Q/Qₘ)²) = Hₛ + Hₗ (Q/Qₘ)²",
	Result: flowGiven,
	In:     system,
	Note:   "For comparison: the network finds the point from every emitter.",
	Source: source.Ref{Work: "algebra", Standing: source.Derived},
	Eval:   func(in []float64) float64 { return duty(in).Flow },
}

var dutyHeadFormula = &formula.Formula{
	Name:   "duty-head",
	Title:  "Head where a pump meets its system",
	Text:   "H = H₀ (1 - (Q/Qₘ)²), Q of duty-flow",
	Result: headGiven,
	In:     system,
	Source: source.Ref{Work: "algebra", Standing: source.Derived},
	Eval:   func(in []float64) float64 { return duty(in).Head },
}

// HydraulicPowerFormula is the formula "hydraulic-power".
var HydraulicPowerFormula = &formula.Formula{
	Name:   "hydraulic-power",
	Title:  "Power that the water takes up",
	Text:   "P = ρ g Q H",
	Result: formula.Symbol{Letter: "P", Meaning: "hydraulic power", Kind: unit.Power},
	In:     []formula.Symbol{density, flow, lift},
	Note:   "In horsepower it is the trade's water horsepower. Each figure of power fits any number of pairs of flow and head.",
	Source: definition,
	Eval:   func(in []float64) float64 { return HydraulicPower(in[0], in[1], in[2]) },
}

var shaftPowerFormula = &formula.Formula{
	Name:   "shaft-power",
	Title:  "Power at the shaft of a pump",
	Text:   "P = ρ g Q H/η",
	Result: formula.Symbol{Letter: "P", Meaning: "shaft power", Kind: unit.Power},
	In:     []formula.Symbol{density, flow, lift, efficiency},
	Source: source.Ref{Work: source.Cengel, At: "example 14-2 as retyped"},
	Eval:   func(in []float64) float64 { return ShaftPower(in[0], in[1], in[2], in[3]) },
}

var similarFlowFormula = &formula.Formula{
	Name:   "similar-flow",
	Title:  "Flow of a similar pump",
	Text:   "Q = CQ ω d³",
	Result: flowGiven,
	In:     []formula.Symbol{{Name: "flow-coefficient", Letter: "CQ", Meaning: "coefficient of flow", Min: 0, Max: 10}, turning, impeller},
	Source: munson,
	Eval:   func(in []float64) float64 { return FlowOf(in[0], in[1], in[2]) },
}

var similarHeadFormula = &formula.Formula{
	Name:   "similar-head",
	Title:  "Head of a similar pump",
	Text:   "H = CH ω² d²/g",
	Result: headGiven,
	In:     []formula.Symbol{{Name: "head-coefficient", Letter: "CH", Meaning: "coefficient of head", Min: 0, Max: 10}, turning, impeller},
	Source: munson,
	Eval:   func(in []float64) float64 { return HeadOf(in[0], in[1], in[2]) },
}

var similarPowerFormula = &formula.Formula{
	Name:   "similar-power",
	Title:  "Shaft power of a similar pump",
	Text:   "P = CP ρ ω³ d⁵",
	Result: formula.Symbol{Letter: "P", Meaning: "shaft power", Kind: unit.Power},
	In:     []formula.Symbol{{Name: "power-coefficient", Letter: "CP", Meaning: "coefficient of power", Min: 0, Max: 10}, density, turning, impeller},
	Source: munson,
	Eval:   func(in []float64) float64 { return PowerOf(in[0], in[1], in[2], in[3]) },
}

var speedFlowFormula = &formula.Formula{
	Name:   "speed-flow",
	Title:  "Flow of a pump at another speed",
	Text:   "Q₂ = Q n₂/n₁",
	Result: flowGiven,
	In:     []formula.Symbol{flow, {Name: "speed-ratio", Letter: "n₂/n₁", Meaning: "new speed over old", Min: 0.1, Max: 3}},
	Note:   "The corresponding head is that of speed-head.",
	Source: munson,
	Eval:   func(in []float64) float64 { return AtSpeed(Point{Flow: in[0]}, in[1]).Flow },
}

var speedHeadFormula = &formula.Formula{
	Name:   "speed-head",
	Title:  "Head of a pump at another speed",
	Text:   "H₂ = H (n₂/n₁)²",
	Result: headGiven,
	In:     []formula.Symbol{lift, {Name: "speed-ratio", Letter: "n₂/n₁", Meaning: "new speed over old", Min: 0.1, Max: 3}},
	Source: munson,
	Eval:   func(in []float64) float64 { return AtSpeed(Point{Head: in[0]}, in[1]).Head },
}
