package layout

import (
	"math"
	"slices"
	"testing"

	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/network"
)

// In a solved ring the water comes to a plant by the link that brings most, and
// so does that water, back to the source: whatever way the link was laid.
func TestWayFollowsTheMostWater(t *testing.T) {
	p := plan.Default()
	p.Header.Layout = plan.Ring
	p.Rows[1].Plants, p.Rows[1].Spacing = 60, 0.15 // draws from both its ends
	l := New(p)
	sol, err := network.Solve(&l.Network)
	if err != nil {
		t.Fatal(err)
	}
	against := 0
	for _, pl := range l.Plants {
		way := l.Way(pl.Node, sol.Flow)
		follow(t, way, pl.Node)
		for _, hop := range way {
			link := l.Network.Links[hop.Link]
			q := sol.Flow[hop.Link]
			if hop.From != link.From {
				against++
				q = -q
			}
			if min(hop.From, hop.To) != min(link.From, link.To) || max(hop.From, hop.To) != max(link.From, link.To) {
				t.Fatalf("hop %+v is not along its link from %d to %d", hop, link.From, link.To)
			}
			if q <= 0 {
				t.Fatalf("plant %d of row %d: %g m³/s flow along hop %+v", pl.Number, pl.Row+1, q, hop)
			}
			for k, other := range l.Network.Links {
				brings := 0.0
				if other.To == hop.To {
					brings = sol.Flow[k]
				} else if other.From == hop.To {
					brings = -sol.Flow[k]
				}
				if brings > q*(1+1e-12) {
					t.Fatalf("link %d brings %g to node %d, more than hop %+v with %g", k, brings, hop.To, hop, q)
				}
			}
		}
	}
	if against == 0 {
		t.Error("nowhere does water run against a link: the test tests nothing")
	}
}

// Flow is rounding, and leads nowhere, up to a billionth of the greatest; and
// with no more than a drop in a year nothing flows at all.
func TestWayIsNotLedByRounding(t *testing.T) {
	p := plan.Default()
	p.Header.Layout = plan.Ring
	l := New(p)
	// Water runs down row 1 and up row 2 by the far header, and a little down row 2.
	from := func(all, back float64) []Hop {
		flow := make([]float64, len(l.Network.Links))
		for i := range l.Stretches {
			s := &l.Stretches[i]
			for _, k := range s.Links {
				switch {
				case s.Kind == RowOf && s.Index == 1:
					flow[k] = -back
				case s.Kind == FarOf && s.Index == 1:
					flow[k] = back
				case s.Kind == RowOf && s.Index > 1, s.Kind == FarOf, s.Kind == HeaderOf && s.Index > 1:
					flow[k] = 0
				default:
					flow[k] = all
				}
			}
		}
		for i := range l.Stretches { // no water comes by the header to row 2
			if s := &l.Stretches[i]; s.Kind == HeaderOf && s.Index == 1 {
				for _, k := range s.Links {
					flow[k] = 0
				}
			}
		}
		node := l.Plants[45].Node // in the middle of row 2
		way := l.Way(node, flow)
		follow(t, way, node)
		return way
	}
	path := l.Path(l.Plants[45].Node)
	for _, c := range []struct {
		all, back float64
		round     bool // by the far header
	}{{1e-4, 1e-5, true}, {1e-4, 1.5e-13, true}, {1e-4, 0.7e-13, false}, {-1e-4, 0.7e-13, false}, {1e-4, 0, false}, {1.5e-15, 1.5e-15, true}, {0.7e-15, 0.7e-15, false}} {
		if got := !slices.Equal(links(from(c.all, c.back)), path); got != c.round {
			t.Errorf("%g m³/s beside %g lead round the ring: %t, want %t", c.back, c.all, got, c.round)
		}
	}
}

// What still water stands at, above the source: what a pump or a tap gives at no
// flow, with its regulator; and behind the regulator of a tank what that leaves.
func TestStillWater(t *testing.T) {
	still := func(l *Layout, kind StretchKind) float64 {
		for i := range l.Stretches {
			if l.Stretches[i].Kind == kind {
				return l.Still(&l.Stretches[i])
			}
		}
		t.Fatalf("no stretch of kind %d", kind)
		return 0
	}
	check := func(name string, l *Layout, lead, header, row float64) {
		t.Helper()
		if a, b, c := still(l, RunOf), still(l, HeaderOf), still(l, RowOf); math.Abs(a-lead)+math.Abs(b-header)+math.Abs(c-row) > 2e-3 {
			t.Errorf("%s: %g m in the lead, %g in the header, %g in a row; want %g, %g, %g", name, a, b, c, lead, header, row)
		}
	}
	p := plan.Default()
	check("a regulated pump", New(p), 2*headOfBar, 2*headOfBar, 2*headOfBar)
	p.Supply.Regulator = 0
	check("a pump of 34 m", New(p), 34, 34, 34)
	p.Supply.Kind, p.Supply.Static, p.Supply.TapFlow = plan.Mains, 3e5, 1e-3
	check("a tap of 3 bar", New(p), 3*headOfBar, 3*headOfBar, 3*headOfBar)
	// A tank 30 m up, and a regulator of half a bar: 5.11 m above the header are
	// 24.89 m less than the tank.
	p.Supply.Kind = plan.GravityTank
	p.Runs = p.Runs[:1]
	p.Runs[0].Rise = -30
	check("a tank", New(p), 0, 0, 0)
	p.Supply.Regulator = 0.5e5
	check("a tank with a regulator", New(p), 0, headOfBar/2-30, headOfBar/2-30)
	p.Supply.Regulator = 4e5
	check("a tank with a regulator that takes nothing away", New(p), 0, 0, 0)
}

// A metered layout costs two units a node, and so does what is solved of it.
func TestMeteredLayout(t *testing.T) {
	p := plan.Default()
	nodes := len(New(p).Points)
	for units, whole := range map[int]bool{2 * nodes: true, 2*nodes - 1: false} {
		m := work.New(units, nil)
		var l *Layout
		if got := m.Within(func() { l = Metered(p, m) }); got != whole {
			t.Errorf("of %d nodes with %d units: made %t, want %t", nodes, units, got, whole)
		}
		if whole && (len(l.Points) != nodes || m.Within(func() { network.Solve(&l.Network) })) {
			t.Error("solving it costs nothing")
		}
	}
}

// The supply stands in a line up to the start of the lead, one place for each of
// its parts, and the runs follow one another to where the lead ends.
func TestSupplyAndLeadInALine(t *testing.T) {
	p := plan.Default()
	p.Runs = append(p.Runs[:1], p.Runs[0])
	p.Runs[0].Length, p.Runs[1].Length = 7, 4
	p.Runs[0].Rise, p.Runs[1].Rise = 0.5, -0.2
	p.Supply.Devices = 0.5e5
	for _, c := range []struct {
		name            string
		devices, filter bool
		want            []Point
	}{
		{"pump, device, filter", true, true, []Point{{-11 - 3*Apart, 0, 0}, {-11 - 2*Apart, 0, 0}, {-11 - Apart, 0, 0}, {-11, 0, 0}, {-4, 0, 0.5}, {0, 0, 0.3}}},
		{"pump, filter", false, true, []Point{{-11 - 2*Apart, 0, 0}, {-11 - Apart, 0, 0}, {-11, 0, 0}, {-4, 0, 0.5}, {0, 0, 0.3}}},
		{"pump, device", true, false, []Point{{-11 - 2*Apart, 0, 0}, {-11 - Apart, 0, 0}, {-11, 0, 0}, {-4, 0, 0.5}, {0, 0, 0.3}}},
		{"pump", false, false, []Point{{-11 - Apart, 0, 0}, {-11, 0, 0}, {-4, 0, 0.5}, {0, 0, 0.3}}},
	} {
		q := p.Clone()
		if !c.devices {
			q.Supply.Devices = 0
		}
		if !c.filter {
			q.Filter.Present = 0
		}
		l := New(q)
		for i, want := range c.want {
			want.Y = l.across[0]
			if !nearPoint(l.Points[i], want) {
				t.Errorf("%s: node %d at %+v, want %+v", c.name, i, l.Points[i], want)
			}
		}
		if l.Feed != len(c.want)-1 {
			t.Errorf("%s: the lead ends at node %d, want %d", c.name, l.Feed, len(c.want)-1)
		}
	}
}

// A lead to the middle ends at the tee of a row that stands within a millimetre of it.
func TestMiddleIsARowsTeeWhereOneIsThere(t *testing.T) {
	for _, c := range []struct{ off, want float64 }{{0, 3}, {0.0009, 3.0009}, {-0.0009, 2.9991}, {0.0015, 3}, {-0.0015, 3}} {
		p := plan.Default()
		p.Header.Feed = plan.FeedMiddle
		p.Rows = p.Rows[:3]
		p.Rows[0].Gap, p.Rows[1].Gap, p.Rows[2].Gap = 1, 2+c.off, 2-c.off
		if got := New(p).entry(); math.Abs(got.Y-c.want) > 1e-9 || got.X != 0 || got.Z != 0 {
			t.Errorf("with a row %g m off the middle the lead ends at %+v, want at %g m across", c.off, got, c.want)
		}
	}
}

// A header counts as narrower than the lead where it is, and where they meet end
// to end.
func TestNarrower(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(p *plan.Plan)
		want   bool
	}{
		{"narrower", func(p *plan.Plan) {}, true},
		{"of the lead's tubing", func(p *plan.Plan) { p.Header.Tube, p.Header.Bore = p.Runs[0].Tube, p.Runs[0].Bore }, false},
		{"as wide", func(p *plan.Plan) {
			p.Runs[0].Tube, p.Runs[0].Bore = 0, TubeOf(p.Header.Tube, p.Header.Bore).Bore
		}, false},
		{"fed between its ends", func(p *plan.Plan) { p.Header.Feed = plan.FeedMiddle }, false},
		{"no header", func(p *plan.Plan) { p.Header.Layout = plan.OneLine }, false},
		{"one row", func(p *plan.Plan) { p.Rows = p.Rows[:1] }, false},
	} {
		p := plan.Default()
		p.Header.Tube = 1
		c.change(p)
		l := New(p)
		lead := l.tube(p.Runs[0].Tube, p.Runs[0].Bore)
		if got := l.narrower(lead); (got.Bore > 0) != c.want {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
}

// A supply that is no supply drives nothing, and says so by nil.
func TestDriveOfNothing(t *testing.T) {
	p := plan.Default()
	w := New(p).Network.Water
	for name, s := range map[string]plan.Supply{
		"one point": {Kind: plan.PumpPoints, Points: p.Supply.Points[:1], Regulator: 1e5}, "no head": {Kind: plan.PumpTwo}, "no tap": {Kind: plan.Mains}, "a tank": {Kind: plan.GravityTank, Regulator: 1e5},
	} {
		if c := Drive(&s, w); c != nil {
			t.Errorf("%s: %+v", name, c)
		}
	}
}

// The regulator of a tank takes away the same from any flow, and nothing where
// the tank does not stand high enough.
func TestThrottle(t *testing.T) {
	for _, c := range []struct{ set, rise, want float64 }{{5, -30, 25}, {5, -4, 0}, {5, 3, 0}} {
		got := throttled(c.set, c.rise)
		if loss, slope := got.Loss(1e-3); loss != c.want || slope != 0 {
			t.Errorf("set to %g m at %g m of rise: %g m, slope %g, want %g", c.set, c.rise, loss, slope, c.want)
		}
	}
}

// A filter that is the first link can be fouled; without one the network is the
// same; and a zone's network has no emitters of the others.
func TestFouledAndZone(t *testing.T) {
	p := plan.Default()
	p.Supply.Kind, p.Supply.Regulator, p.Supply.Devices, p.Runs[0].Rise = plan.GravityTank, 0, 0, -10
	p.Filter.Present = 1
	l := New(p)
	if l.FilterLink != 0 {
		t.Fatalf("the filter is link %d", l.FilterLink)
	}
	clean, _ := l.Network.Links[0].Law.Loss(p.Filter.Rated)
	n := l.Fouled(&l.Network, 2)
	if dirty, _ := n.Links[0].Law.Loss(p.Filter.Rated); math.Abs(dirty-clean-2) > 1e-9 {
		t.Errorf("fouled by 2 m it loses %g m instead of %g", dirty, clean)
	}
	p.Filter.Present = 0
	if l := New(p); l.Fouled(&l.Network, 2) != &l.Network {
		t.Error("without a filter another network is fouled")
	}
	p.Rows[1].Zone = 2
	l = New(p)
	z := l.Zone(2)
	for _, pl := range l.Plants {
		node := z.Nodes[pl.Node]
		if stands := pl.Row == 1; stands != (node.Emitter != network.None) || stands != (node.Count > 0) {
			t.Fatalf("row %d in zone 2: %+v", pl.Row+1, node)
		}
	}
}

// The far header of a ring is as long as the near one, piece by piece the gap
// between two rows; and every row's tubing reaches it, with the way into its tee.
func TestFarHeaderTiesTheRows(t *testing.T) {
	p := plan.Default()
	p.Header.Layout = plan.Ring
	p.Rows[1].Gap, p.Rows[2].Gap, p.Rows[3].Gap = 0.7, 1.3, 2.1
	p.Rows[2].Plants -= 5 // shorter than the others
	l := New(p)
	far, longest := 0.0, 0.0
	for i := range p.Rows {
		longest = max(longest, p.Rows[i].Length())
	}
	for i := range l.Stretches {
		st := &l.Stretches[i]
		switch st.Kind {
		case FarOf:
			far += st.Length
			link := &l.Network.Links[st.Links[0]]
			if want := p.Rows[st.Index].Gap; !near(st.Length, want) || !near(link.Length, want) || len(st.Links) != 1 || link.From != l.Ends[st.Index-1] || link.To != l.Ends[st.Index] {
				t.Errorf("the far header to row %d: %+v, its link %+v, want %g m", st.Index+1, st, link, want)
			}
		case RowOf:
			if !near(st.Length, longest) {
				t.Errorf("row %d is %g m long, want %g", st.Index+1, st.Length, longest)
			}
			// Into the tee at either end: the same coefficients.
			first, last := &l.Network.Links[st.Links[0]], &l.Network.Links[st.Links[len(st.Links)-1]]
			if first.K <= 0 || !near(last.K, first.K) {
				t.Errorf("row %d pays %g at its tee, and %g at the far one", st.Index+1, first.K, last.K)
			}
		}
	}
	if !near(far, 0.7+1.3+2.1) {
		t.Errorf("the far header is %g m long", far)
	}
}
