// Package layout turns a plan into places on the ground and a network of
// water: every plant, every stretch of tubing and every joint.
package layout

import (
	"evenrow/wasm/network"
	"evenrow/wasm/plan"
)

// A Point is a place seen from above, with its height. X runs along the rows
// from the header, Y across them from the first side wall; Z is the height
// above the water in the tank, half full, or above the tap. All in m.
type Point struct{ X, Y, Z float64 }

// Ranks of tubing, thickest first.
const (
	Lead    = iota // from the supply to the header
	Main           // the header
	Lateral        // a row
)

// A Stretch is a piece of the water path that a person would name: the pump,
// a run of the lead, the filter, the header between two rows, a row.
type Stretch struct {
	Kind  StretchKind
	Index int   // run or row, from 0; for header pieces, the row that it leads to
	Links []int // in order of flow
}

// A StretchKind says what a stretch is.
type StretchKind uint8

const (
	Source StretchKind = iota // pump, or the tap with its regulator
	RunOf                     // a run of the lead
	Filter
	HeaderOf // header up to a row's tee
	RowOf    // a row
	Between  // one line: the piece from a row to the next
)

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
	Ends      []int // node of each row's end cap, by row; in one line only the last row has one, others -1
	Zones     []int // the zone numbers in use, rising
}
