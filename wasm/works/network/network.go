// Package network solves the flow of water through a network of tubing, with
// every emitter its own node.
//
// It takes Newton's steps on all heads and flows together, and solves for each
// step by elimination of the nodes from the leaves inwards. A leaf has one
// neighbour, so eliminating it joins no two nodes that were not joined before:
// a tree, as rows and headers are, costs one pass over its nodes in time and in
// memory, however many there are. What is left when no leaf is, the rings, is
// eliminated in the same way by least degree, which joins the neighbours of a
// node to each other: some more entries, and nothing left out. So rings are
// solved as exactly as trees, by the whole matrix, and not by rounds of
// correction from loop to loop.
package network

import (
	"evenrow/wasm/ground/work"
	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/trade/water"
)

// A Node is a place where tubing meets, or where an emitter sits.
type Node struct {
	Z       float64 // m, height above any fixed level
	Emitter int     // index into Network.Emitters, or None
	Count   float64 // how many such emitters; more than one stands for several on one plant
	Draw    float64 // m³/s taken whatever the head; for tests and for fixed outlets
}

// None means that a node has no emitter.
const None = -1

// A Law is the loss of head in a link that is not tubing, such as a filter or
// a pump, which loses a negative head.
type Law interface {
	// Loss returns the head lost, in m, at flow q, in m³/s, and its slope in
	// m per m³/s. It must rise with q everywhere, also where q is negative.
	Loss(q float64) (loss, slope float64)
}

// A Drop is the one law with a jump: a device that takes a head, in m, from
// flowing water, however little flows, and nothing from still water, as the
// spring in a backflow device does. A network has one at most, in a link that
// all its water goes through, from From to To.
type Drop float64

// Loss returns the head taken.
func (d Drop) Loss(q float64) (loss, slope float64) {
	if q > 0 {
		return float64(d), 0
	}
	return 0, 0
}

// A Link joins two nodes. It is a pipe unless Law is set. Flow is positive
// from From to To.
type Link struct {
	From, To  int
	Length    float64 // m
	Bore      float64 // m
	Roughness float64 // m, absolute
	K         float64 // sum of loss coefficients on the velocity in this bore
	Extra     float64 // m of tubing that stands for losses given as a length
	Law       Law
}

// A Network is a whole system of water. Node 0 is the source: its head is
// fixed, and whatever flows through the network comes from it.
type Network struct {
	Head     float64 // m, total head at node 0: level of the water or of the tap plus its pressure
	Water    water.Water
	Nodes    []Node
	Links    []Link
	Emitters []emitter.Emitter
	Meter    *work.Meter // of what its solutions cost; nil for no bound
}

// A Solution is the state of a network at rest.
type Solution struct {
	Head  []float64 // m, total head by node; pressure head is Head - Z
	Flow  []float64 // m³/s by link
	Out   []float64 // m³/s that leaves at each node, all its emitters together
	Open  []bool    // by node: its emitter is open; true for a non-compensating one
	Total float64   // m³/s from the source

	Iterations int     // Newton steps in all
	Imbalance  float64 // largest mass imbalance at a node, as a share of Total
	Unsteady   int     // emitters that opened and shut in turn, and are counted as shut
}
