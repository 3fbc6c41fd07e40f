package layout

import (
	"math"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/network"
)

// The solver takes every layout, and what it finds is what the plan asks of
// the water: mass in balance, no more than the supply can give.
func TestEveryLayoutSolves(t *testing.T) {
	forRandom(t, func(t *testing.T, seed uint64, l *Layout) {
		for _, z := range l.Zones {
			s, err := network.Solve(l.Zone(z))
			if err != nil {
				t.Fatal(err)
			}
			out := 0.0
			for _, pl := range l.Plants {
				if s.Out[pl.Node] != 0 && l.ZoneOf(pl.Row) != z {
					t.Fatalf("zone %d waters row %d", z, pl.Row+1)
				}
				out += s.Out[pl.Node]
			}
			if !(math.Abs(out-s.Total) <= 1e-9*math.Max(s.Total, 1e-9)) {
				t.Fatalf("zone %d: plants get %g, the source gives %g", z, out, s.Total)
			}
		}
	})
}

// A layout turned round gives the same water to the same plants.
func TestMiddleFeedWatersBothSidesAlike(t *testing.T) {
	p := plan.Default()
	p.Header.Feed = plan.FeedMiddle
	p.Emitters[0].Kind, p.Emitters[0].Exponent = plan.NonCompensating, 0.5
	plan.SectionNamed("rows").Resize(p, 5)
	l := New(p)
	s, err := network.Solve(l.Zone(1))
	if err != nil {
		t.Fatal(err)
	}
	for i, pl := range l.Plants[:60] {
		mirror := l.Plants[(4-pl.Row)*30+pl.Number-1]
		a, b := s.Out[pl.Node], s.Out[mirror.Node]
		if !(a > 0) || math.Abs(a-b) > 1e-9*a {
			t.Errorf("plant %d gets %g, the one across %g", i, a, b)
		}
	}
}

// A regulator at the tap holds its pressure, and the filter and the lead take
// theirs from it; one behind a tank never lets through more than it is set to.
func TestRegulatedHeads(t *testing.T) {
	p := plan.Default()
	p.Supply.Kind, p.Supply.Static, p.Supply.Regulator = plan.Mains, 4e5, 2e5
	l := New(p)
	s, err := network.Solve(l.Zone(1))
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(s.Head[1]-2*headOfBar) > 0.01 {
		t.Errorf("the regulator holds %g m, want 2 bar", s.Head[1])
	}
	if !(s.Head[2] < s.Head[1] && s.Head[3] < s.Head[2]) {
		t.Errorf("heads %v do not fall along the lead", s.Head[:4])
	}
	p.Supply.Kind, p.Runs[0].Rise = plan.GravityTank, -40
	l = New(p)
	if s, err = network.Solve(l.Zone(1)); err != nil {
		t.Fatal(err)
	}
	at := s.Head[l.Feed] - l.Points[l.Feed].Z
	if at > 2*headOfBar || at < 2*headOfBar-1 {
		t.Errorf("the header has %g m behind a tank's regulator, want 2 bar less what the lead loses", at)
	}
}
