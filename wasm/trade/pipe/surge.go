package pipe

import "math"

// Celerity returns the speed in m/s at which a surge runs through a plastic
// pipe whose wall has an elastic modulus of e Pa and whose outside diameter is
// dr times the wall's thickness:
//
//	a = 4660 ft/s / √(1 + (K/E)(DR - 2)), K = 300 000 psi.
//
// Take the short-term modulus: a surge passes before the wall creeps.
func Celerity(e, dr float64) float64 {
	const (
		inWater = 4660 * 0.3048              // m/s, of sound in water without walls
		bulk    = 300000 * 6894.757293168361 // Pa, bulk modulus of water
	)
	return inWater / math.Sqrt(1+bulk/e*(dr-2))
}

// Surge returns the rise of pressure in Pa when water of density rho kg/m³ is
// stopped from v m/s at once, and the surge runs at a m/s: Joukowsky's ρ a v.
func Surge(rho, a, v float64) float64 { return rho * a * v }

// SlowSurge returns the rise in Pa when the water in l m of pipe is stopped
// over t s: that of [Surge] until the surge is back from the far end, after
// 2l/a, and then the less the longer it takes.
func SlowSurge(rho, a, v, l, t float64) float64 {
	return Surge(rho, a, v) * min(1, 2*l/(a*t))
}
