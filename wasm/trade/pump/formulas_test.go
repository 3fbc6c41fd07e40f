package pump_test

import (
	"math"
	"slices"
	"testing"

	"evenrow/wasm/ground/formula"
	"evenrow/wasm/shown/method/check"
	"evenrow/wasm/trade/pump"
)

// worked are examples by hand of formulas that no published value tests.
var worked = []struct {
	formula   string
	want, tol float64 // half of the last digit written, or what rounding leaves
	in        []float64
	how       string
}{
	{"pump-head", 15, 1e-12, []float64{20, 2, 1}, "20 (1 - ¼)"},
	{"tap-head", 26.25, 1e-12, []float64{35, 4, 2}, "35 (1 - ¼)"},
	{"speed-flow", 3, 1e-15, []float64{2, 1.5}, "2 · 1.5"},
	{"speed-head", 4.5, 1e-15, []float64{2, 1.5}, "2 · 1.5²"},
}

// The published values that stand on the method page, each with its source and
// the tolerance of its print, and the examples above hold this package's
// formulas: what goes in where, and what comes out.
func TestFormulas(t *testing.T) {
	named := func(name string) int {
		return slices.IndexFunc(pump.Formulas, func(f *formula.Formula) bool { return f.Name == name })
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
		if got := pump.Formulas[at].Eval(w.in); !(math.Abs(got-w.want) <= w.tol) {
			t.Errorf("%s(%v) = %.9g, want %.9g ± %g: %s", w.formula, w.in, got, w.want, w.tol, w.how)
		}
	}
	for _, f := range pump.Formulas {
		if !tried[f.Name] {
			t.Errorf("no value tests %s", f.Name)
		}
	}
}
