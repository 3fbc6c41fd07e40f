package pump

import (
	"slices"

	"evenrow/wasm/formula"
	"evenrow/wasm/source"
	"evenrow/wasm/unit"
)

var (
	shutOff    = formula.Quantity("shut-off", "H₀", "head at no flow", unit.Head, 0.1, 1000)
	most       = formula.Quantity("max-flow", "Qₘ", "flow at no head", unit.Flow, 1e-7, 10)
	flow       = formula.Quantity("flow", "Q", "flow", unit.Flow, 0, 10)
	lift       = formula.Quantity("head", "H", "head", unit.Head, 0, 1000)
	density    = formula.Quantity("density", "ρ", "density of the water", unit.Density, 950, 1200)
	efficiency = formula.Quantity("efficiency", "η", "efficiency of the pump", unit.Share, 0.01, 1)
	turning    = formula.Number("speed", "ω", "speed of turning", "rad/s", 1, 3000)
	impeller   = formula.Quantity("impeller", "d", "diameter of the impeller", unit.Bore, 0.01, 5)

	headGiven  = formula.Result("H", "head", unit.Head)
	flowGiven  = formula.Result("Q", "flow", unit.Flow)
	practice   = source.Ref{Standing: source.Practice}
	munson     = source.Ref{Work: source.Munson, At: "similarity laws, example 12.5 as retyped"}
	definition = source.Ref{Work: "definition", Standing: source.Derived}
)

// system are the symbols of a pump by two figures on a system.
var system = []formula.Symbol{
	shutOff, most,
	formula.Quantity("static", "Hₛ", "head that the system needs at no flow", unit.Head, -100, 1000),
	formula.Quantity("losses", "Hₗ", "head that the system loses at the flow Qₘ", unit.Head, 0, 1e5),
}

// duty returns the duty point for values of system.
func duty(in []float64) Point {
	return Duty(&parabola{in[0], in[1]}, in[2], in[3], in[1])
}

// Formulas are the formulas of this package.
var Formulas = slices.Concat(curveFormulas, powerFormulas)

var curveFormulas = []*formula.Formula{
	{
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
	},
	{
		Name:   "tap-head",
		Title:  "Head of a tap",
		Text:   "H = H₀ (1 - (Q/Qₘ)²)",
		Result: headGiven,
		In: []formula.Symbol{
			formula.Quantity("static", "H₀", "head with every tap closed", unit.Head, 0.1, 200),
			formula.Quantity("tap-flow", "Qₘ", "flow of the open tap into a bucket", unit.Flow, 1e-7, 1),
			flow,
		},
		Note:   "Neighbours who draw water lower both figures: measure when they do.",
		Source: practice,
		Eval: func(in []float64) float64 {
			h, _ := (&parabola{in[0], in[1]}).Head(in[2])
			return h
		},
	},
	{
		Name:   "duty-flow",
		Title:  "Flow where a pump meets its system",
		Text:   "H₀ (1 - (Q/Qₘ)²) = Hₛ + Hₗ (Q/Qₘ)²",
		Result: flowGiven,
		In:     system,
		Note:   "For comparison: the network finds the point from every emitter.",
		Source: source.Ref{Work: "algebra", Standing: source.Derived},
		Eval:   func(in []float64) float64 { return duty(in).Flow },
	},
	{
		Name:   "duty-head",
		Title:  "Head where a pump meets its system",
		Text:   "H = H₀ (1 - (Q/Qₘ)²), Q of duty-flow",
		Result: headGiven,
		In:     system,
		Source: source.Ref{Work: "algebra", Standing: source.Derived},
		Eval:   func(in []float64) float64 { return duty(in).Head },
	},
}

var powerFormulas = []*formula.Formula{
	{
		Name:   "hydraulic-power",
		Title:  "Power that the water takes up",
		Text:   "P = ρ g Q H",
		Result: formula.Result("P", "hydraulic power", unit.Power),
		In:     []formula.Symbol{density, flow, lift},
		Note:   "In horsepower it is the trade's water horsepower. Each figure of power fits any number of pairs of flow and head.",
		Source: definition,
		Eval:   func(in []float64) float64 { return HydraulicPower(in[0], in[1], in[2]) },
	},
	{
		Name:   "shaft-power",
		Title:  "Power at the shaft of a pump",
		Text:   "P = ρ g Q H/η",
		Result: formula.Result("P", "shaft power", unit.Power),
		In:     []formula.Symbol{density, flow, lift, efficiency},
		Source: source.Ref{Work: source.Cengel, At: "example 14-2 as retyped"},
		Eval:   func(in []float64) float64 { return ShaftPower(in[0], in[1], in[2], in[3]) },
	},
	{
		Name:   "similar-flow",
		Title:  "Flow of a similar pump",
		Text:   "Q = CQ ω d³",
		Result: flowGiven,
		In:     []formula.Symbol{formula.Number("flow-coefficient", "CQ", "coefficient of flow", "", 0, 10), turning, impeller},
		Source: munson,
		Eval:   func(in []float64) float64 { return FlowOf(in[0], in[1], in[2]) },
	},
	{
		Name:   "similar-head",
		Title:  "Head of a similar pump",
		Text:   "H = CH ω² d²/g",
		Result: headGiven,
		In:     []formula.Symbol{formula.Number("head-coefficient", "CH", "coefficient of head", "", 0, 10), turning, impeller},
		Source: munson,
		Eval:   func(in []float64) float64 { return HeadOf(in[0], in[1], in[2]) },
	},
	{
		Name:   "similar-power",
		Title:  "Shaft power of a similar pump",
		Text:   "P = CP ρ ω³ d⁵",
		Result: formula.Result("P", "shaft power", unit.Power),
		In:     []formula.Symbol{formula.Number("power-coefficient", "CP", "coefficient of power", "", 0, 10), density, turning, impeller},
		Source: munson,
		Eval:   func(in []float64) float64 { return PowerOf(in[0], in[1], in[2], in[3]) },
	},
	{
		Name:   "speed-flow",
		Title:  "Flow of a pump at another speed",
		Text:   "Q₂ = Q n₂/n₁",
		Result: flowGiven,
		In:     []formula.Symbol{flow, formula.Number("speed-ratio", "n₂/n₁", "new speed over old", "", 0.1, 3)},
		Note:   "The corresponding head is that of speed-head.",
		Source: munson,
		Eval:   func(in []float64) float64 { return AtSpeed(Point{Flow: in[0]}, in[1]).Flow },
	},
	{
		Name:   "speed-head",
		Title:  "Head of a pump at another speed",
		Text:   "H₂ = H (n₂/n₁)²",
		Result: headGiven,
		In:     []formula.Symbol{lift, formula.Number("speed-ratio", "n₂/n₁", "new speed over old", "", 0.1, 3)},
		Source: munson,
		Eval:   func(in []float64) float64 { return AtSpeed(Point{Head: in[0]}, in[1]).Head },
	},
}
