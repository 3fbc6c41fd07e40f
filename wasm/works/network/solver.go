package network

import (
	"errors"
	"math"
	"slices"
)

// A Solver finds the state of one network. It keeps its memory between calls,
// so that solving again allocates nothing.
//
// The unknowns are the heads of the nodes and the flows of the links. Each
// step linearises every link and every emitter at the present state, solves
// for all the heads at once by elimination, which on a tree costs one pass
// over the nodes, and takes the flows from the heads: Newton's method on the
// equations of continuity and energy together. Every law rises, so the matrix
// is positive definite and the solution, for a given set of open emitters, is
// the only one. A step that overshoots a kink in a law is shortened until the
// errors fall.
type Solver struct {
	net   *Network
	ends  []ends       // by link
	links []resistance // of each run of links that resist alike
	run   []int32      // by link: its run
	drop  int          // the link that is a Drop, or -1
	sys   system
	open  []bool    // by node
	step  []float64 // by node: Newton's step in head
	ready []waiting // shut emitters that see their opening head
	now   state
	trial state
	steps int
	cost  int // of an evaluation, in units of work
}

// ends are the nodes that a link joins.
type ends struct{ from, to int32 }

// A state is a guess at the solution, with the laws evaluated at it.
type state struct {
	head, more, excess []float64 // by node; more is the slope of the flow taken, excess what flows in beyond it
	flow, ease, gap    []float64 // by link; ease is one over the loss's slope, gap the drop in head that the loss does not explain
	total              float64   // flow from the source
	settled            bool      // every error is within tolerance
	near               bool      // as settled, but for what the rounding of heads may do to flows
}

// Tolerances, near what the rounding of float64 leaves. Around a ring of wide
// tubing even a head that no gauge can show drives a flow.
const (
	flowTolerance = 1e-12            // of the total flow
	flowRounding  = 1e-9             // of the total flow, where emitters are steep and heads great
	stillFlow     = 1e-18            // m³/s, a drop in a thousand years: no flow at all
	leastFlow     = 1000 * stillFlow // less than that is rounding
	stillHead     = 1e-9             // m, that no gauge shows
	headTolerance = 1e-12            // of one metre plus the greatest head
	maxSteps      = 40
	preparing     = 2 // evaluations that preparing costs as much as
	shortestStep  = 1.0 / 256
)

// ErrUnsettled says that Newton's method ran out of steps. No network that a
// plan can describe is known to bring it about.
var ErrUnsettled = errors.New("the flows did not settle")

// NewSolver prepares to solve n, which must not change until the solver is
// done with, save for what [Solver.After] allows. The error says what is wrong with the network.
func NewSolver(n *Network) (*Solver, error) {
	if err := n.check(); err != nil {
		return nil, err
	}
	s := &Solver{}
	if err := s.prepare(n); err != nil {
		return nil, err
	}
	return s, nil
}

// prepare makes the solver one of n, in the memory that it has.
func (s *Solver) prepare(n *Network) error {
	nodes, links := len(n.Nodes), len(n.Links)
	s.net, s.cost = n, nodes+links
	n.Meter.Spend(preparing * s.cost)
	s.ends = sized(s.ends, links)
	s.run = sized(s.run, links)
	s.links = s.links[:0]
	s.drop = -1
	for k := range n.Links {
		l := &n.Links[k]
		s.ends[k] = ends{int32(l.From), int32(l.To)}
		if k == 0 || !l.like(&n.Links[k-1]) {
			s.links = append(s.links, newResistance(l, n.Water))
		}
		s.run[k] = int32(len(s.links) - 1)
		if _, ok := l.Law.(Drop); ok {
			s.drop = k
			s.links[s.run[k]].laminarTo = dropping
		}
	}
	s.open = sized(s.open, nodes)
	s.step = sized(s.step, nodes)
	s.now.size(nodes, links)
	s.trial.size(nodes, links)
	s.sys.prepare(nodes, s.ends)
	if s.sys.cut >= 0 {
		return fault("node", int(s.sys.cut), "way to the source")
	}
	s.rest()
	return nil
}

func (st *state) size(nodes, links int) {
	for _, v := range []*[]float64{&st.head, &st.more, &st.excess} {
		*v = sized(*v, nodes)
	}
	for _, v := range []*[]float64{&st.flow, &st.ease, &st.gap} {
		*v = sized(*v, links)
	}
}

// sized returns n zeros, in the memory of v where that is enough.
//
// It stands in the program once: its callers copied it eighteen times.
//
//go:noinline
func sized[T any](v []T, n int) []T {
	if cap(v) < n {
		return make([]T, n)
	}
	v = v[:n]
	clear(v)
	return v
}

// rest makes the present state one of still water at the source's head.
func (s *Solver) rest() {
	for i := range s.now.head {
		s.now.head[i] = s.net.Head
	}
	clear(s.now.flow)
}

// Begin takes heads by node, in m, and flows by link, in m³/s, for the present
// state, from which [Solver.After] goes on: the nearer they are, the sooner it is
// there.
func (s *Solver) Begin(head, flow []float64) {
	copy(s.now.head, head)
	copy(s.now.flow, flow)
	s.now.head[0] = s.net.Head
}

// Remake takes link k as it stands in the network now, where its length, K or
// Extra has changed.
func (s *Solver) Remake(k int) {
	made := newResistance(&s.net.Links[k], s.net.Water)
	at := s.run[k]
	if slices.Contains(s.run[:k], at) || slices.Contains(s.run[k+1:], at) {
		s.run[k] = int32(len(s.links))
		s.links = append(s.links, made)
	} else {
		s.links[at] = made
	}
}

// settle finds the state in which the emitters marked open are open.
//
// A Drop takes all of its head from water that flows. Where the water does not
// flow against the whole of it, it does not flow at all, and the drop takes
// what is left above the lowest open emitter, or nothing where all are shut or
// above that.
func (s *Solver) settle() error {
	if s.drop < 0 {
		return s.balance()
	}
	l := &s.net.Links[s.drop]
	taken := &s.links[s.run[s.drop]].local
	whole, _ := l.Law.Loss(1)
	*taken = whole
	if err := s.balance(); err != nil || s.now.flow[s.drop] > leastFlow {
		return err
	}
	*taken = 0
	for i, open := range s.open {
		if open {
			// A little more, so that no rounding lets any through.
			*taken = max(*taken, s.now.head[l.From]-s.net.Nodes[i].Z+stillHead)
		}
	}
	return s.balance()
}

// balance finds the state with what a Drop takes at present.
func (s *Solver) balance() error {
	s.evaluate(&s.now)
	if s.newton() || s.now.near {
		return nil
	}
	s.descend()
	if s.newton() || s.now.near {
		return nil
	}
	return ErrUnsettled
}

// newton takes Newton's steps from the present state, and reports whether it
// has settled.
func (s *Solver) newton() bool {
	for range maxSteps {
		if s.now.settled {
			return true
		}
		s.steps++
		s.net.Meter.Spend(s.sys.cost())
		s.assemble()
		s.sys.factor()
		miss := s.demand(&s.now)
		s.sys.solve()
		s.step, s.sys.rhs = s.sys.rhs, s.step
		s.shorten(miss)
		s.now, s.trial = s.trial, s.now
	}
	return s.now.settled
}

// take sets what leaves at each node at the state's heads, as an excess below
// nothing.
func (s *Solver) take(st *state) {
	nodes := s.net.Nodes
	open, head, more, excess := s.open[:len(nodes)], st.head[:len(nodes)], st.more[:len(nodes)], st.excess[:len(nodes)]
	for i := range nodes {
		node := &nodes[i]
		q, slope := 0.0, 0.0
		if open[i] {
			q, slope = s.net.Emitters[node.Emitter].Open(head[i] - node.Z)
		}
		excess[i], more[i] = -node.Count*q-node.Draw, node.Count*slope
	}
}

// evaluate applies every law at the state's heads and flows.
//
// It compares without max, which is a call in WebAssembly. A comparison loses
// a NaN, so wrong gathers them, and no NaN is within a tolerance.
func (s *Solver) evaluate(st *state) {
	s.net.Meter.Spend(s.cost)
	s.take(st)
	links := len(s.ends)
	head, excess := st.head, st.excess[:len(st.head)]
	greatest, worst, wrong := 0.0, 0.0, 0.0
	for _, h := range head {
		if h = math.Abs(h); h > greatest {
			greatest = h
		}
	}
	st.total = 0
	flow, ease, gap, run := st.flow[:links], st.ease[:links], st.gap[:links], s.run[:links]
	for k, e := range s.ends {
		q := flow[k]
		loss, slope := s.links[run[k]].loss(&s.net.Links[k], q)
		ease[k] = 1 / slope
		g := head[e.from] - head[e.to] - loss
		gap[k] = g
		wrong += g - g
		if g = math.Abs(g); g > worst {
			worst = g
		}
		excess[e.from] -= q
		excess[e.to] += q
		if e.from == 0 || e.to == 0 {
			st.total += math.Abs(q)
		}
	}
	excess[0] = 0
	most := st.imbalance() + wrong
	heads := worst <= headTolerance*(1+greatest)
	st.settled = heads && most <= flowTolerance*st.total+stillFlow
	st.near = heads && most <= flowRounding*st.total
}

// imbalance returns the largest excess of flow at a node, NaN if there is one.
func (st *state) imbalance() float64 {
	worst, wrong := 0.0, 0.0
	for _, e := range st.excess {
		wrong += e - e
		if e = math.Abs(e); e > worst {
			worst = e
		}
	}
	return worst + wrong
}

// assemble sets up the matrix of the linearised present state.
func (s *Solver) assemble() {
	sys, st := &s.sys, &s.now
	clear(sys.val)
	copy(sys.leak, st.more)
	entry, ease := sys.entry[:len(s.ends)], st.ease[:len(s.ends)]
	for k, e := range s.ends {
		if at := entry[k]; at >= 0 {
			sys.val[at] += ease[k]
		} else {
			sys.leak[e.from] += ease[k]
			sys.leak[e.to] += ease[k]
		}
	}
}

// demand sets the right-hand side to what the state's errors ask of the
// matrix of the present state, and returns the sum of those errors squared,
// weighed by that matrix, so that a present and a trial state compare.
func (s *Solver) demand(st *state) (miss float64) {
	rhs, worth := s.sys.rhs[:len(st.excess)], s.sys.leak[:len(st.excess)]
	for i, e := range st.excess {
		rhs[i] = e
		miss += e * e * worth[i]
	}
	gap, ease := st.gap[:len(s.ends)], s.now.ease[:len(s.ends)]
	for k, e := range s.ends {
		through := gap[k] * ease[k]
		miss += through * gap[k]
		rhs[e.from] -= through
		rhs[e.to] += through
	}
	rhs[0] = 0
	return miss
}

// shorten takes Newton's step, or as much of it as lessens the errors, to the
// trial state.
//
// A whole step that halves the plain sum of errors, miss before, is taken as it is. That sum
// weighs an error where it occurs and not by what it takes to mend it from the
// source, so a step that fails is judged again by the energy of the step that
// would follow it with the same matrix (Deuflhard's natural monotonicity), and
// halved until that falls.
func (s *Solver) shorten(miss float64) {
	s.move(1)
	s.evaluate(&s.trial)
	if s.trial.settled || s.demand(&s.trial) <= miss/2 {
		return
	}
	before := s.energy(&s.now, s.step)
	for t := 1.0; t > shortestStep; {
		s.sys.solve()
		if s.energy(&s.trial, s.sys.rhs) <= (1-t/4)*before {
			return
		}
		t /= 2
		s.move(t)
		s.evaluate(&s.trial)
		if s.trial.settled {
			return
		}
		s.demand(&s.trial)
	}
}

// energy returns the energy, head times flow, of a step in heads, with the
// flows that belong to it and to the state's gaps.
func (s *Solver) energy(st *state, step []float64) float64 {
	sum := 0.0
	for i, more := range s.now.more {
		sum += more * step[i] * step[i]
	}
	for k, e := range s.ends {
		head := st.gap[k] + step[e.from] - step[e.to]
		sum += head * head * s.now.ease[k]
	}
	return sum
}

// move makes the trial state the present one plus the share t of the step.
func (s *Solver) move(t float64) {
	now, trial := &s.now, &s.trial
	step, to := s.step[:len(now.head)], trial.head[:len(now.head)]
	for i, h := range now.head {
		to[i] = h + t*step[i]
	}
	links := len(s.ends)
	flow, gap, ease, next := now.flow[:links], now.gap[:links], now.ease[:links], trial.flow[:links]
	for k, e := range s.ends {
		next[k] = flow[k] + t*(gap[k]+step[e.from]-step[e.to])*ease[k]
	}
}
