package sheet

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/design"
)

// A drive is what is asked of a pump or a tap: its head falls as the flow
// rises, is known up to Flow, is at least Least there, and at most Most with
// everything shut. The answer is Yes with every one that is so.
//
// At or below Flow it gives Least or more. Held at Least, the zone that takes
// most takes no more than Flow, and every emitter has its lowest and the
// reserve ([duty]); what zones take and every head in them rise with the head
// at the supply, so each settles at Least or above it. While fewer emitters are
// open less flows and all heads are higher, so that all open, one after
// another. Nowhere does it give more than Most, so no head and no speed is
// higher than where one that holds Most at any flow would settle, and no zone
// takes more: that one is tried, for emitters above their range, speeds and the
// curve's end; and with nothing flowing the tubing carries Most. Between the
// two the evenness of emitters that follow the pressure has at most one summit,
// so it is least at one of them.
type drive struct {
	least, flow, most float64 // m, m³/s, m
	regulator         float64 // Pa, of a regulator behind it; 0 for none. Most is then what the form takes.
}

const (
	// steep is how much more than the least head the most must be for a pump to
	// be looked for without a regulator: most pumps are meant to run at less than
	// nine tenths of their shut-off head (common practice, no source).
	steep = 1.1

	// thirst is how much more than at the least head emitters that follow the
	// pressure may draw at the most: nobody is sent for a pump of much more flow
	// so that its shut-off head may be higher. Our own choice.
	thirst = 1.25

	// fine is how near in m the most is found.
	fine = 0.05
)

// driven works a plan out with a pump of some points, behind a regulator of so
// many Pa.
func driven(m *work.Meter, p *plan.Plan, regulator float64, points ...plan.Point) *Sheet {
	p = p.Clone()
	p.Supply.Kind, p.Supply.Regulator, p.Supply.Points = plan.PumpPoints, regulator, points
	return assess(p, m)
}

// level works a plan out with a pump that holds one head in m at any flow.
func level(m *work.Meter, p *plan.Plan, head float64) *Sheet {
	const plenty = 10 // m³/s
	return driven(m, p, 0, plan.Point{Head: head}, plan.Point{Flow: plenty, Head: head - 1e-4})
}

// drawn is what the zone that takes most takes, in m³/s.
func (s *Sheet) drawn() float64 {
	most := 0.0
	for i := range s.Zones {
		most = max(most, s.Zones[i].Flow)
	}
	return most
}

// will says whether a pump or a tap with which the plan is s will do.
func (t *trial) will(s *Sheet) bool { return s.Verdict == Yes || t.loose && s.watered() }

// highest returns the highest head in m that a pump may hold, from a head on at
// which the answer is Yes; or 0 where it is not.
func (t *trial) highest(from float64) float64 {
	p, m := t.s.Plan, t.s.meter()
	s := level(m, p, from)
	if !t.will(s) {
		return 0
	}
	lo, hi := from, float64(design.MostHead)
	bearable := thirst * s.drawn()
	exact := false // x is where nothing is too high any more, by what was too high before
	for x := hi; hi-lo >= fine; {
		s := level(m, p, x)
		if t.will(s) && s.drawn() <= bearable {
			if lo = x; x == hi {
				break
			}
			if exact {
				exact, x = false, x+fine
				continue
			}
		} else {
			hi = x
			// Where flows do not follow heads, all heads are too high by as much.
			if next := x - s.over() - fine/10; next > lo && next < x-fine {
				exact, x = true, next
				continue
			}
		}
		exact, x = false, (lo+hi)/2
	}
	return lo
}

// over returns by how much in m the heads are too high for emitters or tubing.
func (s *Sheet) over() float64 {
	most := 0.0
	for i := range s.Findings {
		if f := &s.Findings[i]; Kinds[f.Kind].High {
			most = max(most, f.Value-f.Limit)
		}
	}
	return most
}

// demanded returns what is asked of the supply of a plan, a plan with such a
// one where the form takes it, and whether the answer is Yes with every one that
// is so; the least is 0 where there is none. Where no pump or
// tap alone does it, or few would, one behind a regulator is asked for. Figures
// are such that they are enough as the page prints them.
func (t *trial) demanded() (d drive, taken *plan.Plan, yes bool) {
	least, flow, ok := t.duty()
	if !ok {
		return d, nil, false
	}
	s, p, m := t.s, t.s.Plan, t.s.meter()
	step := 0.1
	if p.Supply.Kind == plan.Mains {
		step = s.Layout.Network.Water.HeadOf(1e4)
	}
	d.least = numeric.RoundUp(least, step)
	for low, _ := s.said(d.least); low < least; low, _ = s.said(d.least) {
		d.least += step
	}
	if top := t.highest(d.least); top > 0 {
		d.most = math.Floor(top/step+1e-9) * step
		for _, high := s.said(d.most); high > top; _, high = s.said(d.most) {
			d.most -= step
		}
		if d.most > d.least {
			flow = max(flow, level(m, p, d.most).drawn())
		}
		if p.Supply.Regulator > 0 || d.most < steep*d.least {
			if set := s.setting(d.least, top); set > 0 {
				d.regulator, d.most = set, design.MostHead
				flow = max(flow, level(m, p, s.Layout.Network.Water.HeadOf(set)).drawn())
			}
		}
	}
	const tenth = 1e-3 / 600 // of a litre a minute
	for d.flow = numeric.RoundUp(flow, tenth); printed(unit.Flow, p.Units, d.flow) < flow*(1-rounding); {
		d.flow += tenth
	}
	taken = p.Clone()
	if d.most <= d.least {
		d.most = 0
		d.give(s, &taken.Supply, 2*d.least)
	} else {
		d.give(s, &taken.Supply, d.most)
	}
	if len(taken.Check()) > 0 {
		return d, nil, false
	}
	if !t.will(assess(taken, m)) {
		return d, taken, false
	}
	yes = d.most > 0
	for _, end := range [...]float64{d.least, (d.least + d.most) / 2, d.most - 1e-4} {
		yes = yes && t.will(driven(m, p, d.regulator, plan.Point{Head: d.most}, plan.Point{Flow: d.flow, Head: end}))
	}
	if !yes {
		return d, nil, false // that one does it, and others do not
	}
	return d, taken, true
}

// said returns the lower and the higher of the two figures that the page prints
// for a head in m.
func (s *Sheet) said(head float64) (low, high float64) {
	w, sys := s.Layout.Network.Water, s.Plan.Units
	a, b := printed(unit.Head, sys, head), w.HeadOf(printed(unit.Pressure, sys, w.PressureHead(head)))
	return min(a, b), max(a, b)
}

// printed returns what the figure that the page prints for v says.
func printed(k unit.Kind, sys unit.System, v float64) float64 {
	x, _ := strconv.ParseFloat(unit.Figure(k, sys, v), 64)
	return unit.Of(k, sys).ToInner(x)
}

// setting returns what a regulator is to be set to, in Pa, so that it lets
// through a head between two: as it is, if that will do, else in half tenths of
// a bar; or 0.
func (s *Sheet) setting(from, to float64) float64 {
	const droop = 1e-3 // of a regulator, and more
	w := s.Layout.Network.Water
	fits := func(set float64) (enough, bearable bool) {
		low, high := s.said(w.HeadOf(set))
		return low*(1-droop) >= from, high <= to
	}
	if a, b := fits(s.Plan.Supply.Regulator); a && b {
		return s.Plan.Supply.Regulator
	}
	for set := numeric.RoundUp(w.PressureHead(from), 5e3); ; set += 5e3 {
		switch enough, bearable := fits(set); {
		case !bearable:
			return 0
		case enough:
			return set
		}
	}
}

// give gives a supply what is asked of it: a pump or a tap of two values, which
// passes through the least head at the flow, at four fifths of its shut-off head
// or where that is top.
func (d *drive) give(s *Sheet, to *plan.Supply, top float64) {
	shut, open := design.Through(d.least, d.flow)
	if shut > top {
		shut, open = top, d.flow/math.Sqrt(1-d.least/top)
	}
	to.Regulator = d.regulator
	if to.Kind == plan.Mains {
		to.Static, to.TapFlow = s.Layout.Network.Water.PressureHead(shut), max(open, plan.FieldNamed("supply", "tap-flow").Min)
		return
	}
	to.Kind = plan.PumpTwo
	to.ShutOff, to.MaxFlow = max(shut, plan.FieldNamed("supply", "shut-off").Min), max(open, plan.FieldNamed("supply", "max-flow").Min)
}
