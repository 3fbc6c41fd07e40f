package network

import (
	"math/rand/v2"
	"reflect"
	"sync"
	"testing"
)

// Networks that are solved at once have the solutions that each has alone,
// although they take over each other's memory.
func TestSolvingAtOnce(t *testing.T) {
	var networks []*Network
	var alone []*Solution
	for i := range 40 {
		n := randomTree(rand.New(rand.NewPCG(11, uint64(i))), 2+i*3)
		s, err := Solve(n)
		if err != nil {
			t.Fatal(err)
		}
		networks, alone = append(networks, n), append(alone, s)
	}
	var all sync.WaitGroup
	for k := range 4 {
		all.Go(func() {
			for i := range networks {
				i = (i*(2*k+1) + k*7) % len(networks)
				if s, err := Solve(networks[i]); err != nil || !reflect.DeepEqual(s, alone[i]) {
					t.Errorf("network %d is another one among others: %v", i, err)
				}
			}
		})
	}
	all.Wait()
}
