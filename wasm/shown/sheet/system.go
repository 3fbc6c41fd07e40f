package sheet

import (
	"math"

	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// A System is what the tubing asks of the supply while a zone is watered: the
// head that the weakest emitter needs at the lowest end of its range, the lift to
// it, and what is lost on the way, which grows with the flow.
type System struct {
	still float64 // m, lift and the emitter's lowest head
	flow  float64 // m³/s, of the whole zone
	way   []drag  // on the way to the weakest emitter, without the supply
	known map[float64]float64
}

// A drag is one link on the way.
type drag struct {
	*network.Drag
	flow float64 // m³/s, while the zone has its flow
}

// System returns the system of a zone; nil where no water flows or its way is
// not known.
func (s *Sheet) System(z *ZoneResult) *System {
	if z == nil || z.Open == 0 || !(z.Flow > 0) {
		return nil
	}
	trail := s.Trail(z, z.Worst)
	if trail == nil {
		return nil
	}
	n := &s.Layout.Network
	node := &n.Nodes[s.Layout.Plants[z.Worst].Node]
	if node.Emitter == network.None {
		return nil
	}
	sys := &System{still: node.Z + n.Emitters[node.Emitter].Lowest, flow: z.Flow, known: map[float64]float64{}}
	for i := range trail.Steps {
		if trail.Steps[i].Kind == layout.Source {
			continue
		}
		for _, k := range trail.Steps[i].Links {
			sys.way = append(sys.way, drag{network.NewDrag(n.Links[k], n.Water), math.Abs(z.Solution.Flow[k])})
		}
	}
	return sys
}

// Head returns the head in m that the system asks for when the zone's flow is q
// m³/s, each stretch keeping its share of it. What was asked for is kept: the
// wide picture and the narrow one ask for the same.
func (s *System) Head(q float64) float64 {
	h, ok := s.known[q]
	if !ok {
		h = s.still
		for i := range s.way {
			lost, _ := s.way[i].Loss(s.way[i].flow * q / s.flow)
			h += lost
		}
		s.known[q] = h
	}
	return h
}
