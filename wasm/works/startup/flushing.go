package startup

import (
	"math"
	"slices"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// Flushing returns the emitters of a layout as they are at low pressure: those
// that flush themselves stand open, and their flow goes with the root of the
// head up to the pressure at which they stop, as through an orifice (common
// practice, no source).
func Flushing(l *layout.Layout) []emitter.Emitter {
	laws := slices.Clone(l.Network.Emitters)
	for i := range laws {
		if e := &l.Plan.Emitters[i]; flushes(e) {
			laws[i] = emitter.Emitter{
				Kind: emitter.NonCompensating, Exponent: 0.5,
				Flow: e.Gush, Nominal: l.Network.Water.HeadOf(e.Regulates),
			}
		}
	}
	return laws
}

func flushes(e *plan.Emitter) bool { return e.Kind == plan.Compensating && e.Flushes == plan.WhenLow }

// A Flood is what becomes of a zone's emitters that flush themselves at low
// pressure, once their lines are full.
type Flood struct {
	Emitters int     // that flush themselves
	Stuck    int     // of them, that never stop flushing
	Wanted   float64 // m³/s, what all emitters take just before those that flush stop
	Total    float64 // m³/s, the supply's flow in the state that it comes to
	Least    float64 // m, the least head at an emitter that flushes on
	Most     float64 // m, the greatest
	Stops    float64 // m, the greatest head that one of them needs to stop
	Zones    int     // in as many zones of rows that stand together none is stuck; 0 when that was not found
}

// floodOf finds the state in which a zone's flushing emitters end: all flush at
// first, and those that see the head at which they stop give their flow from
// then on. Each that stops leaves more to the others, so the order does not
// matter, and what is found is the first state that the pressure stops at. The
// result is nil where no emitter flushes.
func floodOf(l *layout.Layout, zone int) (*Flood, error) {
	n := l.Zone(zone)
	f := &Flood{Least: math.Inf(1), Most: math.Inf(-1)}
	kinds := len(n.Emitters)
	n.Emitters = append(slices.Clone(n.Emitters), Flushing(l)...)
	// Once it has stopped such an emitter stands open too, at any pressure.
	for i := range kinds {
		if flushes(&l.Plan.Emitters[i]) {
			n.Emitters[i].Opens, n.Emitters[i].Closes = 0, 0
		}
	}
	var wait []int // nodes that flush
	for i := range n.Nodes {
		node := &n.Nodes[i]
		if node.Emitter == network.None {
			continue
		}
		if e := &l.Plan.Emitters[node.Emitter]; flushes(e) {
			f.Wanted += node.Count * e.Gush
			f.Emitters += int(node.Count)
			node.Emitter += kinds
			wait = append(wait, i)
		} else {
			f.Wanted += node.Count * e.Flow
		}
	}
	if len(wait) == 0 {
		return nil, nil
	}
	solver, err := network.NewSolver(n)
	if err != nil {
		return nil, err
	}
	open := make([]bool, len(n.Nodes))
	for {
		sol, err := solver.After(open)
		if err != nil {
			return nil, err
		}
		f.Total = sol.Total
		copy(open, sol.Open)
		still := wait[:0]
		f.Stuck, f.Least, f.Most = 0, math.Inf(1), math.Inf(-1)
		for _, i := range wait {
			node := &n.Nodes[i]
			h, stops := sol.Head[i]-node.Z, n.Emitters[node.Emitter].Nominal
			if h >= stops {
				node.Emitter -= kinds
				open[i] = true
				continue
			}
			still = append(still, i)
			f.Stuck += int(node.Count)
			f.Least, f.Most, f.Stops = min(f.Least, h), max(f.Most, h), max(f.Stops, stops)
		}
		if len(still) == len(wait) || len(still) == 0 {
			return f, nil
		}
		wait = still
	}
}

// unstuck returns the least number of zones, made of rows that stand together,
// in which no emitter flushes for ever; 0 where rows cannot be shut one by one
// and where none is found.
func unstuck(l *layout.Layout) int {
	rows := len(l.Plan.Rows)
	if l.Plan.Header.Layout != plan.HeaderAndRows {
		return 0
	}
next:
	for zones := len(l.Zones) + 1; zones <= min(rows, plan.MaxZones); zones++ {
		p := l.Plan.Clone()
		for r := range p.Rows {
			p.Rows[r].Zone = 1 + r*zones/rows
		}
		parted := layout.Metered(p, l.Network.Meter)
		for _, z := range parted.Zones {
			if f, err := floodOf(parted, z); err != nil || f != nil && f.Stuck > 0 {
				continue next
			}
		}
		return zones
	}
	return 0
}
