package sheet

import (
	"evenrow/wasm/trade/emitter"
)

// A State is how a plant's emitters run.
type State uint8

const (
	Unknown State = iota // its zone was not solved
	Shut
	Below         // open, with less head than the lowest of its range
	Within        // its range
	Above         // with more than the highest of its range
	States = iota // how many there are
)

// stateOf is the state of an emitter with a head in m; open says whether it has
// opened. One that has opened and has no head left gives nothing, so it counts as
// shut.
func stateOf(e *emitter.Emitter, open bool, head float64) State {
	if !open || head <= 0 {
		return Shut
	}
	switch e.State(head) {
	case emitter.Below:
		return Below
	case emitter.In:
		return Within
	case emitter.Above:
		return Above
	}
	return Unknown
}

// A Fare is how one plant fares while its zone is watered.
type Fare struct {
	Head  float64 // m of water above its emitter
	Flow  float64 // m³/s, all its emitters together
	State State
}

// A RowFare sums up how the plants of one row fare.
type RowFare struct {
	Plants                        int
	First                         int         // index into Layout.Plants
	In                            [States]int // how many plants are in each state
	LeastHead, MeanHead, MostHead float64     // m above the emitters; 0 where nothing is known
	LeastFlow, MeanFlow, MostFlow float64     // m³/s, of a plant
}

// fare takes down how plants and rows fare, once the water is worked out.
func (s *Sheet) fare() {
	l := s.Layout
	s.Plants = make([]Fare, len(l.Plants))
	for i := range s.Zones {
		z := &s.Zones[i]
		for k := range l.Plants {
			if p := &l.Plants[k]; l.ZoneOf(p.Row) == z.Zone {
				v := &s.Plants[k]
				v.Head, v.Flow = z.Solution.Head[p.Node]-l.Network.Nodes[p.Node].Z, z.Solution.Out[p.Node]
				if e := s.EmitterOf(k); e != nil {
					v.State = stateOf(e, z.Solution.Open[p.Node], v.Head)
				}
			}
		}
	}
	s.Rows = make([]RowFare, len(s.Plan.Rows))
	for i := range s.Plants {
		r, v := &s.Rows[l.Plants[i].Row], &s.Plants[i]
		if r.Plants == 0 {
			r.First, r.LeastHead, r.MostHead, r.LeastFlow, r.MostFlow = i, v.Head, v.Head, v.Flow, v.Flow
		}
		r.Plants++
		r.In[v.State]++
		r.LeastHead, r.MostHead = min(r.LeastHead, v.Head), max(r.MostHead, v.Head)
		r.LeastFlow, r.MostFlow = min(r.LeastFlow, v.Flow), max(r.MostFlow, v.Flow)
		r.MeanHead, r.MeanFlow = r.MeanHead+v.Head, r.MeanFlow+v.Flow // sums, so far
	}
	for i := range s.Rows {
		if r := &s.Rows[i]; r.Plants > 0 {
			r.MeanHead, r.MeanFlow = r.MeanHead/float64(r.Plants), r.MeanFlow/float64(r.Plants)
		}
	}
}

// EmitterOf returns the emitter of a plant, or nil.
func (s *Sheet) EmitterOf(plant int) *emitter.Emitter {
	n := &s.Layout.Network
	if plant < 0 || plant >= len(s.Layout.Plants) {
		return nil
	}
	e := n.Nodes[s.Layout.Plants[plant].Node].Emitter
	if e < 0 || e >= len(n.Emitters) {
		return nil
	}
	return &n.Emitters[e]
}
