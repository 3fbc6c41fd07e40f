package emitter_test

import (
	"math"
	"slices"
	"testing"

	"evenrow/wasm/ground/formula"
	"evenrow/wasm/shown/method/check"
	"evenrow/wasm/trade/emitter"
)

// worked are examples by hand of formulas that no published value tests.
var worked = []struct {
	formula   string
	want, tol float64 // half of the last digit written, or what rounding leaves
	in        []float64
	how       string
}{
	{"compensating-flow", 1.072, 5e-4, []float64{1, 10, 0.1, 20}, "2^0.1"},
	{"compensating-flow", 0.5, 1e-15, []float64{1, 10, 0.1, 2.5}, "√0.25, as a plain orifice"},
	{"emitter-coefficient", 1.5, 1e-15, []float64{6, 16, 0.5}, "6/√16"},
	{"emitter-exponent", 0.75, 1e-15, []float64{24, 32, 3, 2}, "ln (24/3)/ln (32/2) = ln 8/ln 16"},
}

// The published values that stand on the method page, each with its source and
// the tolerance of its print, and the examples above hold this package's
// formulas: what goes in where, and what comes out.
func TestFormulas(t *testing.T) {
	named := func(name string) int {
		return slices.IndexFunc(emitter.Formulas, func(f *formula.Formula) bool { return f.Name == name })
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
		if got := emitter.Formulas[at].Eval(w.in); !(math.Abs(got-w.want) <= w.tol) {
			t.Errorf("%s(%v) = %.9g, want %.9g ± %g: %s", w.formula, w.in, got, w.want, w.tol, w.how)
		}
	}
	for _, f := range emitter.Formulas {
		if !tried[f.Name] {
			t.Errorf("no value tests %s", f.Name)
		}
	}
}
