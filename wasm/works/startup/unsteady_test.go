package startup

import (
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/network"
)

// Of the two states the one of which there are more; how the pressure builds
// slowly does not count.
func TestUnsteady(t *testing.T) {
	for _, tt := range []struct{ fewest, below, above, want int }{
		{0, 0, 0, 0}, {0, 3, 0, 3}, {0, 0, 3, 3}, {0, 3, 5, 5}, {0, 5, 3, 5}, {0, 4, 4, 4}, {9, 0, 0, 0}, {9, 1, 2, 2},
	} {
		s := States{Fewest: &network.Solution{Unsteady: tt.fewest}, Below: &network.Solution{Unsteady: tt.below}, Above: &network.Solution{Unsteady: tt.above}}
		if got := s.Unsteady(); got != tt.want {
			t.Errorf("%+v: %d", tt, got)
		}
	}
}

// Those at the edge are shut at a head that opens them: counted so in each state of
// two long rows on a tap, which is enough for an emitter by itself and not for all.
func TestUnsteadyAreShutAtTheirOpeningHead(t *testing.T) {
	some := 0
	for static := 0.7e5; static < 1.2e5; static += 0.05e5 {
		p := plan.Default()
		p.Supply.Kind, p.Supply.Static, p.Supply.TapFlow = plan.Mains, static, 2e-3
		p.Rows, p.Place.Length = p.Rows[:2], 130
		for i := range p.Rows {
			p.Rows[i].Plants = 367
		}
		l, s := of(t, p)
		n, st := l.Zone(1), &s.Zones[0].States
		edge := func(sol *network.Solution) (count int) {
			for k, node := range n.Nodes {
				if node.Emitter != network.None && !sol.Open[k] && sol.Head[k]-node.Z >= n.Emitters[node.Emitter].Opens {
					count++
				}
			}
			return count
		}
		below, above := edge(st.Below), edge(st.Above)
		want := below
		if above > below {
			want = above
		}
		if want > 0 {
			some++
		}
		if got := st.Unsteady(); got != want {
			t.Errorf("%g Pa: %d, but %d and %d are shut at a head that opens them", static, got, below, above)
		}
	}
	t.Logf("%d taps have some", some)
	if some < 3 {
		t.Errorf("only %d taps have some", some)
	}
}
