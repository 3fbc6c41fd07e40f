package network

import (
	"math"

	"evenrow/wasm/pipe"
	"evenrow/wasm/water"
)

// A resistance is a link made ready for the many times that a solver asks for
// its loss.
type resistance struct {
	from, to int32
	law      Law     // nil for tubing
	laminar  float64 // head over flow where the flow is laminar
	friction float64 // head over f q²
	local    float64 // head over q², of the loss coefficients
	reynolds float64 // Reynolds number over flow
	rough    float64 // relative roughness
}

// leastSlope is a resistance that every link has besides its own, so that none
// is without: a filter's loss starts flat, and a regulator's is always the
// same. At 1 L/s it takes a thousandth of a millimetre.
const leastSlope = 1e-3 // m per m³/s

func newResistance(l Link, w water.Water) resistance {
	r := resistance{from: int32(l.From), to: int32(l.To), law: l.Law}
	if l.Law != nil {
		return r
	}
	area := math.Pi / 4 * l.Bore * l.Bore
	head := 1 / (2 * water.Gravity * area * area) // velocity head over q²
	r.reynolds = l.Bore / (area * w.Kinematic)
	r.friction = (l.Length + l.Extra) / l.Bore * head
	r.laminar = 64 / r.reynolds * r.friction
	r.local = l.K * head
	r.rough = l.Roughness / l.Bore
	return r
}

// loss returns the head lost at flow q and its slope.
func (r *resistance) loss(q float64) (loss, slope float64) {
	if r.law != nil {
		loss, slope = r.law.Loss(q)
		return loss + leastSlope*q, slope + leastSlope
	}
	a := math.Abs(q)
	loss, slope = (leastSlope+r.local*a)*a, leastSlope+2*r.local*a
	if re := a * r.reynolds; re <= pipe.LaminarMax {
		loss += r.laminar * a
		slope += r.laminar
	} else {
		f, df := pipe.Friction(re, r.rough)
		loss += r.friction * f * a * a
		slope += r.friction * a * (2*f + a*df*r.reynolds)
	}
	return math.Copysign(loss, q), slope
}
