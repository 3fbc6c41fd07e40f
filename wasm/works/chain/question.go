package chain

import (
	"math"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/ends"
	"evenrow/wasm/trade/water"
)

// maxPairs is how many such places are held apart: more kinds of tubing than that nobody
// mixes, and where a plan does, the last are searched anew each time.
const maxPairs = 8

// A question is all that the ways depend on: what is asked again is answered from before.
type question struct {
	kind, tube, last          int
	metric, measured          bool    // what the supply line is, and whether any tubing is of a measured bore
	rest, ahead               float64 // Pa at rest behind the regulator, and before it
	gauges, filter, regulator bool
	ends                      plan.Ends
	own                       [plan.MaxFittings]ends.Part
	fittings                  int
	pairs                     [maxPairs]struct {
		from, to int
		thread   bool
	}
	met int
}

// Sight is the head in m at rest up to which a clear hose that is held upright reads better
// than a gauge: what an arm reaches. It is two fifths of the least range that gauges are sold
// with, of which they are good to a twentieth or so. Common practice, no source.
const Sight = 2.5

// ask is what the ways of a plan depend on. Pressures are rounded up to a tenth of a bar: no
// seal is known better.
func ask(p *plan.Plan) (q question, rest, ahead float64) {
	q = question{
		kind: p.Supply.Kind, tube: p.Runs[0].Tube, last: p.Runs[len(p.Runs)-1].Tube,
		filter: p.Filter.Present != 0, regulator: p.Supply.Regulated(), ends: p.Ends, fittings: len(p.Fittings),
	}
	for i := range p.Fittings {
		f := &p.Fittings[i]
		q.own[i] = ends.Part{A: ends.All[f.A], B: ends.All[f.B], Price: f.Price}
	}
	q.metric = catalogue.Tubes[q.tube].Metric()
	if q.tube == catalogue.Custom {
		q.metric = p.Units == 0
	}
	w := water.At(p.Place.Water)
	switch p.Supply.Kind {
	case plan.PumpPoints:
		q.ahead = w.PressureHead(p.Supply.Points[0].Head)
	case plan.PumpTwo:
		q.ahead = w.PressureHead(p.Supply.ShutOff)
	case plan.Mains:
		q.ahead = p.Supply.Static
	}
	q.rest = q.ahead
	if q.regulator {
		q.rest = min(q.rest, p.Supply.Regulator)
	}
	q.gauges = p.Supply.Kind != plan.GravityTank && (p.Supply.Sought() || w.HeadOf(q.rest) > Sight || q.filter && q.regulator)
	rest, ahead = q.rest, q.ahead
	q.measured = p.Uses(catalogue.Custom)
	q.rest, q.ahead = class(rest), class(ahead)
	q.meet(p)
	return q, rest, ahead
}

// meet notes where two kinds of tubing meet in a plan.
func (q *question) meet(p *plan.Plan) {
	pair := func(from, to int, thread bool) {
		if catalogue.Tubes[from].Meets(&catalogue.Tubes[to]) {
			return
		}
		for i := range q.met {
			if o := &q.pairs[i]; o.from == from && o.to == to && o.thread == thread {
				return
			}
		}
		if q.met < maxPairs {
			o := &q.pairs[q.met]
			o.from, o.to, o.thread = from, to, thread
			q.met++
		}
	}
	for i := 1; i < len(p.Runs); i++ {
		pair(p.Runs[i-1].Tube, p.Runs[i].Tube, false)
	}
	last := p.Runs[len(p.Runs)-1].Tube
	if p.Header.Layout == plan.OneLine || len(p.Rows) == 1 {
		pair(last, p.Rows[0].Tube, false)
		for i := 1; i < len(p.Rows); i++ {
			pair(p.Rows[i-1].Tube, p.Rows[i].Tube, true)
		}
		return
	}
	if p.Header.Feed == plan.FeedMiddle {
		pair(p.Header.Tube, last, true)
	} else {
		pair(last, p.Header.Tube, false)
	}
	for i := range p.Rows {
		pair(p.Header.Tube, p.Rows[i].Tube, true)
	}
}

// class rounds a pressure up to the next one that a seal carries: between two of them
// the same parts serve.
func class(pressure float64) float64 {
	next := math.Inf(1)
	for i := range ends.Seals {
		if p := ends.Seals[i].Pressure; p >= pressure {
			next = min(next, p)
		}
	}
	if pressure <= 0 {
		return 0
	}
	return next
}

// usual are the threads that a place commonly has, by the family of the supply line: with tubing in mm
// pumps have G 1 male, taps and tanks G 3/4 male, filters a tapered male thread at either
// side, regulators female ones; with those of the United States pumps, tanks and filters
// have 3/4 in NPT male, taps and what stands on them hose threads. Common practice, no
// source.
func (q *question) usual(place int) (in, out ends.End) {
	end := func(f ends.Family, s ends.Sex, size int) ends.End { return ends.End{Family: f, Sex: s, Size: size} }
	const three = ends.ThreeQuarter
	if q.metric {
		switch place {
		case plan.AtOutlet:
			if q.kind == plan.Mains || q.kind == plan.GravityTank {
				return in, end(ends.Parallel, ends.Male, three)
			}
			return in, end(ends.Parallel, ends.Male, ends.One)
		case plan.AtFilter:
			return end(ends.Taper, ends.Male, three), end(ends.Taper, ends.Male, three)
		case plan.AtRegulator:
			return end(ends.Parallel, ends.Female, three), end(ends.Parallel, ends.Female, three)
		}
		return end(ends.Parallel, ends.Female, three), end(ends.Parallel, ends.Male, three)
	}
	switch place {
	case plan.AtOutlet:
		if q.kind == plan.Mains {
			return in, end(ends.HoseThread, ends.Male, three)
		}
		return in, end(ends.PipeThread, ends.Male, three)
	case plan.AtFilter:
		return end(ends.PipeThread, ends.Male, three), end(ends.PipeThread, ends.Male, three)
	case plan.AtRegulator:
		return end(ends.PipeThread, ends.Female, three), end(ends.PipeThread, ends.Female, three)
	}
	return end(ends.HoseThread, ends.Female, three), end(ends.HoseThread, ends.Male, three)
}

// place is a device with the ends that the grower has chosen, or the usual ones.
func (q *question) place(d Device, at int) Place {
	p := Place{Device: d}
	p.In, p.Out = q.usual(at)
	if e, chosen := plan.EndOf(q.ends.In[at]); chosen && at != plan.AtOutlet {
		p.In, p.Chosen = e, true
	}
	if e, chosen := plan.EndOf(q.ends.Out[at]); chosen {
		p.Out, p.Chosen = e, true
	}
	return p
}

// gauge is a tee for a gauge, of the thread that it stands next to: female at either side, and
// of hose threads, as they are sold, female where the water comes in and male where it goes out.
func (q *question) gauge(d Device, next ends.End) Place {
	e := ends.End{Family: next.Family, Sex: ends.Female, Size: next.Size}
	if e.Family == ends.Taper {
		e.Family = ends.Parallel
	}
	out := e
	if e.Family == ends.HoseThread {
		out.Sex = ends.Male
	}
	return Place{Device: d, In: e, Out: out}
}
