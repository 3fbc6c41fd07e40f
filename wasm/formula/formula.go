// Package formula describes the formulas of the calculation: symbols with
// their units and valid range, the function, and the published source.
//
// A formula is declared once, beside the function that the calculation itself
// uses. The method page, the workings on the page, the worked examples in the
// guides and the command line all read that declaration.
package formula

import (
	"evenrow/wasm/source"
	"evenrow/wasm/unit"
)

// A Symbol is one quantity in a formula.
type Symbol struct {
	Name     string    // what it is called on the command line, such as "length"
	Letter   string    // how the formula writes it, such as "L"
	Meaning  string    // such as "length of the tubing"
	Kind     unit.Kind // its unit inside and on the page
	Min, Max float64   // the valid range, inclusive, in the kind's inner unit
}

// A Formula is one equation with the function that computes it.
type Formula struct {
	Name   string   // such as "friction-head"
	Title  string   // such as "Head lost to friction"
	Text   string   // the equation in plain characters, such as "h = f (L/D) v²/(2g)"
	Result Symbol   // Min and Max are unused
	In     []Symbol // in the order that Eval takes them
	Note   string   // what it leaves out, or what was our own choice
	Source source.Ref

	// Eval computes the result, in its kind's inner unit, from one value per
	// symbol, all in range.
	Eval func(in []float64) float64
}
