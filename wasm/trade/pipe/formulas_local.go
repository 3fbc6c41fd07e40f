package pipe

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

var (
	coefficient = formula.Symbol{Letter: "K", Meaning: "loss coefficient"}
	barbBore    = formula.Symbol{Name: "bore", Letter: "D", Meaning: "bore of the tubing", Kind: unit.Bore, Min: 0.005, Max: 0.05}
	barbLength  = formula.Symbol{Letter: "le", Meaning: "length of tubing that loses as much", Kind: unit.Length}
	watters     = source.Ref{Work: source.Watters, Standing: source.Memory}
)

const barbNote = "Curves for 10 to 20 mm bores."

// LocalHeadFormula is the formula "local-head".
var LocalHeadFormula = &formula.Formula{
	Name:   "local-head",
	Title:  "Head lost in fittings",
	Text:   "h = K v²/(2g)",
	Result: headLost,
	In:     []formula.Symbol{loss, speed},
	Note:   "In laminar flow K is greater than its usual value.",
	Source: source.Ref{Work: source.Munson, At: "minor losses, example 8.8 as retyped"},
	Eval:   func(in []float64) float64 { return LocalHead(in[0], in[1]) },
}

var contractionFormula = &formula.Formula{
	Name:   "contraction",
	Title:  "Loss coefficient of a sharp contraction",
	Text:   "K = (1/Cc - 1)² on the velocity behind it, Cc by table of A₂/A₁",
	Result: coefficient,
	In:     []formula.Symbol{{Name: "area-ratio", Letter: "A₂/A₁", Meaning: "smaller area over larger", Min: 0, Max: 1}},
	Note:   "Straight lines between the table's tenths; its values at 0 and at even tenths are from memory.",
	Source: source.Ref{Work: source.Streeter, At: "table of contraction coefficients, as reprinted"},
	Eval:   func(in []float64) float64 { return Contraction(in[0]) },
}

var expansionFormula = &formula.Formula{
	Name:   "expansion",
	Title:  "Loss coefficient of a sudden expansion",
	Text:   "K = (1 - (d₁/d₂)²)² on the velocity before it",
	Result: coefficient,
	In: []formula.Symbol{
		{Name: "before", Letter: "d₁", Meaning: "bore before the expansion", Kind: unit.Bore, Min: 1e-4, Max: 3},
		{Name: "behind", Letter: "d₂", Meaning: "bore behind it", Kind: unit.Bore, Min: 1e-4, Max: 3},
	},
	Source: source.Ref{Work: source.Munson, At: "equation of Borda and Carnot", Standing: source.Memory},
	Eval:   func(in []float64) float64 { return Expansion(in[0], in[1]) },
}

// InsertFormula is the formula "insert".
var InsertFormula = &formula.Formula{
	Name:   "insert",
	Title:  "Loss coefficient of a fitting pushed into tubing",
	Text:   "K = (Kc + (1 - (d/D)²)²) (D/d)⁴ on the velocity in the tubing, Kc of contraction at (d/D)²",
	Result: coefficient,
	In: []formula.Symbol{
		{Name: "throat", Letter: "d", Meaning: "bore of the fitting", Kind: unit.Bore, Min: 5e-4, Max: 1},
		{Name: "bore", Letter: "D", Meaning: "bore of the tubing", Kind: unit.Bore, Min: 1e-3, Max: 1},
	},
	Note:   "Friction in the fitting comes on top. Measure its bore: an error of 5 % in it is one of 20 % or more in K.",
	Source: source.Ref{Work: "contraction and expansion in series", Standing: source.Derived},
	Eval:   func(in []float64) float64 { return Insert(in[0], in[1]) },
}

var barbSmallFormula = &formula.Formula{
	Name:   "barb-small",
	Title:  "Length of tubing that loses as much as a small emitter barb",
	Text:   "le = 14.38 D^-1.89, D in mm",
	Result: barbLength,
	In:     []formula.Symbol{barbBore},
	Note:   barbNote,
	Source: watters,
	Eval:   func(in []float64) float64 { return BarbLength(SmallBarb, in[0]) },
}

var barbStandardFormula = &formula.Formula{
	Name:   "barb-standard",
	Title:  "Length of tubing that loses as much as a standard emitter barb",
	Text:   "le = 18.91 D^-1.87, D in mm",
	Result: barbLength,
	In:     []formula.Symbol{barbBore},
	Note:   barbNote,
	Source: watters,
	Eval:   func(in []float64) float64 { return BarbLength(StandardBarb, in[0]) },
}

var barbLargeFormula = &formula.Formula{
	Name:   "barb-large",
	Title:  "Length of tubing that loses as much as a large emitter barb",
	Text:   "le = 23.04 D^-1.84, D in mm",
	Result: barbLength,
	In:     []formula.Symbol{barbBore},
	Note:   barbNote,
	Source: watters,
	Eval:   func(in []float64) float64 { return BarbLength(LargeBarb, in[0]) },
}
