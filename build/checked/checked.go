// Package checked holds a package's formulas to values from outside; for tests.
package checked

import (
	"math"
	"slices"
	"testing"

	"evenrow/wasm/ground/formula"
	"evenrow/wasm/shown/method/check"
)

// A Worked is an example by hand of a formula that no published value tests.
type Worked struct {
	formula   string
	want, tol float64
	in        []float64
	how       string
}

// By is an example by hand: the result of a formula to within half of the last
// digit written, or what rounding leaves; what goes in; and how it is had.
func By(formula string, want, tol float64, in []float64, how string) Worked {
	return Worked{formula, want, tol, in, how}
}

// Formulas holds formulas to the published values that stand on the method page,
// each with its source and the tolerance of its print, and to examples by hand:
// what goes in where, and what comes out. None may be left without either.
func Formulas(t *testing.T, all []*formula.Formula, worked []Worked) {
	t.Helper()
	named := func(name string) int {
		return slices.IndexFunc(all, func(f *formula.Formula) bool { return f.Name == name })
	}
	tried := map[string]bool{}
	for _, r := range check.Rows {
		for _, part := range r.Parts {
			if named(part.Formula) < 0 {
				continue
			}
			tried[part.Formula] = true
			if got, err := part.Got(); err != nil || !part.Close(got) {
				t.Errorf("%s: %s(%v) = %.9g %s, %v, want %.9g ± %g from %s", r.ID, part.Formula, part.In, got, part.Unit, err, part.Want, part.Tol, r.Source)
			}
		}
	}
	for _, w := range worked {
		tried[w.formula] = true
		at := named(w.formula)
		if at < 0 {
			t.Fatalf("no formula is named %s", w.formula)
		}
		if got := all[at].Eval(w.in); !(math.Abs(got-w.want) <= w.tol) {
			t.Errorf("%s(%v) = %.9g, want %.9g ± %g: %s", w.formula, w.in, got, w.want, w.tol, w.how)
		}
	}
	for _, f := range all {
		if !tried[f.Name] {
			t.Errorf("no value tests %s", f.Name)
		}
	}
}
