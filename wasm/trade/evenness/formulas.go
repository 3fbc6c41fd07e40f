package evenness

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

var (
	flows      = []formula.Symbol{{Name: "flow", Letter: "q", Meaning: "flow that was measured", Kind: unit.EmitterFlow, Min: 0, Max: 1}}
	variation  = formula.Symbol{Name: "variation", Letter: "CV", Meaning: "coefficient of variation", Kind: unit.Share, Min: 0, Max: 1}
	uniformity = unit.Share
	definition = source.Ref{Work: "definition", Standing: source.Derived}
)

// Formulas are the formulas of this package. A part of the page that shows one
// names its variable instead, so that the browser need not load the rest.
var Formulas = []*formula.Formula{
	meanFlowFormula,
	VariationFormula,
	StatisticalUniformityFormula,
	LowQuarterFormula,
	ChristiansenCoefficientFormula,
	EmissionUniformityFormula,
	normalLowFormula,
	normalChristiansenFormula,
	uniformityFromStatisticalFormula,
	totalVariationFormula,
}

var meanFlowFormula = &formula.Formula{
	Name:    "mean-flow",
	Title:   "Mean flow",
	Text:    "m = (q₁ + q₂ + … + qₙ)/n",
	Result:  formula.Symbol{Letter: "m", Meaning: "mean flow", Kind: unit.EmitterFlow},
	In:      flows,
	Repeats: true,
	Source:  definition,
	Eval:    Mean,
}

// VariationFormula is the formula "variation".
var VariationFormula = &formula.Formula{
	Name:    "variation",
	Title:   "Coefficient of variation",
	Text:    "CV = √(Σ(q - m)²/(n - 1))/m, m the mean",
	Result:  formula.Symbol{Letter: "CV", Meaning: "coefficient of variation", Kind: unit.Share},
	In:      flows,
	Repeats: true,
	Source:  definition,
	Eval:    CV,
}

// StatisticalUniformityFormula is the formula "statistical-uniformity".
var StatisticalUniformityFormula = &formula.Formula{
	Name:    "statistical-uniformity",
	Title:   "Statistical uniformity",
	Text:    "Us = 1 - CV",
	Result:  formula.Symbol{Letter: "Us", Meaning: "statistical uniformity", Kind: uniformity},
	In:      flows,
	Repeats: true,
	Source:  source.Ref{Work: source.EP458, Standing: source.Memory},
	Eval:    func(in []float64) float64 { return 1 - CV(in) },
}

// LowQuarterFormula is the formula "low-quarter".
var LowQuarterFormula = &formula.Formula{
	Name:    "low-quarter",
	Title:   "Distribution uniformity of the low quarter",
	Text:    "DU = mean of the lowest quarter/mean",
	Result:  formula.Symbol{Letter: "DU", Meaning: "distribution uniformity", Kind: uniformity},
	In:      flows,
	Repeats: true,
	Note:    "Of a quarter that is not whole, the last value counts in part.",
	Source:  source.Ref{Work: source.Keller, Standing: source.Memory},
	Eval:    func(in []float64) float64 { return Of(in, 1, 0).DU },
}

// ChristiansenCoefficientFormula is the formula "christiansen-coefficient".
var ChristiansenCoefficientFormula = &formula.Formula{
	Name:    "christiansen-coefficient",
	Title:   "Christiansen's coefficient",
	Text:    "CU = 1 - Σ|q - m|/(n m), m the mean",
	Result:  formula.Symbol{Letter: "CU", Meaning: "Christiansen's coefficient", Kind: uniformity},
	In:      flows,
	Repeats: true,
	Source:  source.Ref{Work: source.Christians, Standing: source.Memory},
	Eval:    CU,
}

// EmissionUniformityFormula is the formula "emission-uniformity".
var EmissionUniformityFormula = &formula.Formula{
	Name:   "emission-uniformity",
	Title:  "Emission uniformity of a design",
	Text:   "EU = (1 - 1.27 CV/√n) qmin/qmean",
	Result: formula.Symbol{Letter: "EU", Meaning: "emission uniformity", Kind: uniformity},
	In: []formula.Symbol{
		variation,
		{Name: "per-plant", Letter: "n", Meaning: "emitters at each plant", Kind: unit.Count, Min: 1, Max: 100},
		{Name: "least", Letter: "qmin/qmean", Meaning: "least flow over the mean", Kind: unit.Share, Min: 0, Max: 1},
	},
	Source: source.Ref{Work: source.Karmeli, At: "as quoted by others"},
	Eval:   func(in []float64) float64 { return Design(in[0], in[1], in[2]) },
}

var normalLowFormula = &formula.Formula{
	Name:   "normal-low",
	Title:  "Mean of the lowest share of a normal distribution",
	Text:   "d = φ(z)/p, Φ(z) = p",
	Result: formula.Symbol{Letter: "d", Meaning: "standard deviations below the mean"},
	In:     []formula.Symbol{{Name: "share", Letter: "p", Meaning: "share that is lowest", Kind: unit.Share, Min: 1e-6, Max: 0.999}},
	Note:   "A quarter gives 1.2711, which the emission uniformity rounds to 1.27.",
	Source: source.Ref{Work: "statistics of the normal distribution", Standing: source.Derived},
	Eval:   func(in []float64) float64 { return NormalLow(in[0]) },
}

var normalChristiansenFormula = &formula.Formula{
	Name:   "normal-christiansen",
	Title:  "Christiansen's coefficient of a normal distribution",
	Text:   "CU = 1 - √(2/π) CV",
	Result: formula.Symbol{Letter: "CU", Meaning: "Christiansen's coefficient", Kind: uniformity},
	In:     []formula.Symbol{variation},
	Source: source.Ref{Work: "statistics of the normal distribution", Standing: source.Derived},
	Eval:   func(in []float64) float64 { return NormalCU(in[0]) },
}

var uniformityFromStatisticalFormula = &formula.Formula{
	Name:   "uniformity-from-statistical",
	Title:  "Emission uniformity that goes with a statistical uniformity",
	Text:   "EU = 1 - 1.27 (1 - Us)",
	Result: formula.Symbol{Letter: "EU", Meaning: "emission uniformity", Kind: uniformity},
	In:     []formula.Symbol{{Name: "statistical", Letter: "Us", Meaning: "statistical uniformity", Kind: unit.Share, Min: 0.3, Max: 1}},
	Note:   "For flows that vary as a normal distribution does.",
	Source: source.Ref{Work: source.EP458, Standing: source.Memory},
	Eval:   func(in []float64) float64 { return Design(1-in[0], 1, 1) },
}

var totalVariationFormula = &formula.Formula{
	Name:   "total-variation",
	Title:  "Variation of flow from manufacture and head together",
	Text:   "CVq = √(CV² + x² CVh²)",
	Result: formula.Symbol{Letter: "CVq", Meaning: "coefficient of variation of the flows", Kind: unit.Share},
	In: []formula.Symbol{
		variation,
		{Name: "exponent", Letter: "x", Meaning: "exponent of the emitter", Min: 0, Max: 1},
		{Name: "head-variation", Letter: "CVh", Meaning: "coefficient of variation of the heads", Kind: unit.Share, Min: 0, Max: 1},
	},
	Source: source.Ref{Work: "Bralts, statistical uniformity of drip irrigation", Standing: source.Memory},
	Eval:   func(in []float64) float64 { return TotalCV(in[0], in[1], in[2]) },
}
