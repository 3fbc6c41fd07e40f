package chance

import (
	"math"
	"math/bits"

	"evenrow/wasm/ground/numeric"
)

// Seed is where the random numbers start, the same for everybody.
const Seed = 20260101

// A source of random numbers: splitmix64 (Steele, Lea and Flood, 2014; put
// into the public domain by Vigna, 2015; from memory).
type random uint64

func (r *random) next() uint64 {
	*r += 0x9e3779b97f4a7c15
	z := uint64(*r)
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// uniform returns a number from 0, not included, to 1, not included.
func (r *random) uniform() float64 { return (float64(r.next()>>12) + 0.5) / (1 << 52) }

// The layers of the ziggurat (Marsaglia and Tsang, J. Stat. Softw. 5 (2000)
// no. 8, from memory): 256 of one area lie under the density exp(-x²/2), the
// lowest with the tail beyond tail.
const (
	layers = 256
	tail   = 3.6541528853610088
	area   = 0.00492867323399
)

// ziggurat holds the layers' edges, and the density at each.
type ziggurat struct{ edge, density [layers + 1]float64 }

var normals = stack()

// stack reckons the layers from the lowest up.
func stack() *ziggurat {
	z := &ziggurat{}
	f := density(tail)
	z.edge[0], z.edge[1] = area/f, tail
	z.density[1] = f
	for i := 2; i < layers; i++ {
		f += area / z.edge[i-1]
		z.edge[i], z.density[i] = math.Sqrt(-2*math.Log(f)), f
	}
	z.density[layers] = 1
	return z
}

func density(x float64) float64 { return numeric.Exp(-x * x / 2) }

// normal returns a number of the standard normal distribution. Layer, sign and
// place come from bits of their own.
func (r *random) normal() float64 {
	for {
		b := r.next()
		i := b & (layers - 1)
		x := float64(int64(b)>>11) * (1.0 / (1 << 52)) // from -1 to 1
		x *= normals.edge[i]
		a := math.Abs(x)
		if a < normals.edge[i+1] {
			return x
		}
		if i == 0 {
			return math.Copysign(r.beyond(), x)
		}
		lo, hi := normals.density[i], normals.density[i+1]
		if lo+r.uniform()*(hi-lo) < density(a) {
			return x
		}
	}
}

// beyond returns a number of the tail (Marsaglia, 1964, from memory).
func (r *random) beyond() float64 {
	for {
		x, y := -math.Log(r.uniform())/tail, -math.Log(r.uniform())
		if 2*y > x*x {
			return tail + x
		}
	}
}

// threshold returns what a random number lies below with the given chance, a
// share from 0 to 1.
func threshold(share float64) uint64 {
	hi, lo := math.Modf(share * (1 << 32))
	if hi >= 1<<32 {
		return math.MaxUint64
	}
	return bits.RotateLeft64(uint64(hi), 32) | uint64(lo*(1<<32))
}
