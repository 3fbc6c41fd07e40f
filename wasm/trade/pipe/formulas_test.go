package pipe_test

import (
	"math"
	"testing"

	"evenrow/build/checked"
	"evenrow/wasm/trade/pipe"
)

// worked are examples by hand of formulas that no published value tests.
var worked = []checked.Worked{
	checked.By("velocity", 1.5, 1e-12, []float64{math.Pi / 4 * 0.02 * 0.02 * 1.5, 0.02}, "20 mm filled at 1.5 m/s"),
	checked.By("flow-at-velocity", math.Pi/4*0.02*0.02*1.5, 1e-15, []float64{1.5, 0.02}, "the same back"),
	checked.By("friction-head", 2.0394, 5e-5, []float64{0.02, 50, 0.1, 2}, "0.02 · 500 · 4/(2 · 9.80665)"),
	// At Re 63 662 and a roughness of 1/20 of the bore; pipe.Friction is held to Colebrook's equation by bisection.
	checked.By("tubing-head", pipe.FrictionHead(rough, 10, 0.02, pipe.Velocity(1e-3, 0.02)), 1e-12, []float64{1e-3, 10, 0.02, 1e-3, 1e-6}, "Darcy and Weisbach with the factor of a rough wall"),
	checked.By("local-head", 0.91774, 5e-6, []float64{2, 3}, "2 · 9/(2 · 9.80665)"),
	checked.By("insert", 2.0, 0.05, []float64{0.007, 0.01}, "(0.331 + (1 - 0.49)²)/0.49² = (0.222 + 0.260)/0.2401, Cc of 0.49 by the table 0.679"),
	checked.By("barb-small", 0.0762, 5e-5, []float64{0.016}, "14.38 · 16^-1.89 = 14.38/188.7"),
	checked.By("barb-standard", 0.1059, 5e-5, []float64{0.016}, "18.91 · 16^-1.87 = 18.91/178.53"),
	checked.By("barb-large", 0.14025, 5e-6, []float64{0.016}, "23.04 · 16^-1.84 = 23.04/164.28"),
	// Laminar, h = 128 ν L q/(π g D⁴) a stretch: 128 · 1e-6 · 0.5 · 1e-6/(π · 9.80665 · 1e-8) = 2.07734e-4 m, by 1 + 2 + 3.
	checked.By("row-head", 1.24641e-3, 5e-9, []float64{3, 0.5, 1e-6, 0.01, 1e-6}, "six times Poiseuille's loss of one outlet's flow"),
	// Turbulent: the second stretch, of both flows, at Re 25 465, and the first at Re 12 732.
	checked.By("row-head", pipe.Head(1e-4, 2, 0.01, 0, 1e-6)+pipe.Head(2e-4, 2, 0.01, 0, 1e-6), 1e-12, []float64{2, 2, 1e-4, 0.01, 1e-6}, "two stretches of smooth tubing"),
	// A wall as stiff as three of the diameter ratio beyond 2 halves the speed of sound: √(1 + 3) = 2.
	checked.By("celerity", 2330*0.3048, 1e-9, []float64{300000 * 6894.757293168361, 5}, "4660 ft/s / 2"),
	checked.By("slow-surge", 1e5, 1e-6, []float64{1000, 400, 0.5, 20, 0.2}, "1000 · 400 · 0.5 · 2 · 20/(400 · 0.2): half of the whole surge"),
}

var rough, _ = pipe.Friction(pipe.Reynolds(pipe.Velocity(1e-3, 0.02), 0.02, 1e-6), 0.05)

func TestFormulas(t *testing.T) { checked.Formulas(t, pipe.Formulas, worked) }
