package chance

import (
	"math"
	"testing"
)

// The first numbers of splitmix64 from the seed 1234567, as its authors'
// program prints them; from memory.
func TestSplitmix(t *testing.T) {
	r := random(1234567)
	for i, want := range []uint64{6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821} {
		if got := r.next(); got != want {
			t.Errorf("number %d is %d, want %d", i, got, want)
		}
	}
}

// The layers close at the top: the last area is that of the others.
func TestLayersClose(t *testing.T) {
	z := normals
	if got := z.edge[layers-1] * (1 - z.density[layers-1]); math.Abs(got-area) > 1e-9*area*1000 {
		t.Errorf("the top layer has %g, the others %g", got, area)
	}
}

// Moments, tails and a test of 200 classes of equal chance against the textbook
// normal distribution. The seed is fixed, and the limits are four standard
// errors, as the moments of the distribution give them.
func TestNormalNumbers(t *testing.T) {
	const n = 4_000_000
	r := random(7)
	var m [5]float64
	var classes [200]float64
	beyond := map[float64]float64{2: 0, 3: 0, tail: 0, 4: 0}
	for range n {
		x := r.normal()
		p := 1.0
		for k := range m {
			m[k] += p / n
			p *= x
		}
		classes[min(len(classes)-1, int(float64(len(classes))*math.Erfc(-x/math.Sqrt2)/2))]++
		for at := range beyond {
			if math.Abs(x) > at {
				beyond[at]++
			}
		}
	}
	// Variances of x, x², x³ and x⁴: 1, 2, 15 and 96.
	for k, want := range map[int][2]float64{1: {0, 1}, 2: {1, 2}, 3: {0, 15}, 4: {3, 96}} {
		if tol := 4 * math.Sqrt(want[1]/n); math.Abs(m[k]-want[0]) > tol {
			t.Errorf("moment %d is %g, want %g within %g", k, m[k], want[0], tol)
		}
	}
	for at, got := range beyond {
		want := n * math.Erfc(at/math.Sqrt2)
		if math.Abs(got-want) > 4*math.Sqrt(want) {
			t.Errorf("%g beyond %g, want %g", got, at, want)
		}
	}
	chi := 0.0
	for _, c := range classes {
		d := c - n/float64(len(classes))
		chi += d * d / (n / float64(len(classes)))
	}
	// 199 degrees of freedom: 199 within four times √(2 × 199).
	if math.Abs(chi-199) > 4*math.Sqrt(2*199) {
		t.Errorf("chi-square is %g of 199", chi)
	}
}
