// Package evenness measures how alike the flows of a set of emitters are.
package evenness

import (
	"math"
	"slices"

	"evenrow/wasm/ground/numeric"
)

// An Evenness holds the usual measures, as fractions of one.
type Evenness struct {
	N    int
	Mean float64 // m³/s
	Low  float64 // mean of the lowest quarter
	CV   float64 // sample standard deviation over mean
	DU   float64 // low-quarter distribution uniformity
	CU   float64 // Christiansen's coefficient
	Us   float64 // statistical uniformity, 1 - CV
	EU   float64 // design emission uniformity with manufacturing variation
}

// Of returns the measures of the flows, in m³/s and none below 0, of plants
// with perPlant emitters each, whose manufacture varies with the coefficient
// cv, as a fraction.
//
// CV, DU, CU and Us are those of the flows as given. Us and CU fall below 0
// when some flows are many times the rest. EU is [Design] of the least flow
// over the mean. Where no water flows, or there are no flows, every measure
// is 0; a single flow is perfectly even.
func Of(flows []float64, perPlant, cv float64) Evenness {
	e := Evenness{N: len(flows), Mean: Mean(flows)}
	if e.Mean <= 0 {
		return e
	}
	e.Low = Low(flows)
	e.CV = CV(flows)
	e.DU = e.Low / e.Mean
	e.CU = CU(flows)
	e.Us = 1 - e.CV
	e.EU = Design(cv, perPlant, slices.Min(flows)/e.Mean)
	return e
}

// Mean returns the mean, 0 for none.
func Mean(v []float64) float64 {
	if len(v) == 0 {
		return 0
	}
	s := 0.0
	for _, x := range v {
		s += x
	}
	return s / float64(len(v))
}

// Low returns the mean of the lowest quarter, 0 for none. A quarter that is
// not whole counts the last value in part: of ten values, the two lowest and
// half of the third.
func Low(v []float64) float64 {
	if len(v) == 0 {
		return 0
	}
	v = slices.Clone(v)
	numeric.Sort(len(v), func(i, j int) bool { return v[i] < v[j] }, func(i, j int) { v[i], v[j] = v[j], v[i] })
	quarter := float64(len(v)) / 4
	s, left := 0.0, quarter
	for _, x := range v {
		share := min(left, 1)
		s += share * x
		if left -= share; left <= 0 {
			break
		}
	}
	return s / quarter
}

// CV returns the sample standard deviation, with n - 1, over the mean; 0 for
// fewer than two values or a mean of 0.
func CV(v []float64) float64 {
	m := Mean(v)
	if len(v) < 2 || m == 0 {
		return 0
	}
	s := 0.0
	for _, x := range v {
		s += (x - m) * (x - m)
	}
	return math.Sqrt(s/float64(len(v)-1)) / m
}

// CU returns Christiansen's coefficient, 1 - Σ|x - mean|/(n mean); 0 for a
// mean of 0.
func CU(v []float64) float64 {
	m := Mean(v)
	if m == 0 {
		return 0
	}
	s := 0.0
	for _, x := range v {
		s += math.Abs(x - m)
	}
	return 1 - s/(float64(len(v))*m)
}

// lowQuarter is how far the mean of the lowest quarter of a normal
// distribution lies below its mean, in standard deviations, as the trade
// rounds it. [NormalLow] gives 1.2711.
const lowQuarter = 1.27

// Design returns the emission uniformity that a design may count on, not below
// 0, for emitters whose manufacture varies by cv, perPlant of them at each
// plant, >= 1, when the least flow is ratio times the mean:
//
//	EU = (1 - 1.27 cv/√perPlant) ratio
//
// after Karmeli and Keller (1975).
func Design(cv, perPlant, ratio float64) float64 {
	return max(0, 1-lowQuarter*cv/math.Sqrt(perPlant)) * ratio
}

// NormalLow returns how far the mean of the lowest share p of a normal
// distribution lies below its mean, in standard deviations; p from 0 to 1,
// neither included. It is the density at that quantile over p.
func NormalLow(p float64) float64 {
	z := math.Sqrt2 * math.Erfinv(2*p-1)
	density := math.Exp2(-z*z/2*math.Log2E) / math.Sqrt(2*math.Pi)
	return density / p
}

// NormalCU returns Christiansen's coefficient of a normal distribution:
// 1 - √(2/π) cv, which is 1 - 0.798 cv.
func NormalCU(cv float64) float64 { return 1 - math.Sqrt(2/math.Pi)*cv }

// TotalCV returns the coefficient of variation of the flows of emitters with
// exponent x, from that of manufacture and that of the heads: the root of
// cv² + x² cvHead².
func TotalCV(cv, x, cvHead float64) float64 { return math.Hypot(cv, x*cvHead) }
