package sheet

import (
	"math"
	"slices"

	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/works/design"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/limit"
	"evenrow/wasm/works/network"
)

// duty returns the head in m above its own level, and the flow in m³/s, that
// the supply must give so that in every zone every emitter has its lowest and
// the reserve, also once the filter is due for cleaning, and no height on the
// way draws air. It is not ok where
// that takes more than design.MostHead. It looks once.
func (t *trial) duty() (head, flow float64, ok bool) {
	if !t.sought {
		t.sought = true
		t.head, t.flow, t.within = duty(t.s, 0, layout.Lead)
	}
	return t.head, t.flow, t.within
}

// duty begins with the zone that lacks most, so that for most others one look
// says that its head is enough for them too.
//
// It looks from the head given on, and for air from the given rank of tubing on.
func duty(s *Sheet, from float64, rank int) (head, flow float64, ok bool) {
	head = from
	l := s.Layout
	fouling := l.Network.Water.HeadOf(s.Plan.Filter.Fouling)
	for i := range s.Zones {
		zone := s.Zones[(s.Critical+i)%len(s.Zones)].Zone
		var q float64
		if head, q, ok = dutyWith(s, zone, 0, limit.MarginOf(s.Plan, false).At, head, rank); !ok {
			return 0, 0, false
		}
		flow = max(flow, q)
		if l.FilterLink >= 0 && fouling > 0 {
			if head, q, ok = dutyWith(s, zone, fouling, limit.MarginOf(s.Plan, true).At, head, rank); !ok {
				return 0, 0, false
			}
			flow = max(flow, q)
		}
	}
	return head, flow, true
}

// lowestOnWay returns the least head in m above the tubing between the source
// and the rows, of the given rank and the thinner ones. Where it is negative the
// tubing draws air.
func lowestOnWay(l *layout.Layout, sol *network.Solution, rank int) float64 {
	least := math.Inf(1)
	for i := range l.Stretches {
		st := &l.Stretches[i]
		if st.Rank() < rank {
			continue
		}
		switch st.Kind {
		case layout.RunOf, layout.HeaderOf, layout.Between:
			node := l.Network.Links[st.Links[len(st.Links)-1]].To
			least = min(least, sol.Head[node]-l.Network.Nodes[node].Z)
		}
	}
	return least
}

// dutyWith returns the least head, of from or more, that one zone needs with a
// filter that loses extra m more at its rated flow and with a reserve in m, and
// the zone's flow at it. What the worst emitter lacks falls steadily as the
// head rises, but along a bent line where the flow rises too, so it is searched
// by secants between a head that is too low and one that is enough.
func dutyWith(s *Sheet, zone int, extra, reserve, from float64, rank int) (head, flow float64, ok bool) {
	const near = 1e-3 // m
	l := s.Layout
	open := slices.Repeat([]bool{true}, len(l.Points))
	lacks := func(head float64) float64 {
		n := l.Fouled(held(l, zone, head), extra)
		sol, err := network.Hold(n, open)
		if err != nil {
			return math.NaN()
		}
		flow = sol.Total
		least, _ := margin(l, n, sol)
		return max(reserve-least, -lowestOnWay(l, sol, rank))
	}
	lo, hi := from, float64(design.MostHead)
	below := lacks(lo)
	if below < near {
		return lo, flow, true
	}
	above := lacks(hi)
	if !(above <= 0) {
		return 0, 0, false
	}
	b := numeric.Bracket{Lo: lo, Hi: hi, AtLo: below, AtHi: above}
	for range 60 {
		head = b.Secant()
		now := lacks(head)
		if math.Abs(now) < near {
			return head, flow, true
		}
		if math.IsNaN(now) {
			return 0, 0, false // the flows did not settle
		}
		b.Narrow(head, now)
	}
	return 0, 0, false
}
