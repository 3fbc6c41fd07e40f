// Package limit holds what a plan is held to, each limit once, for the answer, for
// cheaper designs and for the headroom alike: where its figure comes from, when
// it is broken, and how far something measured is from breaking it.
package limit

import (
	"math"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/pump"
	"evenrow/wasm/trade/water"
)

// A Limit is what a plan or a design can fail.
type Limit uint8

const (
	Reach    Limit  = iota // what the supply gives: head for every emitter, and the flow at it; of a new one, what the form takes
	Speed                  // of the water in the lead and the header
	Evenness               // that was asked for
	Range                  // of the emitters, upwards
	Rating                 // of the tubing in the sun, with every valve shut
	Flushing               // of every end
	Place                  // that rows have to fit
	Limits   = iota        // how many there are
)

// Names are for spreadsheets and scripts, so they stay as they are. Without one at
// the end it does not compile, and TestEveryLimitHasItsName says which else is
// missing. What is said of a design that fails stands in package answer, in a
// table of the same limits.
var Names [Limits]string = [...]string{
	Reach: "reach", Speed: "speed", Evenness: "evenness", Range: "above-range", Rating: "rating", Flushing: "flushing", Place: "place",
}

// A Set is some of the limits, a bit for each.
type Set uint8

// Alone returns the set of one limit.
func (l Limit) Alone() Set { return 1 << l }

// Has says whether a limit is in the set.
func (s Set) Has(l Limit) bool { return s&l.Alone() != 0 }

// A Bound is the figure that something measured is held to, in the inner unit of
// what is measured.
type Bound struct {
	At    float64
	least bool    // it must be so much at least; else at most
	whole float64 // of a bound from below: as much more weighs as the whole of a bound from above
	near  float64 // of a bound from above: a share of it that is not told apart
}

// Broken says whether a measure is on the wrong side.
func (b Bound) Broken(v float64) bool {
	if b.least {
		return v < b.At
	}
	return v > b.At*(1+b.near)
}

// Slack returns how far a measure is from the wrong side, negative beyond it: as a
// share of the bound, or of what weighs as much.
func (b Bound) Slack(v float64) float64 {
	if b.least {
		return (v - b.At) / b.whole
	}
	return 1 - v/b.At
}

const (
	asMuch   = 10   // a head in m that weighs as much as the whole of another limit
	rounding = 1e-6 // a share of a flow that solutions are not told apart by
)

// MarginOf holds the head in m that the weakest emitter has above the lowest of
// its range: the reserve that was asked for, and once the filter is due for
// cleaning none.
func MarginOf(p *plan.Plan, due bool) Bound {
	if due {
		return Bound{At: 0, least: true, whole: asMuch}
	}
	return Bound{At: p.Limits.Reserve, least: true, whole: asMuch}
}

// CurveOf holds the flow in m³/s that a supply gives: nobody knows its curve
// beyond the last point. A tank has none.
func CurveOf(c pump.Curve) Bound {
	if c == nil {
		return Bound{At: math.Inf(1)}
	}
	return Bound{At: c.LastFlow(), near: rounding}
}

// SpeedOf holds the greatest speed in m/s in the lead and the header.
func SpeedOf(p *plan.Plan) Bound { return Bound{At: p.Limits.Speed} }

// EvennessOf holds the emission uniformity of a zone.
func EvennessOf(p *plan.Plan) Bound { return Bound{At: p.Limits.Evenness, least: true, whole: 1} }

// RatingOf holds the head in m of still water in a tube of the catalogue.
func RatingOf(tube int, w water.Water) Bound {
	return Bound{At: w.HeadOf(catalogue.Tubes[tube].InSun())}
}
