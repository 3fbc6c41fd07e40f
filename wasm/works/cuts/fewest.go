// Package cuts says from which rolls the pieces of tubing are cut.
package cuts

import (
	"slices"

	"evenrow/wasm/ground/numeric"
)

// Fewest shares pieces out over as few rolls as it can. Lengths are whole numbers of
// any unit, each from 1 to roll. It returns the indices of the pieces on each roll,
// the longest piece first, and the fewest rolls that could do, which is proved:
// where that is fewer than were found, the search was ended after as many steps as
// it may take.
//
// A roll is begun with the longest piece that is left, and then with those that fill
// it best (bin completion: Korf, A New Algorithm for Optimal Bin Packing, 2002,
// from memory). What bounds it from below is L2 of Martello and Toth (Knapsack
// Problems, 1990, from memory).
func Fewest(lengths []int, roll, steps int) (rolls [][]int, least int) {
	if len(lengths) == 0 {
		return nil, 0
	}
	s := &search{roll: roll, steps: steps, of: make([]int, len(lengths))}
	for i := range s.of {
		s.of[i] = i
	}
	numeric.Sort(len(s.of), func(i, j int) bool {
		a, b := s.of[i], s.of[j]
		return lengths[a] > lengths[b] || lengths[a] == lengths[b] && a < b
	}, func(i, j int) { s.of[i], s.of[j] = s.of[j], s.of[i] })
	for _, i := range s.of {
		s.long = append(s.long, lengths[i])
	}
	s.used = make([]bool, len(s.long))
	s.best = s.decreasing()
	least = s.bound(0)
	s.least = least
	if len(s.best) > least {
		if other := s.fullest(); len(other) < len(s.best) {
			s.best = other
		}
	}
	if len(s.best) > least {
		s.fill(nil)
	}
	if s.steps > 0 {
		least = len(s.best) // all others were tried
	}
	for _, r := range s.best {
		var pieces []int
		for _, k := range r {
			pieces = append(pieces, s.of[k])
		}
		rolls = append(rolls, pieces)
	}
	return rolls, least
}

// A search looks for the fewest rolls. Pieces are counted by falling length.
type search struct {
	roll  int
	steps int   // that may still be taken
	least int   // no fewer rolls do
	of    []int // index of each piece in what was asked for
	long  []int // its length
	used  []bool
	left  []int // room for those that are left
	best  [][]int
}

// decreasing puts each piece, the longest first, on the roll that it fills best.
func (s *search) decreasing() (rolls [][]int) {
	var left, open []int // of each roll; the rolls that still hold the shortest piece
	shortest := s.long[len(s.long)-1]
	for k, long := range s.long {
		at := -1 // in open
		for i, r := range open {
			if left[r] >= long && (at < 0 || left[r] < left[open[at]]) {
				at = i
			}
		}
		if at < 0 {
			at = len(open)
			open = append(open, len(left))
			left, rolls = append(left, s.roll), append(rolls, nil)
		}
		r := open[at]
		left[r] -= long
		rolls[r] = append(rolls[r], k)
		if left[r] < shortest {
			open = slices.Delete(open, at, at+1)
		}
	}
	return rolls
}

// fullest fills one roll after the other, each begun with the longest piece that is
// left, as full as can be found in a share of the steps (minimum bin slack: Gupta &
// Ho, A new heuristic algorithm for the one-dimensional bin-packing problem, 1999,
// from memory).
func (s *search) fullest() (rolls [][]int) {
	all := s.steps
	for {
		first := slices.Index(s.used, false)
		if first < 0 {
			clear(s.used)
			s.steps = all
			return rolls
		}
		s.used[first] = true
		s.steps = all / len(s.long)
		best, least := []int{first}, s.roll-s.long[first]
		s.fit([]int{first}, least, &best, &least)
		for _, k := range best {
			s.used[k] = true
		}
		rolls = append(rolls, best)
	}
}

// fit goes on with a roll to leave as little as it can over.
func (s *search) fit(way []int, room int, best *[]int, least *int) {
	if room < *least {
		*best, *least = slices.Clone(way), room
	}
	last := way[len(way)-1]
	for k := last + 1; k < len(s.long) && *least > 0; k++ {
		if s.steps--; s.steps <= 0 {
			return
		}
		if s.used[k] || s.long[k] > room || s.long[k] == s.long[k-1] && !s.used[k-1] {
			continue
		}
		s.used[k] = true
		s.fit(append(way, k), room-s.long[k], best, least)
		s.used[k] = false
	}
}

// bound returns how many rolls the pieces that are left take at the least. For each
// length a up to half a roll: those longer than roll-a have a roll each, those longer
// than half a roll too, and what these leave must hold the others of a and more.
func (s *search) bound(done int) int {
	left := s.left[:0]
	all := 0
	for k, long := range s.long {
		if !s.used[k] {
			all += long
			left = append(left, long)
		}
	}
	s.left = left
	s.steps -= len(s.long)
	halves := 0 // of the longest, so many are longer than half a roll
	for halves < len(left) && 2*left[halves] > s.roll {
		halves++
	}
	least := max(halves, (all+s.roll-1)/s.roll)
	// a falls from half a roll to the least piece: more pieces are of a and more, and
	// fewer of those longer than half a roll share theirs.
	small, from := 0, halves
	room, alone := 0, halves
	for i := range halves {
		room += s.roll - left[i]
	}
	// Those longer than roll-a share nothing.
	shares := room
	first := 0 // the first of the halves that shares
	for first < halves && left[first] > s.roll-s.roll/2 {
		shares -= s.roll - left[first]
		first++
	}
	for from < len(left) {
		a := left[from]
		for from < len(left) && left[from] == a {
			small += left[from]
			from++
		}
		for first > 0 && left[first-1] <= s.roll-a {
			first--
			shares += s.roll - left[first]
		}
		least = max(least, alone+(max(0, small-shares)+s.roll-1)/s.roll)
	}
	return done + least
}

// fill goes on from some rolls that are done; each that it adds holds the longest
// piece that is left.
func (s *search) fill(done [][]int) {
	first := slices.Index(s.used, false)
	if first < 0 {
		if len(done) < len(s.best) {
			s.best = slices.Clone(done)
		}
		return
	}
	if s.steps--; s.steps <= 0 || s.bound(len(done)) >= len(s.best) {
		return
	}
	s.used[first] = true
	var ways [][]int
	s.complete([]int{first}, s.roll-s.long[first], &ways)
	rest := func(way []int) (left int) {
		left = s.roll
		for _, k := range way {
			left -= s.long[k]
		}
		return left
	}
	numeric.Sort(len(ways), func(i, j int) bool { return rest(ways[i]) < rest(ways[j]) }, func(i, j int) { ways[i], ways[j] = ways[j], ways[i] })
	for _, way := range ways {
		for _, k := range way {
			s.used[k] = true
		}
		s.fill(append(done, way))
		for _, k := range way {
			s.used[k] = k == first
		}
		if s.steps <= 0 || len(s.best) == s.least {
			break
		}
	}
	s.used[first] = false
}

// complete lists the ways to go on with a roll so that none of the pieces that are
// left fits what is over: a way that leaves room for one is never better. Of pieces
// as long as one another the first are taken.
func (s *search) complete(way []int, room int, ways *[][]int) {
	if s.steps--; s.steps <= 0 {
		return
	}
	for k := way[len(way)-1] + 1; k < len(s.long); k++ {
		s.steps--
		if s.used[k] || s.long[k] > room || s.long[k] == s.long[k-1] && !s.used[k-1] {
			continue
		}
		s.used[k] = true
		s.complete(append(slices.Clone(way), k), room-s.long[k], ways)
		s.used[k] = false
	}
	for k := len(s.long) - 1; k >= 0 && s.long[k] <= room; k-- {
		s.steps--
		if !s.used[k] {
			return
		}
	}
	*ways = append(*ways, slices.Clone(way))
}
