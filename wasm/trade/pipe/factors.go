package pipe

import (
	"math"

	"evenrow/wasm/ground/numeric"
)

// Factors that others published, for comparison. The calculation itself uses
// [Friction] alone.

// Laminar returns Poiseuille's Darcy factor, 64/re.
func Laminar(re float64) float64 { return 64 / re }

// SwameeJain returns the explicit fit of Swamee and Jain (1976) to Colebrook's
// equation; re from 5000 to 1e8, rough from 1e-6 to 0.01.
func SwameeJain(re, rough float64) float64 {
	l := math.Log10(rough/3.7 + 5.74/numeric.Pow(re, 0.9))
	return 0.25 / (l * l)
}

// Haaland returns the explicit fit of Haaland (1983) to Colebrook's equation;
// re from 4000 to 1e8, rough to 0.05.
func Haaland(re, rough float64) float64 {
	x := -1.8 * math.Log10(numeric.Pow(rough/3.7, 1.11)+6.9/re)
	return 1 / (x * x)
}

// Churchill returns the single equation of Churchill (1977) for all regimes.
// It holds close to 64/re up to about re 2300, then leaves it for a branch
// through the transition that fits few measurements.
func Churchill(re, rough float64) float64 {
	a := 2.457 * math.Log(1/(numeric.Pow(7/re, 0.9)+0.27*rough))
	return 8 * numeric.Pow(pow12(8/re)+1/numeric.Pow(pow16(a)+pow16(37530/re), 1.5), 1.0/12)
}

func pow4(x float64) float64 { return (x * x) * (x * x) }

func pow12(x float64) float64 { return pow4(x) * pow4(x) * pow4(x) }

func pow16(x float64) float64 { return pow4(pow4(x)) }

// Blasius returns 0.3164 re^-1/4 for smooth walls; re from 4000 to 100 000.
func Blasius(re float64) float64 { return 0.3164 / math.Sqrt(math.Sqrt(re)) }

// Polyethylene returns 0.300 re^-1/4, measured in polyethylene drip tubing of
// 10 to 20 mm bore; re from 6000 to 72 000.
func Polyethylene(re float64) float64 { return 0.300 / math.Sqrt(math.Sqrt(re)) }

// Smooth returns the factor of smooth walls that hand calculations use: 64/re
// up to its crossing with [Blasius], at re 1187, and Blasius above. It is too
// high between 1187 and 2000, where flow is still laminar.
func Smooth(re float64) float64 {
	return max(Laminar(re), Blasius(re))
}

// Crossing returns the Reynolds number at which a/re and b re^-1/4 are equal.
func Crossing(a, b float64) float64 { return numeric.Pow(a/b, 4.0/3) }

// HazenWilliams returns the head in m lost over l m of bore d m at a flow of
// q m³/s, with the coefficient c of the material, by the usual form in inches
// and US gallons,
//
//	ft per 100 ft = 0.2083 (100/c)^1.852 (gal/min)^1.852 / in^4.8655.
//
// It knows no viscosity: it is meant for water near 16 °C in turbulent flow,
// and is wrong in the thin tubing of a row.
func HazenWilliams(q, l, d, c float64) float64 {
	const (
		gallonPerMinute = 3.785411784e-3 / 60
		inch            = 0.0254
	)
	per100 := 0.2083 * numeric.Pow(100/c*q/gallonPerMinute, 1.852) / numeric.Pow(d/inch, 4.8655)
	return per100 / 100 * l
}
