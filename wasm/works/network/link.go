package network

import (
	"math"

	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/trade/water"
)

// A resistance is a link made ready for the many times that a solver asks for
// its loss. It holds no pointer, so that the collector of garbage has nothing
// to do with the most of a network.
type resistance struct {
	laminarTo float64 // flow up to which tubing is laminar; negative where the link has a Law, dropping where it takes local, in m, at any flow
	laminar   float64 // head over flow, to there
	local     float64 // head over q², of the loss coefficients

	// From LaminarMax to TurbulentMin the friction factor is a straight line in
	// the flow: head over q² where it meets no flow, and head over q³.
	level, rising float64

	friction float64 // head over f q²
	reynolds float64 // Reynolds number over flow
	rough    float64 // relative roughness
}

// leastSlope is a resistance that every link has besides its own, so that none
// is without: a filter's loss starts flat, and a regulator's is always the
// same. At 1 L/s it takes a thousandth of a millimetre.
const leastSlope = 1e-3 // m per m³/s

// dropping marks a link that takes the same head at any flow.
const dropping = -2

func newResistance(l *Link, w water.Water) resistance {
	if l.Law != nil {
		return resistance{laminarTo: -1}
	}
	area := math.Pi / 4 * l.Bore * l.Bore
	head := 1 / (2 * water.Gravity * area * area) // velocity head over q²
	r := resistance{
		local:    l.K * head,
		friction: (l.Length + l.Extra) / l.Bore * head,
		reynolds: l.Bore / (area * w.Kinematic),
		rough:    l.Roughness / l.Bore,
	}
	r.laminarTo = pipe.LaminarMax / r.reynolds
	r.laminar = leastSlope + 64/r.reynolds*r.friction
	lo, _ := pipe.Friction(pipe.LaminarMax, r.rough)
	hi, _ := pipe.Friction(pipe.TurbulentMin, r.rough)
	slope := (hi - lo) / (pipe.TurbulentMin - pipe.LaminarMax)
	r.level = r.friction * (lo - slope*pipe.LaminarMax)
	r.rising = r.friction * slope * r.reynolds
	return r
}

// like reports whether two links of tubing resist alike.
func (l *Link) like(o *Link) bool {
	return l.Law == nil && o.Law == nil && l.Length == o.Length && l.Bore == o.Bore &&
		l.Roughness == o.Roughness && l.K == o.K && l.Extra == o.Extra
}

// loss returns the head that link l, which r was made from, loses at flow q,
// and its slope.
func (r *resistance) loss(l *Link, q float64) (loss, slope float64) {
	a := math.Abs(q)
	if a <= r.laminarTo {
		return (r.laminar + r.local*a) * q, r.laminar + 2*r.local*a
	}
	if r.laminarTo < 0 {
		if r.laminarTo == dropping {
			return r.local + leastSlope*q, leastSlope
		}
		loss, slope = l.Law.Loss(q)
		return loss + leastSlope*q, slope + leastSlope
	}
	if a < r.laminarTo*(pipe.TurbulentMin/pipe.LaminarMax) {
		square := r.level + r.local
		return (leastSlope + (square+r.rising*a)*a) * q, leastSlope + (2*square+3*r.rising*a)*a
	}
	f, df := pipe.Friction(a*r.reynolds, r.rough)
	square := r.local + r.friction*f
	return (leastSlope + square*a) * q, leastSlope + (2*square+r.friction*df*r.reynolds*a)*a
}
