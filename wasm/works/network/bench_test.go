package network

import (
	"runtime"
	"strconv"
	"testing"

	"evenrow/wasm/trade/emitter"
)

// field returns rows of emitters from one header, n emitters in all, with a
// pump that suits them: what a plan makes, at any size.
func field(n int) *Network {
	const inRow = 50
	net := &Network{
		Water:    water20,
		Emitters: []emitter.Emitter{compensating(2)},
		Nodes:    []Node{{Emitter: None}, {Emitter: None}},
		Links:    []Link{{From: 0, To: 1, Law: curve{h0: 40, qm: 2 * float64(n) * 2 / 3.6e6}}},
	}
	tee := 1
	for row := range (n + inRow - 1) / inRow {
		if row > 0 {
			net.Nodes = append(net.Nodes, Node{Emitter: None})
			// The bore grows with the field, so that it stays a sensible one.
			net.Links = append(net.Links, Link{From: tee, To: len(net.Nodes) - 1, Length: 1.2, Bore: 0.03 + 0.0005*float64(n/inRow), K: 1, Roughness: 1.5e-6})
			tee = len(net.Nodes) - 1
		}
		at := tee
		for range min(inRow, n-row*inRow) {
			net.Nodes = append(net.Nodes, Node{Emitter: 0, Count: 1})
			net.Links = append(net.Links, Link{From: at, To: len(net.Nodes) - 1, Length: 0.333, Bore: 0.0136, Extra: 0.14, Roughness: 1.5e-6})
			at = len(net.Nodes) - 1
		}
	}
	return net
}

// BenchmarkSolve solves fields from shut emitters up, with all its setting up.
func BenchmarkSolve(b *testing.B) {
	for _, n := range []int{100, 1_000, 10_000, 100_000, 1_000_000} {
		if n > 100_000 && runtime.GOARCH == "wasm" {
			continue // more memory than a page may have
		}
		net := field(n)
		b.Run(strconv.Itoa(n), func(b *testing.B) {
			for b.Loop() {
				s, err := Solve(net)
				if err != nil || s.Total == 0 {
					b.Fatal(err, s.Total)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*n), "ns/emitter")
		})
	}
}
