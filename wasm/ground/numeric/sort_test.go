package numeric

import (
	"math/rand/v2"
	"slices"
	"testing"
)

func TestSort(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2))
	for n := range 200 {
		v := make([]int, n)
		for i := range v {
			v[i] = r.IntN(1 + n/2)
		}
		want := slices.Sorted(slices.Values(v))
		Sort(n, func(i, j int) bool { return v[i] < v[j] }, func(i, j int) { v[i], v[j] = v[j], v[i] })
		if !slices.Equal(v, want) {
			t.Fatalf("%d things: got %v", n, v)
		}
	}
}
