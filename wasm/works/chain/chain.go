// Package chain finds the parts that lead the water from the outlet that a grower has,
// through timer valve, backflow device, gauges, filter and regulator, to the tubing, over
// joints that truly mate.
package chain

import (
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/ends"
)

// A Device is a place on the way of the water.
type Device uint8

const (
	Outlet     Device = iota // of the tap, the pump or the tank
	TimerValve               // where a timer opens the water
	Backflow                 // the device that lets nothing back into drinking water
	First                    // the gauge before the filter, or the only one at the supply
	Filter
	Second // the gauge after the filter
	Regulator
	Tubing         // the supply line, or a row
	Branch         // the thread of a tee between two kinds of tubing
	Devices = iota // how many there are
)

// A Place is a device with its two ends.
type Place struct {
	Device  Device
	In, Out ends.End
	Chosen  bool // by the grower: else the ends are the usual ones, which is assumed
}

// A Gap is what joins one place to the next.
type Gap struct {
	From, To int // indices into Way.Places
	Steps    []Step
	Joints   []ends.Rule // one more than Steps; of a Gap that is not OK what the two ends alone would be
	OK       bool
	Weak     bool    // no parts carry the pressure that may stand there, and these do not
	Pressure float64 // Pa, the most that may stand there
	Price    float64 // of the steps

	Reached []ends.End // of one that is not OK: the ends that parts lead to from its beginning
}

// A Way is a chain of places and the parts between them.
type Way struct {
	Places []Place
	Gaps   []Gap // one less than Places
}

// Price is what the parts cost, in the currency of the plan.
func (w *Way) Price() (price float64) {
	for i := range w.Gaps {
		price += w.Gaps[i].Price
	}
	return price
}

// Parts is how many parts there are.
func (w *Way) Parts() (n int) {
	for i := range w.Gaps {
		n += len(w.Gaps[i].Steps)
	}
	return n
}

// Gauges is how many gauges stand on the way.
func (w *Way) Gauges() (n int) {
	for i := range w.Places {
		if d := w.Places[i].Device; d == First || d == Second {
			n++
		}
	}
	return n
}

// Chains are all ways of a plan.
type Chains struct {
	Parts  []Part // that were searched; steps are indices into it
	Supply Way    // from the outlet to the supply line
	Pairs  []Pair // where two kinds of tubing meet
	Header Way    // of a tank's regulator: from the supply line through it; else without places
	q      question
	had    []had   // gaps that were searched
	rest   float64 // Pa at rest behind the regulator
	ahead  float64 // and before it
	might  []Way   // what Supply may yet become, of a pump that is still to be bought
}

// A Pair is where a fitting cannot hold both of two kinds of tubing, indices into
// catalogue.Tubes.
type Pair struct {
	From, To int
	Thread   bool // the fitting at From has a thread for To: a tee or an elbow; else a joiner is all that stands there
	Gap      Gap  // from that thread, or from the tubing, to the tubing
}

// Of returns the ways of a plan that was checked. The same is returned for plans whose
// ends, order, tubing, pressures and own fittings are the same.
func Of(p *plan.Plan) *Chains {
	q, rest, ahead := ask(p)
	if c := known(q); c != nil {
		if c.rest == rest && c.ahead == ahead {
			return c
		}
		other := *c
		other.rest, other.ahead = rest, ahead
		return &other
	}
	c := &Chains{q: q, rest: rest, ahead: ahead}
	for _, part := range ends.Parts {
		if (!part.Rare || q.ends.Mixed != 0) && (q.measured || !part.Of(catalogue.Custom)) {
			c.Parts = append(c.Parts, Part{part, -1})
		}
	}
	for i := range q.fittings {
		c.Parts = append(c.Parts, Part{q.own[i], i})
	}
	c.Supply = c.supply()
	c.header()
	c.become(p)
	for i := range q.met {
		o := &q.pairs[i]
		c.Pairs = append(c.Pairs, c.pair(o.from, o.to, o.thread))
	}
	keep(c)
	return c
}
