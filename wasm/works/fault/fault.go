// Package fault works out what wear, dirt, blockage and leaks do to a system,
// and what a gauge and a flow meter then show, so that they can be told.
package fault

import (
	"slices"

	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// A Kind is what is wrong.
type Kind uint8

const (
	Dirt    Kind   = iota // the filter fouls
	Wear                  // the pump wears, or the tap's pressure falls: less head at every flow
	Sinking               // a gravity tank's level falls
	Emitter               // one emitter is blocked
	Row                   // a row is blocked at its start
	Hole                  // an emitter has come out: a hole in the tubing
	End                   // the end of a row is open
	Kinds   = iota        // how many there are
)

// A Reading is what gauges and a flow meter show while the water runs. The
// gauges at the supply stand at the level that a plan measures heights from;
// without a filter After and Before are of one gauge. A regulator behind the
// filter, where it belongs, is behind them too: they see what the supply gives
// without it, although package layout takes it off first.
type Reading struct {
	Before float64 // m, before the filter
	After  float64 // m, after it
	Header float64 // m, where the lead ends
	Still  float64 // m, before the filter while nothing flows
	Flow   float64 // m³/s
}

// A Slow fault grows until the first emitter is no longer served.
type Slow struct {
	Kind    Kind
	Zone    int     // watered meanwhile
	Amount  float64 // Dirt: m, further loss at the filter's rated flow; Wear: share of the head; Sinking: m of level
	Already bool    // the emitter is not served even now; Amount is 0
	Never   bool    // it is served however far it grows
	Opening bool    // not all emitters open any more when the water is turned on, before one leaves its range
	Plant   int     // index into Layout.Plants, of the emitter that leaves its range first
	Was     Reading
	Now     Reading // when Amount is reached
}

// A Sudden fault is there from one day to the next. It is the worst of those
// tried: the most plants other than its own that get nothing or leave their
// range, then the greatest change of flow.
type Sudden struct {
	Kind  Kind
	Zone  int
	Row   int     // from 0
	Plant int     // index into Layout.Plants; -1 for Row and End
	Lost  float64 // m³/s that runs out, of Hole and End
	Was   Reading
	Now   Reading
	Tried int // how many positions were tried
	Sign  Sign

	Plants int // of the zone
	// The plants of the zone but those that are blocked themselves.
	Cut   int     // how many are: blocked, or without an emitter
	Dry   int     // get nothing now
	Below int     // run below their range now, and did not
	Above int     // run above it now, and did not
	Least float64 // least flow of one as a share of what it had; 1 for none
	Most  float64 // greatest
	Worst int     // index into Layout.Plants, of Least; -1 for none
}

// Faults is what can go wrong with a layout.
type Faults struct {
	Slow   []Slow   // the zone in which it comes first, one for each kind there can be
	Due    *Reading // at the further loss at which the filter is to be cleaned, in the zone of Dirt; nil without Dirt
	Clean  Cleaning
	Sudden []Sudden // the worst of each kind
	Every  int      // of the rows only one in so many is tried, and the last; 1 for all
}

// work is how many nodes, over all positions, are worked out before rows are
// left out: about a fifth of a second.
const work = 16_000

// Of works a layout out. flows are the solutions of its zones, in the order of
// l.Zones. It returns nil where no water flows, and where the flows do not
// settle.
func Of(l *layout.Layout, flows []*network.Solution) *Faults {
	if len(flows) < len(l.Zones) {
		return nil
	}
	f := &Faults{Every: 1}
	if n := 4 * len(l.Plan.Rows) * len(l.Points); n > work {
		f.Every = (n + work - 1) / work
	}
	for i, number := range l.Zones {
		if flows[i].Total <= 0 {
			continue
		}
		z := &zone{l: l, number: number, was: flows[i]}
		if !f.slow(z) || !f.sudden(z) {
			return nil
		}
	}
	if len(f.Slow)+len(f.Sudden) == 0 {
		return nil
	}
	f.tell(l)
	return f
}

// A zone is one zone as it should be.
type zone struct {
	l      *layout.Layout
	number int
	was    *network.Solution
}

// read reads the gauges, at a supply that has lost a share of its head.
func (z *zone) read(sol *network.Solution, share float64) Reading {
	l, r := z.l, Reading{Flow: sol.Total}
	before := 0
	for i := range l.Stretches {
		if k := l.Stretches[i].Kind; k == layout.Source || k == layout.Devices {
			before = l.Network.Links[l.Stretches[i].Links[0]].To
		}
	}
	after := before
	if l.FilterLink >= 0 {
		after = l.Network.Links[l.FilterLink].To
	}
	r.Before, r.After = sol.Head[before], sol.Head[after]
	r.Header = sol.Head[l.Feed] - l.Points[l.Feed].Z
	if l.Curve != nil {
		own := worn(l, share, l.FilterLink < 0)
		r.Still, _ = own.Head(0)
		if l.FilterLink >= 0 && l.Plan.Supply.Regulator > 0 {
			own, _ := own.Head(sol.Total)
			let, _ := worn(l, share, true).Head(sol.Total)
			r.Before += own - let
			r.After += own - let
		}
	}
	return r
}

// rows lists the rows of the zone that are tried.
func (f *Faults) rows(z *zone) []int {
	var rows []int
	last := len(z.l.Plan.Rows) - 1
	for r := range z.l.Plan.Rows {
		if z.l.ZoneOf(r) == z.number && (r%f.Every == 0 || r == last) {
			rows = append(rows, r)
		}
	}
	return rows
}

// plants returns the first plant of a row, and the one after its last.
func (z *zone) plants(row int) (first, end int) {
	first = slices.IndexFunc(z.l.Plants, func(p layout.Plant) bool { return p.Row == row })
	for end = first; end < len(z.l.Plants) && z.l.Plants[end].Row == row; end++ {
	}
	return first, end
}
