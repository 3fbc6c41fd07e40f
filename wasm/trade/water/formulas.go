package water

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

var (
	temperature = formula.Symbol{Name: "temperature", Letter: "t", Meaning: "temperature of the water", Kind: unit.Temperature, Min: Coldest, Max: Warmest}
	density     = formula.Symbol{Name: "density", Letter: "ρ", Meaning: "density of the water", Kind: unit.Density, Min: 950, Max: 1200}
	gravity     = source.Ref{Work: "definition of pressure; standard gravity 9.80665 m/s²", Standing: source.Derived}
)

// Formulas are the formulas of this package. A part of the page that shows one
// names its variable instead, so that the browser need not load the rest.
var Formulas = []*formula.Formula{
	DensityFormula,
	dynamicViscosityFormula,
	ViscosityFormula,
	PressureOfHeadFormula,
	HeadOfPressureFormula,
	oxygenFormula,
}

// DensityFormula is the formula "density".
var DensityFormula = &formula.Formula{
	Name:   "density",
	Title:  "Density of water",
	Text:   "ρ = (999.83952 + 16.945176 t - 7.9870401e-3 t² - 46.170461e-6 t³ + 105.56302e-9 t⁴ - 280.54253e-12 t⁵) / (1 + 16.87985e-3 t)",
	Result: formula.Symbol{Letter: "ρ", Meaning: "density of water", Kind: unit.Density},
	In:     []formula.Symbol{temperature},
	Note:   "Leaves out dissolved salts: a feed of 2 g/L is about 0.15 % denser.",
	Source: source.Ref{Work: source.Kell, Standing: source.Memory},
	Eval:   func(in []float64) float64 { return Density(in[0]) },
}

var dynamicViscosityFormula = &formula.Formula{
	Name:   "dynamic-viscosity",
	Title:  "Dynamic viscosity of water",
	Text:   "μ = 1e-6 (280.68 T^-1.9 + 511.45 T^-7.7 + 61.131 T^-19.6 + 0.45903 T^-40), T = (t + 273.15)/300",
	Result: formula.Symbol{Letter: "μ", Meaning: "dynamic viscosity of water", Unit: "Pa s"},
	In:     []formula.Symbol{temperature},
	Source: source.Ref{Work: source.IAPWS, Standing: source.Memory},
	Eval:   func(in []float64) float64 { return Dynamic(in[0]) },
}

// ViscosityFormula is the formula "viscosity".
var ViscosityFormula = &formula.Formula{
	Name:   "viscosity",
	Title:  "Kinematic viscosity of water",
	Text:   "ν = μ/ρ",
	Result: formula.Symbol{Letter: "ν", Meaning: "kinematic viscosity of water", Kind: unit.Viscosity},
	In:     []formula.Symbol{temperature},
	Note:   "Cold water is thicker: at 5 °C half as thick again as at 20 °C, and friction in laminar flow grows with it.",
	Source: source.Ref{Work: "definition", Standing: source.Derived},
	Eval:   func(in []float64) float64 { return At(in[0]).Kinematic },
}

// PressureOfHeadFormula is the formula "pressure-of-head".
var PressureOfHeadFormula = &formula.Formula{
	Name:   "pressure-of-head",
	Title:  "Pressure under a head of water",
	Text:   "p = ρ g h",
	Result: formula.Symbol{Letter: "p", Meaning: "pressure", Kind: unit.Pressure},
	In:     []formula.Symbol{density, {Name: "head", Letter: "h", Meaning: "head of water", Kind: unit.Head, Min: -1000, Max: 1000}},
	Source: gravity,
	Eval: func(in []float64) float64 {
		return Water{Density: in[0]}.PressureHead(in[1])
	},
}

// HeadOfPressureFormula is the formula "head-of-pressure".
var HeadOfPressureFormula = &formula.Formula{
	Name:   "head-of-pressure",
	Title:  "Head of water that a pressure holds up",
	Text:   "h = p/(ρ g)",
	Result: formula.Symbol{Letter: "h", Meaning: "head of water", Kind: unit.Head},
	In:     []formula.Symbol{density, {Name: "pressure", Letter: "p", Meaning: "pressure", Kind: unit.Pressure, Min: -1e5, Max: 1e7}},
	Source: gravity,
	Eval: func(in []float64) float64 {
		return Water{Density: in[0]}.HeadOf(in[1])
	},
}
