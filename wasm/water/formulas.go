package water

import (
	"evenrow/wasm/formula"
	"evenrow/wasm/source"
	"evenrow/wasm/unit"
)

var (
	temperature = formula.Quantity("temperature", "t", "temperature of the water", unit.Temperature, Coldest, Warmest)
	density     = formula.Quantity("density", "ρ", "density of the water", unit.Density, 950, 1200)
	gravity     = source.Ref{Work: "definition of pressure; standard gravity 9.80665 m/s²", Standing: source.Derived}
)

// Formulas are the formulas of this package.
var Formulas = []*formula.Formula{
	{
		Name:   "density",
		Title:  "Density of water",
		Text:   "ρ = (999.83952 + 16.945176 t - 7.9870401e-3 t² - 46.170461e-6 t³ + 105.56302e-9 t⁴ - 280.54253e-12 t⁵) / (1 + 16.87985e-3 t)",
		Result: formula.Result("ρ", "density of water", unit.Density),
		In:     []formula.Symbol{temperature},
		Note:   "Leaves out dissolved salts: a feed of 2 g/L is about 0.15 % denser.",
		Source: source.Ref{Work: source.Kell, Standing: source.Memory},
		Eval:   func(in []float64) float64 { return Density(in[0]) },
	},
	{
		Name:   "dynamic-viscosity",
		Title:  "Dynamic viscosity of water",
		Text:   "μ = 1e-6 (280.68 T^-1.9 + 511.45 T^-7.7 + 61.131 T^-19.6 + 0.45903 T^-40), T = (t + 273.15)/300",
		Result: formula.Number("", "μ", "dynamic viscosity of water", "Pa s", 0, 0),
		In:     []formula.Symbol{temperature},
		Source: source.Ref{Work: source.IAPWS, Standing: source.Memory},
		Eval:   func(in []float64) float64 { return Dynamic(in[0]) },
	},
	{
		Name:   "viscosity",
		Title:  "Kinematic viscosity of water",
		Text:   "ν = μ/ρ",
		Result: formula.Result("ν", "kinematic viscosity of water", unit.Viscosity),
		In:     []formula.Symbol{temperature},
		Note:   "Cold water is thicker: at 5 °C half as thick again as at 20 °C, and friction in laminar flow grows with it.",
		Source: source.Ref{Work: "definition", Standing: source.Derived},
		Eval:   func(in []float64) float64 { return At(in[0]).Kinematic },
	},
	{
		Name:   "pressure-of-head",
		Title:  "Pressure under a head of water",
		Text:   "p = ρ g h",
		Result: formula.Result("p", "pressure", unit.Pressure),
		In:     []formula.Symbol{density, formula.Quantity("head", "h", "head of water", unit.Head, -1000, 1000)},
		Source: gravity,
		Eval: func(in []float64) float64 {
			return Water{Density: in[0]}.PressureHead(in[1])
		},
	},
	{
		Name:   "head-of-pressure",
		Title:  "Head of water that a pressure holds up",
		Text:   "h = p/(ρ g)",
		Result: formula.Result("h", "head of water", unit.Head),
		In:     []formula.Symbol{density, formula.Quantity("pressure", "p", "pressure", unit.Pressure, -1e5, 1e7)},
		Source: gravity,
		Eval: func(in []float64) float64 {
			return Water{Density: in[0]}.HeadOf(in[1])
		},
	},
}
