package network

import "math"

// descend brings the present state near the solution where Newton's method
// circles it between the kinks of several laws.
//
// With the flow of each link taken from the heads at its ends, the network is
// the least of one convex function of the heads (its co-content, Millar 1951),
// whose gradient is the excess of flow at the nodes. A convex function can be
// searched along a line by the sign of its slope alone, so this always gets
// there. It is slower, and where a link has next to no resistance its flow is
// lost in the rounding of the heads, so the last digits are left to newton.
func (s *Solver) descend() {
	const near = 1e-6 // of the total flow
	s.takeFlows(&s.now)
	for range 10 * maxSteps {
		if s.now.imbalance() <= near*s.now.total+stillFlow {
			return
		}
		s.steps++
		s.net.Meter.Spend(s.sys.cost())
		s.assemble()
		s.sys.factor()
		s.demand(&s.now)
		s.sys.solve()
		s.step, s.sys.rhs = s.sys.rhs, s.step
		if !s.search() {
			return // rounding hides the rest
		}
		s.now, s.trial = s.trial, s.now
	}
}

// search finds a trial state along the step where the slope of the co-content
// is less than half of what it is at the present one, and reports whether it
// found one.
func (s *Solver) search() bool {
	first := s.slopeAlong(&s.now)
	lo, hi := 0.0, math.Inf(1)
	t := 1.0
	for range 60 {
		for i := range s.now.head {
			s.trial.head[i] = s.now.head[i] + t*s.step[i]
		}
		copy(s.trial.flow, s.now.flow)
		s.takeFlows(&s.trial)
		slope := s.slopeAlong(&s.trial)
		switch {
		case math.Abs(slope) <= first/2:
			return true
		case slope > 0:
			lo = t
		default:
			hi = t
		}
		if math.IsInf(hi, 1) {
			t *= 2
		} else {
			t = (lo + hi) / 2
		}
	}
	return false
}

// slopeAlong returns the fall of the co-content along the step.
func (s *Solver) slopeAlong(st *state) float64 {
	sum := 0.0
	for i, e := range st.excess {
		sum += e * s.step[i]
	}
	return sum
}

// inverting is how many evaluations it costs to find a flow from a head.
const inverting = 8

// takeFlows sets each link's flow to what the heads at its ends drive through
// it, and evaluates the state.
func (s *Solver) takeFlows(st *state) {
	s.net.Meter.Spend(inverting * s.cost)
	for k, e := range s.ends {
		st.flow[k] = s.links[s.run[k]].flow(&s.net.Links[k], st.head[e.from]-st.head[e.to], st.flow[k])
	}
	s.evaluate(st)
	clear(st.gap)
}

// flow returns the flow at which link l, which r was made from, loses the given
// head, searched from a guess.
func (r *resistance) flow(l *Link, head, guess float64) float64 {
	lo, hi := math.Inf(-1), math.Inf(1)
	q, width := guess, math.Abs(guess)+1e-9
	for range 200 {
		loss, slope := r.loss(l, q)
		miss := head - loss
		if miss > 0 {
			lo = q
		} else {
			hi = q
		}
		next := q + miss/slope
		switch {
		case miss == 0 || next == q:
			return q
		case math.IsInf(hi, 1):
			next = min(next, q+width)
			width *= 4
		case math.IsInf(lo, -1):
			next = max(next, q-width)
			width *= 4
		case !(next > lo && next < hi):
			next = lo/2 + hi/2
			if next <= lo || next >= hi {
				return q
			}
		}
		q = next
	}
	return q
}
