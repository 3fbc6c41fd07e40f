package pump

import (
	"math"

	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/trade/water"
)

// HydraulicPower returns the power in W that lifts q m³/s of water of density
// rho kg/m³ by a head of h m: ρ g q h. In horsepower it is the water
// horsepower of the trade.
func HydraulicPower(rho, q, h float64) float64 { return rho * water.Gravity * q * h }

// MostToWater is the share of the power on a pump's label that gets into the water
// at best, whether the label says what the motor takes up or what it gives: small
// pumps are far below it.
const MostToWater = 0.8

// BestOfTwo returns the most power in W that a pump of two figures, a head in m at
// no flow and a flow in m³/s at no head, puts into water of density rho kg/m³: that
// of the parabola between them ([ByTwo]), at two thirds of the head. A straight curve
// between them has at least five eighths of it.
func BestOfTwo(rho, shutOff, maxFlow float64) float64 {
	return HydraulicPower(rho, maxFlow/math.Sqrt(3), shutOff*2/3)
}

// ShaftPower returns the power in W at the shaft of a pump of efficiency eta,
// over 0 to 1, that gives q m³/s at h m.
func ShaftPower(rho, q, h, eta float64) float64 { return HydraulicPower(rho, q, h) / eta }

// Similar pumps have the same coefficients of flow CQ, head CH and power CP
// at corresponding points, whatever their diameter d, in m, of impeller and
// their speed w, in radians per second.

// FlowOf returns CQ w d³ in m³/s.
func FlowOf(cq, w, d float64) float64 { return cq * w * d * d * d }

// HeadOf returns CH w² d²/g in m.
func HeadOf(ch, w, d float64) float64 { return ch * w * w * d * d / water.Gravity }

// PowerOf returns CP ρ w³ d⁵ in W.
func PowerOf(cp, rho, w, d float64) float64 {
	return cp * rho * w * w * w * d * d * d * d * d
}

// AtSpeed returns the point that p becomes when the same pump turns ratio
// times as fast: the flow grows with ratio and the head with its square.
func AtSpeed(p Point, ratio float64) Point {
	return Point{p.Flow * ratio, p.Head * ratio * ratio}
}

// Duty returns the point where curve c meets a system that needs static m and
// loses losses m at the flow at in m³/s, growing with the square of the flow.
// The point is at no flow when the curve cannot reach static.
func Duty(c Curve, static, losses, at float64) Point {
	short := func(q float64) float64 {
		h, _ := c.Head(q)
		return h - static - losses*(q/at)*(q/at)
	}
	if h, _ := c.Head(0); h <= static {
		return Point{0, h}
	}
	far := c.LastFlow()
	for short(far) > 0 {
		far *= 2
	}
	q := numeric.Root(short, 0, far)
	h, _ := c.Head(q)
	return Point{q, h}
}
