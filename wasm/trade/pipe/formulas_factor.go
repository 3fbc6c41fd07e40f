package pipe

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
)

// FrictionFactorFormula is the formula "friction-factor".
var FrictionFactorFormula = &formula.Formula{
	Name:   "friction-factor",
	Title:  "Friction factor",
	Text:   "f = 64/Re up to Re 2000; 1/√f = -2 log₁₀((ε/D)/3.7 + 2.51/(Re √f)) from 4000; a straight line in f between",
	Result: darcyF,
	In:     []formula.Symbol{reynolds, relative},
	Note:   "The straight line is our own choice: no formula is agreed there, and measured factors scatter between the two laws.",
	Source: source.Ref{Work: source.Colebrook},
	Eval: func(in []float64) float64 {
		f, _ := Friction(in[0], in[1])
		return f
	},
}

var laminarFactorFormula = &formula.Formula{
	Name:   "laminar-factor",
	Title:  "Friction factor of laminar flow",
	Text:   "f = 64/Re",
	Result: darcyF,
	In:     []formula.Symbol{reynolds},
	Note:   "For comparison beyond Re 2000.",
	Source: source.Ref{Work: source.Cengel, At: "Poiseuille's law, example 8-2 as retyped"},
	Eval:   func(in []float64) float64 { return Laminar(in[0]) },
}

var swameeJainFactorFormula = &formula.Formula{
	Name:   "swamee-jain-factor",
	Title:  "Friction factor after Swamee and Jain",
	Text:   "f = 0.25/(log₁₀((ε/D)/3.7 + 5.74/Re^0.9))²",
	Result: darcyF,
	In:     []formula.Symbol{turbulent, relative},
	Note:   "For comparison.",
	Source: source.Ref{Work: source.SwameeJain},
	Eval:   func(in []float64) float64 { return SwameeJain(in[0], in[1]) },
}

var churchillFactorFormula = &formula.Formula{
	Name:   "churchill-factor",
	Title:  "Friction factor after Churchill",
	Text:   "f = 8 ((8/Re)¹² + (A + B)^-1.5)^(1/12), A = (2.457 ln(1/((7/Re)^0.9 + 0.27 ε/D)))¹⁶, B = (37530/Re)¹⁶",
	Result: darcyF,
	In:     []formula.Symbol{reynolds, relative},
	Note:   "For comparison. One equation for all regimes; it holds close to 64/Re up to about Re 2300.",
	Source: source.Ref{Work: source.Churchill},
	Eval:   func(in []float64) float64 { return Churchill(in[0], in[1]) },
}

var haalandFactorFormula = &formula.Formula{
	Name:   "haaland-factor",
	Title:  "Friction factor after Haaland",
	Text:   "1/√f = -1.8 log₁₀(((ε/D)/3.7)^1.11 + 6.9/Re)",
	Result: darcyF,
	In:     []formula.Symbol{turbulent, relative},
	Note:   "For comparison.",
	Source: source.Ref{Work: source.Haaland},
	Eval:   func(in []float64) float64 { return Haaland(in[0], in[1]) },
}

var blasiusFactorFormula = &formula.Formula{
	Name:   "blasius-factor",
	Title:  "Friction factor of smooth walls after Blasius",
	Text:   "f = 0.3164/Re^0.25",
	Result: darcyF,
	In:     []formula.Symbol{turbulent},
	Note:   "For comparison; fitted up to Re 100 000.",
	Source: source.Ref{Work: source.Blasius},
	Eval:   func(in []float64) float64 { return Blasius(in[0]) },
}

var polyethyleneFactorFormula = &formula.Formula{
	Name:   "polyethylene-factor",
	Title:  "Friction factor measured in polyethylene drip tubing",
	Text:   "f = 0.300/Re^0.25",
	Result: darcyF,
	In:     []formula.Symbol{{Name: "reynolds", Letter: "Re", Meaning: "Reynolds number", Min: 6000, Max: 72000}},
	Note:   "For comparison. Bores of 10 to 19.7 mm.",
	Source: source.Ref{Work: source.Unesp, At: "abstract"},
	Eval:   func(in []float64) float64 { return Polyethylene(in[0]) },
}

var laminarBlasiusCrossingFormula = &formula.Formula{
	Name:   "laminar-blasius-crossing",
	Title:  "Reynolds number where the laminar and the Blasius factor cross",
	Text:   "Re = (a/b)^(4/3), where a/Re = b/Re^0.25",
	Result: formula.Symbol{Letter: "Re", Meaning: "Reynolds number of the crossing"},
	In: []formula.Symbol{
		{Name: "laminar-constant", Letter: "a", Meaning: "constant of the laminar law", Min: 1, Max: 100},
		{Name: "blasius-constant", Letter: "b", Meaning: "constant of the law of Blasius", Min: 0.1, Max: 1},
	},
	Note:   "Hand calculations change the law here. Flow stays laminar up to about Re 2000, where this tool leaves it.",
	Source: source.Ref{Work: source.Zazueta, At: "table 1, which changes at 1200", Standing: source.Derived},
	Eval:   func(in []float64) float64 { return Crossing(in[0], in[1]) },
}

var hazenWilliamsHeadFormula = &formula.Formula{
	Name:   "hazen-williams-head",
	Title:  "Head lost to friction after Hazen and Williams",
	Text:   "h = 0.2083 (100/C)^1.852 Q^1.852/D^4.8655 in ft per 100 ft, Q in gal/min, D in inches",
	Result: headLost,
	In: []formula.Symbol{
		flow, length, bore,
		{Name: "hazen-williams", Letter: "C", Meaning: "coefficient of the material", Min: 60, Max: 160},
	},
	Note:   "For comparison. It knows no viscosity and is wrong in the thin tubing of a row.",
	Source: source.Ref{Work: source.PlasticPipe, At: "formula of Hazen and Williams"},
	Eval:   func(in []float64) float64 { return HazenWilliams(in[0], in[1], in[2], in[3]) },
}
