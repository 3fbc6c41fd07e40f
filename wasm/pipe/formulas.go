package pipe

import (
	"slices"

	"evenrow/wasm/formula"
	"evenrow/wasm/source"
	"evenrow/wasm/unit"
)

// Symbols that several formulas share.
var (
	length    = formula.Quantity("length", "L", "length of the tubing", unit.Length, 0, 1e5)
	bore      = formula.Quantity("bore", "D", "bore of the tubing", unit.Bore, 3e-4, 3)
	flow      = formula.Quantity("flow", "Q", "flow", unit.Flow, 0, 10)
	speed     = formula.Quantity("velocity", "v", "mean velocity", unit.Speed, 0, 30)
	roughness = formula.Quantity("roughness", "ε", "roughness of the wall", unit.Bore, 0, 0.01)
	viscosity = formula.Quantity("viscosity", "ν", "kinematic viscosity of the water", unit.Viscosity, 2e-7, 1e-5)
	density   = formula.Quantity("density", "ρ", "density of the water", unit.Density, 950, 1200)
	factor    = formula.Number("factor", "f", "Darcy friction factor", "", 1e-4, 100)
	loss      = formula.Number("coefficient", "K", "sum of the loss coefficients", "", 0, 1e5)
	reynolds  = formula.Number("reynolds", "Re", "Reynolds number", "", 1, 1e8)
	turbulent = formula.Number("reynolds", "Re", "Reynolds number", "", 3000, 1e8)
	relative  = formula.Number("relative-roughness", "ε/D", "roughness over bore", "", 0, 0.05)

	headLost = formula.Result("h", "head lost", unit.Head)
	darcyF   = formula.Result("f", "Darcy friction factor", unit.None)
	derived  = source.Ref{Work: "definition", Standing: source.Derived}
	geometry = source.Ref{Work: "geometry", Standing: source.Derived}
	darcy    = source.Ref{Work: source.Munson, At: "equation of Darcy and Weisbach, example 8.8 as retyped"}
)

// Formulas are the formulas of this package.
var Formulas = slices.Concat(flowFormulas, factorFormulas, localFormulas, outletFormulas, surgeFormulas)

var flowFormulas = []*formula.Formula{
	{
		Name:   "velocity",
		Title:  "Mean velocity in a bore",
		Text:   "v = 4 Q/(π D²)",
		Result: formula.Result("v", "mean velocity", unit.Speed),
		In:     []formula.Symbol{flow, bore},
		Source: geometry,
		Eval:   func(in []float64) float64 { return Velocity(in[0], in[1]) },
	},
	{
		Name:   "flow-at-velocity",
		Title:  "Flow that moves at a velocity",
		Text:   "Q = v π D²/4",
		Result: formula.Result("Q", "flow", unit.Flow),
		In:     []formula.Symbol{speed, bore},
		Note:   "With the flushing velocity it gives the flow that cleans a row with its end open.",
		Source: geometry,
		Eval:   func(in []float64) float64 { return FlowAt(in[0], in[1]) },
	},
	{
		Name:   "reynolds",
		Title:  "Reynolds number",
		Text:   "Re = v D/ν",
		Result: formula.Result("Re", "Reynolds number", unit.None),
		In:     []formula.Symbol{speed, bore, viscosity},
		Source: derived,
		Eval:   func(in []float64) float64 { return Reynolds(in[0], in[1], in[2]) },
	},
	{
		Name:   "friction-head",
		Title:  "Head lost to friction",
		Text:   "h = f (L/D) v²/(2g)",
		Result: headLost,
		In:     []formula.Symbol{factor, length, bore, speed},
		Source: darcy,
		Eval:   func(in []float64) float64 { return FrictionHead(in[0], in[1], in[2], in[3]) },
	},
	{
		Name:   "tubing-head",
		Title:  "Head lost in tubing at a flow",
		Text:   "h = f (L/D) v²/(2g), v = 4 Q/(π D²), f of friction-factor at Re = v D/ν and ε/D",
		Result: headLost,
		In:     []formula.Symbol{flow, length, bore, roughness, viscosity},
		Source: darcy,
		Eval:   func(in []float64) float64 { return Head(in[0], in[1], in[2], in[3], in[4]) },
	},
	{
		Name:   "all-head",
		Title:  "Head lost to friction and fittings together",
		Text:   "h = (f L/D + K) v²/(2g), v = 4 Q/(π D²)",
		Result: headLost,
		In:     []formula.Symbol{factor, length, bore, loss, flow},
		Source: darcy,
		Eval:   func(in []float64) float64 { return AllHead(in[0], in[1], in[2], in[3], in[4]) },
	},
	{
		Name:   "inlet-pressure",
		Title:  "Pressure at the inlet of a rising pipe with a nozzle",
		Text:   "p = ρ (g z + (vₙ² - v²)/2 + (f L/D + K) v²/2), v = 4 Q/(π D²), vₙ = 4 Q/(π d²)",
		Result: formula.Result("p", "pressure at the inlet", unit.Pressure),
		In: []formula.Symbol{
			density, flow, bore,
			formula.Quantity("nozzle", "d", "bore of the nozzle", unit.Bore, 3e-4, 3),
			formula.Quantity("rise", "z", "rise from inlet to nozzle", unit.Head, -1000, 1000),
			length,
			formula.Number("factor", "f", "Darcy friction factor", "", 0, 100),
			loss,
		},
		Source: source.Ref{Work: source.Munson, At: "equation of energy, example 8.8 as retyped"},
		Eval: func(in []float64) float64 {
			return InletPressure(in[0], in[1], in[2], in[3], in[4], in[5], in[6], in[7])
		},
	},
	{
		Name:   "volume",
		Title:  "Water in a length of tubing",
		Text:   "V = L π D²/4",
		Result: formula.Result("V", "volume", unit.Volume),
		In:     []formula.Symbol{length, bore},
		Source: geometry,
		Eval:   func(in []float64) float64 { return Volume(in[0], in[1]) },
	},
	{
		Name:   "fill-time",
		Title:  "Time to fill a length of tubing",
		Text:   "T = V/Q, V = L π D²/4",
		Result: formula.Result("T", "time", unit.Duration),
		In: []formula.Symbol{
			length, bore,
			formula.Quantity("flow", "Q", "flow in, less what leaves", unit.Flow, 1e-9, 10),
		},
		Note:   "A row that drains after each watering is filled again each time: its lowest emitters get that water.",
		Source: geometry,
		Eval:   func(in []float64) float64 { return FillTime(in[0], in[1], in[2]) },
	},
}
