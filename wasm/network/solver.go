package network

import (
	"errors"
	"math"
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
	net    *Network
	links  []resistance
	sys    *system
	open   []bool    // by node
	step   []float64 // by node: Newton's step in head
	weight []float64 // by node: head that one unit of excess flow is worth next to it
	now    state
	trial  state
	steps  int
}

// A state is a guess at the solution, with the laws evaluated at it.
type state struct {
	head, out, more, excess []float64 // by node; out is the flow taken, more its slope, excess what flows in beyond it
	flow, loss, slope, gap  []float64 // by link; gap is the drop in head that the loss does not explain
	total                   float64   // flow from the source
	settled                 bool      // every error is within tolerance
	near                    bool      // as settled, but for what the rounding of heads may do to flows
}

// Tolerances, near what the rounding of float64 leaves. Around a ring of wide
// tubing even a head that no gauge can show drives a flow.
const (
	flowTolerance = 1e-12 // of the total flow
	flowRounding  = 1e-9  // of the total flow, where emitters are steep and heads great
	stillFlow     = 1e-18 // m³/s, a drop in a thousand years: no flow at all
	headTolerance = 1e-12 // of one metre plus the greatest head
	maxSteps      = 40
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
	s := &Solver{
		net:    n,
		links:  make([]resistance, len(n.Links)),
		sys:    newSystem(len(n.Nodes), n.Links),
		open:   make([]bool, len(n.Nodes)),
		step:   make([]float64, len(n.Nodes)),
		weight: make([]float64, len(n.Nodes)),
		now:    newState(len(n.Nodes), len(n.Links)),
		trial:  newState(len(n.Nodes), len(n.Links)),
	}
	for k, l := range n.Links {
		s.links[k] = newResistance(l, n.Water)
	}
	s.rest()
	return s, nil
}

func newState(nodes, links int) state {
	all := make([]float64, 4*nodes+4*links)
	part := func(n int) []float64 {
		v := all[:n:n]
		all = all[n:]
		return v
	}
	return state{
		head: part(nodes), out: part(nodes), more: part(nodes), excess: part(nodes),
		flow: part(links), loss: part(links), slope: part(links), gap: part(links),
	}
}

// rest makes the present state one of still water at the source's head.
func (s *Solver) rest() {
	for i := range s.now.head {
		s.now.head[i] = s.net.Head
	}
	clear(s.now.flow)
}

// settle finds the state in which the emitters marked open are open.
func (s *Solver) settle() error {
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
		s.assemble()
		s.demand(&s.now)
		s.sys.factor()
		s.sys.solve()
		copy(s.step, s.sys.rhs)
		s.shorten()
		s.now, s.trial = s.trial, s.now
	}
	return s.now.settled
}

// evaluate applies every law at the state's heads and flows.
func (s *Solver) evaluate(st *state) {
	n := s.net
	for i := 1; i < len(n.Nodes); i++ {
		node := &n.Nodes[i]
		q, dq := node.Draw, 0.0
		if s.open[i] {
			q, dq = n.Emitters[node.Emitter].Open(st.head[i] - node.Z)
			q = node.Count*q + node.Draw
			dq *= node.Count
		}
		st.out[i], st.more[i], st.excess[i] = q, dq, -q
	}
	st.excess[0], st.total = 0, 0
	greatest, worst := math.Abs(n.Head), 0.0
	for k := range s.links {
		r := &s.links[k]
		q := st.flow[k]
		loss, slope := r.loss(q)
		st.loss[k], st.slope[k] = loss, slope
		gap := st.head[r.from] - st.head[r.to] - loss
		st.gap[k] = gap
		greatest = max(greatest, math.Abs(st.head[r.to]))
		worst = max(worst, math.Abs(gap))
		st.excess[r.from] -= q
		st.excess[r.to] += q
		if r.from == 0 || r.to == 0 {
			st.total += math.Abs(q)
		}
	}
	// max carries a NaN, and no NaN is within a tolerance.
	excess := st.imbalance()
	heads := worst <= headTolerance*(1+greatest)
	st.settled = heads && excess <= flowTolerance*st.total+stillFlow
	st.near = heads && excess <= flowRounding*st.total
}

// imbalance returns the largest excess of flow at a node.
func (st *state) imbalance() float64 {
	worst := 0.0
	for _, e := range st.excess[1:] {
		worst = max(worst, math.Abs(e))
	}
	return worst
}

// assemble sets up the matrix of the linearised present state.
func (s *Solver) assemble() {
	sys, st := s.sys, &s.now
	sys.clear()
	clear(s.weight)
	for k := range s.links {
		r := &s.links[k]
		g := 1 / st.slope[k]
		if e := sys.entry[k]; e >= 0 {
			sys.val[e] += g
		} else {
			sys.leak[r.from] += g
			sys.leak[r.to] += g
		}
		s.weight[r.from] += g
		s.weight[r.to] += g
	}
	for i := 1; i < len(s.weight); i++ {
		sys.leak[i] += st.more[i]
		s.weight[i] = 1 / (s.weight[i] + st.more[i])
	}
	s.weight[0] = 0
}

// demand sets the right-hand side to what the state's errors ask of the
// matrix of the present state.
func (s *Solver) demand(st *state) {
	rhs := s.sys.rhs
	copy(rhs, st.excess)
	for k := range s.links {
		r := &s.links[k]
		through := st.gap[k] / s.now.slope[k]
		rhs[r.from] -= through
		rhs[r.to] += through
	}
	rhs[0] = 0
}

// shorten takes Newton's step, or as much of it as lessens the errors, to the
// trial state.
//
// A whole step that halves the plain sum of errors is taken as it is. That sum
// weighs an error where it occurs and not by what it takes to mend it from the
// source, so a step that fails is judged again by the energy of the step that
// would follow it with the same matrix (Deuflhard's natural monotonicity), and
// halved until that falls.
func (s *Solver) shorten() {
	s.move(1)
	s.evaluate(&s.trial)
	if s.trial.settled || s.miss(&s.trial) <= s.miss(&s.now)/2 {
		return
	}
	before := s.energy(&s.now)
	for t := 1.0; t > shortestStep; {
		s.demand(&s.trial)
		s.sys.solve()
		if s.energy(&s.trial) <= (1-t/4)*before {
			return
		}
		t /= 2
		s.move(t)
		s.evaluate(&s.trial)
		if s.trial.settled {
			return
		}
	}
}

// energy returns the energy, head times flow, of the step in heads that the
// right-hand side holds, with the flows that belong to it and to the state's
// gaps.
func (s *Solver) energy(st *state) float64 {
	sum, step := 0.0, s.sys.rhs
	for i, more := range s.now.more {
		sum += more * step[i] * step[i]
	}
	for k := range s.links {
		r := &s.links[k]
		head := st.gap[k] + step[r.from] - step[r.to]
		sum += head * head / s.now.slope[k]
	}
	return sum
}

// miss returns the sum of a state's squared errors, in weights of the present
// state, so that a present and a trial state compare.
func (s *Solver) miss(st *state) float64 {
	sum := 0.0
	for k, g := range st.gap {
		sum += g * g / s.now.slope[k]
	}
	for i, e := range st.excess {
		sum += e * e * s.weight[i]
	}
	return sum
}

// move makes the trial state the present one plus the share t of the step.
func (s *Solver) move(t float64) {
	now, trial, step := &s.now, &s.trial, s.step
	for i := range now.head {
		trial.head[i] = now.head[i] + t*step[i]
	}
	for k := range s.links {
		r := &s.links[k]
		trial.flow[k] = now.flow[k] + t*(now.gap[k]+step[r.from]-step[r.to])/now.slope[k]
	}
}
