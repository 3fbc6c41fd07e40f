// Package pipe computes the head that water loses on its way through full
// round tubing: friction, bends, barbs and changes of bore, and the surge when
// it is stopped.
//
// Velocities are means over the bore, losses are heads in m of the flowing
// water, and friction factors are Darcy's, four times Fanning's.
package pipe

import "math"

// Limits of the two regimes of flow, as Reynolds numbers.
const (
	LaminarMax   = 2000
	TurbulentMin = 4000
)

// Friction returns the Darcy friction factor and its derivative by the
// Reynolds number.
//
//	re     Reynolds number, > 0
//	rough  roughness of the wall over the bore, 0 to 0.05
//
// Up to [LaminarMax] it is 64/re (Poiseuille). From [TurbulentMin] it solves
// the equation of Colebrook (1939),
//
//	1/√f = -2 log₁₀(rough/3.7 + 2.51/(re √f)),
//
// to the precision of float64. No formula is agreed between the two. There a
// straight line in f joins the two ends, which is our own choice: measured
// factors scatter between the two laws, and the line keeps the loss continuous
// and rising with the flow.
//
// It is the innermost step of the network's solution, so it allocates nothing
// and reports no error. Outside the stated range its value is defined but has
// no meaning: a friction factor of 64/re grows without bound as re falls to 0.
func Friction(re, rough float64) (f, dfdre float64) {
	if re <= LaminarMax {
		f = 64 / re
		return f, -f / re
	}
	if re < TurbulentMin {
		const lo = 64.0 / LaminarMax
		hi, _ := colebrook(TurbulentMin, rough)
		slope := (hi - lo) / (TurbulentMin - LaminarMax)
		return lo + slope*(re-LaminarMax), slope
	}
	return colebrook(re, rough)
}

// colebrook solves Colebrook's equation for the factor and its derivative.
//
// With x = 1/√f the equation is F(x) = x + k ln(a + b x) = 0, nearly a
// straight line in x. Halley's third-order step from x = 7, the middle of the
// values that occur (f from 0.005 to 0.16), is exact to float64 after three
// logarithms; a fourth is rarely needed.
func colebrook(re, rough float64) (f, dfdre float64) {
	const k = 2 / math.Ln10
	a, b := rough/3.7, 2.51/re
	x, u := 7.0, 0.0
	for range 8 {
		t := a + b*x
		u = b / t
		fx := x + k*math.Log(t)
		f1 := 1 + k*u    // F'
		f2 := -k * u * u // F''
		step := fx * f1 / (f1*f1 - 0.5*fx*f2)
		x -= step
		// The error left is of the order of the step cubed.
		if math.Abs(step) < 1e-6*x {
			u = b / (a + b*x)
			break
		}
	}
	f = 1 / (x * x)
	return f, -2 * f * k * u / ((1 + k*u) * re)
}
