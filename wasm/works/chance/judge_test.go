package chance

import "testing"

// By hand: of 10,000 draws a plant that is short in 4 % of them is so 400 times,
// and luck moves that by six times 20 times, to 5.2 %.
func TestWhoIsSingledOut(t *testing.T) {
	for _, c := range []struct {
		short, often float64
		want         bool
	}{{0.04, 0.0519, false}, {0.04, 0.0521, true}, {0, 0, false}, {0, 1e-4, true}} {
		z := Zone{Draws: 10_000, Short: c.short, Often: c.often}
		if got := z.Singled(); got != c.want {
			t.Errorf("short %g, one of them %g: %t", c.short, c.often, got)
		}
	}
}

// One plant alone that is weaker than the rest is named, and none of plants that
// are all alike.
func TestTheWeakPlantIsSingledOut(t *testing.T) {
	p := level(40, 1, 0.05)
	if z := of(t, p, 0)[0]; z.Singled() {
		t.Errorf("of plants that are alike plant %d is named: short in %g, all in %g", z.Weakest+1, z.Often, z.Short)
	}
}

func TestRemedies(t *testing.T) {
	for _, c := range []struct {
		short, fewest, blocked float64
		want                   Remedy
	}{
		{0.02, 1, 0.1, NoneWanted}, {0, 2, 0, NoneWanted},
		{0.021, 1, 0.1, UnblockAndDouble}, {0.021, 2, 0.1, Unblock}, {0.021, 1, 0, LessSpreadOrTwice}, {0.021, 2, 0, LessSpread},
	} {
		z := Zone{Short: c.short, Fewest: c.fewest}
		if got := z.Remedy(c.blocked); got != c.want {
			t.Errorf("%+v: %d", c, got)
		}
	}
}

func TestWorstAndChecked(t *testing.T) {
	zones := []Zone{{Number: 1, Short: 0.1, Solved: 2, Off: 0.3}, {Number: 2, Short: 0.2, Solved: 3, Off: 0.1}, {Number: 3, Short: 0.2}}
	if z := Worst(zones); z.Number != 2 {
		t.Errorf("zone %d", z.Number)
	}
	if solved, off := Checked(zones); solved != 5 || off != 0.3 {
		t.Error(solved, off)
	}
}
