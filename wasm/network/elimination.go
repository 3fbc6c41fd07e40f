package network

import "slices"

// A system is the symmetric matrix of one Newton step, with a row for every
// node but the source, and the order in which its rows are eliminated.
//
// The matrix is kept as conductances between nodes, and a leak from each node
// to what is fixed: the source, and the emitter that takes more as the head
// rises. Elimination then only adds, multiplies and divides positive numbers,
// so no digit is lost however different the conductances are.
//
// Leaves are eliminated first, each into its one neighbour, so a tree fills in
// nothing and costs one pass. What remains, the rings, is eliminated by least
// degree: a ring costs one more entry a node.
type system struct {
	order []int32 // nodes in the order of elimination
	start []int32 // by position in order: first entry of that node; one longer than order
	to    []int32 // by entry: a neighbour that is eliminated later
	entry []int32 // by link: its entry, or -1 where it meets the source
	pair  []int32 // entries that a node with two or more neighbours changes, in order of use

	leak []float64 // by node; once eliminated, one over the row's sum
	rhs  []float64 // by node
	val  []float64 // by entry: conductance
}

func newSystem(nodes int, links []Link) *system {
	s := &system{
		order: make([]int32, 0, nodes),
		start: make([]int32, 1, nodes+1),
		to:    make([]int32, 0, nodes),
		entry: make([]int32, len(links)),
		leak:  make([]float64, nodes),
		rhs:   make([]float64, nodes),
	}
	// The exclusive or of a leaf's neighbours is its only neighbour.
	degree := make([]int32, nodes)
	mixed := make([]int32, nodes)
	for _, l := range links {
		if l.From == 0 || l.To == 0 {
			continue
		}
		degree[l.From]++
		degree[l.To]++
		mixed[l.From] ^= int32(l.To)
		mixed[l.To] ^= int32(l.From)
	}
	place := make([]int32, nodes) // position in order, from 1; 0 while not eliminated
	for i := nodes - 1; i > 0; i-- {
		for n := int32(i); degree[n] == 1 && place[n] == 0; {
			next := mixed[n]
			s.eliminate(n, place, next)
			degree[n] = 0
			degree[next]--
			mixed[next] ^= n
			n = next
		}
	}
	s.eliminateRings(links, place)
	s.index(links, place)
	s.val = make([]float64, len(s.to))
	return s
}

// eliminate puts n next in the order, with the neighbours that it has left.
func (s *system) eliminate(n int32, place []int32, neighbours ...int32) {
	s.order = append(s.order, n)
	place[n] = int32(len(s.order))
	s.to = append(s.to, neighbours...)
	s.start = append(s.start, int32(len(s.to)))
}

// eliminateRings orders the nodes that no leaf leads to, by least degree.
func (s *system) eliminateRings(links []Link, place []int32) {
	near := map[int32][]int32{}
	join := func(a, b int32) {
		if !slices.Contains(near[a], b) {
			near[a] = append(near[a], b)
			near[b] = append(near[b], a)
		}
	}
	for _, l := range links {
		if a, b := int32(l.From), int32(l.To); a != 0 && b != 0 && place[a] == 0 && place[b] == 0 {
			join(a, b)
		}
	}
	var byDegree [][]int32
	put := func(n int32) int {
		d := len(near[n])
		for len(byDegree) <= d {
			byDegree = append(byDegree, nil)
		}
		byDegree[d] = append(byDegree[d], n)
		return d
	}
	for n := int32(len(place) - 1); n > 0; n-- {
		if place[n] == 0 {
			put(n)
		}
	}
	for d := 0; d < len(byDegree); {
		last := len(byDegree[d]) - 1
		if last < 0 {
			d++
			continue
		}
		n := byDegree[d][last]
		byDegree[d] = byDegree[d][:last]
		if place[n] != 0 || len(near[n]) != d {
			continue // it has moved to another degree since
		}
		s.eliminate(n, place, near[n]...)
		for i, a := range near[n] {
			near[a] = slices.DeleteFunc(near[a], func(b int32) bool { return b == n })
			for _, b := range near[n][:i] {
				join(a, b)
			}
		}
		for _, a := range near[n] {
			d = min(d, put(a))
		}
		delete(near, n)
	}
}

// index finds the entry that each link, and each pair of neighbours, falls on.
func (s *system) index(links []Link, place []int32) {
	find := func(a, b int32) int32 {
		if place[a] > place[b] {
			a, b = b, a
		}
		lo, hi := s.start[place[a]-1], s.start[place[a]]
		return lo + int32(slices.Index(s.to[lo:hi], b))
	}
	for k, l := range links {
		s.entry[k] = -1
		if l.From != 0 && l.To != 0 {
			s.entry[k] = find(int32(l.From), int32(l.To))
		}
	}
	for p := range s.order {
		row := s.to[s.start[p]:s.start[p+1]]
		for i := range row {
			for j := range i {
				s.pair = append(s.pair, find(row[i], row[j]))
			}
		}
	}
}

// clear empties the matrix and the right-hand side.
func (s *system) clear() {
	clear(s.leak)
	clear(s.rhs)
	clear(s.val)
}

// factor eliminates the matrix, which it overwrites.
func (s *system) factor() {
	pair := 0
	for p, n := range s.order {
		lo, hi := s.start[p], s.start[p+1]
		leak := s.leak[n]
		sum := leak
		for i := lo; i < hi; i++ {
			sum += s.val[i]
		}
		d := 1 / sum
		s.leak[n] = d
		for i := lo; i < hi; i++ {
			share := s.val[i] * d
			s.leak[s.to[i]] += share * leak
			for j := lo; j < i; j++ {
				s.val[s.pair[pair]] += share * s.val[j]
				pair++
			}
		}
	}
}

// solve overwrites rhs with the solution. The matrix must be eliminated.
func (s *system) solve() {
	for p, n := range s.order {
		r := s.rhs[n] * s.leak[n]
		for i := s.start[p]; i < s.start[p+1]; i++ {
			s.rhs[s.to[i]] += s.val[i] * r
		}
	}
	for p := len(s.order) - 1; p >= 0; p-- {
		n := s.order[p]
		r := s.rhs[n]
		for i := s.start[p]; i < s.start[p+1]; i++ {
			r += s.val[i] * s.rhs[s.to[i]]
		}
		s.rhs[n] = r * s.leak[n]
	}
}
