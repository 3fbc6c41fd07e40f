package pipe

import (
	"math"

	"evenrow/wasm/ground/numeric"
)

// Shares of the friction of a plain pipe that remain when the water leaves
// through n equal outlets at equal spacing, for a friction that grows as the
// flow to the power m. They are for comparison with hand calculations; the
// network is solved outlet by outlet.

// Christiansen returns the share when the first outlet stands one whole
// spacing from the inlet: the sum over the outlets, (Σ iᵐ)/nᵐ⁺¹, exactly.
func Christiansen(n int, m float64) float64 {
	return powers(n, m) / (float64(n) * numeric.Pow(float64(n), m))
}

// powers returns Σ iᵐ over i from 1 to n.
func powers(n int, m float64) float64 {
	s := 0.0
	for i := n; i > 0; i-- {
		s += numeric.Pow(float64(i), m)
	}
	return s
}

// ChristiansenShort returns Christiansen's three terms for the same sum,
// 1/(m+1) + 1/(2n) + √(m-1)/(6n²). It errs by up to 1 % at one outlet, less than
// 2/1000 at two, and less than 1/1000 from three on.
func ChristiansenShort(n int, m float64) float64 {
	k := float64(n)
	return 1/(m+1) + 1/(2*k) + math.Sqrt(m-1)/(6*k*k)
}

// HalfSpacing returns the share when the first outlet stands half a spacing
// from the inlet: 2n/(2n-1) (1/(m+1) + √(m-1)/(6n²)), by Jensen and Fratini
// (1957).
func HalfSpacing(n int, m float64) float64 {
	k := float64(n)
	return 2 * k / (2*k - 1) * (1/(m+1) + math.Sqrt(m-1)/(6*k*k))
}

// AtInlet returns the share when the first of two or more outlets stands at
// the inlet itself: (n F - 1)/(n - 1), with F of [Christiansen].
func AtInlet(n int, m float64) float64 {
	k := float64(n)
	return (k*Christiansen(n, m) - 1) / (k - 1)
}

// RowHead returns the head in m lost to friction along a level row of n
// outlets that give q m³/s each, spaced s m apart with the first one spacing
// from the inlet, in a bore of d m, for water of kinematic viscosity nu. It
// adds the loss stretch by stretch, with the factor that law gives for a
// Reynolds number.
func RowHead(law func(re float64) float64, n int, s, q, d, nu float64) float64 {
	h := 0.0
	for i := 1; i <= n; i++ {
		v := Velocity(float64(i)*q, d)
		h += FrictionHead(law(Reynolds(v, d, nu)), s, d, v)
	}
	return h
}
