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
	trees int     // how many positions in order are of leaves, each with the entry of the same number
	start []int32 // by position after trees: first entry of that node; one more at the end
	cut   int32   // a node that no water can reach, or -1
	to    []int32 // by entry: a neighbour that is eliminated later
	entry []int32 // by link: its entry, or -1 where it meets the source
	pair  []int32 // entries that a node with two or more neighbours changes, in order of use

	// By node, while the order is sought.
	degree, mixed []int32
	place         []int32   // position in order, from 1; 0 while not eliminated
	fed           []bool    // joined to the source, by itself or by what is eliminated before
	near          [][]int32 // of rings: the neighbours that are not yet eliminated
	byDegree      [][]int32 // nodes of rings, by how many they were; none once all are eliminated

	leak []float64 // by node; once eliminated, one over the row's sum
	rhs  []float64 // by node
	val  []float64 // by entry: conductance
}

// prepare makes it the system of so many nodes and these links, in the memory
// that it has.
func (s *system) prepare(nodes int, links []ends) {
	s.order = sized(s.order, nodes)[:0]
	s.to = sized(s.to, nodes)[:0]
	s.start, s.pair, s.cut = s.start[:0], s.pair[:0], -1
	s.entry = sized(s.entry, len(links))
	s.leak = sized(s.leak, nodes)
	s.rhs = sized(s.rhs, nodes)
	// The exclusive or of a leaf's neighbours is its only neighbour.
	s.degree, s.mixed = sized(s.degree, nodes), sized(s.mixed, nodes)
	s.place, s.fed = sized(s.place, nodes), sized(s.fed, nodes)
	degree, mixed, place, fed := s.degree, s.mixed, s.place, s.fed
	for _, l := range links {
		if l.from == 0 || l.to == 0 {
			fed[l.from|l.to] = true
			continue
		}
		degree[l.from]++
		degree[l.to]++
		mixed[l.from] ^= l.to
		mixed[l.to] ^= l.from
	}
	for i := nodes - 1; i > 0; i-- {
		for n := int32(i); degree[n] == 1; {
			next := mixed[n]
			s.order = append(s.order, n)
			s.to = append(s.to, next)
			place[n] = int32(len(s.order))
			fed[next] = fed[next] || fed[n]
			degree[n] = 0
			degree[next]--
			mixed[next] ^= n
			n = next
		}
	}
	s.trees = len(s.order)
	s.start = append(s.start, int32(s.trees))
	s.eliminateRings(links, place, fed)
	s.index(links, place)
	s.val = sized(s.val, len(s.to))
}

// eliminateRings orders the nodes that no leaf leads to, by least degree.
func (s *system) eliminateRings(links []ends, place []int32, fed []bool) {
	s.near = longer(s.near, len(place))
	near := s.near
	for n := range place {
		if place[n] == 0 {
			near[n] = near[n][:0]
		}
	}
	for _, l := range links {
		if a, b := l.from, l.to; a != 0 && b != 0 && place[a] == 0 && place[b] == 0 {
			s.join(a, b)
		}
	}
	for n := int32(len(place) - 1); n > 0; n-- {
		if place[n] == 0 {
			s.put(n)
		}
	}
	for d := 0; d < len(s.byDegree); {
		last := len(s.byDegree[d]) - 1
		if last < 0 {
			d++
			continue
		}
		n := s.byDegree[d][last]
		s.byDegree[d] = s.byDegree[d][:last]
		around := near[n]
		if place[n] != 0 || len(around) != d {
			continue // it has moved to another degree since
		}
		s.order = append(s.order, n)
		s.to = append(s.to, around...)
		s.start = append(s.start, int32(len(s.to)))
		place[n] = int32(len(s.order))
		if len(around) > 0 {
			fed[around[0]] = fed[around[0]] || fed[n]
		} else if !fed[n] {
			s.cut = n
		}
		for i, a := range around {
			at := slices.Index(near[a], n)
			near[a] = append(near[a][:at], near[a][at+1:]...)
			for _, b := range around[:i] {
				s.join(a, b)
			}
		}
		for _, a := range around {
			d = min(d, s.put(a))
		}
	}
}

// join makes two nodes neighbours, if they are none yet.
func (s *system) join(a, b int32) {
	if !slices.Contains(s.near[a], b) {
		s.near[a] = append(s.near[a], b)
		s.near[b] = append(s.near[b], a)
	}
}

// put lists a node by its degree, and returns that.
func (s *system) put(n int32) int {
	d := len(s.near[n])
	s.byDegree = longer(s.byDegree, d+1)
	s.byDegree[d] = append(s.byDegree[d], n)
	return d
}

// longer returns at least n lists: those of v, with the memory that they have,
// and new ones.
func longer(v [][]int32, n int) [][]int32 {
	if len(v) < n {
		v = append(v, make([][]int32, n-len(v))...)
	}
	return v
}

// index finds the entry that each link, and each pair of neighbours, falls on.
func (s *system) index(links []ends, place []int32) {
	find := func(a, b int32) int32 {
		if place[a] > place[b] {
			a, b = b, a
		}
		lo, hi := s.row(int(place[a] - 1))
		return lo + int32(slices.Index(s.to[lo:hi], b))
	}
	for k, l := range links {
		// The source has no place.
		if at := min(place[l.from], place[l.to]) - 1; int(at) < s.trees {
			s.entry[k] = at
		} else {
			s.entry[k] = find(l.from, l.to)
		}
	}
	for p := s.trees; p < len(s.order); p++ {
		lo, hi := s.row(p)
		row := s.to[lo:hi]
		for i := range row {
			for j := range i {
				s.pair = append(s.pair, find(row[i], row[j]))
			}
		}
	}
}

// row returns the first entry of the node at a position after trees, and the
// first that is no more its own.
func (s *system) row(p int) (lo, hi int32) { return s.start[p-s.trees], s.start[p-s.trees+1] }

// cost is what one step costs, in units of work.
func (s *system) cost() int { return len(s.order) + len(s.to) + len(s.pair) }

// factor eliminates the matrix, which it overwrites.
func (s *system) factor() {
	leaks, val, to := s.leak, s.val, s.to
	for p, n := range s.order[:s.trees] {
		leak, v := leaks[n], val[p]
		leaks[n] = 1 / (leak + v)
		leaks[to[p]] += v * leak / (leak + v)
	}
	pair := 0
	for p := s.trees; p < len(s.order); p++ {
		n := s.order[p]
		lo, hi := s.row(p)
		leak := leaks[n]
		sum := leak
		for i := lo; i < hi; i++ {
			sum += val[i]
		}
		d := 1 / sum
		leaks[n] = d
		for i := lo; i < hi; i++ {
			share := val[i] * d
			leaks[to[i]] += share * leak
			for j := lo; j < i; j++ {
				val[s.pair[pair]] += share * val[j]
				pair++
			}
		}
	}
}

// solve overwrites rhs with the solution. The matrix must be eliminated.
func (s *system) solve() {
	rhs, leak, val, to := s.rhs, s.leak, s.val, s.to
	for p, n := range s.order[:s.trees] {
		rhs[to[p]] += val[p] * leak[n] * rhs[n]
	}
	for p := s.trees; p < len(s.order); p++ {
		n := s.order[p]
		r := rhs[n] * leak[n]
		lo, hi := s.row(p)
		for i := lo; i < hi; i++ {
			rhs[to[i]] += val[i] * r
		}
	}
	for p := len(s.order) - 1; p >= s.trees; p-- {
		n := s.order[p]
		r := rhs[n]
		lo, hi := s.row(p)
		for i := lo; i < hi; i++ {
			r += val[i] * rhs[to[i]]
		}
		rhs[n] = r * leak[n]
	}
	for p := s.trees - 1; p >= 0; p-- {
		n := s.order[p]
		rhs[n] = rhs[n]*leak[n] + val[p]*leak[n]*rhs[to[p]]
	}
}
