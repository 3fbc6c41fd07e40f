package edge

import (
	"testing"

	"evenrow/wasm/carry"
	"evenrow/wasm/plan"
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
