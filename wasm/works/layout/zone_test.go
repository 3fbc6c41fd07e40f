package layout

import (
	"math"
	"slices"
	"testing"

	"evenrow/wasm/grower/plan"
)

// A plan with two zones has a valve at each row.
func TestZones(t *testing.T) {
	p := plan.Default()
	p.Rows[0].Zone, p.Rows[1].Zone, p.Rows[2].Zone, p.Rows[3].Zone = 7, 1, 7, 1
	l := New(p)
	if !slices.Equal(l.Zones, []int{1, 7}) {
		t.Fatalf("zones %v, want 1 and 7", l.Zones)
	}
	if k := l.Network.Links[6].K; !near(k, 2+0.05+2*inserted(1)) {
		t.Errorf("row 1's first link has K %g with a valve", k)
	}
	for _, z := range []int{1, 7} {
		n := l.Zone(z)
		open := 0
		for i := range n.Nodes {
			if n.Nodes[i].Emitter >= 0 {
				open++
			}
		}
		for _, pl := range l.Plants {
			if want := p.Rows[pl.Row].Zone == z; (n.Nodes[pl.Node].Emitter >= 0) != want {
				t.Fatalf("zone %d: plant %d of row %d open is %v", z, pl.Number, pl.Row+1, !want)
			}
		}
		if open != 60 || len(n.Links) != len(l.Network.Links) {
			t.Errorf("zone %d: %d plants open, %d links", z, open, len(n.Links))
		}
	}
	for _, pl := range l.Plants {
		if l.Network.Nodes[pl.Node].Emitter < 0 {
			t.Fatal("Zone changed the whole network")
		}
	}
}

// In one line nothing can shut one row off.
func TestOneLineIsOneZone(t *testing.T) {
	p := plan.Default()
	p.Header.Layout = plan.OneLine
	p.Rows[0].Zone, p.Rows[2].Zone = 3, 7
	l := New(p)
	if !slices.Equal(l.Zones, []int{3}) {
		t.Fatalf("zones %v, want 3", l.Zones)
	}
	for _, pl := range l.Plants {
		if l.Zone(3).Nodes[pl.Node].Emitter < 0 {
			t.Fatalf("row %d is shut", pl.Row+1)
		}
	}
}

func TestLayoutHasNoBadNumbers(t *testing.T) {
	forRandom(t, func(t *testing.T, seed uint64, l *Layout) {
		for i, k := range l.Network.Links {
			if k.Law != nil {
				continue
			}
			for _, v := range []float64{k.Length, k.K, k.Extra, k.Roughness} {
				if !(v >= 0) || math.IsInf(v, 0) {
					t.Fatalf("link %d is %+v", i, k)
				}
			}
			if !(k.Bore > 0) {
				t.Fatalf("link %d has bore %g", i, k.Bore)
			}
		}
	})
}
