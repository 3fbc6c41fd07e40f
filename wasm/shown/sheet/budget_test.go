package sheet

import (
	"math/rand/v2"
	"testing"
)

// The answer hangs on fittings where it would turn with none of their loss, or
// with twice of it, everything else as it is.
func TestSoftest(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 41))
	var hung [2]int // spare, and short
	for range 1000 {
		fittings, spare, other := 2*r.Float64(), 4*r.Float64()-2, 5*r.Float64()
		z := &ZoneResult{Budget: []Loss{{Kind: Lift, Head: -other}, {Kind: InFittings, Head: fittings}, {Kind: InHeader, Head: other}, {Kind: Reserve, Head: other}, {Kind: Spare, Head: spare}}}
		turns := spare >= 0 && spare-fittings < 0 || spare < 0 && spare+fittings > 0
		f, left, hangs := z.Softest()
		if f != fittings || left != spare || hangs != turns {
			t.Fatalf("fittings take %g of %g: %g of %g, and %v", fittings, spare, f, left, hangs)
		}
		if hangs && spare >= 0 {
			hung[0]++
		} else if hangs {
			hung[1]++
		}
	}
	if hung[0] < 100 || hung[1] < 100 {
		t.Errorf("%d times of 1000 with head to spare and %d short", hung[0], hung[1])
	}
	if _, _, hangs := new(ZoneResult).Softest(); hangs {
		t.Error("a zone without a budget hangs on its fittings")
	}
}
