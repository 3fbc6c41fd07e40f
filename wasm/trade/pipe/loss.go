package pipe

import (
	"math"

	"evenrow/wasm/trade/water"
)

// Area returns the area in m² of a bore of d m.
func Area(d float64) float64 { return math.Pi / 4 * d * d }

// Velocity returns the mean velocity in m/s of a flow of q m³/s in a bore of
// d m.
func Velocity(q, d float64) float64 { return q / Area(d) }

// Reynolds returns the Reynolds number v d/ν of water of kinematic viscosity
// nu, in m²/s, at v m/s in a bore of d m.
func Reynolds(v, d, nu float64) float64 { return v * d / nu }

// VelocityHead returns v²/2g in m, with v in m/s.
func VelocityHead(v float64) float64 { return v * v / (2 * water.Gravity) }

// FrictionHead returns the head in m lost to friction in l m of bore d m at
// v m/s, by Darcy and Weisbach: h = f (l/d) v²/2g.
func FrictionHead(f, l, d, v float64) float64 { return f * l / d * VelocityHead(v) }

// Head returns the head in m that a flow of q m³/s loses in l m of bore d m
// with walls of roughness eps m, for water of kinematic viscosity nu in m²/s.
// It is 0 at no flow and has the sign of q.
func Head(q, l, d, eps, nu float64) float64 {
	if q == 0 {
		return 0
	}
	v := math.Abs(Velocity(q, d))
	f, _ := Friction(Reynolds(v, d, nu), eps/d)
	return math.Copysign(FrictionHead(f, l, d, v), q)
}

// FlowAt returns the flow in m³/s that moves at v m/s in a bore of d m, such
// as the flow that flushes a row.
func FlowAt(v, d float64) float64 { return v * Area(d) }

// Volume returns what l m of bore d m hold, in m³.
func Volume(l, d float64) float64 { return l * Area(d) }

// FillTime returns the seconds in which a net inflow of q m³/s fills l m of
// bore d m.
func FillTime(l, d, q float64) float64 { return Volume(l, d) / q }
