// Package startup works out the first minutes of a shot and what happens after
// it: how the lines fill, which emitters open when, whether those that stay
// open are more than those that open by themselves, and what runs out when the
// supply stops.
package startup

import (
	"math"

	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/trade/water"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
	"evenrow/wasm/works/surge"
)

// A Row is when the water comes to one row, in s after the start with all of
// the zone's lines empty. Infinite where it never does.
type Row struct {
	Row   int     // from 0
	Start float64 // at its tee, or its start in one line
	End   float64 // at its end
}

// A Zone is one zone's start and stop.
type Zone struct {
	Zone   int
	Holds  float64 // m³, of the tubing from the supply to the ends of the zone's rows
	Rows   []Row   // in order; nil where the filling does not settle
	Filled float64 // s, until all is full, or the rows at least; infinite where some row never is
	Swell  float64 // s, until the pressure is up in lines that are full already: the time to give what they swell by
	Lead   float64 // s, until the water comes to the end of the lead
	Opens  []float64
	States States
	Flood  *Flood // nil where no emitter flushes itself
	Drain  Drain

	full bool // all of it fills, also where no row is
}

// A Startup is the start and stop of all zones.
type Startup struct {
	Zones []Zone
	Stuck bool // in some zone emitters flush for ever
}

// Of works the zones of a layout out, given the state in which each runs when
// it was started with its emitters shut. It is nil where the flows do not
// settle.
func Of(l *layout.Layout, running []*network.Solution) *Startup {
	s := &Startup{}
	for i, zone := range l.Zones {
		z := Zone{Zone: zone}
		n := l.Zone(zone)
		z.fill(l)
		var err error
		if z.Opens, err = order(l, n, running[i]); err != nil {
			return nil
		}
		if z.States, err = statesOf(l, zone, running[i]); err != nil {
			return nil
		}
		if z.Flood, err = floodOf(l, zone); err != nil {
			return nil
		}
		if z.Flood != nil && z.Flood.Stuck > 0 {
			s.Stuck = true
		}
		z.Swell = swell(l, zone, running[i])
		z.Drain = drainOf(l, zone, running[i])
		if z.Holds > 0 && !math.IsInf(z.Filled, 1) {
			z.Drain.Refill = z.Filled * (z.Drain.Volume + z.Drain.Back) / z.Holds
		}
		z.Drain.Stay = z.stay(l)
		s.Zones = append(s.Zones, z)
	}
	if s.Stuck {
		apart := unstuck(l)
		for i := range s.Zones {
			if f := s.Zones[i].Flood; f != nil {
				f.Zones = apart
			}
		}
	}
	return s
}

// fill fills the zone's empty lines.
func (z *Zone) fill(l *layout.Layout) {
	f := linesOf(l, z.Zone)
	for i := range f.lengths {
		z.Holds += f.lengths[i].volume
	}
	z.Filled, z.Lead = math.Inf(1), math.Inf(1)
	reached, full := f.fill()
	if reached == nil {
		return
	}
	z.Lead = reached[f.place[l.Feed]]
	z.Filled = 0
	for i := range l.Stretches {
		s := &l.Stretches[i]
		if s.Kind != layout.RowOf || l.ZoneOf(s.Index) != z.Zone {
			continue
		}
		first, last := &l.Network.Links[s.Links[0]], &l.Network.Links[s.Links[len(s.Links)-1]]
		r := Row{s.Index, reached[f.place[first.From]], reached[f.place[last.To]]}
		z.Rows = append(z.Rows, r)
		z.Filled = max(z.Filled, r.Start, r.End)
	}
	if !math.IsInf(full, 1) {
		z.Filled, z.full = full, true // in a ring, between the ends of its rows
	}
}

// Bound is the least time in s in which the zone's lines can fill: their
// volume at the greatest flow that the supply gives, which is that against the
// head of the lowest place. 0 where it has no curve.
func (z *Zone) Bound(l *layout.Layout) float64 {
	if l.Curve == nil {
		return 0
	}
	lowest := 0.0
	for i := range l.Points {
		lowest = min(lowest, l.Points[i].Z)
	}
	lo, hi := 0.0, l.Curve.LastFlow()
	for h, _ := l.Curve.Head(hi); h > lowest; h, _ = l.Curve.Head(hi) {
		hi *= 2
	}
	for range 60 {
		if h, _ := l.Curve.Head((lo + hi) / 2); h > lowest {
			lo = (lo + hi) / 2
		} else {
			hi = (lo + hi) / 2
		}
	}
	return z.Holds / hi
}

// swell returns the time in s in which the supply, at the flow at which it
// runs, gives what the tubing takes more under the pressure of that state than
// without: by the speed a at which pressure runs in it, g h/a² of its volume.
func swell(l *layout.Layout, zone int, sol *network.Solution) float64 {
	more := 0.0
	for i := range l.Stretches {
		s := &l.Stretches[i]
		if s.Tube == layout.NoTube || s.Kind == layout.RowOf && l.ZoneOf(s.Index) != zone {
			continue
		}
		a := surge.Celerity(&l.Tubes[s.Tube])
		for _, k := range s.Links {
			link := &l.Network.Links[k]
			h := sol.Head[link.To] - l.Network.Nodes[link.To].Z
			more += pipe.Volume(link.Length, link.Bore) * water.Gravity * max(h, 0) / (a * a)
		}
	}
	if !(sol.Total > 0) {
		return math.Inf(1)
	}
	return more / sol.Total
}
