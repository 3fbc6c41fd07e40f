package layout

import (
	"slices"
	"testing"
	"time"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/network"
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
	found := make(chan []Hop, 1)
	go func() { found <- l.Way(node, flow) }()
	select {
	case way := <-found:
		if !slices.Equal(links(way), l.Path(node)) {
			t.Errorf("way %v", way)
		}
		follow(t, way, node)
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
		way := l.Way(pl.Node, sol.Flow)
		if len(way) == 0 || len(way) > len(l.Points) {
			t.Fatalf("way to plant %d of row %d: %v", pl.Number, pl.Row+1, way)
		}
		follow(t, way, pl.Node)
	}
}

// Where the water stands still, what rounding leaves of a flow may be of any sign:
// the way to the end of such a row still leads to its end.
func TestWayThroughStillWater(t *testing.T) {
	l := New(plan.Default())
	end := l.Plants[len(l.Plants)-1].Node
	path := l.Path(end)
	flow := make([]float64, len(l.Network.Links))
	for i, k := range path {
		if flow[k] = 1e-5; i > len(path)/2 {
			flow[k] = -3e-15
		}
	}
	way := l.Way(end, flow)
	if !slices.Equal(links(way), path) {
		t.Errorf("way %v, and the path is %v", way, path)
	}
	follow(t, way, end)
}

func links(way []Hop) (all []int) {
	for _, hop := range way {
		all = append(all, hop.Link)
	}
	return all
}

// follow checks that a way leads from the source to a node, each hop from where the
// last one led.
func follow(t *testing.T, way []Hop, node int) {
	t.Helper()
	at := 0
	for _, hop := range way {
		if hop.From != at {
			t.Fatalf("a hop from %d begins where the last led to %d: %v", hop.From, at, way)
		}
		at = hop.To
	}
	if at != node {
		t.Fatalf("the way to %d leads to %d: %v", node, at, way)
	}
}
