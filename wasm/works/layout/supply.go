package layout

import (
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/trade/filter"
	"evenrow/wasm/trade/pump"
	"evenrow/wasm/trade/water"
	"evenrow/wasm/works/network"
)

// Drive returns what drives the water, or nil where a gravity tank's level
// does, and for a pump whose curve is not known, of which the form asks neither
// for a regulator nor for devices. A regulator counts as at the
// supply's outlet, before devices and filter, so that their loss comes off what
// it lets through: the safe side, since it belongs after the filter.
func Drive(s *plan.Supply, w water.Water) pump.Curve {
	var c pump.Curve
	var err error
	switch s.Kind {
	case plan.PumpPoints:
		points := make([]pump.Point, len(s.Points))
		for i, p := range s.Points {
			points[i] = pump.Point{Flow: p.Flow, Head: p.Head}
		}
		c, err = pump.ByPoints(points)
	case plan.PumpTwo:
		c, err = pump.ByTwo(s.ShutOff, s.MaxFlow)
	case plan.Mains:
		c, err = pump.Tap(w.HeadOf(s.Static), s.TapFlow)
	default:
		return nil
	}
	if err != nil {
		return nil // a plan that was checked has a curve
	}
	if s.Regulator > 0 {
		c = pump.Regulated(c, w.HeadOf(s.Regulator))
	}
	return c
}

// A throttle is a regulator behind a gravity tank. The tank's level never
// changes, so what the regulator takes away does not either.
type throttle float64

// Loss returns the head taken away, in m, at any flow.
func (t throttle) Loss(float64) (loss, slope float64) { return float64(t), 0 }

// throttled returns the head in m that a gravity tank's regulator takes away,
// when it lets through a pressure of set m at a header rise m above the tank's
// level. It is reckoned as if the lead had no loss, which then comes off what
// it lets through: the safe side.
func throttled(set, rise float64) throttle { return throttle(max(0, -rise-set)) }

// emitters returns the laws of a plan's emitters, with heads for pressures.
func emitters(p *plan.Plan, w water.Water) []emitter.Emitter {
	laws := make([]emitter.Emitter, len(p.Emitters))
	for i := range p.Emitters {
		e := &p.Emitters[i]
		laws[i] = emitter.Emitter{
			Kind:     emitter.Compensating,
			Flow:     e.Flow,
			Nominal:  w.HeadOf(e.Lowest),
			Exponent: e.Exponent,
			Opens:    w.HeadOf(e.Opens),
			Closes:   w.HeadOf(e.Closes),
			Lowest:   w.HeadOf(e.Lowest),
			Highest:  w.HeadOf(e.Highest),
			CV:       e.CV,
		}
		if e.Kind == plan.NonCompensating {
			laws[i].Kind = emitter.NonCompensating
			laws[i].Nominal = w.HeadOf(e.Nominal)
			laws[i].Opens, laws[i].Closes = 0, 0
		}
	}
	return laws
}

// supply adds the source and, where they are present, the pump or tap and the
// filter, all at the level of the source, drawn in a line up to the start of
// the lead. It returns the node that the lead starts from. The header stands
// rise m above the source.
func (l *Layout) supply(start Point, rise float64) int {
	p := l.Plan
	l.Curve = Drive(&p.Supply, l.Network.Water)
	var law network.Law
	if l.Curve != nil {
		law = l.Curve
	} else if p.Supply.Kind == plan.GravityTank && p.Supply.Regulator > 0 {
		law = throttled(l.Network.Water.HeadOf(p.Supply.Regulator), rise)
	}
	devices := 0
	if law != nil {
		devices++
	}
	taken := l.Network.Water.HeadOf(p.Supply.Devices)
	if p.Supply.Sought() {
		taken = 0 // what another kind of supply had
	}
	if taken > 0 {
		devices++
	}
	if p.Filter.Present != 0 {
		devices++
	}
	at := Point{start.X - float64(devices)*Apart, start.Y, 0}
	l.Points = append(l.Points, at)
	l.Network.Nodes = append(l.Network.Nodes, network.Node{Emitter: network.None})

	node := 0
	if law != nil {
		at.X += Apart
		l.begin(Source, 0, NoTube)
		node = l.join(node, at, network.Link{Law: law})
	}
	if taken > 0 {
		at.X += Apart
		l.begin(Devices, 0, NoTube)
		node = l.join(node, at, network.Link{Law: network.Drop(taken)})
	}
	if p.Filter.Present != 0 {
		at.X += Apart
		l.Clean = filter.Filter{
			Rated: p.Filter.Rated,
			Clean: l.Network.Water.HeadOf(p.Filter.Clean),
		}
		l.begin(Filter, 0, NoTube)
		node = l.join(node, at, network.Link{Law: l.Clean})
		l.FilterLink = node - 1
	}
	return node
}

// Still returns the height in m above the source's own level that still water
// stands at in a stretch: what pumps, taps and their regulators give at no flow.
// The regulator of a gravity tank stands before the header, below the lead.
func (l *Layout) Still(st *Stretch) float64 {
	level := l.Network.Head
	if source := &l.Stretches[0]; source.Kind == Source && (l.Curve != nil || st.Rank() != Lead) {
		loss, _ := l.Network.Links[source.Links[0]].Law.Loss(0)
		level -= loss
	}
	return level
}
