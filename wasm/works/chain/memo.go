package chain

import "sync/atomic"

// A search of designs lays out thousands of plans whose ends are the same, so the last
// answers are held: a list that is never changed, the newest first.
type memo struct {
	c    *Chains
	next *memo
}

// held is how many answers are: the sizes of supply line that a search goes through.
const held = 24

var (
	newest   atomic.Pointer[memo]
	searched atomic.Int64 // how often ways were searched, for tests
)

// known is the answer to a question that was asked before, or nil.
func known(q question) *Chains {
	for m := newest.Load(); m != nil; m = m.next {
		if m.c.q == q {
			return m.c
		}
	}
	return nil
}

// keep holds an answer. Where two are kept at once one is lost, and searched again.
func keep(c *Chains) {
	searched.Add(1)
	list := []*Chains{c}
	for m := newest.Load(); m != nil && len(list) < held; m = m.next {
		list = append(list, m.c)
	}
	var m *memo
	for i := len(list) - 1; i >= 0; i-- {
		m = &memo{list[i], m}
	}
	newest.Store(m)
}
