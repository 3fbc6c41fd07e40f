package emitter_test

import (
	"testing"

	"evenrow/build/checked"
	"evenrow/wasm/trade/emitter"
)

// worked are examples by hand of formulas that no published value tests.
var worked = []checked.Worked{
	checked.By("compensating-flow", 1.072, 5e-4, []float64{1, 10, 0.1, 20}, "2^0.1"),
	checked.By("compensating-flow", 0.5, 1e-15, []float64{1, 10, 0.1, 2.5}, "√0.25, as a plain orifice"),
	checked.By("emitter-coefficient", 1.5, 1e-15, []float64{6, 16, 0.5}, "6/√16"),
	checked.By("emitter-exponent", 0.75, 1e-15, []float64{24, 32, 3, 2}, "ln (24/3)/ln (32/2) = ln 8/ln 16"),
}

func TestFormulas(t *testing.T) { checked.Formulas(t, emitter.Formulas, worked) }
