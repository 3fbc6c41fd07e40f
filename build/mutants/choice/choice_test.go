package choice

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
)

// choose makes id the mutant that runs until the test ends.
func choose(t *testing.T, id int) {
	before := chosen
	t.Cleanup(func() { chosen = before })
	chosen = id
}

func TestOperators(t *testing.T) {
	results := func() []int {
		return []int{
			Value(1, 6, 7), Zero(1, 6), Neg(1, 6), Add(1, 6, 2), Sub(1, 6, 2), Mul(1, 6, 2), Quo(1, 6, 2), Rem(1, 6, 4),
			And(1, 6, 3), Or(1, 6, 3), Xor(1, 6, 3), AndNot(1, 6, 3), Shl(1, 6, 1), Shr(1, 6, 1),
		}
	}
	choose(t, 2)
	if got, want := results(), []int{6, 6, -6, 8, 4, 12, 3, 2, 2, 7, 5, 4, 12, 3}; !slices.Equal(got, want) {
		t.Errorf("as written: %v, want %v", got, want)
	}
	choose(t, 1)
	if got, want := results(), []int{7, 0, 6, 4, 8, 3, 12, 24, 7, 2, 2, 2, 3, 12}; !slices.Equal(got, want) {
		t.Errorf("in the mutant: %v, want %v", got, want)
	}
}

func TestNoneIsOutsideOfARange(t *testing.T) {
	for id, want := range map[int]bool{0: true, 3: true, 4: false, 5: false, 6: true} {
		choose(t, id)
		if got := None(4, 5); got != want {
			t.Errorf("mutant %d: %t, want %t", id, got, want)
		}
	}
}

func TestReachedMutantsAreListedOnceAtOnce(t *testing.T) {
	name := filepath.Join(t.TempDir(), "reached")
	reached = record(name)
	t.Cleanup(func() { reached = nil })
	var done sync.WaitGroup
	for range 4 {
		done.Go(func() {
			for i := range 100 {
				On(i % 3)
			}
		})
	}
	done.Wait()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Fields(string(text))
	slices.Sort(lines)
	if !slices.Equal(lines, []string{"0", "1", "2"}) {
		t.Errorf("listed: %v", lines)
	}
	if record("") != nil {
		t.Error("without a file there is a list")
	}
}
