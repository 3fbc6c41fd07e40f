package scene

import (
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/emitter"
)

// A State is how an emitter runs. The drop on the plan view shows it.
type State uint8

const (
	Unknown State = iota // its zone was not solved
	Shut
	Below
	Within
	Above
	States
)

// words of the states, as a table prints them.
var StateWords = [States]string{"not worked out", "shut", "below range", "in range", "above range"}

// A seen is what the page says about one plant.
type seen struct {
	Head  float64 // m of water above its emitter
	Flow  float64 // m³/s, all its emitters together
	State State
}

// see notes how the plants of a zone fare.
func (sc *Scene) see(z *sheet.ZoneResult) {
	if z.Solution == nil {
		return
	}
	l := sc.S.Layout
	for i := range l.Plants {
		pl := &l.Plants[i]
		if l.ZoneOf(pl.Row) != z.Zone {
			continue
		}
		e := sc.EmitterOf(i)
		v := &sc.Plants[i]
		v.Head = z.Solution.Head[pl.Node] - l.Network.Nodes[pl.Node].Z
		v.Flow = z.Solution.Out[pl.Node]
		switch {
		case e == nil:
		case !z.Solution.Open[pl.Node] || v.Flow <= 0:
			v.State = Shut
		case v.Head < e.Lowest:
			v.State = Below
		case v.Head > e.Highest:
			v.State = Above
		default:
			v.State = Within
		}
	}
}

// EmitterOf returns the emitter of a plant, or nil.
func (sc *Scene) EmitterOf(plant int) *emitter.Emitter {
	n := &sc.S.Layout.Network
	if plant < 0 || plant >= len(sc.S.Layout.Plants) {
		return nil
	}
	e := n.Nodes[sc.S.Layout.Plants[plant].Node].Emitter
	if e < 0 || e >= len(n.Emitters) {
		return nil
	}
	return &n.Emitters[e]
}

// A Tally sums up one row.
type Tally struct {
	Plants           int
	First            int // index into Layout.Plants
	Low, High, Sum   float64
	Qlow, Qhigh, Qum float64
	In               [States]int
}

// Tallies sums up the plants of every row.
func (sc *Scene) Tallies() []Tally {
	ts := make([]Tally, len(sc.S.Plan.Rows))
	for i := range sc.Plants {
		t, v := &ts[sc.S.Layout.Plants[i].Row], &sc.Plants[i]
		if t.Plants == 0 {
			t.First, t.Low, t.High, t.Qlow, t.Qhigh = i, v.Head, v.Head, v.Flow, v.Flow
		}
		t.Plants++
		t.Low, t.High, t.Sum = min(t.Low, v.Head), max(t.High, v.Head), t.Sum+v.Head
		t.Qlow, t.Qhigh, t.Qum = min(t.Qlow, v.Flow), max(t.Qhigh, v.Flow), t.Qum+v.Flow
		t.In[v.State]++
	}
	return ts
}

// Least is the zone whose plants are least alike, of several the critical one.
func (sc *Scene) Least() *sheet.ZoneResult {
	z := sc.Zone
	for i := range sc.S.Zones {
		if v := &sc.S.Zones[i]; v.Open > 0 && v.Alike.EU < z.Alike.EU-1e-6 {
			z = v
		}
	}
	return z
}
