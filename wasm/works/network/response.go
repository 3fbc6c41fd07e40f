package network

// A Response is how the heads of a network answer, to first order, when more
// or less is taken at its nodes: Newton's step from a state at rest. It is
// made once and asked many times, each at the cost of one pass over the nodes.
type Response struct{ sys *system }

// Response settles the network with the given emitters open, by node, as
// [Solver.Hold] does, and returns that state and the response about it. The
// solver must not be used as long as the response is.
func (s *Solver) Response(open []bool) (*Response, *Solution, error) {
	sol, _, err := s.Hold(open)
	if err != nil {
		return nil, nil, err
	}
	s.net.Meter.Spend(s.sys.cost())
	s.assemble()
	s.sys.factor()
	return &Response{&s.sys}, sol, nil
}

// Slope returns how much more leaves at a node, in m³/s, for each m of head.
func (s *Solver) Slope(node int) float64 { return s.now.more[node] }

// Draw returns the place for what is taken at each node, in m³/s beyond what
// the heads of the state at rest bring about, to be filled with its opposite.
// [Response.Heads] overwrites it.
func (r *Response) Draw() []float64 { return r.sys.rhs }

// Heads returns by how much each node's head rises, in m. The result stands in
// the same place as Draw.
func (r *Response) Heads() []float64 {
	r.sys.rhs[0] = 0 // the source's head is fixed, and solving leaves it so
	r.sys.solve()
	return r.sys.rhs
}
