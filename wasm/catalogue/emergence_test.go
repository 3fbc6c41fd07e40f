package catalogue

import "testing"

// Days to emergence, sown 12 mm deep, at 10, 15, 20, 25, 30 and 35 °C: Harrington
// and Minges (1954), as given in Knott's Handbook (1997). -1 is none came up, 0
// not tested.
func TestEmergenceOfTheTable(t *testing.T) {
	tests := []struct {
		id, crop string
		days     [6]float64
	}{
		{"GE-00", "tomato", [6]float64{43, 14, 8, 6, 6, 9}},
		{"GE-01", "sweet pepper", [6]float64{-1, 25, 13, 8, 8, 9}},
		{"GE-03", "aubergine (eggplant)", [6]float64{0, 0, 13, 8, 5, 0}},
		{"GE-05", "bush bean", [6]float64{-1, 16, 11, 8, 6, 6}}, // another printing: none at 35 °C
		{"GE-06", "lettuce", [6]float64{7, 4, 3, 2, 3, -1}},
	}
	for _, tt := range tests {
		found := false
		for i := range Crops {
			c := &Crops[i]
			if c.Name != tt.crop {
				continue
			}
			found = true
			for k, want := range tt.days {
				temp := 10 + 5*float64(k)
				days, how := c.Emergence(temp)
				switch {
				case want > 0 && (how != Tested || days != want),
					want == 0 && how != Untested,
					want < 0 && how != Dead:
					t.Errorf("%s: %s at %g °C comes up in %g days (%d), want %g", tt.id, tt.crop, temp, days, how, want)
				}
			}
		}
		if !found {
			t.Errorf("%s: no crop is named %s", tt.id, tt.crop)
		}
	}
}
