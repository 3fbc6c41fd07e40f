package startup

import (
	"math"

	"evenrow/wasm/ground/work"
	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/trade/water"
	"evenrow/wasm/works/network"
)

// A front is where water meets air in a piece of tubing.
type front struct {
	of   int     // index into lines.lengths
	back bool    // it comes from the piece's far end, which happens in rings
	x    float64 // m, filled behind it
	held bool    // it can climb no further until the heads change

	head, flow float64 // m, m³/s: at it, when the flows were found last
}

// How fine the steps are: a front moves by no more than a share of its piece,
// at first and at least this one, twice as much after a step that changed the
// flow by less than little, and half as much after one that changed it by more
// than much. The time of a step is that of the mean of one over the flow before
// and after it, which errs by the square of that change.
const (
	leastShare = 1.0 / 8
	little     = 0.05
	much       = 0.2
)

// halvings is how often a step is halved that carries a front too high.
const halvings = 5

// After so many units of work it is given up to work a filling out, and said so:
// of rings of fifty uneven rows one in five takes more. Where a step would take
// longer than any start does the water stands.
const (
	mostWork = 25_000_000
	tooSlow  = 3600.0 // s
)

// filling is the state of lines while they fill.
type filling struct {
	*lines
	full    []bool    // by piece
	reached []float64 // s, by place; infinite where no water comes
	near    [][]int   // by place: its pieces
	share   float64   // of its piece, that a front moves at most
	fronts  []front

	// What is wet, as a network with its solver: made anew when a front is
	// through, and changed in its lengths before that. Places and full pieces come
	// first, fronts last.
	net       *network.Network
	solver    *network.Solver // nil when what is wet has changed
	node      []int           // by place
	shut      []bool          // by node: nothing that opens by itself is open
	firstNode int             // of fronts
	firstLink int
	head      []float64 // m, by place, when the flows were found last
	flow      []float64 // m³/s, by piece
}

// fill lets water into empty lines and returns when it reaches each place and
// when all is full, in s, infinite where it never does; nil where the flows do
// not settle, and where it takes too many of them.
//
// At each moment the flow is that of a network at rest: the supply on its
// curve, the losses of the wet length, and every front open to the air, with
// the speed of the water as all that is left of its head. The water's inertia
// is left out, and so is whatever holds the air back. Where tubing falls, the
// water is taken to fill its bore. Emitters that drip when wet do so at the end
// of each piece.
func (f *lines) fill() (reached []float64, full float64) { return f.fillWithin(mostWork) }

// fillWithin is fill with so many units of work.
func (f *lines) fillWithin(units int) (reached []float64, full float64) {
	s := &filling{lines: f, full: make([]bool, len(f.lengths)), reached: make([]float64, len(f.z)), near: make([][]int, len(f.z)), share: leastShare,
		node: make([]int, len(f.z)), head: make([]float64, len(f.z)), flow: make([]float64, len(f.lengths))}
	for i := range f.lengths {
		c := &f.lengths[i]
		s.near[c.from] = append(s.near[c.from], i)
		s.near[c.to] = append(s.near[c.to], i)
	}
	for i := range s.reached {
		s.reached[i] = math.Inf(1)
	}
	if s.meter == nil {
		s.meter = work.New(units, nil)
	}
	least := s.meter.Left() - units
	now := 0.0
	s.wet(0, now)
	flows, sum := s.flows()
	for {
		if flows == nil || s.meter.Left() < least {
			return nil, 0
		}
		tau := s.step(flows)
		if len(s.fronts) == 0 || !(tau < tooSlow) {
			break
		}
		moved := s.move(flows, tau)
		next, after := s.flows()
		// A front that was carried to where the water does not climb goes back,
		// and in smaller steps to there.
		for halving := 0; next != nil && s.beyond(flows, next, halving == halvings); halving++ {
			s.move(flows, -tau)
			if halving == halvings {
				tau, moved = 0, 0
			} else {
				tau /= 2
				moved = s.move(flows, tau)
			}
			next, after = s.flows()
			if halving == halvings {
				break
			}
		}
		if change := math.Abs(after-sum) / (after + sum); change < little/2 {
			s.share = min(1, 2*s.share)
		} else if change > much/2 {
			s.share = max(leastShare, s.share/2)
		}
		if moved > 0 && after > 0 {
			now += moved * (1/sum + 1/after) / 2
		} else {
			now += tau
		}
		flows, sum = next, after
		if s.arrive(now) {
			flows, sum = s.flows()
		}
	}
	if len(s.fronts) > 0 {
		now = math.Inf(1)
	}
	return s.reached, now
}

// beyond says whether some front that moved moves no more, and if told so holds
// those.
func (s *filling) beyond(before, after []float64, hold bool) (some bool) {
	const slow = 0.02
	for i := range s.fronts {
		if after[i] < slow*before[i] {
			some = true
			s.fronts[i].held = s.fronts[i].held || hold
		}
	}
	return some
}

// wet marks a place as reached, and sends the water on.
func (s *filling) wet(place int, now float64) {
	s.reached[place] = now
	for _, k := range s.near[place] {
		c := &s.lengths[k]
		switch {
		case s.full[k]:
		case c.law != nil:
			s.full[k] = true
			if other := c.from + c.to - place; math.IsInf(s.reached[other], 1) {
				s.head[other] = s.head[place]
				s.wet(other, now)
			}
		default:
			s.fronts = append(s.fronts, front{of: k, back: c.to == place, head: s.head[place]})
		}
	}
}

// left returns the length in m that is still dry before a front, and the speed
// at which it shrinks, given the flow at each front.
func (s *filling) left(i int, flows []float64) (dry, closing float64) {
	w := &s.fronts[i]
	c := &s.lengths[w.of]
	area := pipe.Area(c.bore)
	dry, closing = c.long-w.x, flows[i]/area
	for j := range s.fronts {
		if o := &s.fronts[j]; j != i && o.of == w.of {
			dry -= o.x
			closing += flows[j] / area
		}
	}
	return max(dry, 0), closing
}

// step returns the time until the first front is through its piece, or has
// moved by its share of it.
func (s *filling) step(flows []float64) float64 {
	tau := math.Inf(1)
	for i := range s.fronts {
		if dry, closing := s.left(i, flows); closing > 0 {
			tau = min(tau, min(dry, s.lengths[s.fronts[i].of].long*s.share)/closing)
		}
	}
	return tau
}

// move moves every front for a time and returns the volume that it takes.
func (s *filling) move(flows []float64, tau float64) (moved float64) {
	for i := range s.fronts {
		s.fronts[i].x += flows[i] / pipe.Area(s.lengths[s.fronts[i].of].bore) * tau
		moved += flows[i] * tau
	}
	return moved
}

// arrive ends the fronts that are through, wets the places they reach, and says
// whether there were any.
func (s *filling) arrive(now float64) bool {
	const through = 1e-9 // of the length: rounding
	none := make([]float64, len(s.fronts))
	var keep []front
	var places []int
	for i := range s.fronts {
		w := s.fronts[i]
		c := &s.lengths[w.of]
		if dry, _ := s.left(i, none); dry > through*c.long {
			keep = append(keep, w)
			continue
		}
		s.full[w.of] = true
		s.flow[w.of] = w.flow
		to := c.to
		if w.back {
			to = c.from
			s.flow[w.of] = -w.flow
		}
		if math.IsInf(s.reached[to], 1) {
			s.reached[to] = now
			s.head[to] = w.head
			places = append(places, to)
		}
	}
	some := len(keep) < len(s.fronts)
	s.fronts = keep
	for i := range keep {
		keep[i].held = keep[i].held && !some
	}
	for _, p := range places {
		s.wet(p, now)
	}
	if some {
		s.solver = nil
	}
	return some
}

// flows returns the flow at each front and their sum, in m³/s; nil where they
// do not settle.
func (s *filling) flows() ([]float64, float64) {
	if s.solver == nil {
		if s.assemble(); s.solver == nil {
			return nil, 0
		}
	} else {
		for i := range s.fronts {
			s.set(i)
			s.solver.Remake(s.firstLink + i)
		}
	}
	sol, err := s.solver.After(s.shut)
	if err != nil { // from too far off, perhaps
		sol, err = s.solver.Start()
	}
	if err != nil {
		return nil, 0
	}
	s.note(sol)
	flows := sol.Out[s.firstNode:]
	sum := 0.0
	for i, q := range flows {
		if s.fronts[i].held {
			flows[i], q = 0, 0
		}
		sum += q
	}
	return flows, sum
}

// note keeps a solution, from which the next one is found.
func (s *filling) note(sol *network.Solution) {
	for p, k := range s.node {
		if k >= 0 {
			s.head[p] = sol.Head[k]
		}
	}
	k := 0
	for i, full := range s.full {
		if full {
			s.flow[i] = sol.Flow[k]
			k++
		}
	}
	for i := range s.fronts {
		s.fronts[i].head, s.fronts[i].flow = sol.Head[s.firstNode+i], sol.Flow[s.firstLink+i]
	}
}

// assemble makes the network of what is wet, with each front as an emitter at
// the end of the wet part of its piece, and its solver; none where it cannot be
// solved.
func (s *filling) assemble() {
	n := &network.Network{Head: s.lines.head, Water: s.water, Emitters: s.emitters, Meter: s.meter}
	var head, flow []float64
	for p, t := range s.reached {
		s.node[p] = -1
		if math.IsInf(t, 1) {
			continue
		}
		s.node[p] = len(n.Nodes)
		node := network.Node{Z: s.z[p], Emitter: network.None}
		if s.drips[p] > 0 {
			node.Emitter, node.Count = s.kind[p], s.drips[p]
		}
		n.Nodes = append(n.Nodes, node)
		head = append(head, s.head[p])
	}
	for i := range s.lengths {
		if c := &s.lengths[i]; s.full[i] {
			n.Links = append(n.Links, c.link(s.node[c.from], s.node[c.to], 1))
			flow = append(flow, s.flow[i])
		}
	}
	fresh := s.net == nil
	s.net, s.firstNode, s.firstLink = n, len(n.Nodes), len(n.Links)
	n.Emitters = append(n.Emitters[:len(n.Emitters):len(n.Emitters)], make([]emitter.Emitter, len(s.fronts))...)
	n.Nodes = append(n.Nodes, make([]network.Node, len(s.fronts))...)
	n.Links = append(n.Links, make([]network.Link, len(s.fronts))...)
	for i := range s.fronts {
		s.set(i)
		head, flow = append(head, s.fronts[i].head), append(flow, s.fronts[i].flow)
	}
	s.shut = make([]bool, len(n.Nodes))
	var err error
	if s.solver, err = network.NewSolver(n); err == nil && !fresh {
		s.solver.Begin(head, flow)
	}
}

// set puts front i, as far as it has come, into the network.
func (s *filling) set(i int) {
	w := &s.fronts[i]
	c := &s.lengths[w.of]
	a, b := c.from, c.to
	if w.back {
		a, b = b, a
	}
	share := min(max(w.x/c.long, 1e-3), 1)
	node := network.Node{Z: s.z[a] + share*(s.z[b]-s.z[a]), Emitter: len(s.emitters) + i, Count: 1}
	if w.held {
		node.Emitter = network.None
	}
	s.net.Nodes[s.firstNode+i] = node
	s.net.Emitters[len(s.emitters)+i] = openEnd(c.bore)
	s.net.Links[s.firstLink+i] = c.link(s.node[a], s.firstNode+i, share)
}

// link is a share of the piece as a link of a network.
func (c *length) link(from, to int, share float64) network.Link {
	return network.Link{From: from, To: to, Length: c.long * share, Bore: c.bore, Roughness: c.rough, K: c.k, Extra: c.extra * share, Law: c.law}
}

// openEnd is an emitter that lets out what a bore does: all the head at it
// becomes the speed of the water.
func openEnd(bore float64) emitter.Emitter {
	const head = 0.1 // m; any
	return emitter.Emitter{
		Kind: emitter.NonCompensating, Exponent: 0.5, Nominal: head,
		Flow: pipe.Area(bore) * math.Sqrt(2*water.Gravity*head),
	}
}
