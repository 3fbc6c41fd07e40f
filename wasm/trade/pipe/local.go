package pipe

import (
	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/trade/water"
)

// LocalHead returns the head in m lost to loss coefficients of sum k at v m/s:
// h = k v²/2g.
func LocalHead(k, v float64) float64 { return k * VelocityHead(v) }

// AllHead returns the head in m lost to friction and loss coefficients
// together, at a flow of q m³/s in l m of bore d m with friction factor f:
// h = (f l/d + k) v²/2g.
func AllHead(f, l, d, k, q float64) float64 {
	return (f*l/d + k) * VelocityHead(Velocity(q, d))
}

// narrowing holds the share of the smaller bore that a jet fills behind a
// sharp contraction, by tenths of the ratio of the areas from 0 to 1.
// Weisbach's values in the table of Streeter and Wylie (1975), Fluid
// Mechanics; those at 0 and at the even tenths are quoted from memory.
var narrowing = [11]float64{0.617, 0.624, 0.632, 0.643, 0.659, 0.681, 0.712, 0.755, 0.813, 0.892, 1}

// Narrowing returns the coefficient of contraction behind a sharp reduction to
// the share ratio of the area, 0 to 1, by straight lines between the table's
// tenths.
func Narrowing(ratio float64) float64 {
	t := 10 * min(max(ratio, 0), 1)
	i := min(int(t), 9)
	return narrowing[i] + (t-float64(i))*(narrowing[i+1]-narrowing[i])
}

// Contraction returns the loss coefficient of a sharp contraction to the share
// ratio of the area, on the velocity behind it: (1/Cc - 1)².
func Contraction(ratio float64) float64 {
	k := 1/Narrowing(ratio) - 1
	return k * k
}

// Expansion returns the loss coefficient of a sudden expansion from bore d1 to
// bore d2, on the velocity before it: (1 - (d1/d2)²)², by Borda and Carnot.
func Expansion(d1, d2 float64) float64 {
	r := d1 / d2
	k := 1 - r*r
	return k * k
}

// Insert returns the loss coefficient of a fitting pushed into tubing of bore
// tube m that narrows it to throat m, on the velocity in the tubing: a sharp
// contraction and a sudden expansion,
//
//	K = (Kc + (1 - (d/D)²)²) (D/d)⁴.
//
// Friction in the throat comes on top. Measure the throat: an error of 5 % in
// it is one of 20 % or more in K. In laminar flow K is greater.
func Insert(throat, tube float64) float64 {
	r := throat / tube
	a := r * r
	return (Contraction(a) + Expansion(throat, tube)) / (a * a)
}

// Sizes of the barb that an emitter pushes into the tubing.
const (
	SmallBarb = iota
	StandardBarb
	LargeBarb
)

// barbs holds the coefficient and exponent of each size's curve.
var barbs = [3][2]float64{{14.38, 1.89}, {18.91, 1.87}, {23.04, 1.84}}

// BarbLength returns the length of tubing in m whose friction equals the loss
// at one emitter's barb in a bore of d m, for a size of barb:
//
//	le = c D^-p, D in mm.
//
// The curves of Watters and Keller (1978), from memory, for tubing of 10 to 20
// mm.
func BarbLength(size int, d float64) float64 {
	b := barbs[size]
	return b[0] * numeric.Pow(1000*d, -b[1])
}

// InletPressure returns the pressure in Pa that a pipe needs at its inlet to
// push q m³/s through l m of bore d m, up a rise of z m and out through a
// nozzle of bore nozzle m, with friction factor f, loss coefficients k on the
// velocity in the pipe, and water of density rho kg/m³.
func InletPressure(rho, q, d, nozzle, z, l, f, k float64) float64 {
	v, out := Velocity(q, d), Velocity(q, nozzle)
	return rho * (water.Gravity*z + (out*out-v*v)/2 + (f*l/d+k)*v*v/2)
}
