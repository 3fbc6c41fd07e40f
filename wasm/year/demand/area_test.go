package demand

import (
	"math"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/evapo"
)

// A plant's floor is its spacing times what its row reaches, but from 0.3 to 1.5
// of the floor at the usual density.
func TestAreaStaysNearTheUsualFloor(t *testing.T) {
	p := plan.Default()
	crop := p.Rows[1].Crop
	usual := 1 / catalogue.Crops[crop].Of(catalogue.Crowd)
	before, after := halves(p, 1)
	for _, c := range []struct {
		name          string
		spacing, want float64
	}{
		{"as it stands", 0.5 * usual / (before + after), 0.5 * usual},
		{"alone", 9, 1.5 * usual},
		{"crowded", 0.01, 0.3 * usual},
	} {
		p.Rows[1].Spacing = c.spacing
		if got := Area(p, 1, crop); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%s, %g m apart: %g m², want %g", c.name, c.spacing, got, c.want)
		}
	}
}

// A tenth of the canopy at first, 0.18 when it begins to grow fast, all of it
// after the second stage; by hand between them.
func TestCanopyByHand(t *testing.T) {
	s := &evapo.Stages{Ini: 20, Dev: 40, Mid: 40, Late: 15}
	for days, want := range map[float64]float64{-1: 0.1, 0: 0.1, 0.5: 0.102, 10: 0.14, 20: 0.18, 40: 0.59, 60: 1, 90: 1} {
		if got := Canopy(s, days); math.Abs(got-want) > 1e-12 {
			t.Errorf("after %g days: %g, want %g", days, got, want)
		}
	}
	if got := Canopy(&evapo.Stages{Dev: 40}, 0); got != 0.1 {
		t.Errorf("on the first day of a crop that grows fast at once: %g, want 0.1", got)
	}
}
