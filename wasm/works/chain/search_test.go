package chain

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenrow/wasm/trade/ends"
)

// brute tries every chain of at most six parts, one after the other, and returns what the
// best costs, by price and then by number, or the other way round.
func brute(parts []Part, open, to ends.End, pressure float64, fewest bool, n int, price float64) (first, second float64) {
	first, second = math.Inf(1), math.Inf(1)
	if ends.Mate(open, to).Holds(pressure) {
		first, second = price, float64(n)
		if fewest {
			first, second = second, first
		}
	}
	if n == 6 {
		return first, second
	}
	for i := range parts {
		for turn := range 2 {
			in, out := parts[i].A, parts[i].B
			if turn == 1 {
				in, out = out, in
			}
			if ends.Mate(open, in).Holds(pressure) {
				a, b := brute(parts, out, to, pressure, fewest, n+1, price+parts[i].Price)
				if a < first-1e-9 || a < first+1e-9 && b < second {
					first, second = a, b
				}
			}
		}
	}
	return first, second
}

// 500 random catalogues of up to 30 parts: no chain of up to six parts is better than
// the one that is found, and every joint of that one holds.
func TestNoChainIsBetter(t *testing.T) {
	r := rand.New(rand.NewPCG(18, 3))
	found, long, none := 0, 0, 0
	for n := range 500 {
		// A few ends, so that some of them mate, of all families.
		some := make([]ends.End, 0, 12)
		for len(some) < 12 {
			e := ends.All[r.IntN(len(ends.All))]
			some = append(some, e)
			for _, other := range ends.All {
				if len(some) < 12 && ends.Mate(e, other).Holds(0) {
					some = append(some, other)
				}
			}
		}
		parts := make([]Part, 6+r.IntN(25))
		for i := range parts {
			parts[i] = Part{ends.Part{A: some[r.IntN(len(some))], B: some[r.IntN(len(some))], Price: float64(r.IntN(60)) / 10}, -1}
		}
		from, to := some[r.IntN(len(some))], some[r.IntN(len(some))]
		pressure := [...]float64{0, 0, 3.8e5, 5e5}[r.IntN(4)]
		for _, fewest := range []bool{false, true} {
			steps, ok, reached := Best(parts, from, to, pressure, fewest)
			first, second := brute(parts, from, to, pressure, fewest, 0, 0)
			if !ok {
				none++
				if !math.IsInf(first, 1) {
					t.Fatalf("%d: no chain is found, and there is one of %g, %g", n, first, second)
				}
				if len(reached) == 0 || reached[0] != from {
					t.Fatalf("%d: reached %v", n, reached)
				}
				continue
			}
			price, open := 0.0, from
			for _, s := range steps {
				p := parts[s.Part]
				if !(p.A == s.In && p.B == s.Out || p.B == s.In && p.A == s.Out) || !ends.Mate(open, s.In).Holds(pressure) {
					t.Fatalf("%d: %+v does not go on %s", n, s, open.Name(""))
				}
				price, open = price+p.Price, s.Out
			}
			if !ends.Mate(open, to).Holds(pressure) {
				t.Fatalf("%d: the chain ends at %s", n, open.Name(""))
			}
			a, b := price, float64(len(steps))
			if fewest {
				a, b = b, a
			}
			switch {
			case len(steps) > 6:
				long++
				if first < a-1e-9 {
					t.Fatalf("%d: %g, %g is found, and %g, %g is better", n, a, b, first, second)
				}
			case math.Abs(a-first) > 1e-9 || b != second && !(fewest && math.Abs(b-second) < 1e-9):
				t.Fatalf("%d: %g, %g is found, the best is %g, %g", n, a, b, first, second)
			default:
				found++
			}
		}
	}
	if found < 300 || none < 200 {
		t.Errorf("%d found, %d long, %d none: too few of some", found, long, none)
	}
	t.Logf("%d found, %d of them longer than six parts, none for %d", found, long, none)
}
