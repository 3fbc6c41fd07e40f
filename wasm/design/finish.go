package design

import (
	"math"

	"evenrow/wasm/layout"
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
	r.Now = s.costOf()
	return r
}

func (s *search) designOf(c *found) Design {
	h := &s.all[c.header]
	p := s.zoned[c.zoning]
	n := len(zonesOf(p))
	size := s.rows[min(n-1, 1)][c.size].size
	runs := h.leads[c.lead].sizes
	d := Design{
		Plan: laid(p, size, h.size, runs, h.feed),
		Rows: size, Header: h.size, Runs: runs, Middle: h.feed != 0, Zones: n,
		Cost: c.cost, Head: c.head, Flow: c.flow, Power: c.power, Present: c.own,
	}
	return d
}

// costOf returns what the plan's own tubing and valves cost.
func (s *search) costOf() float64 {
	cost, still := 0.0, math.Inf(1)
	for i := range s.base.Stretches {
		s.tubing(s.base, &s.base.Stretches[i], &cost, &still)
	}
	for i := range s.base.Joints {
		if t := s.base.Joints[i].Stub(); t != layout.NoTube {
			cost += s.p.Prices.Tubes[s.base.Tubes[t].Entry] * layout.Stub
		}
	}
	if n := len(s.base.Zones); n > 1 {
		cost += float64(len(s.p.Rows))*s.p.Prices.Valve + float64(n)*s.p.Prices.Zone
	}
	return cost
}
