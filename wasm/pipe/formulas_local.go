package pipe

import (
	"evenrow/wasm/formula"
	"evenrow/wasm/source"
	"evenrow/wasm/unit"
)

var (
	coefficient = formula.Result("K", "loss coefficient", unit.None)
	barbBore    = formula.Quantity("bore", "D", "bore of the tubing", unit.Bore, 0.005, 0.05)
	barbLength  = formula.Result("le", "length of tubing that loses as much", unit.Length)
	watters     = source.Ref{Work: source.Watters, Standing: source.Memory}
)

const barbNote = "Curves for 10 to 20 mm bores."

var localFormulas = []*formula.Formula{
	{
		Name:   "local-head",
		Title:  "Head lost in fittings",
		Text:   "h = K v²/(2g)",
		Result: headLost,
		In:     []formula.Symbol{loss, speed},
		Note:   "In laminar flow K is greater than its usual value.",
		Source: source.Ref{Work: source.Munson, At: "minor losses, example 8.8 as retyped"},
		Eval:   func(in []float64) float64 { return LocalHead(in[0], in[1]) },
	},
	{
		Name:   "contraction",
		Title:  "Loss coefficient of a sharp contraction",
		Text:   "K = (1/Cc - 1)² on the velocity behind it, Cc by table of A₂/A₁",
		Result: coefficient,
		In:     []formula.Symbol{formula.Number("area-ratio", "A₂/A₁", "smaller area over larger", "", 0, 1)},
		Note:   "Straight lines between the table's tenths; its values at 0 and at even tenths are from memory.",
		Source: source.Ref{Work: source.Streeter, At: "table of contraction coefficients, as reprinted"},
		Eval:   func(in []float64) float64 { return Contraction(in[0]) },
	},
	{
		Name:   "expansion",
		Title:  "Loss coefficient of a sudden expansion",
		Text:   "K = (1 - (d₁/d₂)²)² on the velocity before it",
		Result: coefficient,
		In: []formula.Symbol{
			formula.Quantity("before", "d₁", "bore before the expansion", unit.Bore, 1e-4, 3),
			formula.Quantity("behind", "d₂", "bore behind it", unit.Bore, 1e-4, 3),
		},
		Source: source.Ref{Work: source.Munson, At: "equation of Borda and Carnot", Standing: source.Memory},
		Eval:   func(in []float64) float64 { return Expansion(in[0], in[1]) },
	},
	{
		Name:   "insert",
		Title:  "Loss coefficient of a fitting pushed into tubing",
		Text:   "K = (Kc + (1 - (d/D)²)²) (D/d)⁴ on the velocity in the tubing, Kc of contraction at (d/D)²",
		Result: coefficient,
		In: []formula.Symbol{
			formula.Quantity("throat", "d", "bore of the fitting", unit.Bore, 5e-4, 1),
			formula.Quantity("bore", "D", "bore of the tubing", unit.Bore, 1e-3, 1),
		},
		Note:   "Friction in the fitting comes on top. Measure its bore: an error of 5 % in it is one of 20 % or more in K.",
		Source: source.Ref{Work: "contraction and expansion in series", Standing: source.Derived},
		Eval:   func(in []float64) float64 { return Insert(in[0], in[1]) },
	},
	{
		Name:   "barb-small",
		Title:  "Length of tubing that loses as much as a small emitter barb",
		Text:   "le = 14.38 D^-1.89, D in mm",
		Result: barbLength,
		In:     []formula.Symbol{barbBore},
		Note:   barbNote,
		Source: watters,
		Eval:   func(in []float64) float64 { return BarbLength(SmallBarb, in[0]) },
	},
	{
		Name:   "barb-standard",
		Title:  "Length of tubing that loses as much as a standard emitter barb",
		Text:   "le = 18.91 D^-1.87, D in mm",
		Result: barbLength,
		In:     []formula.Symbol{barbBore},
		Note:   barbNote,
		Source: watters,
		Eval:   func(in []float64) float64 { return BarbLength(StandardBarb, in[0]) },
	},
	{
		Name:   "barb-large",
		Title:  "Length of tubing that loses as much as a large emitter barb",
		Text:   "le = 23.04 D^-1.84, D in mm",
		Result: barbLength,
		In:     []formula.Symbol{barbBore},
		Note:   barbNote,
		Source: watters,
		Eval:   func(in []float64) float64 { return BarbLength(LargeBarb, in[0]) },
	},
}
