// Package emitter gives the flow of one drip emitter at a head, and whether it
// opens and stays open there.
package emitter

import (
	"math"

	"evenrow/wasm/ground/numeric"
)

// A Kind is how an emitter answers to head.
type Kind uint8

const (
	Compensating    Kind = iota // q nearly constant from Lowest to Highest
	NonCompensating             // q = k hˣ
)

// An Emitter is one emitter's law. Heads are in metres of water above the
// emitter, flows in m³/s.
type Emitter struct {
	Kind     Kind
	Flow     float64 // nominal flow, > 0
	Nominal  float64 // head at which Flow was read, > 0; for Compensating the same as Lowest
	Exponent float64 // x, 0 to 1
	Opens    float64 // Compensating: a shut emitter opens at this head; >= Closes
	Closes   float64 // Compensating: an open one shuts below this head; >= 0
	Lowest   float64 // lower end of the range it is made for
	Highest  float64 // upper end
	CV       float64 // of manufacture, as a fraction
}

// nearZero is the share of the reference head below which an emitter's flow is
// a straight line to zero. A root has no slope there that an iteration could
// follow, and the passage of an emitter runs laminar, so straight, in any case.
const nearZero = 0.01

// Open returns the flow of an open emitter at head h, and its slope in m³/s
// per m. The flow is continuous, never falls as h rises, and is 0 at h <= 0.
//
// A non-compensating emitter gives Flow (h/Nominal)ˣ. A compensating one gives
// Flow (h/Lowest)ˣ from Lowest upwards. Below Lowest its elastic part stands
// clear and it is taken for a plain orifice, Flow √(h/Lowest): common practice,
// no source. Under 1 % of the reference head both fall to zero in a straight
// line, which is our own choice.
//
// Open does not look at Opens and Closes; see [Emitter.Stays].
func (e *Emitter) Open(h float64) (q, slope float64) {
	if h <= 0 {
		return 0, 0
	}
	ref, x := e.Nominal, e.Exponent
	if e.Kind == Compensating {
		ref = e.Lowest
		if h < ref {
			x = 0.5
		}
	}
	u := h / ref
	if u < nearZero {
		slope = e.Flow * raise(nearZero, x) / (nearZero * ref)
		return slope * h, slope
	}
	if x == 0 {
		return e.Flow, 0
	}
	q = e.Flow * raise(u, x)
	return q, x * q / h
}

// raise is numeric.Pow with short ways for the exponents that most emitters
// have.
func raise(u, x float64) float64 {
	switch x {
	case 0:
		return 1
	case 0.5:
		return math.Sqrt(u)
	case 1:
		return u
	}
	return numeric.Pow(u, x)
}

// Stays reports whether an emitter is open at head h, given whether it was
// open before: a shut one opens at Opens, an open one shuts below Closes. A
// non-compensating emitter is always open.
func (e *Emitter) Stays(h float64, open bool) bool {
	switch {
	case e.Kind == NonCompensating:
		return true
	case open:
		return h >= e.Closes
	}
	return h >= e.Opens
}

// A State is where a head lies in the range that an emitter is made for.
type State uint8

const (
	Below State = iota // under Lowest
	In
	Above // over Highest
)

// State returns where head h lies in the emitter's range, ends included.
func (e *Emitter) State(h float64) State {
	switch {
	case h < e.Lowest:
		return Below
	case h > e.Highest:
		return Above
	}
	return In
}
