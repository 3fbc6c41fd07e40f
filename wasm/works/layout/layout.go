// Package layout turns a plan into places on the ground and a network of
// water: every plant, every stretch of tubing and every joint.
//
// Without a ring the network is a tree. Link i leads to node i+1, so a way from
// the source to a node follows from the links alone, and the links of a stretch
// follow one another. The links that close rings come last.
package layout

import (
	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/filter"
	"evenrow/wasm/trade/pump"
	"evenrow/wasm/trade/water"
	"evenrow/wasm/works/chain"
	"evenrow/wasm/works/network"
)

// A Point is a place seen from above, with its height. X runs along the rows
// from the header, Y across them from the first side wall; Z is the height
// above the water in the tank, half full, or above the tap. All in m.
//
// The lead comes from outside the place, where X is negative. It is drawn
// stretched out straight to its full length, because a plan says how many
// bends it has and not where.
type Point struct{ X, Y, Z float64 }

// Apart is how far the supply, the filter and the start of the lead are drawn
// from one another, in m. It stands for no tubing.
const Apart = 0.5

// Ranks of tubing, thickest first.
const (
	Lead    = iota // from the supply to the header
	Main           // the header
	Lateral        // a row
)

// A Stretch is a piece of the water path that a person would name: the pump,
// a run of the lead, the filter, the header between two rows, a row.
type Stretch struct {
	Kind   StretchKind
	Index  int     // run or row, from 0; for header pieces, the row that it leads to
	Links  []int   // in order of flow
	Tube   int     // index into Layout.Tubes; NoTube for the pump, the tap and the filter
	Length float64 // m of tubing, the sum of its links

	first int // its first link
}

// A StretchKind says what a stretch is.
type StretchKind uint8

const (
	Source StretchKind = iota // pump or tap, with its regulator; for a gravity tank the regulator alone
	RunOf                     // a run of the lead
	Filter
	HeaderOf            // header up to a row's tee
	RowOf               // a row
	Between             // one line: the piece from a row to the next
	FarOf               // ring: the far header, up to a row's end
	Devices             // a backflow device, a meter or a timer valve at the supply
	StretchKinds = iota // how many there are
)

// Rank returns the rank of the stretch's tubing. The piece between two rows
// ranks with the rows.
func (s *Stretch) Rank() int {
	switch s.Kind {
	case HeaderOf, FarOf:
		return Main
	case RowOf, Between:
		return Lateral
	}
	return Lead
}

// A Plant is one plant with its place in the network.
type Plant struct {
	Row    int // from 0
	Number int // in the row, from 1 at the header
	Node   int // index into Points and Network.Nodes
	At     Point
}

// A Layout is a plan laid out, with all its rows. Network has every row open;
// Zone gives the network while one zone is watered, with the same nodes and
// links.
type Layout struct {
	Plan      *plan.Plan
	Network   network.Network
	Points    []Point // by node
	Stretches []Stretch
	Plants    []Plant
	Tees      []int // node of each row's tee on the header, by row; in one line, of each row's start
	Ends      []int // node of each row's end, by row; in one line only the last row has one, others -1
	Zones     []int // the zone numbers in use, rising

	Tubes      []Tube        // the sizes of tubing in use, each once
	Joints     []Joint       // every fitting that water passes or ends in, in order of flow
	Feed       int           // node where the lead ends: on the header, or at the start of the line
	Curve      pump.Curve    // what drives the water, with the regulator; nil for a gravity tank and for a pump of unknown curve
	Chains     *chain.Chains // what joins the supply to the lead, and tubing of two kinds
	Clean      filter.Filter // the filter when clean; zero without one
	FilterLink int           // link of the filter, or -1

	across  []float64 // Y of each row
	leadEnd int       // tubing of the last run
}

// New lays out a plan that has been checked.
//
// A pump of which only the power is known has no curve: its network has no
// head and nothing flows.
func New(p *plan.Plan) *Layout {
	l := &Layout{Plan: p, FilterLink: -1, Chains: chain.Of(p)}
	l.Network.Water = water.At(p.Place.Water)
	l.Network.Emitters = emitters(p, l.Network.Water)
	l.Zones = p.Zones()
	l.reserve()

	y := 0.0
	for i := range p.Rows {
		y += p.Rows[i].Gap
		l.across[i] = y
	}
	base := l.lead()
	switch {
	case l.headed():
		l.header(base)
		l.rows(base)
		if l.ringed() {
			l.far()
		}
	default:
		l.line(base)
	}
	l.finish()
	return l
}

// Metered is [New] at the cost of a meter. What is solved of the layout's water
// spends from it too.
func Metered(p *plan.Plan, m *work.Meter) *Layout {
	l := New(p)
	l.Network.Meter = m
	m.Spend(2 * len(l.Points))
	return l
}

// finish gives every stretch its links. They follow one another, so one list
// of all links serves for all.
func (l *Layout) finish() {
	order := make([]int, len(l.Network.Links))
	for i := range order {
		order[i] = i
	}
	next := len(order)
	for i := len(l.Stretches) - 1; i >= 0; i-- {
		s := &l.Stretches[i]
		s.Links = order[s.first:next:next]
		next = s.first
	}
}

// reserve makes room for all that will be added, so that large plans do not
// copy.
func (l *Layout) reserve() {
	p := l.Plan
	rows, plants := len(p.Rows), 0
	for i := range p.Rows {
		plants += p.Rows[i].Plants
	}
	nodes := 3 + len(p.Runs) + 2*rows + plants
	l.Network.Nodes = make([]network.Node, 0, nodes)
	l.Network.Links = make([]network.Link, 0, nodes+rows)
	l.Points = make([]Point, 0, nodes)
	l.Plants = make([]Plant, 0, plants)
	l.Stretches = make([]Stretch, 0, 2+len(p.Runs)+3*rows)
	l.Joints = make([]Joint, 0, 2+5*len(p.Runs)+3*rows)
	ends := make([]int, 2*rows)
	l.Tees, l.Ends = ends[:rows:rows], ends[rows:]
	l.across = make([]float64, rows)
}

// ZoneOf returns the zone that a row, from 0, is watered with.
func (l *Layout) ZoneOf(row int) int {
	return l.Plan.ZoneOf(row)
}
