// Package flush works out how fast the water runs at an end of the tubing that
// is opened to flush it, with the supply on its curve and the emitters as they
// then are.
package flush

import (
	"slices"

	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// Wanted is the least speed in m/s at an open end that carries the dirt out:
// 1 ft/s, by ASABE EP405 and NRCS conservation practice standard 441, from memory.
const Wanted = 0.3

// Mouth is the loss coefficient of an open end: the velocity head that leaves
// with the water, and as much again as a pipe loses where it ends in water,
// because a hand holds the end into a can. Our own choice, on the safe side.
const Mouth = 2

// A Place says what an end belongs to.
type Place uint8

const (
	OfRow    Place  = iota // a row, or the line
	OfHeader               // the header, beside a row
	OfFar                  // the far header of a ring, beside a row
	RowInto                // a row without an end of its own, which runs into the far header of a ring
	Places   = iota        // how many there are
)

// An End is one end of the tubing, with the water as it runs while this end
// alone is open.
type End struct {
	Place Place
	Row   int     // from 0
	Zone  int     // the zone that is watered meanwhile: the row's
	Node  int     // where it stands
	Bore  float64 // m
	Speed float64 // m/s at the end; of a RowInto the faster of what the far header's ends bring
	Alone float64 // m/s while no other row takes water; Speed where that is enough, and where no other row can be shut
	Flow  float64 // m³/s of the supply; of a RowInto at that end
	Shut  int     // emitters that were open and shut for lack of pressure
}

// TooSlow says whether the water of an end, opened alone, does not carry the dirt
// out while the other rows run.
func (e *End) TooSlow() bool { return e.Speed < Wanted }

// Together is how many ends of the rows may be open at once in one zone.
type Together struct {
	Zone int
	Ends int // how many ends its rows have
	Most int // opened in the order of the rows, so many all keep Wanted, and one more does not
}

// A Flush is every end of a layout.
type Flush struct {
	Ends    []End // of the rows in their order, then of the header
	Slowest int   // index into Ends
	Slow    int   // how many stay below Wanted
	Stuck   int   // of them, also while no other row takes water
	Zones   []Together
	Verdict Verdict
	Told    int     // index into Ends: the one of which the verdict is told, the slowest or, of those that stay slow alone, the slowest so
	Least   float64 // m/s, the least of Alone
	Draws   float64 // m³/s, the most that an open end draws
	Guess   float64 // m³/s, where the curve ends that was typed, if an open end draws more; else 0
	Every   int     // of the rows' ends only every so many is worked out, and the last; 1 for all
}

// work is how many nodes, over all ends, are worked out before rows are left
// out: about a tenth of a second, with the search for how many at once.
const work = 12_000

// Of opens the ends of a layout, one at a time. open holds, by zone as in
// l.Zones, which nodes' emitters are open while that zone is watered. The
// result is nil where there is no end to open, and where the flows do not
// settle.
func Of(l *layout.Layout, open [][]bool) *Flush {
	f := &Flush{Every: 1}
	all := ends(l)
	if n := len(all) * len(l.Points); n > work {
		f.Every = (n + work - 1) / work
	}
	for i, e := range all {
		if e.Place != OfRow || e.Row%f.Every == 0 || e.Row == len(l.Tees)-1 {
			f.Ends = append(f.Ends, all[i])
		}
	}
	for i, zone := range l.Zones {
		t, err := newTap(l, zone)
		if err != nil || !f.each(t, open[i]) || !f.together(t, all, open[i]) || !f.alone(l, t, open[i]) {
			return nil
		}
	}
	for i := range f.Ends {
		if f.Ends[i].TooSlow() {
			f.Slow++
		}
		if f.Ends[i].Alone < Wanted {
			f.Stuck++
		}
		if f.Ends[i].Speed < f.Ends[f.Slowest].Speed {
			f.Slowest = i
		}
	}
	if len(f.Ends) == 0 {
		return nil
	}
	f.Judge(l)
	return f
}

// ends lists the ends of a layout: of the rows, then of the header.
func ends(l *layout.Layout) []End {
	var rows, header []End
	for i := range l.Joints {
		j := &l.Joints[i]
		if j.Kind != layout.RowCap && j.Kind != layout.HeaderCap && j.Kind != layout.FarTee {
			continue
		}
		e := End{Row: slices.Index(l.Ends, j.Node), Node: j.Node, Bore: l.Tubes[j.Ends[0]].Bore}
		if j.Kind == layout.FarTee {
			e.Place, e.Bore = RowInto, l.Tubes[j.Ends[2]].Bore
		}
		if j.Kind == layout.HeaderCap {
			e.Place = OfFar
			if e.Row < 0 {
				e.Place, e.Row = OfHeader, slices.Index(l.Tees, j.Node)
			}
			e.Zone = l.ZoneOf(e.Row)
			header = append(header, e)
			continue
		}
		e.Zone = l.ZoneOf(e.Row)
		rows = append(rows, e)
	}
	return append(rows, header...)
}

// A tap is one zone's network with ends that can be opened.
type tap struct {
	zone   int
	net    *network.Network
	solver *network.Solver
	tubes  []layout.Tube
	first  int // the emitter that stands for an open end of the first of the tubes
}

func newTap(l *layout.Layout, zone int) (*tap, error) {
	n := l.Zone(zone)
	t := &tap{zone: zone, net: n, tubes: l.Tubes, first: len(n.Emitters)}
	n.Emitters = slices.Clone(n.Emitters)
	for i := range l.Tubes {
		// The flow goes with the root of the head, as through an orifice.
		n.Emitters = append(n.Emitters, emitter.Emitter{
			Kind: emitter.NonCompensating, Exponent: 0.5,
			Flow: pipe.FlowAt(Wanted, l.Tubes[i].Bore), Nominal: pipe.LocalHead(Mouth, Wanted),
		})
	}
	var err error
	t.solver, err = network.NewSolver(n)
	return t, err
}

// set opens an end, or closes it.
func (t *tap) set(e *End, open bool) {
	node := &t.net.Nodes[e.Node]
	node.Emitter, node.Count = network.None, 0
	if open {
		node.Emitter, node.Count = t.first, 1
		for t.tubes[node.Emitter-t.first].Bore != e.Bore {
			node.Emitter++
		}
	}
}

// alone opens one end and solves.
func (t *tap) alone(e *End, open []bool) *network.Solution {
	t.set(e, true)
	sol, err := t.solver.After(open)
	t.set(e, false)
	if err != nil {
		return nil
	}
	return sol
}

// each opens every end of the tap's zone alone, and says whether all settled.
func (f *Flush) each(t *tap, open []bool) bool {
	for i := range f.Ends {
		e := &f.Ends[i]
		if e.Zone != t.zone || e.Place == RowInto {
			continue
		}
		sol := t.alone(e, open)
		if sol == nil {
			return false
		}
		e.Speed, e.Flow = pipe.Velocity(sol.Out[e.Node], e.Bore), sol.Total
		for k, node := range t.net.Nodes {
			if node.Emitter != network.None && open[k] && !sol.Open[k] {
				e.Shut += int(node.Count)
			}
		}
		for j := range f.Ends {
			r := &f.Ends[j]
			if r.Place != RowInto || e.Place != OfFar {
				continue
			}
			// A row's last link leads to its end.
			if v := pipe.Velocity(sol.Flow[r.Node-1], r.Bore); v > r.Speed {
				r.Speed, r.Flow, r.Shut = v, e.Flow, e.Shut
			}
		}
	}
	return true
}

// together finds how many ends of the zone's rows may be open at once, by
// halving: each more that is open takes from the others. It says whether all
// settled.
func (f *Flush) together(t *tap, all []End, open []bool) bool {
	var rows []*End
	for i := range all {
		if all[i].Place == OfRow && all[i].Zone == t.zone {
			rows = append(rows, &all[i])
		}
	}
	if len(rows) == 0 {
		return true
	}
	least, most := 0, len(rows)
	for n := most; least < most; n = (least + most + 1) / 2 {
		for i, e := range rows {
			t.set(e, i < n)
		}
		sol, err := t.solver.After(open)
		if err != nil {
			return false
		}
		slow := false
		for _, e := range rows[:n] {
			slow = slow || pipe.Velocity(sol.Out[e.Node], e.Bore) < Wanted
		}
		if slow {
			most = n - 1
		} else {
			least = n
		}
	}
	for _, e := range rows {
		t.set(e, false)
	}
	f.Zones = append(f.Zones, Together{t.zone, len(rows), least})
	return true
}

// alone works the slow ends of the tap's zone out again while no other row takes
// water, and says whether all settled. The rows of one line cannot be shut.
func (f *Flush) alone(l *layout.Layout, t *tap, open []bool) bool {
	line := slices.Min(l.Ends) < 0 // or a ring
	for i := range f.Ends {
		e := &f.Ends[i]
		if e.Zone != t.zone {
			continue
		}
		e.Alone = e.Speed
		if e.Speed >= Wanted || e.Place == RowInto || line && e.Place == OfRow {
			continue
		}
		all := slices.Clone(t.net.Nodes)
		for i := range l.Plants {
			if p := &l.Plants[i]; p.Row != e.Row || e.Place != OfRow {
				node := &t.net.Nodes[p.Node]
				node.Emitter, node.Count = network.None, 0
			}
		}
		sol := t.alone(e, open)
		copy(t.net.Nodes, all)
		if sol == nil {
			return false
		}
		e.Alone = pipe.Velocity(sol.Out[e.Node], e.Bore)
	}
	return true
}
