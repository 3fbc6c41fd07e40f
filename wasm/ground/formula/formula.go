// Package formula describes the formulas of the calculation: symbols with
// their units and valid range, the function, and the published source.
//
// A formula is declared once, beside the function that the calculation itself
// uses. The method page, the workings on the page, the worked examples in the
// guides and the command line all read that declaration.
//
// Declarations are plain literals, without calls, each in a variable of its
// own: the linker then lays them out as data, runs no code for them at the
// start, and leaves out of the browser's program those that no page shows.
package formula

import (
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// A Symbol is one quantity in a formula.
type Symbol struct {
	Name     string    // what it is called on the command line, such as "length"
	Letter   string    // how the formula writes it, such as "L"
	Meaning  string    // such as "length of the tubing"
	Kind     unit.Kind // its unit inside and on the page
	Unit     string    // its unit in both systems, such as "Pa s", when Kind is unit.None and it has one
	Min, Max float64   // the valid range, inclusive, in the kind's inner unit
}

// Text returns the value v of the symbol with its unit, to the four
// significant digits that a working needs: the head lost between two plants
// would read as 0.0 m elsewhere on the page.
func (s *Symbol) Text(v float64, sys unit.System) string {
	return unit.Figure(unit.None, sys, unit.Of(s.Kind, sys).FromInner(v)) + s.suffix(sys)
}

// suffix returns the unit with a space before it, or nothing.
func (s *Symbol) suffix(sys unit.System) string {
	u := s.Unit
	if u == "" {
		u = unit.Of(s.Kind, sys).Symbol
	}
	if u != "" {
		u = " " + u
	}
	return u
}

// Range returns the valid range as the page prints it: "0.001 to 500 m".
func (s *Symbol) Range(sys unit.System) string {
	return unit.Exact(s.Kind, sys, s.Min) + " to " + unit.Exact(s.Kind, sys, s.Max) + s.suffix(sys)
}

// A Formula is one equation with the function that computes it.
type Formula struct {
	Name    string   // such as "friction-head"
	Title   string   // such as "Head lost to friction"
	Text    string   // the equation in plain characters, such as "h = f (L/D) v²/(2g)"
	Result  Symbol   // Min and Max are unused
	In      []Symbol // in the order that Eval takes them
	Repeats bool     // the last symbol takes any number of values, two or more
	Note    string   // what it leaves out, or what was our own choice
	Source  source.Ref

	// Eval computes the result, in its kind's inner unit, from one value per
	// symbol, all in range.
	Eval func(in []float64) float64
}

// symbol returns the symbol of the value at i.
func (f *Formula) symbol(i int) *Symbol { return &f.In[min(i, len(f.In)-1)] }

// takes reports whether f has a place for n values.
func (f *Formula) takes(n int) bool {
	if f.Repeats {
		return n > len(f.In)
	}
	return n == len(f.In)
}
