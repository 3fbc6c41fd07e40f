// Package design looks for cheaper tubing, another feed and zones that serve a
// plan, and for the least pump that each takes.
//
// A candidate is one size of tubing for the rows, one for the header and one for
// each run of the lead (for all runs together where there are more than two),
// an end or the middle where the header is fed, and a number of zones, of rows
// that stand together and draw about the same. What stands in the plan and is
// none of these, such as measured tubing, rows of different sizes or zones of
// another grouping, is a candidate as well.
//
// # Why the list is the true one
//
// Every candidate is counted and none is left out by a rule of thumb. The water
// of each is that of the whole network, taken apart where the network is a tree:
//
//   - Held open, every emitter's flow follows its head alone and never falls as
//     the head rises; every loss rises with its flow. So all heads and flows of a
//     zone follow from the head at the feed, where lead and header meet, and rise
//     with it (Millar's co-content has one least point). There is one least head
//     at the feed at which every emitter has its lowest and the reserve.
//   - The lead is one way without a branch. Head and flow at the feed are all it
//     needs to know of the rows, and give the head at the supply exactly.
//   - With compensating emitters of exponent 0 the flows do not depend on the
//     heads within the range, so a row or a header is one sum of losses, the same
//     that the solver takes, from the layout's own links.
//   - Where flows follow the heads, a row hangs on its tee's head alone. It is
//     run along against the water at 32 heads, exactly, with cubics between that
//     have its values and slopes and miss a head by less than a millimetre; the
//     header's tees are solved by Newton's steps. In a ring and in one line the
//     solver itself is asked for the state at a head at the feed.
//   - A supply carries a zone if and only if its curve, at the flow that the zone
//     draws at its least head, gives that head: the curve falls with the flow, and
//     what the zone needs rises with it, so they meet at that head or above it.
//   - Cost is a sum of prices, and power the product of density, gravity, flow
//     and head. A candidate is skipped only when a design that serves is known
//     that costs no more and needs no more power: it can then not be in the list,
//     which holds what nothing beats in both. Before a zone is solved, bounds
//     decide: an emitter in range takes at least its flow at its lowest, and no
//     head at the feed is less than the head an emitter needs plus its height,
//     since losses are not negative.
//
// What is assumed: that a pump of the duty is a parabola through it at four
// fifths of its head, that rows are all of one size, that fittings cost the same
// in all candidates, and that a row is flushed alone while the other rows are
// shut, with every emitter open that has its closing head. A test solves every
// candidate of small plans as a whole and gets the same list.
package design

import (
	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/limit"
)

// A Design is one candidate that serves.
type Design struct {
	Plan    *plan.Plan // with its tubing, feed and zones, and the supply as it stands
	Rows    int        // size, index into catalogue.Tubes; Kept for as it stands
	Header  int        // likewise
	Runs    []int      // likewise
	Middle  bool       // fed in the middle
	Zones   int        // how many
	Cost    float64    // in the currency of the prices
	Head    float64    // m above its own level that the supply must give
	Flow    float64    // m³/s that it must give at that head
	Power   float64    // W that the water takes up there
	Present bool       // the supply of the plan carries it
}

// Kept stands for tubing that stays as it is.
const Kept = -1

// A Result is what a search found.
type Result struct {
	List     []Design          // what nothing beats in both cost and power, cheapest first; for a gravity tank in cost and head
	Own      []Design          // the cheapest that the supply of the plan carries; one or none
	Now      float64           // cost of the plan as it stands
	Counted  int               // candidates
	Solved   int               // candidates whose limits were looked at
	Pruned   int               // candidates that something known beats
	Cut      bool              // the search was ended early, and Counted are those up to there
	Forbids  limit.Set         // when List is empty: what every candidate fails, at their own least supply; 0 when no limit alone is to blame
	Failures [limit.Limits]int // how many candidates fail each
}

// Of searches a plan that has been checked, whatever its answer. split puts a
// plan's rows into n zones, and the search spends from m.
func Of(p *plan.Plan, split func(p *plan.Plan, n int), m *work.Meter) *Result {
	s := newSearch(p, split, m)
	s.run()
	return s.finish()
}
