// Package hostile makes plans, links, files and forms that nobody would think
// of, and some that are ordinary, for tests and benchmarks.
package hostile

import (
	"hash/fnv"
	"math"
	"math/rand/v2"
)

// A Source makes choices from bytes, so that the fuzzer of Go changes plans by
// changing bytes. When they are used up it goes on with random ones, which
// depend on nothing but the bytes.
type Source struct {
	data []byte
	rnd  *rand.Rand
}

// NewSource returns a source of choices.
func NewSource(data []byte) *Source {
	sum := fnv.New64a()
	sum.Write(data)
	return &Source{data, rand.New(rand.NewPCG(sum.Sum64(), 16))}
}

// Numbered returns the source of one case of a run.
func Numbered(run, n int) *Source {
	return &Source{rnd: rand.New(rand.NewPCG(uint64(n), uint64(run)))}
}

func (s *Source) next() byte {
	if len(s.data) == 0 {
		return byte(s.rnd.Uint32())
	}
	b := s.data[0]
	s.data = s.data[1:]
	return b
}

// below returns a whole number from 0 to n-1.
func (s *Source) below(n int) int {
	v := uint32(s.next())
	if n > 256 {
		v = v<<24 | uint32(s.next())<<16 | uint32(s.next())<<8 | uint32(s.next())
	}
	return int(v) % n // some a little oftener than others, which is no matter here
}

// share returns a number from 0 to less than 1.
func (s *Source) share() float64 {
	return (float64(s.next()) + float64(s.next())/256 + float64(s.next())/65536) / 256
}

// oneIn is true in one of n cases.
func (s *Source) oneIn(n int) bool { return s.below(n) == 0 }

// between returns a number from low to high, by orders of magnitude when both
// are positive.
func (s *Source) between(low, high float64) float64 {
	if low > 0 {
		return math.Min(high, low*math.Pow(high/low, s.share()))
	}
	return low + (high-low)*s.share()
}
