package layout

import (
	"slices"
	"testing"
	"time"

	"evenrow/wasm/network"
	"evenrow/wasm/plan"
)

// A way is found though rounding makes the water run round a ring.
func TestWayOutOfACircle(t *testing.T) {
	p := plan.Default()
	p.Header.Layout = plan.Ring
	l := New(p)
	// Down row 1, along the far header, up row 2 and back along the header,
	// more than comes in.
	flow := make([]float64, len(l.Network.Links))
	for i := range l.Stretches {
		s := &l.Stretches[i]
		for _, k := range s.Links {
			switch {
			case s.Kind == RowOf && s.Index == 0, s.Kind == FarOf && s.Index == 1:
				flow[k] = 2e-5
			case s.Kind == RowOf && s.Index == 1, s.Kind == HeaderOf && s.Index == 1:
				flow[k] = -2e-5
			default:
				flow[k] = 1e-5
			}
		}
	}
	node := l.Plants[5].Node
	found := make(chan []int, 1)
	go func() { found <- l.Way(node, flow) }()
	select {
	case way := <-found:
		if !slices.Equal(way, l.Path(node)) {
			t.Errorf("way %v", way)
		}
	case <-time.After(5 * time.Second):
		t.Fatal("it goes round for ever")
	}
}

// Rows in pairs at one place of wide headers, hardly drawing: the plan is
// worked through whatever is lost in rounding.
func TestWayBetweenTeesTogether(t *testing.T) {
	p := plan.Default()
	p.Header.Layout, p.Header.Tube, p.Header.Bore = plan.Ring, 0, 0.11
	for i := range p.Rows {
		p.Rows[i].Gap = 0
		p.Rows[i].Tube, p.Rows[i].Bore = 0, 0.11
	}
	l := New(p)
	sol, err := network.Solve(l.Zone(1))
	if err != nil {
		t.Fatal(err)
	}
	for _, pl := range l.Plants {
		if way := l.Way(pl.Node, sol.Flow); len(way) == 0 || len(way) > len(l.Points) || l.Network.Links[way[0]].From != 0 {
			t.Fatalf("way to plant %d of row %d: %v", pl.Number, pl.Row+1, way)
		}
	}
}
