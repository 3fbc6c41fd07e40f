package sheet

import (
	"math"
	"slices"

	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/ends"
	"evenrow/wasm/trade/filter"
	"evenrow/wasm/trade/pump"
	"evenrow/wasm/works/chain"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/limit"
	"evenrow/wasm/works/network"
)

// smallTank is the time in s that a tank should last at least: our own choice.
const smallTank = 3600

// find adds a finding, or widens the one of its kind from another zone.
func (s *Sheet) find(f Finding) {
	for i := range s.Findings {
		old := &s.Findings[i]
		if old.Kind != f.Kind {
			continue
		}
		f.Count += old.Count
		if math.Abs(f.Value-f.Limit) > math.Abs(old.Value-old.Limit) {
			*old = f
		}
		old.Count = f.Count
		return
	}
	s.Findings = append(s.Findings, f)
}

// sortFindings puts the gravest findings first and takes the verdict from the
// first.
func (s *Sheet) sortFindings() {
	f := s.Findings // one of each kind at most
	numeric.Sort(len(f), func(i, j int) bool {
		a, b := Kinds[f[i].Kind].Verdict, Kinds[f[j].Kind].Verdict
		return a > b || a == b && f[i].Kind < f[j].Kind
	}, func(i, j int) { f[i], f[j] = f[j], f[i] })
	if len(s.Findings) > 0 {
		s.Verdict = Kinds[s.Findings[0].Kind].Verdict
	}
}

// judgeZone finds what is wrong with one zone's water.
func (s *Sheet) judgeZone(z *ZoneResult) {
	s.judgeEmitters(z)
	s.judgeHeights(z)
	for k := range Kinds {
		if Kinds[k].Held == nil {
			continue
		}
		if m := Kinds[k].Held(s, z); m.Told && m.Bound.Broken(m.Value) {
			s.find(Finding{Kind: FindingKind(k), Row: -1, Value: m.Value, Limit: m.Bound.At, Zone: z.Zone})
		}
	}
	if t := s.Plan.Supply.Tank; s.Plan.Supply.Kind != plan.Mains && z.Flow > 0 && t < smallTank*z.Flow {
		s.find(Finding{Kind: SmallTank, Row: -1, Value: t / z.Flow, Limit: smallTank, Zone: z.Zone})
	}
}

// MoreShut says whether more emitters may stay shut than are counted: the flows
// are those of lines that are full, and on its way the water may not get over a
// height.
func (s *Sheet) MoreShut() bool {
	return slices.ContainsFunc(s.Findings, func(f Finding) bool { return f.Kind == TooHigh || f.Kind == Suction })
}

// judgeEmitters finds the zone's emitters that are shut or out of range.
func (s *Sheet) judgeEmitters(z *ZoneResult) {
	l := s.Layout
	for i := range l.Plants {
		p := &l.Plants[i]
		if l.ZoneOf(p.Row) != z.Zone {
			continue
		}
		node := &l.Network.Nodes[p.Node]
		e := &l.Network.Emitters[node.Emitter]
		h := z.Solution.Head[p.Node] - node.Z
		f := Finding{Count: int(node.Count), Row: p.Row, Plant: p.Number, Value: h, Zone: z.Zone}
		switch open := z.Solution.Open[p.Node]; stateOf(e, open, h) {
		case Shut:
			if open || h < e.Opens {
				f.Kind, f.Limit = NeverOpen, e.Opens
				s.findBest(f)
				continue
			}
			f.Kind, f.Limit = Unsteady, e.Closes
		case Below:
			f.Kind, f.Limit = BelowRange, e.Lowest
		case Above:
			f.Kind, f.Limit = AboveRange, e.Highest
		default:
			continue
		}
		s.find(f)
	}
}

// judgeHeights finds where the way to the emitters climbs higher than the water.
// Solved as if all tubing were full, water may run over a height that it never
// got up to, and be drawn over one where every joint lets in air.
func (s *Sheet) judgeHeights(z *ZoneResult) {
	l := s.Layout
	row := layout.Stretch{Kind: layout.RowOf}
	for i := range l.Stretches {
		st := &l.Stretches[i]
		switch st.Kind {
		case layout.RowOf:
			// In one line the water goes on from the end of each row but the last.
			if l.Plan.Header.Layout != plan.OneLine || st.Index == len(l.Plan.Rows)-1 {
				continue
			}
			fallthrough
		case layout.RunOf, layout.HeaderOf, layout.Between:
			node := l.Network.Links[st.Links[len(st.Links)-1]].To
			f := Finding{Row: -1, Zone: z.Zone, Value: l.Still(st) - l.Network.Nodes[node].Z}
			if f.Value > 0 {
				// What a tank's regulator takes away comes back in the lead.
				f.Kind = Suction
				f.Value = z.Solution.Head[node] - l.Network.Nodes[node].Z + l.Still(st) - l.Still(&row)
			} else {
				f.Kind = TooHigh
			}
			if f.Value < -rounding || f.Kind == TooHigh {
				s.find(f)
			}
		}
	}
}

// rounding is what heads in m, and shares of flows, are not told apart by.
const rounding = 1e-6

// findBest adds a finding that keeps the value nearest to its limit: of the
// emitters that never open, the one that comes closest.
func (s *Sheet) findBest(f Finding) {
	for i := range s.Findings {
		if old := &s.Findings[i]; old.Kind == f.Kind {
			f.Count += old.Count
			if f.Value-f.Limit > old.Value-old.Limit {
				*old = f
			}
			old.Count = f.Count
			return
		}
	}
	s.Findings = append(s.Findings, f)
}

// judgePlan finds what is wrong whatever the flows are.
func (s *Sheet) judgePlan() {
	p := s.Plan
	s.judgeLabel()
	largest := filter.LargestOpening(smallestPassage(p), filter.Loosest)
	switch {
	case p.Filter.Present == 0:
		s.find(Finding{Kind: NoFilter, Row: -1})
	case p.Filter.Opening > largest:
		s.find(Finding{Kind: CoarseFilter, Row: -1, Value: p.Filter.Opening, Limit: largest})
	}
	if p.Supply.Kind == plan.Mains && p.Supply.Devices == 0 {
		s.find(Finding{Kind: NoBackflow, Row: -1})
	}
	s.judgeChain()
	s.judgePressure()
	if w := s.Wanted; w != nil && !w.Does && s.watered() {
		s.find(Finding{Kind: NarrowPump, Row: -1, Value: w.Least})
	}
	for i := range p.Rows {
		s.judgeRow(i)
	}
	s.judgeGround()
}

// judgeLabel holds what stands on a pump's label against each other, and against
// what the pump is to do.
func (s *Sheet) judgeLabel() {
	rho := s.Layout.Network.Water.Density
	switch p := &s.Plan.Supply; p.Kind {
	case plan.PumpTwo:
		most := pump.MostToWater * p.Label
		if best := pump.BestOfTwo(rho, p.ShutOff, p.MaxFlow); p.Label != plan.Unset && best > most {
			s.find(Finding{Kind: LabelFigures, Row: -1, Value: best, Limit: most})
		}
	case plan.PumpPower:
		s.find(Finding{Kind: PowerOnly, Row: -1, Value: p.Power})
		most := pump.MostToWater * p.Power
		if w := s.Wanted; w.Does && pump.HydraulicPower(rho, w.Flow, w.Least) > most {
			s.find(Finding{Kind: LabelShort, Row: -1, Value: pump.HydraulicPower(rho, w.Flow, w.Least), Limit: most})
		}
	}
}

// FlowOfAnHour says whether the figures on a label can all be so if the flow is that
// of an hour, which was taken for one of a minute.
func (s *Sheet) FlowOfAnHour() bool {
	p := &s.Plan.Supply
	return pump.BestOfTwo(s.Layout.Network.Water.Density, p.ShutOff, p.MaxFlow/60) <= pump.MostToWater*p.Label
}

// smallestPassage returns the smallest passage of the emitters in use, in m.
func smallestPassage(p *plan.Plan) float64 {
	least := math.Inf(1)
	for i := range p.Rows {
		least = min(least, p.Emitters[p.Rows[i].Emitter].Passage)
	}
	return least
}

// judgePressure compares the pressure with every valve and emitter shut, which
// is the highest that the tubing ever sees, with what it may carry in the sun.
func (s *Sheet) judgePressure() {
	l := s.Layout
	for i := range l.Stretches {
		st := &l.Stretches[i]
		if st.Tube == layout.NoTube {
			continue
		}
		rating := limit.RatingOf(l.Tubes[st.Tube].Entry, l.Network.Water)
		for _, k := range st.Links {
			link := &l.Network.Links[k]
			if h := l.Still(st) - min(l.Network.Nodes[link.From].Z, l.Network.Nodes[link.To].Z); rating.Broken(h) {
				s.find(Finding{Kind: OverRating, Row: -1, Value: h, Limit: rating.At})
			}
		}
	}
}

// judgeRow compares a row with the ground that it stands on.
func (s *Sheet) judgeRow(row int) {
	l, place := s.Layout, &s.Plan.Place
	for i := range l.Plants {
		p := &l.Plants[i]
		if p.Row != row {
			continue
		}
		const slack = 1e-6 // rounding of sums of spacings
		switch {
		case p.At.X > place.Length+slack || p.At.X < -slack:
			s.find(Finding{Kind: OutsidePlace, Count: 1, Row: row, Plant: p.Number, Value: p.At.X, Limit: place.Length})
		case p.At.Y > place.Width+slack:
			s.find(Finding{Kind: OutsidePlace, Count: 1, Row: row, Plant: p.Number, Value: p.At.Y, Limit: place.Width})
		}
	}
}

// judgeGround compares the ground between and around the rows with what is to be
// free of it.
func (s *Sheet) judgeGround() {
	place := &s.Plan.Place
	if place.Path <= 0 && place.Margin <= 0 && place.Door <= 0 {
		return
	}
	const slack = 1e-6 // rounding of sums of gaps
	beds := s.Layout.Beds()
	for i := range beds {
		b := &beds[i]
		if free, before, ok := layout.Walk(beds, i); ok && free < place.Path-slack {
			s.find(Finding{Kind: NarrowPath, Count: 1, Row: i, Base: before, Value: free, Limit: place.Path})
		}
		if near := b.Wall(place.Length, place.Width); place.Margin > 0 && near < place.Margin-slack {
			s.find(Finding{Kind: NearWall, Count: 1, Row: i, Value: near, Limit: place.Margin})
		}
		if b.InDoor(place.Door, place.Width) {
			s.find(Finding{Kind: InTheDoor, Count: 1, Row: i, Value: b.X0, Limit: place.Door})
		}
	}
}

// held returns the zone's network with a source that gives the same head in m,
// above its own level, at any flow.
func held(l *layout.Layout, zone int, head float64) *network.Network {
	n := l.Zone(zone)
	if l.Stretches[0].Kind == layout.Source {
		n.Links = slices.Clone(n.Links)
		n.Links[l.Stretches[0].Links[0]].Law = constant(head)
	} else {
		n.Head = head
	}
	return n
}

// constant is a source of one head.
type constant float64

// Loss returns the opposite of the head, whatever the flow.
func (c constant) Loss(float64) (loss, slope float64) { return -float64(c), 0 }

// judgeChain finds what the parts between the supply and the tubing do not do.
func (s *Sheet) judgeChain() {
	c := s.Layout.Chains
	if g, _ := c.Missing(); g != nil || c.Broken() > 0 {
		s.find(Finding{Kind: NoChain, Row: -1})
	}
	for _, w := range [...]*chain.Way{&c.Supply, &c.Header} {
		for i := range w.Gaps {
			if rule, weak := w.Gaps[i].Weakest(); weak {
				s.find(Finding{Kind: WeakJoint, Row: -1, Value: c.Stands(w, &w.Gaps[i]), Limit: ends.Seals[rule].Pressure})
			}
		}
	}
}
