package numeric

import (
	"hash/fnv"
	"testing"
)

// Package hash/fnv judges.
func TestHash(t *testing.T) {
	for _, s := range []string{"", "a", "Millrace tunnel", "über\x00\xff"} {
		want := fnv.New64a()
		want.Write([]byte(s))
		if got := uint64(HashOf(s)); got != want.Sum64() {
			t.Errorf("the mark of %q is %x, want %x", s, got, want.Sum64())
		}
	}
}
