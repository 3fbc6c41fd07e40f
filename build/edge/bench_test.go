package edge

import (
	"testing"

	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
)

func BenchmarkPage(b *testing.B) {
	for _, x := range plan.Examples() {
		b.Run(x.Key, func(b *testing.B) {
			target := "/plan?" + carry.Link(x.Plan)
			for b.Loop() {
				if w := ask(b, "GET", target, ""); w.Code != 200 {
					b.Fatal(w.Code)
				}
			}
		})
	}
}
