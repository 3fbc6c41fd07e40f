package plan

import (
	"slices"
	"testing"
)

func TestZones(t *testing.T) {
	p := Default()
	for i, z := range []int{3, 1, 3, 2} {
		p.Rows[i].Zone = z
	}
	if got := p.Zones(); !slices.Equal(got, []int{1, 2, 3}) || p.ZoneOf(2) != 3 {
		t.Errorf("rows in zones 3, 1, 3 and 2: %v, and row 3 in %d", got, p.ZoneOf(2))
	}
	for _, layout := range []int{OneLine, Ring} {
		p.Header.Layout = layout
		if got := p.Zones(); !slices.Equal(got, []int{3}) || p.ZoneOf(1) != 3 {
			t.Errorf("layout %d, where row 1 has zone 3: %v, and row 2 in %d", layout, got, p.ZoneOf(1))
		}
	}
}
