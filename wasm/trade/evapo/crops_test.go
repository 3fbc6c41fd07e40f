package evapo_test

import (
	"math"
	"testing"

	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/evapo"
)

// crop returns a crop of the catalogue.
func crop(t *testing.T, name string) *catalogue.Crop {
	t.Helper()
	for i := range catalogue.Crops {
		if string(catalogue.Crops[i].Name) == name {
			return &catalogue.Crops[i]
		}
	}
	t.Fatalf("no crop is named %s", name)
	return nil
}

// Coefficients of FAO-56, table 12, pages 110 and 111, with footnote 2 for
// crops tied up.
func TestTabulatedCoefficients(t *testing.T) {
	tests := []struct {
		id, name       string
		ini, mid       float64
		endLow, endTop float64
		tied           float64 // 0 where none is printed
	}{
		{"KT-00", "tomato", 0.6, 1.15, 0.70, 0.90, 1.20},
		{"KT-01", "sweet pepper", 0.6, 1.05, 0.90, 0.90, 1.15},
		{"KT-03", "cucumber", 0.6, 1.00, 0.75, 0.75, 1.15},
		{"KT-04", "melon, trained up", 0.5, 1.05, 0.75, 0.75, 0}, // tied up: not of this table
		{"KT-06", "pole bean", 0.5, 1.05, 0.90, 0.90, 1.15},
		{"KT-06", "bush bean", 0.5, 1.05, 0.90, 0.90, 0},
		{"KT-07", "lettuce", 0.7, 1.00, 0.95, 0.95, 0},
		{"KT-09", "mint and other perennial herbs", 0.60, 1.15, 1.10, 1.10, 0},
	}
	for _, tt := range tests {
		c := crop(t, tt.name)
		if c.Of(catalogue.KcIni) != tt.ini || c.Of(catalogue.KcMid) != tt.mid {
			t.Errorf("%s: %s starts at %g and grows to %g, want %g and %g", tt.id, tt.name, c.Of(catalogue.KcIni), c.Of(catalogue.KcMid), tt.ini, tt.mid)
		}
		if end := c.Of(catalogue.KcEnd); end < tt.endLow || end > tt.endTop {
			t.Errorf("%s: %s ends at %g, want %g to %g", tt.id, tt.name, end, tt.endLow, tt.endTop)
		}
		if tied := c.Of(catalogue.KcTied); tt.tied > 0 && tied != tt.tied {
			t.Errorf("%s: %s tied up has %g, want %g", tt.id, tt.name, tied, tt.tied)
		}
	}
}

// Lengths of stages of FAO-56, table 11, pages 104 and 105, and their sums.
func TestTabulatedStages(t *testing.T) {
	tests := []struct {
		id, name            string // name of the crop that has these stages, empty for none
		ini, dev, mid, late float64
		total               float64
	}{
		{"SL-00", "tomato", 30, 40, 45, 30, 145},       // Mediterranean, April and May
		{"SL-01", "", 35, 40, 50, 30, 155},             // tomato, California, April and May
		{"SL-02", "sweet pepper", 30, 35, 40, 20, 125}, // Europe and Mediterranean, April to June: 25 to 30 days at first
		{"SL-04", "cucumber", 20, 30, 40, 15, 105},     // arid, June to August
		{"SL-06", "pole bean", 20, 30, 30, 10, 90},     // green bean, February and March
		{"SL-07", "lettuce", 20, 30, 15, 10, 75},       // Mediterranean, April
	}
	for _, tt := range tests {
		s := evapo.Stages{Ini: tt.ini, Dev: tt.dev, Mid: tt.mid, Late: tt.late}
		if tt.name != "" {
			c := crop(t, tt.name)
			got := evapo.Stages{Ini: c.Of(catalogue.Ini), Dev: c.Of(catalogue.Dev), Mid: c.Of(catalogue.Mid), Late: c.Of(catalogue.Late)}
			if got != s {
				t.Errorf("%s: %s has the stages %+v, want %+v", tt.id, tt.name, got, s)
			}
			s = got
		}
		if math.Abs(s.Total()-tt.total) > 0 {
			t.Errorf("%s: the stages last %g days, want %g", tt.id, s.Total(), tt.total)
		}
	}
}
