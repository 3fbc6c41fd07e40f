package emitter

import (
	"math"

	"evenrow/wasm/ground/numeric"
)

// Coefficient returns the k of q = k hˣ, the flow in m³/s at a head of 1 m,
// from the flow q at head h m.
func Coefficient(q, h, x float64) float64 { return q / numeric.Pow(h, x) }

// ExponentFrom returns the x of q = k hˣ from two readings, flows over 0 at
// different heads over 0: x = ln(q₁/q₂)/ln(h₁/h₂). It is 0 when the heads are
// the same.
func ExponentFrom(q1, h1, q2, h2 float64) float64 {
	if h1 == h2 {
		return 0
	}
	return math.Log2(q1/q2) / math.Log2(h1/h2)
}
