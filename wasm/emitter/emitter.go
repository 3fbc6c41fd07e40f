// Package emitter gives the flow of one drip emitter at a head, and whether it
// opens and stays open there.
package emitter

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
