package sheet

import (
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/layout"
)

// Each rank of tubing has its own speed, and only lead and header a limit.
func TestPace(t *testing.T) {
	s := &Sheet{Plan: plan.Default()}
	s.Plan.Limits.Speed = 1.5
	for _, tt := range []struct {
		rank       int
		lead, main float64
		want       float64
		is         Pace
	}{
		{layout.Lead, 1.5, 2, 1.5, SlowEnough},
		{layout.Lead, 1.6, 1, 1.6, TooFast},
		{layout.Main, 2, 1.5, 1.5, SlowEnough},
		{layout.Main, 1, 1.6, 1.6, TooFast},
		{layout.Lateral, 2, 2, 3, NoLimit},
	} {
		if v, is := s.Pace(&ZoneResult{LeadSpeed: tt.lead, HeaderSpeed: tt.main, RowSpeed: 3}, tt.rank); v != tt.want || is != tt.is {
			t.Errorf("rank %d of %g and %g m/s: %g, %d, want %g, %d", tt.rank, tt.lead, tt.main, v, is, tt.want, tt.is)
		}
	}
}
