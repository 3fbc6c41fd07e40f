// Package method is the catalogue of every formula of the calculation, for the
// method page, the guides' worked examples and the command line.
package method

import (
	"slices"

	"evenrow/wasm/ground/formula"
	"evenrow/wasm/trade/chlorine"
	"evenrow/wasm/trade/climate"
	"evenrow/wasm/trade/dose"
	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/trade/evapo"
	"evenrow/wasm/trade/evenness"
	"evenrow/wasm/trade/filter"
	"evenrow/wasm/trade/medium"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/trade/pump"
	"evenrow/wasm/trade/sun"
	"evenrow/wasm/trade/water"
)

// A Chapter is the formulas of one noun of the trade.
type Chapter struct {
	Title    string
	Formulas []*formula.Formula
}

// Chapters are all formulas in the order of the water's way.
var Chapters = []Chapter{
	{"Water", water.Formulas},
	{"Tubing", pipe.Formulas},
	{"Emitters", emitter.Formulas},
	{"Pumps and taps", pump.Formulas},
	{"Filters", filter.Formulas},
	{"Evenness", evenness.Formulas},
	{"Shots and drain", dose.Formulas},
	{"The sun", sun.Formulas},
	{"Weather and water use", evapo.Formulas},
	{"Warmth", climate.Formulas},
	{"Media", medium.Formulas},
	{"Chlorine", chlorine.Formulas},
}

// All returns every formula, chapter by chapter. Their names are unique.
func All() []*formula.Formula {
	var all []*formula.Formula
	for _, c := range Chapters {
		all = append(all, c.Formulas...)
	}
	return all
}

// Find returns the formula of a name, or nil.
func Find(name string) *formula.Formula {
	for _, c := range Chapters {
		i := slices.IndexFunc(c.Formulas, func(f *formula.Formula) bool { return f.Name == name })
		if i >= 0 {
			return c.Formulas[i]
		}
	}
	return nil
}
