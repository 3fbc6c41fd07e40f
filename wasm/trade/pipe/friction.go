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
// straight line in x. One pass of x = -k ln(a + b x) from x = 7, the middle of
// the values that occur (f from 0.005 to 0.16), with a logarithm read off the
// bits of the number, starts within 0.7 of the solution; two of Householder's
// steps of the fourth order from there are exact to float64.
func colebrook(re, rough float64) (f, dfdre float64) {
	const k = 2 / math.Ln10
	a, b := rough/3.7, 2.51/re
	// The bits of a float64, as a whole number over 2⁵², are 1023 more than
	// its base-2 logarithm, to 0.09.
	x := -k * math.Ln2 * (float64(math.Float64bits(a+7*b))*0x1p-52 - 1023)
	for range 2 {
		t := a + b*x
		u := b / t
		r := 1 / (1 + k*u)
		h := (x + k*math.Log(t)) * r // F over its first derivative
		d2 := -k * u * u * r         // second derivative over the first
		d3 := -2 * u * d2            // third over the first
		x -= h * (1 - 0.5*h*d2) / (1 + h*(h*d3/6-d2))
	}
	u := b / (a + b*x)
	f = 1 / (x * x)
	return f, -2 * f * k * u / ((1 + k*u) * re)
}
