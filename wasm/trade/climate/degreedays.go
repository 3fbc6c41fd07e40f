package climate

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// DegreeDays returns how far the mean of a day's high and low is above the base,
// in °C, never below 0: a measure of how much a crop develops in it.
func DegreeDays(high, low, base float64) float64 { return max(0, (high+low)/2-base) }

// CappedDegreeDays returns the same with temperatures above ceiling counted as
// ceiling: heat beyond it adds nothing.
func CappedDegreeDays(high, low, base, ceiling float64) float64 {
	return DegreeDays(min(high, ceiling), min(low, ceiling), base)
}

// FoldedDegreeDays returns the same with a high above ceiling counted as far
// below it: heat beyond it holds the crop back.
func FoldedDegreeDays(high, low, base, ceiling float64) float64 {
	if high > ceiling {
		high = 2*ceiling - high
	}
	return DegreeDays(high, low, base)
}

// Formulas are the formulas of this package.
var Formulas = []*formula.Formula{degreeDaysFormula, cappedFormula, foldedFormula}

var (
	highest = formula.Symbol{Name: "high", Letter: "Tmax", Meaning: "highest temperature of the day", Kind: unit.Temperature, Min: -50, Max: 60}
	lowest  = formula.Symbol{Name: "low", Letter: "Tmin", Meaning: "lowest temperature of the day", Kind: unit.Temperature, Min: -50, Max: 60}
	base    = formula.Symbol{Name: "base", Letter: "B", Meaning: "temperature below which it does not grow", Kind: unit.Temperature, Min: -10, Max: 30}
	ceiling = formula.Symbol{Name: "ceiling", Letter: "U", Meaning: "temperature above which more does not help", Kind: unit.Temperature, Min: 0, Max: 60}
	days    = formula.Symbol{Letter: "D", Meaning: "degree-days of the day", Unit: "°C d"}
	methods = source.Ref{Work: "Heliyon 6(10) (2020) e05114", At: "table 3, methods III, VIII and IX"}
)

var degreeDaysFormula = &formula.Formula{
	Name:   "degree-days",
	Title:  "Growing degree-days of a day",
	Text:   "D = (Tmax + Tmin)/2 - B, or 0",
	Result: days,
	In:     []formula.Symbol{highest, lowest, base},
	Source: methods,
	Eval:   func(in []float64) float64 { return DegreeDays(in[0], in[1], in[2]) },
}

var cappedFormula = &formula.Formula{
	Name:   "degree-days-capped",
	Title:  "Growing degree-days where heat beyond a ceiling adds nothing",
	Text:   "D = (min(Tmax, U) + min(Tmin, U))/2 - B, or 0",
	Result: days,
	In:     []formula.Symbol{highest, lowest, base, ceiling},
	Source: methods,
	Eval:   func(in []float64) float64 { return CappedDegreeDays(in[0], in[1], in[2], in[3]) },
}

var foldedFormula = &formula.Formula{
	Name:   "degree-days-folded",
	Title:  "Growing degree-days where heat beyond a ceiling holds back",
	Text:   "D = (Tmax' + Tmin)/2 - B, or 0; Tmax' = U - (Tmax - U) above U",
	Result: days,
	In:     []formula.Symbol{highest, lowest, base, ceiling},
	Source: methods,
	Eval:   func(in []float64) float64 { return FoldedDegreeDays(in[0], in[1], in[2], in[3]) },
}
