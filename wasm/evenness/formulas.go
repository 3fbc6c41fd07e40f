package evenness

import (
	"evenrow/wasm/formula"
	"evenrow/wasm/source"
	"evenrow/wasm/unit"
)

var (
	flows      = []formula.Symbol{formula.Quantity("flow", "q", "flow that was measured", unit.EmitterFlow, 0, 1)}
	variation  = formula.Quantity("variation", "CV", "coefficient of variation", unit.Share, 0, 1)
	uniformity = unit.Share
	definition = source.Ref{Work: "definition", Standing: source.Derived}
)

// Formulas are the formulas of this package.
var Formulas = []*formula.Formula{
	{
		Name:    "mean-flow",
		Title:   "Mean flow",
		Text:    "m = (q₁ + q₂ + … + qₙ)/n",
		Result:  formula.Result("m", "mean flow", unit.EmitterFlow),
		In:      flows,
		Repeats: true,
		Source:  definition,
		Eval:    Mean,
	},
	{
		Name:    "variation",
		Title:   "Coefficient of variation",
		Text:    "CV = √(Σ(q - m)²/(n - 1))/m, m the mean",
		Result:  formula.Result("CV", "coefficient of variation", unit.Share),
		In:      flows,
		Repeats: true,
		Source:  definition,
		Eval:    CV,
	},
	{
		Name:    "statistical-uniformity",
		Title:   "Statistical uniformity",
		Text:    "Us = 1 - CV",
		Result:  formula.Result("Us", "statistical uniformity", uniformity),
		In:      flows,
		Repeats: true,
		Source:  source.Ref{Work: source.EP458, Standing: source.Memory},
		Eval:    func(in []float64) float64 { return 1 - CV(in) },
	},
	{
		Name:    "low-quarter",
		Title:   "Distribution uniformity of the low quarter",
		Text:    "DU = mean of the lowest quarter/mean",
		Result:  formula.Result("DU", "distribution uniformity", uniformity),
		In:      flows,
		Repeats: true,
		Note:    "Of a quarter that is not whole, the last value counts in part.",
		Source:  source.Ref{Work: source.Keller, Standing: source.Memory},
		Eval:    func(in []float64) float64 { return Of(in, 1, 0).DU },
	},
	{
		Name:    "christiansen-coefficient",
		Title:   "Christiansen's coefficient",
		Text:    "CU = 1 - Σ|q - m|/(n m), m the mean",
		Result:  formula.Result("CU", "Christiansen's coefficient", uniformity),
		In:      flows,
		Repeats: true,
		Source:  source.Ref{Work: source.Christians, Standing: source.Memory},
		Eval:    CU,
	},
	{
		Name:   "emission-uniformity",
		Title:  "Emission uniformity of a design",
		Text:   "EU = (1 - 1.27 CV/√n) qmin/qmean",
		Result: formula.Result("EU", "emission uniformity", uniformity),
		In: []formula.Symbol{
			variation,
			formula.Quantity("per-plant", "n", "emitters at each plant", unit.Count, 1, 100),
			formula.Quantity("least", "qmin/qmean", "least flow over the mean", unit.Share, 0, 1),
		},
		Source: source.Ref{Work: source.Karmeli, At: "as quoted by others"},
		Eval:   func(in []float64) float64 { return Design(in[0], in[1], in[2]) },
	},
	{
		Name:   "normal-low",
		Title:  "Mean of the lowest share of a normal distribution",
		Text:   "d = φ(z)/p, Φ(z) = p",
		Result: formula.Result("d", "standard deviations below the mean", unit.None),
		In:     []formula.Symbol{formula.Quantity("share", "p", "share that is lowest", unit.Share, 1e-6, 0.999)},
		Note:   "A quarter gives 1.2711, which the emission uniformity rounds to 1.27.",
		Source: source.Ref{Work: "statistics of the normal distribution", Standing: source.Derived},
		Eval:   func(in []float64) float64 { return NormalLow(in[0]) },
	},
	{
		Name:   "normal-christiansen",
		Title:  "Christiansen's coefficient of a normal distribution",
		Text:   "CU = 1 - √(2/π) CV",
		Result: formula.Result("CU", "Christiansen's coefficient", uniformity),
		In:     []formula.Symbol{variation},
		Source: source.Ref{Work: "statistics of the normal distribution", Standing: source.Derived},
		Eval:   func(in []float64) float64 { return NormalCU(in[0]) },
	},
	{
		Name:   "uniformity-from-statistical",
		Title:  "Emission uniformity that goes with a statistical uniformity",
		Text:   "EU = 1 - 1.27 (1 - Us)",
		Result: formula.Result("EU", "emission uniformity", uniformity),
		In:     []formula.Symbol{formula.Quantity("statistical", "Us", "statistical uniformity", unit.Share, 0.3, 1)},
		Note:   "For flows that vary as a normal distribution does.",
		Source: source.Ref{Work: source.EP458, Standing: source.Memory},
		Eval:   func(in []float64) float64 { return Design(1-in[0], 1, 1) },
	},
	{
		Name:   "total-variation",
		Title:  "Variation of flow from manufacture and head together",
		Text:   "CVq = √(CV² + x² CVh²)",
		Result: formula.Result("CVq", "coefficient of variation of the flows", unit.Share),
		In: []formula.Symbol{
			variation,
			formula.Number("exponent", "x", "exponent of the emitter", "", 0, 1),
			formula.Quantity("head-variation", "CVh", "coefficient of variation of the heads", unit.Share, 0, 1),
		},
		Source: source.Ref{Work: "Bralts, statistical uniformity of drip irrigation", Standing: source.Memory},
		Eval:   func(in []float64) float64 { return TotalCV(in[0], in[1], in[2]) },
	},
}
