package tiny

import "testing"

func TestCost(t *testing.T) {
	for pieces, want := range map[int]int{1: 3, 5: 15, 20: 58} {
		if got := Cost(pieces); got != want {
			t.Errorf("%d pieces cost %d, want %d", pieces, got, want)
		}
	}
}

func TestClamp(t *testing.T) {
	for _, tt := range [][4]float64{{1, 2, 3, 2}, {2.5, 2, 3, 2.5}, {4, 2, 3, 3}} {
		if got := Clamp(tt[0], tt[1], tt[2]); got != tt[3] {
			t.Errorf("%g from %g to %g: %g", tt[0], tt[1], tt[2], got)
		}
	}
}

func TestHalvings(t *testing.T) {
	if got := Halvings(8); got != 3 {
		t.Errorf("8 is halved %d times", got)
	}
}
