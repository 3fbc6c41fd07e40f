package network

import (
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// An oracle solves a network with the emitters that are open given, in another
// formulation and with a general linear-algebra library: the unknowns are the
// flows of the emitters and of one closing link for each ring, every other flow
// follows by continuity along a spanning tree, and the equations are those of
// the emitters' laws and of energy around each ring. The Jacobian is dense.
type oracle struct {
	net    *Network
	links  []resistance
	parent []int // by node: the link of the spanning tree that leads to it; -1 for the source
	order  []int // nodes, the source first, each after the one that feeds it
	chords []int // links outside the tree
	taps   []int // nodes with an open emitter
}

func newOracle(n *Network, open []bool) *oracle {
	o := &oracle{net: n, parent: slices.Repeat([]int{-1}, len(n.Nodes)), order: []int{0}}
	for k := range n.Links {
		o.links = append(o.links, newResistance(&n.Links[k], n.Water))
	}
	seen := make([]bool, len(n.Nodes))
	seen[0] = true
	used := make([]bool, len(n.Links))
	for i := 0; i < len(o.order); i++ {
		for k, l := range n.Links {
			at := o.order[i]
			if l.To == at {
				l.From, l.To = l.To, l.From
			}
			if l.From == at && !seen[l.To] {
				seen[l.To], used[k] = true, true
				o.parent[l.To] = k
				o.order = append(o.order, l.To)
			}
		}
	}
	for k := range n.Links {
		if !used[k] {
			o.chords = append(o.chords, k)
		}
	}
	for i := range n.Nodes {
		if open[i] {
			o.taps = append(o.taps, i)
		}
	}
	return o
}

// state returns the flows and heads that follow from the unknowns.
func (o *oracle) state(x []float64) (flow, head []float64) {
	n := o.net
	flow, head = make([]float64, len(n.Links)), make([]float64, len(n.Nodes))
	need := make([]float64, len(n.Nodes))
	for i, node := range n.Nodes {
		need[i] = node.Draw
	}
	for i, tap := range o.taps {
		need[tap] += x[i]
	}
	for i, k := range o.chords {
		q := x[len(o.taps)+i]
		flow[k] = q
		need[n.Links[k].From] += q
		need[n.Links[k].To] -= q
	}
	for i := len(o.order) - 1; i > 0; i-- {
		at, k := o.order[i], o.parent[o.order[i]]
		l := n.Links[k]
		if l.To == at {
			flow[k] = need[at]
		} else {
			flow[k] = -need[at]
		}
		need[l.From+l.To-at] += need[at]
	}
	head[0] = n.Head
	for _, at := range o.order[1:] {
		k := o.parent[at]
		loss, _ := o.links[k].loss(&n.Links[k], flow[k])
		if l := n.Links[k]; l.To == at {
			head[at] = head[l.From] - loss
		} else {
			head[at] = head[l.To] + loss
		}
	}
	return flow, head
}

// miss returns how far the unknowns are from a solution: each emitter's law in
// flow, each ring's energy in head.
func (o *oracle) miss(x []float64) []float64 {
	flow, head := o.state(x)
	var m []float64
	for i, tap := range o.taps {
		node := o.net.Nodes[tap]
		q, _ := o.net.Emitters[node.Emitter].Open(head[tap] - node.Z)
		m = append(m, (node.Count*q-x[i])*1e6) // in mL/s, of the size of a head
	}
	for _, k := range o.chords {
		loss, _ := o.links[k].loss(&o.net.Links[k], flow[k])
		m = append(m, head[o.net.Links[k].From]-head[o.net.Links[k].To]-loss)
	}
	return m
}

// solve takes damped Newton steps with a Jacobian by differences.
func (o *oracle) solve(tb testing.TB, x []float64) (flow, head []float64) {
	norm := func(v []float64) (s float64) {
		for _, e := range v {
			s += e * e
		}
		return s
	}
	n := len(x)
	m := o.miss(x)
	for range 500 {
		if norm(m) < 1e-26 || n == 0 {
			break
		}
		jac := mat.NewDense(n, n, nil)
		for j := range x {
			const h = 1e-11
			moved := slices.Clone(x)
			moved[j] += h
			for i, e := range o.miss(moved) {
				jac.Set(i, j, (e-m[i])/h)
			}
		}
		var step mat.VecDense
		if err := step.SolveVec(jac, mat.NewVecDense(n, m)); err != nil {
			if _, nearly := err.(mat.Condition); !nearly {
				tb.Fatal(err)
			}
		}
		better := false
		for t := 1.0; t > 1e-6; t /= 2 {
			try := make([]float64, n)
			for i := range x {
				try[i] = x[i] - t*step.AtVec(i)
			}
			if tried := o.miss(try); norm(tried) < norm(m) {
				x, m, better = try, tried, true
				break
			}
		}
		if !better {
			break
		}
	}
	return o.state(x)
}

// The solver and the oracle agree on networks with slopes, mixed emitters,
// pumps and rings. The oracle starts from no flow, not from our answer. Where
// it stalls between kinks of the laws it has no answer, and is not counted.
func TestOracle(t *testing.T) {
	r := rand.New(rand.NewPCG(2026, 11))
	agreed := 0
	for trial := range 120 {
		n := randomTree(r, 4+r.IntN(30))
		withRings(r, n, r.IntN(4))
		s, err := Solve(n)
		if err != nil {
			t.Fatal(err)
		}
		o := newOracle(n, s.Open)
		x := make([]float64, len(o.taps)+len(o.chords))
		for i := range o.taps {
			x[i] = 1e-7
		}
		flow, head := o.solve(t, x)
		left := 0.0
		for _, e := range o.miss(pick(o, flow)) {
			left = max(left, math.Abs(e))
		}
		if !(left < 1e-11) {
			continue
		}
		agreed++
		for i := range head {
			if math.Abs(head[i]-s.Head[i]) > 1e-6*(1+math.Abs(n.Head)+40) {
				t.Errorf("trial %d, node %d: oracle %.9g m, solver %.9g m", trial, i, head[i], s.Head[i])
			}
		}
		for k := range flow {
			if math.Abs(flow[k]-s.Flow[k]) > 1e-6*s.Total+1e-13 {
				t.Errorf("trial %d, link %d: oracle %.9g, solver %.9g m³/s, of %g in all", trial, k, flow[k], s.Flow[k], s.Total)
			}
		}
	}
	if agreed < 80 {
		t.Errorf("the oracle had an answer to %d of 120 networks", agreed)
	}
}

// pick returns the unknowns of a state.
func pick(o *oracle, flow []float64) []float64 {
	var x []float64
	need := make([]float64, len(o.net.Nodes))
	for k, l := range o.net.Links {
		need[l.To] += flow[k]
		need[l.From] -= flow[k]
	}
	for _, tap := range o.taps {
		x = append(x, need[tap]-o.net.Nodes[tap].Draw)
	}
	for _, k := range o.chords {
		x = append(x, flow[k])
	}
	return x
}

// denseNewton solves for the heads of a network with all its emitters open by
// Newton's method with a dense matrix and gonum's Cholesky: the same equations
// as the solver's, flows taken from heads, without its order of elimination.
func denseNewton(tb testing.TB, n *Network) (head []float64) {
	size := len(n.Nodes) - 1
	head, flow := slices.Repeat([]float64{n.Head}, len(n.Nodes)), make([]float64, len(n.Links))
	var res []resistance
	for k := range n.Links {
		res = append(res, newResistance(&n.Links[k], n.Water))
	}
	gap, ease := make([]float64, len(n.Links)), make([]float64, len(n.Links))
	for range 100 {
		jac, rhs := mat.NewSymDense(size, nil), make([]float64, size)
		add := func(i, j int, v float64) {
			if i > 0 && j > 0 {
				jac.SetSym(i-1, j-1, jac.At(i-1, j-1)+v)
			}
		}
		push := func(i int, v float64) {
			if i > 0 {
				rhs[i-1] += v
			}
		}
		for i, node := range n.Nodes {
			if node.Emitter != None {
				q, dq := n.Emitters[node.Emitter].Open(head[i] - node.Z)
				push(i, -node.Count*q)
				add(i, i, node.Count*dq)
			}
		}
		for k, l := range n.Links {
			loss, slope := res[k].loss(&l, flow[k])
			gap[k], ease[k] = head[l.From]-head[l.To]-loss, 1/slope
			add(l.From, l.From, ease[k])
			add(l.To, l.To, ease[k])
			add(l.From, l.To, -ease[k])
			push(l.From, -flow[k]-gap[k]*ease[k])
			push(l.To, flow[k]+gap[k]*ease[k])
		}
		var cholesky mat.Cholesky
		var step mat.VecDense
		if !cholesky.Factorize(jac) {
			tb.Fatal("the matrix is not positive definite")
		}
		if err := cholesky.SolveVecTo(&step, mat.NewVecDense(size, rhs)); err != nil {
			if _, nearly := err.(mat.Condition); !nearly {
				tb.Fatal(err)
			}
		}
		moved := 0.0
		by := func(i int) float64 {
			if i == 0 {
				return 0
			}
			return step.AtVec(i - 1)
		}
		for k, l := range n.Links {
			flow[k] += (gap[k] + by(l.From) - by(l.To)) * ease[k]
		}
		for i := range head {
			head[i] += by(i)
			moved = max(moved, math.Abs(by(i)))
		}
		if moved < 1e-9 {
			return head
		}
	}
	tb.Fatal("dense Newton does not settle")
	return nil
}

// BenchmarkDense is what one solution costs without the order of elimination.
// Compare it with BenchmarkSolve, which sets up as well, and turns on from shut.
func BenchmarkDense(b *testing.B) {
	for _, size := range []int{100, 1_000} {
		n := field(size)
		s, err := Solve(n)
		if err != nil {
			b.Fatal(err)
		}
		b.Run(strconv.Itoa(size), func(b *testing.B) {
			for b.Loop() {
				for i, h := range denseNewton(b, n) {
					if math.Abs(h-s.Head[i]) > 1e-7 {
						b.Fatalf("node %d: %g m, the solver %g m", i, h, s.Head[i])
					}
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*size), "ns/emitter")
		})
	}
}
