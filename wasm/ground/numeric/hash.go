package numeric

// A Hash is a mark of the bytes that were added to it (FNV-1a, 64 bits): it is
// the same wherever and whenever it is made, and keeps nothing secret.
type Hash uint64

// NewHash returns the mark of nothing.
func NewHash() Hash { return 14695981039346656037 }

// Add adds a byte.
func (h *Hash) Add(b byte) { *h = (*h ^ Hash(b)) * 1099511628211 }

// HashOf returns the mark of a text.
func HashOf(s string) Hash {
	h := NewHash()
	for i := range len(s) {
		h.Add(s[i])
	}
	return h
}
