package design

import (
	"math"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/trade/evenness"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/flush"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// A zone is the water of one zone, from the feed on. Heads at the feed are
// above the supply's own level.
type zone struct {
	flow  float64 // m³/s, that fixed emitters take
	needs float64 // m at the feed at which the weakest fixed emitter has its lowest
	air   float64 // m at the feed below which the header would draw air
	top   float64 // m at the feed above which an emitter is above its range
	speed float64 // m/s in the header
	even  float64 // EU

	loose asked // where flows follow the heads; else nil
	known []met // of loose: what was found before

	last   *zone // what loose said last, and of which head
	lastAt float64
}

// An asked is a zone that is worked out anew at every head at the feed.
type asked interface {
	at(head float64) *zone
	lowest() float64 // a head that the feed must have at least
}

// A met is a head at the feed at which there is a reserve, and the flow there.
type met struct {
	reserve, head, flow float64
	ok                  bool
}

// least returns the least head at the feed at which every emitter has more than
// its lowest by a reserve, and the flow there.
func (z *zone) least(reserve float64) (head, flow float64, ok bool) {
	if z.loose != nil {
		for _, m := range z.known {
			if m.reserve == reserve {
				return m.head, m.flow, m.ok
			}
		}
		m := met{reserve: reserve}
		m.head, m.flow, m.ok = rising(func(head float64) (float64, float64) {
			at := z.at(head)
			return head - max(at.needs+reserve, at.air), at.flow
		}, z.loose.lowest()+reserve, MostHead)
		z.known = append(z.known, m)
		return m.head, m.flow, m.ok
	}
	return max(z.needs+reserve, z.air), z.flow, true
}

// at returns the zone at a head at the feed.
func (z *zone) at(head float64) *zone {
	if z.loose == nil {
		return z
	}
	if z.last == nil || z.lastAt != head {
		z.last, z.lastAt = z.loose.at(head), head
	}
	return z.last
}

// A row is one row of fixed emitters, from its tee on.
type row struct {
	flow  float64 // m³/s
	needs float64 // m at the tee at which every emitter has its lowest
	top   float64 // m at the tee above which one is above its range
	flush gush

	answer *response // where flows follow the heads
}

// A gush is what the tee of a row, or the feed of a line, must give so that the
// water at the end runs as fast as flushing wants, while nothing else is open.
type gush struct{ head, flow float64 }

// A field is the rows of one size, with valves or without.
type field struct {
	size  int
	cost  float64
	still float64 // m, as of lead
	rows  []row
	place int // among all fields
}

// fieldOf lays out the rows of one size and runs along them.
func (s *search) fieldOf(size int, valved bool) field {
	p := laid(s.p, size, Kept, nil, s.p.Header.Feed)
	for i := range p.Rows {
		p.Rows[i].Zone = 1
	}
	if valved {
		p.Rows[0].Zone = 2
	}
	l := layout.Metered(p, s.meter)
	f := field{size: size, still: math.Inf(1), rows: make([]row, len(p.Rows)), place: len(s.rows[0]) + len(s.rows[1])}
	var line []network.Link
	for i := range l.Stretches {
		st := &l.Stretches[i]
		if st.Rank() != layout.Lateral {
			continue
		}
		s.tubing(l, st, &f.cost, &f.still)
		links := l.Network.Links[st.Links[0] : st.Links[0]+len(st.Links)]
		if s.headed {
			if i := st.Index; i > 0 && alike(&p.Rows[i-1], &p.Rows[i]) {
				f.rows[i] = f.rows[i-1]
				continue
			}
			drags := s.drags(links)
			r := s.along(l, links, drags)
			if s.tabled {
				r.answer = s.respond(l, links, drags)
			}
			f.rows[st.Index] = r
		} else {
			line = append(line, links...)
		}
	}
	if line != nil {
		f.rows = []row{s.along(l, line, s.drags(line))}
	}
	return f
}

// drags makes links ready; most are like the one before.
func (s *search) drags(links []network.Link) []*network.Drag {
	list := make([]*network.Drag, len(links))
	for i := range links {
		a := links[i]
		if i > 0 {
			b := links[i-1]
			a.From, a.To = b.From, b.To
			if a == b {
				list[i] = list[i-1]
				continue
			}
		}
		list[i] = network.NewDrag(links[i], s.water)
	}
	return list
}

// alike says whether two rows answer alike.
func alike(a, b *plan.Row) bool {
	c := *b
	c.Crop, c.Gap, c.Zone, c.Medium, c.PerPiece = a.Crop, a.Gap, a.Zone, a.Medium, a.PerPiece
	return *a == c
}

// along sums the losses of a row whose emitters have fixed flows, against the
// water, then with it; and runs against it once more with the end open.
func (s *search) along(l *layout.Layout, links []network.Link, drags []*network.Drag) row {
	r := row{top: math.Inf(1)}
	if s.fixed {
		flows := make([]float64, len(links))
		for i := len(links) - 1; i >= 0; i-- {
			if n := &l.Network.Nodes[links[i].To]; n.Emitter != network.None {
				r.flow += n.Count * l.Network.Emitters[n.Emitter].Flow
			}
			flows[i] = r.flow
		}
		r.needs = math.Inf(-1)
		lost := 0.0
		for i := range links {
			here, _ := drags[i].Loss(flows[i])
			lost += here
			if n := &l.Network.Nodes[links[i].To]; n.Emitter != network.None {
				e := &l.Network.Emitters[n.Emitter]
				r.needs = max(r.needs, n.Z+lost+e.Lowest)
				r.top = min(r.top, n.Z+lost+e.Highest)
			}
		}
	}
	last := &links[len(links)-1]
	r.flush.flow = pipe.FlowAt(flush.Wanted, last.Bore)
	r.flush.head = l.Network.Nodes[last.To].Z + pipe.LocalHead(flush.Mouth, flush.Wanted)
	for i := len(links) - 1; i >= 0; i-- {
		n := &l.Network.Nodes[links[i].To]
		if n.Emitter != network.None {
			if e, h := &l.Network.Emitters[n.Emitter], r.flush.head-n.Z; e.Kind == emitter.NonCompensating || h >= e.Closes {
				q, _ := e.Open(h)
				r.flush.flow += n.Count * q
			}
		}
		lost, _ := drags[i].Loss(r.flush.flow)
		r.flush.head += lost
	}
	return r
}

// A spread is the header of one size while one zone of fixed emitters is
// watered: what each row's tee loses from the feed, whatever the rows are made
// of.
type spread struct {
	flow, speed, air, even float64
	lost                   []float64 // by row; NaN for rows of other zones
}

// spreadOf sums the header's losses, from its ends to the feed and back.
func (s *search) spreadOf(h *header, p *plan.Plan, zone int, f *field) spread {
	a := spread{air: math.Inf(-1), lost: make([]float64, len(p.Rows))}
	flows := make([]float64, len(h.pieces))
	cv, fewest := 0.0, math.Inf(1)
	for i := range p.Rows {
		a.lost[i] = math.NaN()
		if row := &p.Rows[i]; row.Zone == zone {
			a.flow += f.rows[i].flow
			a.lost[i] = 0 // beside the feed, unless a piece leads there
			cv, fewest = max(cv, p.Emitters[row.Emitter].CV), min(fewest, float64(row.PerPlant))
		}
	}
	a.even = evenness.Design(cv, fewest, 1)
	for i := len(h.pieces) - 1; i >= 0; i-- {
		c := &h.pieces[i]
		if p.Rows[c.row].Zone == zone {
			flows[i] += f.rows[c.row].flow
		}
		if c.before >= 0 {
			flows[c.before] += flows[i]
		}
	}
	lost := make([]float64, len(h.pieces))
	for i := range h.pieces {
		c := &h.pieces[i]
		if c.before >= 0 {
			lost[i] = lost[c.before]
		}
		if flows[i] > 0 {
			here, _ := c.drag.Loss(flows[i])
			lost[i] += here
			a.speed = max(a.speed, pipe.Velocity(flows[i], c.bore))
		}
		a.air = max(a.air, c.z+lost[i])
		if p.Rows[c.row].Zone == zone {
			a.lost[c.row] = lost[i]
		}
	}
	return a
}

// zoneOf joins a header and rows of fixed emitters.
func (s *search) zoneOf(a *spread, f *field) zone {
	z := zone{flow: a.flow, needs: math.Inf(-1), air: a.air, top: math.Inf(1), speed: a.speed, even: a.even}
	for i := range f.rows {
		if lost := a.lost[i]; !math.IsNaN(lost) {
			z.needs = max(z.needs, f.rows[i].needs+lost)
			z.top = min(z.top, f.rows[i].top+lost)
		}
	}
	return z
}
