package parts

import (
	"math"
	"testing"

	"evenrow/wasm/works/layout"
)

// Every fitting, clamp and metre of tubing is of a site.
func TestEveryFittingIsOfASite(t *testing.T) {
	for seed := range uint64(200) {
		for _, n := range Count(layout.New(randomPlan(seed)), 0, 0) {
			if len(n.Nodes) == 0 && len(n.Stretches) == 0 {
				continue
			}
			sum := 0.0
			for _, m := range n.By {
				sum += m
			}
			if want := n.Length + float64(n.Count-n.Spare); math.Abs(sum-want) > 1e-9 {
				t.Fatalf("seed %d: %s: %g at sites, want %g", seed, n.Name, sum, want)
			}
		}
	}
}
