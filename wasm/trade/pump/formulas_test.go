package pump_test

import (
	"testing"

	"evenrow/build/checked"
	"evenrow/wasm/trade/pump"
)

// worked are examples by hand of formulas that no published value tests.
var worked = []checked.Worked{
	checked.By("pump-head", 15, 1e-12, []float64{20, 2, 1}, "20 (1 - ¼)"),
	checked.By("tap-head", 26.25, 1e-12, []float64{35, 4, 2}, "35 (1 - ¼)"),
	checked.By("speed-flow", 3, 1e-15, []float64{2, 1.5}, "2 · 1.5"),
	checked.By("speed-head", 4.5, 1e-15, []float64{2, 1.5}, "2 · 1.5²"),
}

func TestFormulas(t *testing.T) { checked.Formulas(t, pump.Formulas, worked) }
