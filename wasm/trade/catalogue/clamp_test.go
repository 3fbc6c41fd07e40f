package catalogue

import "testing"

// Every tubing on barbs has a clamp in shops of either kind, told by hand: the
// size whose middle is nearest.
func TestClampFor(t *testing.T) {
	for _, c := range []struct {
		outside float64
		sae, mm string
	}{
		{0.016, "6", "12-20 mm"},
		{0.020, "10", "16-27 mm"},
		{0.620 * inch, "6", "12-20 mm"},
		{0.670 * inch, "6", "12-20 mm"},
		{0.700 * inch, "8", "12-20 mm"},
		{0.710 * inch, "8", "12-20 mm"},
		{0.940 * inch, "12", "20-32 mm"},
		{1.200 * inch, "16", "25-40 mm"},
		{0.824 * inch * 17 / 15, "12", "16-27 mm"},
		{1.049 * inch * 17 / 15, "16", "25-40 mm"},
		{1.380 * inch * 17 / 15, "24", "32-50 mm"},
	} {
		sae, mm := ClampFor(ClampsSAE, c.outside), ClampFor(ClampsMM, c.outside)
		if sae == nil || sae.SAE != c.sae || mm == nil || mm.Range != c.mm {
			t.Errorf("%.1f mm: %+v and %+v, want SAE %s and %s", 1000*c.outside, sae, mm, c.sae, c.mm)
		}
	}
	for i := range Tubes {
		if tube := &Tubes[i]; i != Custom && tube.Takes.Clamps() > 0 && (ClampFor(ClampsSAE, tube.Outside) == nil || ClampFor(ClampsMM, tube.Outside) == nil) {
			t.Errorf("%s has no clamp", tube.Name)
		}
	}
	if ClampFor(ClampsMM, 0.007) != nil || ClampFor(ClampsSAE, 0.06) != nil {
		t.Error("a clamp for what no range has")
	}
}

// The rule of thumb of the trade (from memory): numbers 6 to 24 go up to (N + 8)/16 in,
// which no number is far from.
func TestNumbersOfClamps(t *testing.T) {
	for n, most := range map[string]float64{"6": 14, "8": 16, "10": 18, "12": 20, "16": 24, "20": 28, "24": 32} {
		for i := range ClampsSAE {
			if c := &ClampsSAE[i]; c.SAE == n && (c.Most-most*inch/16 > 1.01*inch/16 || most*inch/16-c.Most > 1.01*inch/16) {
				t.Errorf("number %s goes up to %g in", n, c.Most/inch)
			}
		}
	}
	for _, sizes := range [][]Clamp{ClampsSAE, ClampsMM} {
		for i := range sizes {
			if sizes[i].Least >= sizes[i].Most || i > 0 && sizes[i-1].Most >= sizes[i].Most {
				t.Errorf("%+v", sizes[i])
			}
		}
	}
}
