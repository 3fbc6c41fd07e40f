package unit

import "testing"

func TestCapital(t *testing.T) {
	for _, c := range []struct{ in, capital, uncapital string }{
		{"", "", ""},
		{"row", "Row", "row"},
		{"Row 1", "Row 1", "row 1"},
		{"16 mm", "16 mm", "16 mm"},
		{"µm", "µm", "µm"},
	} {
		if got := Capital(c.in); got != c.capital {
			t.Errorf("Capital(%q) = %q, want %q", c.in, got, c.capital)
		}
		if got := Uncapital(c.in); got != c.uncapital {
			t.Errorf("Uncapital(%q) = %q, want %q", c.in, got, c.uncapital)
		}
	}
}
