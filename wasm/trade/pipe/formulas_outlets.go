package pipe

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

var (
	outlets  = formula.Symbol{Name: "outlets", Letter: "N", Meaning: "number of outlets", Kind: unit.Count, Min: 1, Max: 2000}
	exponent = formula.Symbol{Name: "exponent", Letter: "m", Meaning: "power of the flow that friction grows with", Min: 1, Max: 2}
	share    = formula.Symbol{Letter: "F", Meaning: "share of the friction of a pipe without outlets"}
	rowIn    = []formula.Symbol{
		outlets,
		{Name: "spacing", Letter: "s", Meaning: "spacing of the outlets", Kind: unit.Length, Min: 0.01, Max: 100},
		{Name: "outlet-flow", Letter: "q", Meaning: "flow of one outlet", Kind: unit.EmitterFlow, Min: 1e-9, Max: 1e-3},
		bore, viscosity,
	}
	summed = source.Ref{Work: "equation of Darcy and Weisbach, summed stretch by stretch", Standing: source.Derived}
)

// rowHead is RowHead for the values of rowIn.
func rowHead(law func(re float64) float64, in []float64) float64 {
	return RowHead(law, int(in[0]), in[1], in[2], in[3], in[4])
}

// smoothFriction is Friction of smooth walls without its derivative.
func smoothFriction(re float64) float64 {
	f, _ := Friction(re, 0)
	return f
}

var outletsFormula = &formula.Formula{
	Name:   "outlets",
	Title:  "Friction with equal outlets",
	Text:   "F = (1ᵐ + 2ᵐ + … + Nᵐ)/Nᵐ⁺¹",
	Result: share,
	In:     []formula.Symbol{outlets, exponent},
	Note:   "For comparison. The first outlet stands one whole spacing from the inlet.",
	Source: source.Ref{Work: source.Christians, Standing: source.Memory},
	Eval:   func(in []float64) float64 { return Christiansen(int(in[0]), in[1]) },
}

var outletsShortFormula = &formula.Formula{
	Name:   "outlets-short",
	Title:  "Friction with equal outlets, in three terms",
	Text:   "F = 1/(m+1) + 1/(2N) + √(m-1)/(6N²)",
	Result: share,
	In:     []formula.Symbol{outlets, exponent},
	Note:   "For comparison. It is 0.8 % too high at one outlet and close from two on.",
	Source: source.Ref{Work: source.Christians, At: "as in Keller and Bliesner (1990), chapter 8", Standing: source.Memory},
	Eval:   func(in []float64) float64 { return ChristiansenShort(int(in[0]), in[1]) },
}

var outletsHalfFormula = &formula.Formula{
	Name:   "outlets-half",
	Title:  "Friction with equal outlets, the first at half a spacing",
	Text:   "F = 2N/(2N-1) (1/(m+1) + √(m-1)/(6N²))",
	Result: share,
	In:     []formula.Symbol{outlets, exponent},
	Note:   "For comparison.",
	Source: source.Ref{Work: source.Jensen, Standing: source.Memory},
	Eval:   func(in []float64) float64 { return HalfSpacing(int(in[0]), in[1]) },
}

var outletsInletFormula = &formula.Formula{
	Name:   "outlets-inlet",
	Title:  "Friction with equal outlets, the first at the inlet",
	Text:   "F₀ = (N F - 1)/(N - 1), F of outlets",
	Result: share,
	In: []formula.Symbol{
		{Name: "outlets", Letter: "N", Meaning: "number of outlets", Kind: unit.Count, Min: 2, Max: 2000}, exponent,
	},
	Note:   "For comparison.",
	Source: source.Ref{Work: "the sum of outlets without its first stretch", Standing: source.Derived},
	Eval:   func(in []float64) float64 { return AtInlet(int(in[0]), in[1]) },
}

var rowHeadFormula = &formula.Formula{
	Name:   "row-head",
	Title:  "Friction along a level row of equal outlets",
	Text:   "h = Σ fᵢ (s/D) vᵢ²/(2g), Qᵢ = i q, f of friction-factor with smooth walls",
	Result: headLost,
	In:     rowIn,
	Note:   "A check on the network, which has no need of equal outlets or of a level row.",
	Source: summed,
	Eval:   func(in []float64) float64 { return rowHead(smoothFriction, in) },
}

var rowHeadSmoothFormula = &formula.Formula{
	Name:   "row-head-smooth",
	Title:  "Friction along a level row of equal outlets, by hand",
	Text:   "h = Σ fᵢ (s/D) vᵢ²/(2g), Qᵢ = i q, f = 64/Re up to Re 1187 and 0.3164/Re^0.25 above",
	Result: headLost,
	In:     rowIn,
	Note:   "For comparison.",
	Source: summed,
	Eval:   func(in []float64) float64 { return rowHead(Smooth, in) },
}

var rowHeadBlasiusFormula = &formula.Formula{
	Name:   "row-head-blasius",
	Title:  "Friction along a level row of equal outlets, Blasius throughout",
	Text:   "h = Σ fᵢ (s/D) vᵢ²/(2g), Qᵢ = i q, f = 0.3164/Re^0.25",
	Result: headLost,
	In:     rowIn,
	Note:   "For comparison.",
	Source: summed,
	Eval:   func(in []float64) float64 { return rowHead(Blasius, in) },
}
