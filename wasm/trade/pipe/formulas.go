package pipe

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Symbols that several formulas share.
var (
	length    = formula.Symbol{Name: "length", Letter: "L", Meaning: "length of the tubing", Kind: unit.Length, Min: 0, Max: 1e5}
	bore      = formula.Symbol{Name: "bore", Letter: "D", Meaning: "bore of the tubing", Kind: unit.Bore, Min: 3e-4, Max: 3}
	flow      = formula.Symbol{Name: "flow", Letter: "Q", Meaning: "flow", Kind: unit.Flow, Min: 0, Max: 10}
	speed     = formula.Symbol{Name: "velocity", Letter: "v", Meaning: "mean velocity", Kind: unit.Speed, Min: 0, Max: 30}
	roughness = formula.Symbol{Name: "roughness", Letter: "ε", Meaning: "roughness of the wall", Kind: unit.Bore, Min: 0, Max: 0.01}
	viscosity = formula.Symbol{Name: "viscosity", Letter: "ν", Meaning: "kinematic viscosity of the water", Kind: unit.Viscosity, Min: 2e-7, Max: 1e-5}
	density   = formula.Symbol{Name: "density", Letter: "ρ", Meaning: "density of the water", Kind: unit.Density, Min: 950, Max: 1200}
	factor    = formula.Symbol{Name: "factor", Letter: "f", Meaning: "Darcy friction factor", Min: 1e-4, Max: 100}
	loss      = formula.Symbol{Name: "coefficient", Letter: "K", Meaning: "sum of the loss coefficients", Min: 0, Max: 1e5}
	reynolds  = formula.Symbol{Name: "reynolds", Letter: "Re", Meaning: "Reynolds number", Min: 1, Max: 1e8}
	turbulent = formula.Symbol{Name: "reynolds", Letter: "Re", Meaning: "Reynolds number", Min: 3000, Max: 1e8}
	relative  = formula.Symbol{Name: "relative-roughness", Letter: "ε/D", Meaning: "roughness over bore", Min: 0, Max: 0.05}

	headLost = formula.Symbol{Letter: "h", Meaning: "head lost", Kind: unit.Head}
	darcyF   = formula.Symbol{Letter: "f", Meaning: "Darcy friction factor"}
	derived  = source.Ref{Work: "definition", Standing: source.Derived}
	geometry = source.Ref{Work: "geometry", Standing: source.Derived}
	darcy    = source.Ref{Work: source.Munson, At: "equation of Darcy and Weisbach, example 8.8 as retyped"}
)

// Formulas are the formulas of this package. A part of the page that shows one
// names its variable instead, so that the browser need not load the rest.
var Formulas = []*formula.Formula{
	VelocityFormula,
	FlowAtVelocityFormula,
	ReynoldsFormula,
	frictionHeadFormula,
	TubingHeadFormula,
	allHeadFormula,
	inletPressureFormula,
	VolumeFormula,
	FillTimeFormula,
	FrictionFactorFormula,
	laminarFactorFormula,
	swameeJainFactorFormula,
	churchillFactorFormula,
	haalandFactorFormula,
	blasiusFactorFormula,
	polyethyleneFactorFormula,
	laminarBlasiusCrossingFormula,
	hazenWilliamsHeadFormula,
	LocalHeadFormula,
	contractionFormula,
	expansionFormula,
	InsertFormula,
	HoleFlowFormula,
	barbSmallFormula,
	barbStandardFormula,
	barbLargeFormula,
	outletsFormula,
	outletsShortFormula,
	outletsHalfFormula,
	outletsInletFormula,
	rowHeadFormula,
	rowHeadSmoothFormula,
	rowHeadBlasiusFormula,
	celerityFormula,
	SurgeFormula,
	plasticSurgeFormula,
	slowSurgeFormula,
}

// VelocityFormula is the formula "velocity".
var VelocityFormula = &formula.Formula{
	Name:   "velocity",
	Title:  "Mean velocity in a bore",
	Text:   "v = 4 Q/(π D²)",
	Result: formula.Symbol{Letter: "v", Meaning: "mean velocity", Kind: unit.Speed},
	In:     []formula.Symbol{flow, bore},
	Source: geometry,
	Eval:   func(in []float64) float64 { return Velocity(in[0], in[1]) },
}

// FlowAtVelocityFormula is the formula "flow-at-velocity".
var FlowAtVelocityFormula = &formula.Formula{
	Name:   "flow-at-velocity",
	Title:  "Flow that moves at a velocity",
	Text:   "Q = v π D²/4",
	Result: formula.Symbol{Letter: "Q", Meaning: "flow", Kind: unit.Flow},
	In:     []formula.Symbol{speed, bore},
	Note:   "With the flushing velocity it gives the flow that cleans a row with its end open.",
	Source: geometry,
	Eval:   func(in []float64) float64 { return FlowAt(in[0], in[1]) },
}

// ReynoldsFormula is the formula "reynolds".
var ReynoldsFormula = &formula.Formula{
	Name:   "reynolds",
	Title:  "Reynolds number",
	Text:   "Re = v D/ν",
	Result: formula.Symbol{Letter: "Re", Meaning: "Reynolds number"},
	In:     []formula.Symbol{speed, bore, viscosity},
	Source: derived,
	Eval:   func(in []float64) float64 { return Reynolds(in[0], in[1], in[2]) },
}

var frictionHeadFormula = &formula.Formula{
	Name:   "friction-head",
	Title:  "Head lost to friction",
	Text:   "h = f (L/D) v²/(2g)",
	Result: headLost,
	In:     []formula.Symbol{factor, length, bore, speed},
	Source: darcy,
	Eval:   func(in []float64) float64 { return FrictionHead(in[0], in[1], in[2], in[3]) },
}

// TubingHeadFormula is the formula "tubing-head".
var TubingHeadFormula = &formula.Formula{
	Name:   "tubing-head",
	Title:  "Head lost in tubing at a flow",
	Text:   "h = f (L/D) v²/(2g), v = 4 Q/(π D²), f of friction-factor at Re = v D/ν and ε/D",
	Result: headLost,
	In:     []formula.Symbol{flow, length, bore, roughness, viscosity},
	Source: darcy,
	Eval:   func(in []float64) float64 { return Head(in[0], in[1], in[2], in[3], in[4]) },
}

var allHeadFormula = &formula.Formula{
	Name:   "all-head",
	Title:  "Head lost to friction and fittings together",
	Text:   "h = (f L/D + K) v²/(2g), v = 4 Q/(π D²)",
	Result: headLost,
	In:     []formula.Symbol{factor, length, bore, loss, flow},
	Source: darcy,
	Eval:   func(in []float64) float64 { return AllHead(in[0], in[1], in[2], in[3], in[4]) },
}

var inletPressureFormula = &formula.Formula{
	Name:   "inlet-pressure",
	Title:  "Pressure at the inlet of a rising pipe with a nozzle",
	Text:   "p = ρ (g z + (vₙ² - v²)/2 + (f L/D + K) v²/2), v = 4 Q/(π D²), vₙ = 4 Q/(π d²)",
	Result: formula.Symbol{Letter: "p", Meaning: "pressure at the inlet", Kind: unit.Pressure},
	In: []formula.Symbol{
		density, flow, bore,
		{Name: "nozzle", Letter: "d", Meaning: "bore of the nozzle", Kind: unit.Bore, Min: 3e-4, Max: 3},
		{Name: "rise", Letter: "z", Meaning: "rise from inlet to nozzle", Kind: unit.Head, Min: -1000, Max: 1000},
		length,
		{Name: "factor", Letter: "f", Meaning: "Darcy friction factor", Min: 0, Max: 100},
		loss,
	},
	Source: source.Ref{Work: source.Munson, At: "equation of energy, example 8.8 as retyped"},
	Eval: func(in []float64) float64 {
		return InletPressure(in[0], in[1], in[2], in[3], in[4], in[5], in[6], in[7])
	},
}

// VolumeFormula is the formula "volume".
var VolumeFormula = &formula.Formula{
	Name:   "volume",
	Title:  "Water in a length of tubing",
	Text:   "V = L π D²/4",
	Result: formula.Symbol{Letter: "V", Meaning: "volume", Kind: unit.Volume},
	In:     []formula.Symbol{length, bore},
	Source: geometry,
	Eval:   func(in []float64) float64 { return Volume(in[0], in[1]) },
}

// FillTimeFormula is the formula "fill-time".
var FillTimeFormula = &formula.Formula{
	Name:   "fill-time",
	Title:  "Time to fill a length of tubing",
	Text:   "T = V/Q, V = L π D²/4",
	Result: formula.Symbol{Letter: "T", Meaning: "time", Kind: unit.Duration},
	In: []formula.Symbol{
		length, bore,
		{Name: "flow", Letter: "Q", Meaning: "flow in, less what leaves", Kind: unit.Flow, Min: 1e-9, Max: 10},
	},
	Note:   "A row that drains after each watering is filled again each time: its lowest emitters get that water.",
	Source: geometry,
	Eval:   func(in []float64) float64 { return FillTime(in[0], in[1], in[2]) },
}
