package startup

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// slope is one row of 30 plants that rises 1 in 10 from its start, with no lead
// and a tap before it, and emitters that close at a head.
func slope(closes float64) *plan.Plan {
	p := plan.Default()
	p.Supply.Kind, p.Supply.Regulator = plan.Mains, 0
	p.Runs[0].Length, p.Runs[0].Rise = 0.1, 0
	p.Filter.Present = 0
	p.Rows = p.Rows[:1]
	p.Rows[0].Slope = 0.1
	p.Emitters[0].Closes = 998.2 * 9.80665 * closes
	p.Emitters[0].Opens = max(p.Emitters[0].Opens, p.Emitters[0].Closes)
	return p
}

// The row's water stands in the end as high above its lowest emitter as the
// closing head: what stood higher is gone. By the geometry alone.
func TestSlopeByHand(t *testing.T) {
	for _, closes := range []float64{0, 0.1, 0.4, 0.8, 1.2} {
		l, s := of(t, slope(closes))
		r := &l.Plan.Rows[0]
		first := l.Plants[0].At.Z
		top := l.Points[l.Ends[0]].Z
		want := pipe.Volume(max(top-(first+closes), 0)/r.Slope, l.Tubes[1].Bore)
		d := &s.Zones[0].Drain
		// The density of the water at 20 °C has four digits here.
		if math.Abs(d.Volume-want) > 1e-4*want {
			t.Errorf("closing at %g m: %g m³, want %g m³", closes, d.Volume, want)
		}
		if want > 0 && math.Abs(d.Prevents-(top-first)) > 1e-9 {
			t.Errorf("closing at %g m would hold all, want %g m", d.Prevents, top-first)
		}
		if want > 0 && d.Most != 0 {
			t.Errorf("plant %d gets most, not the lowest", d.Most)
		}
		if want > 0 {
			for i := 1; i < len(d.Extra); i++ {
				if d.Extra[i] > d.Extra[i-1] {
					t.Errorf("plant %d gets more than the one below it", i+1)
				}
			}
		}
	}
}

// A row that falls and rises again keeps its water behind the crest.
func TestWaterStaysBehindACrest(t *testing.T) {
	p := slope(0)
	p.Header.Layout = plan.OneLine
	plan.SectionNamed("rows").Resize(p, 3)
	p.Rows[0].Slope, p.Rows[1].Slope, p.Rows[2].Slope = 0, 0.1, 0
	p.Rows[2].Height = 3 // the piece to row 3 climbs to above row 2's end
	p.Rows[2].Emitter = 0
	l, s := of(t, p)
	sol := s.Zones[0].States.Below
	d := drainOf(l, 1, sol)
	// Only what stands above row 1 leaves by it; rows 2 and 3 drain into it, as
	// nothing lies lower between.
	want := 0.0
	for k := range l.Network.Links {
		link := &l.Network.Links[k]
		if link.Law == nil && (l.Points[link.From].Z > 0 || l.Points[link.To].Z > 0) {
			want += pipe.Volume(link.Length, link.Bore)
		}
	}
	if math.Abs(d.Volume-want) > 0.01*want {
		t.Errorf("%g m³, want about %g m³", d.Volume, want)
	}
	// With a crest before row 1's emitters, and only row 1 open, row 2 in a
	// valley stays full.
	p.Rows[1].Slope, p.Rows[1].Height, p.Rows[2].Height = 0, -1, 0
	l, _ = of(t, p)
	open := &network.Solution{Head: slices.Repeat([]float64{5}, len(l.Points)), Open: make([]bool, len(l.Points)), Total: 1}
	for i := range l.Plants {
		open.Open[l.Plants[i].Node] = l.Plants[i].Row == 0
	}
	if d := drainOf(l, 1, open); d.Volume != 0 {
		t.Errorf("%g m³ leave a valley upwards", d.Volume)
	}
}

// A pump without a check valve lets the lead run back: all that stands above
// the tank's water, and with a check valve nothing.
func TestLeadRunsBack(t *testing.T) {
	p := plan.Default()
	l, s := of(t, p)
	r := &p.Runs[0]
	if got, want := s.Zones[0].Drain.Back, pipe.Volume(r.Length, l.Tubes[0].Bore); !(got >= want*(1-1e-9)) {
		t.Errorf("%g m³ run back, and the lead holds %g m³", got, want)
	}
	p.Runs[0].Checks = 1
	if _, s := of(t, p); s.Zones[0].Drain.Back != 0 || s.Zones[0].Drain.Siphon {
		t.Errorf("%g m³ run back through a check valve", s.Zones[0].Drain.Back)
	}
	p.Runs[0].Checks, p.Runs[0].Rise, p.Emitters[0].Closes = 0, -2, 0
	if _, s := of(t, p); !s.Zones[0].Drain.Siphon {
		t.Error("a tank above open emitters is no siphon")
	}
}

// Emitters that close at a higher head never let more out, and at the head that
// is said to hold all, nothing.
func TestHigherClosingDrainsNoMore(t *testing.T) {
	drained := 0
	for seed := range uint64(150) {
		r := rand.New(rand.NewPCG(seed, 31))
		p := random(r)
		for i := range p.Emitters {
			p.Emitters[i].Kind = plan.Compensating
			p.Emitters[i].Exponent = 0
		}
		l := layout.New(p)
		for _, zone := range l.Zones {
			sol, err := network.Solve(l.Zone(zone))
			if err != nil {
				t.Fatal(err)
			}
			for i := range sol.Open {
				sol.Open[i] = true
			}
			last := math.Inf(1)
			holds := 0.0
			for _, h := range []float64{0, 0.2, 0.7, 2, 5} {
				for i := range l.Network.Emitters {
					l.Network.Emitters[i].Closes = h
				}
				d := drainOf(l, zone, sol)
				if d.Volume > last*(1+1e-12) {
					t.Errorf("seed %d: closing at %g m lets %g m³ out, at less %g", seed, h, d.Volume, last)
				}
				last = d.Volume
				if h == 0 {
					holds = d.Prevents
				}
				if d.Volume > 0 {
					drained++
				}
			}
			for i := range l.Network.Emitters {
				l.Network.Emitters[i].Closes = holds + 1e-9
			}
			if d := drainOf(l, zone, sol); d.Volume > 1e-12 {
				t.Errorf("seed %d: closing at %g m holds all, but %g m³ leave", seed, holds, d.Volume)
			}
		}
	}
	if drained < 100 {
		t.Errorf("only %d times anything runs out", drained)
	}
}
