package filter

import (
	"math"
	"testing"
)

func TestLoss(t *testing.T) {
	f := Filter{Rated: 1e-3, Clean: 1, Extra: 2}
	tests := []struct {
		name          string
		q, loss, tilt float64
	}{
		{"rated", 1e-3, 3, 6e3},
		{"half", 5e-4, 0.75, 3e3},
		{"twice", 2e-3, 12, 12e3},
		{"back", -1e-3, -3, 6e3},
		{"none", 0, 0, 3},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			loss, slope := f.Loss(tt.q)
			if math.Abs(loss-tt.loss) > 1e-12 || math.Abs(slope-tt.tilt) > 1e-9*tt.tilt {
				t.Errorf("at %g m³/s: %g m, slope %g, want %g, %g", tt.q, loss, slope, tt.loss, tt.tilt)
			}
		})
	}
}

func TestLossRises(t *testing.T) {
	f := Filter{Rated: 1e-3, Clean: 0.7}
	before := math.Inf(-1)
	for i := -4000; i <= 4000; i++ {
		q := 1e-6 * (float64(i) + 0.4)
		loss, slope := f.Loss(q)
		if !(loss > before && slope > 0) {
			t.Fatalf("at %g m³/s: %g m after %g, slope %g", q, loss, before, slope)
		}
		before = loss
	}
}

func TestMeshFor(t *testing.T) {
	tests := []struct {
		passage float64 // m
		mesh    int
	}{
		{1.5e-3, 100},
		{1.3e-3, 120},
		{1.29e-3, 140}, // one maker's 120 mesh has 130 µm
		{0.75e-3, 200},
		{5e-3, 40},
	}
	for _, tt := range tests {
		m, ok := MeshFor(LargestOpening(tt.passage, Share))
		if !ok || m.Count != tt.mesh {
			t.Errorf("for a passage of %g m: %d mesh, %t, want %d", tt.passage, m.Count, ok, tt.mesh)
		}
	}
	if m, ok := MeshFor(LargestOpening(0.6e-3, Share)); ok {
		t.Errorf("for a passage of 0.6 mm: %d mesh, want none", m.Count)
	}
}

func TestMeshesAreInOrder(t *testing.T) {
	for i, m := range Meshes {
		if !(m.Least <= m.Most) || i > 0 && !(m.Count > Meshes[i-1].Count && m.Most < Meshes[i-1].Most) {
			t.Errorf("%d mesh is out of order", m.Count)
		}
	}
}
