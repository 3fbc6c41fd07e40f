package design

import (
	"evenrow/wasm/works/layout"
)

// finish turns what was found into designs.
func (s *search) finish() *Result {
	r := &s.r
	for i := range s.front {
		r.List = append(r.List, s.designOf(s.front[i]))
	}
	if s.own != nil {
		r.Own = []Design{s.designOf(s.own)}
	}
	if len(r.List) == 0 && r.Counted > 0 {
		r.Forbids = s.fails
	}
	r.Now = Cost(s.base)
	return r
}

func (s *search) designOf(c *found) Design {
	h := &s.all[c.header]
	p := s.zoned[c.zoning]
	n := len(p.Zones())
	size := s.rows[min(n-1, 1)][c.size].size
	runs := h.leads[c.lead].sizes
	d := Design{
		Plan: laid(p, size, h.size, runs, h.feed),
		Rows: size, Header: h.size, Runs: runs, Middle: h.feed != 0, Zones: n,
		Cost: c.cost, Head: c.head, Flow: c.flow, Power: c.power, Present: c.own,
	}
	return d
}

// Cost returns what the tubing of a layout costs at the prices of its plan, and
// in several zones the rows' valves and the places at the timer.
func Cost(l *layout.Layout) float64 {
	prices := &l.Plan.Prices
	cost := 0.0
	for i := range l.Stretches {
		if st := &l.Stretches[i]; st.Tube != layout.NoTube {
			cost += prices.Tubes[l.Tubes[st.Tube].Entry] * st.Length
		}
	}
	for i := range l.Joints {
		if t := l.Joints[i].Stub(); t != layout.NoTube {
			cost += prices.Tubes[l.Tubes[t].Entry] * layout.Stub
		}
	}
	if n := len(l.Zones); n > 1 {
		cost += float64(len(l.Plan.Rows))*prices.Valve + float64(n)*prices.Zone
	}
	return cost
}
