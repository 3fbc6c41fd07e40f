package why

import (
	"math"

	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/trade/water"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// supplyHead returns the head in m that the pump or the tap gives at flow q,
// and whether there is one.
func (sc part) supplyHead(q float64) (h float64, ok bool) {
	c := sc.S.Layout.Curve
	if c == nil {
		return 0, false
	}
	h, _ = c.Head(q)
	return h, true
}

// A system is what the tubing asks of the supply while a zone is watered: the
// head that the weakest emitter needs at the lowest end of its range, the lift
// to it, and what is lost on the way, which grows with the flow.
type system struct {
	net   *network.Network
	links []int // on the way to the weakest emitter, without the supply
	flows []float64
	flow  float64             // m³/s, of the whole zone, at which flows were found
	still float64             // m, lift and the emitter's lowest head
	known map[float64]float64 // heads by flow: the wide picture and the narrow one ask for the same
}

// systemOf returns the system of a zone, and false when its flow is not known.
func (sc part) systemOf(z *sheet.ZoneResult) (system, bool) {
	_, steps := sc.trail(z, z.Worst)
	e := sc.EmitterOf(z.Worst)
	if len(steps) == 0 || e == nil || z.Open == 0 || !(z.Flow > 0) {
		return system{}, false
	}
	n := &sc.S.Layout.Network
	sys := system{net: n, known: map[float64]float64{}, flow: z.Flow, still: n.Nodes[sc.S.Layout.Plants[z.Worst].Node].Z + e.Lowest}
	for i := range steps {
		if steps[i].kind == layout.Source {
			continue
		}
		for _, k := range steps[i].links {
			sys.links = append(sys.links, k)
			sys.flows = append(sys.flows, math.Abs(z.Solution.Flow[k]))
		}
	}
	return sys, true
}

// head returns the head in m that the system asks for when the zone's flow is
// q, each stretch keeping its share of it.
func (s *system) head(q float64) float64 {
	h, ok := s.known[q]
	if !ok {
		h = s.still
		for i, k := range s.links {
			h += loss(&s.net.Links[k], s.flows[i]*q/s.flow, s.net.Water)
		}
		s.known[q] = h
	}
	return h
}

// loss returns the head lost in a link at flow q.
func loss(l *network.Link, q float64, w water.Water) float64 {
	if l.Law != nil {
		h, _ := l.Law.Loss(q)
		return h
	}
	if !(q > 0) {
		return 0
	}
	return pipe.Head(q, l.Length+l.Extra, l.Bore, l.Roughness, w.Kinematic) + pipe.LocalHead(l.K, pipe.Velocity(q, l.Bore))
}
