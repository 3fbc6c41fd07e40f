package cuts

import (
	"math/bits"
	"math/rand/v2"
	"testing"
)

// enough is how many steps a search may take here.
const enough = 500_000

// brute is the fewest rolls, over all ways to fill one: for each set of pieces, the
// best of all its parts that fit a roll, with the rest of the set.
func brute(lengths []int, roll int) int {
	all := 1 << len(lengths)
	fits, fewest := make([]bool, all), make([]int, all)
	for set := 1; set < all; set++ {
		sum := 0
		for i, long := range lengths {
			if set>>i&1 == 1 {
				sum += long
			}
		}
		fits[set] = sum <= roll
		fewest[set] = bits.OnesCount(uint(set))
		for part := set; part > 0; part = (part - 1) & set {
			if fits[part] {
				fewest[set] = min(fewest[set], 1+fewest[set&^part])
			}
		}
	}
	return fewest[all-1]
}

// cutting checks that each piece is on one roll, and no roll holds more than it has.
func cutting(t *testing.T, lengths []int, roll int, rolls [][]int) {
	t.Helper()
	had := make([]int, len(lengths))
	for _, r := range rolls {
		sum := 0
		for _, i := range r {
			had[i]++
			sum += lengths[i]
		}
		if sum > roll || len(r) == 0 {
			t.Errorf("a roll of %d holds %v: %d", roll, r, sum)
		}
	}
	for i, n := range had {
		if n != 1 {
			t.Errorf("piece %d is cut %d times", i, n)
		}
	}
}

func TestFewestAgainstAllWays(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	missed := 0
	for range 3000 {
		roll := 20 + r.IntN(80)
		lengths := make([]int, 1+r.IntN(12))
		least, most := 1+r.IntN(roll/2), roll
		if r.IntN(2) == 0 { // three or four to a roll are the hardest
			least, most = roll/5, roll/2
		}
		for i := range lengths {
			lengths[i] = least + r.IntN(most-least+1)
			if i > 0 && r.IntN(3) == 0 {
				lengths[i] = lengths[i-1]
			}
		}
		want := brute(lengths, roll)
		rolls, proved := Fewest(lengths, roll, enough)
		cutting(t, lengths, roll, rolls)
		if len(rolls) != want || proved != want {
			t.Fatalf("%v of %d: %d rolls, %d proved, want %d", lengths, roll, len(rolls), proved, want)
		}
		// Without a search what is proved is still true.
		quick, bound := Fewest(lengths, roll, 0)
		cutting(t, lengths, roll, quick)
		if bound > want || len(quick) < want {
			t.Fatalf("%v of %d: %d rolls and %d proved without a search, want %d", lengths, roll, len(quick), bound, want)
		}
		if len(quick) > want {
			missed++
		}
	}
	if missed < 20 {
		t.Error("no case took a search")
	}
	t.Logf("%d cases took a search", missed)
}

// Pieces that fill their rolls to the last, so that the fewest is known whatever the
// number of pieces.
func TestFewestOfManyPieces(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	open := 0
	for range 60 {
		lengths, roll, want := filled(r, 200)
		rolls, proved := Fewest(lengths, roll, enough)
		cutting(t, lengths, roll, rolls)
		if proved > want || len(rolls) < want {
			t.Errorf("%d rolls, %d proved, and %d do", len(rolls), proved, want)
		}
		if len(rolls) > proved {
			open++
		}
	}
	t.Logf("%d of 60 were not proved", open)
}

// filled is n pieces or a few more that fill rolls without waste.
func filled(r *rand.Rand, n int) (lengths []int, roll, rolls int) {
	roll = 50_000
	for len(lengths) < n {
		left := roll
		for left > 0 {
			long := min(left, 100*(5+r.IntN(200)))
			if left-long < 500 {
				long = left
			}
			lengths = append(lengths, long)
			left -= long
		}
		rolls++
	}
	r.Shuffle(len(lengths), func(i, j int) { lengths[i], lengths[j] = lengths[j], lengths[i] })
	return lengths, roll, rolls
}

func BenchmarkFewest200(b *testing.B) {
	lengths, roll, _ := filled(rand.New(rand.NewPCG(5, 6)), 200)
	for b.Loop() {
		Fewest(lengths, roll, enough)
	}
}

func BenchmarkFewest200Alike(b *testing.B) {
	lengths := make([]int, 200)
	for i := range lengths {
		lengths[i] = 9_000 + i%3*4_000
	}
	for b.Loop() {
		Fewest(lengths, 50_000, enough)
	}
}

// As many pieces as the largest plan has, most of them a roll each.
func BenchmarkFewestOfTheLargestPlan(b *testing.B) {
	lengths := make([]int, 12_000)
	for i := range lengths {
		if lengths[i] = 5_000; i%60 == 59 {
			lengths[i] = 1_000 + i%7*300
		}
	}
	for b.Loop() {
		Fewest(lengths, 5_000, steps)
	}
}
