package sheet

import (
	"math"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/design"
)

// What designs come to, by hand. Whether one is cheaper is as the two costs are
// printed: the list beside says by how much.
func TestConcluded(t *testing.T) {
	carried := func(cost float64) []Best { return []Best{{Design: design.Design{Cost: cost, Present: true}}} }
	for _, tt := range []struct {
		what    string
		supply  int
		verdict Verdict
		now     float64
		best    []Best
		want    Conclusion
	}{
		{"none", plan.PumpTwo, No, 10, nil, NoneServes},
		{"a pump of which only the power is known", plan.PumpPower, Yes, 10, []Best{{}}, SoughtPump},
		{"a pump that is yet to be bought", plan.PumpWanted, No, 10, []Best{{}}, SoughtPump},
		{"a regulator set anew", plan.Mains, No, 10, []Best{{Regulator: 1e5}}, AnotherRegulator},
		{"another pump", plan.PumpTwo, Yes, 10, []Best{{}}, AnotherSupply},
		{"no answer Yes, and a cheaper design", plan.PumpTwo, No, 10, carried(8), SomeServes},
		{"no answer Yes, and a dearer design", plan.PumpTwo, Nearly, 10, carried(12), SomeServes},
		{"dearer", plan.PumpTwo, Yes, 10, carried(10.01), NoneCheaper},
		{"as dear", plan.PumpTwo, Yes, 10, carried(10), NoneCheaper},
		{"cheaper", plan.PumpTwo, Yes, 10, carried(9.99), SomeCheaper},
		{"printed as 10.00 and 10.01", plan.PumpTwo, Yes, 10.006, carried(10.004), SomeCheaper},
		{"both printed as 10.01", plan.PumpTwo, Yes, 10.0149, carried(10.0051), NoneCheaper},
	} {
		p := plan.Default()
		p.Supply.Kind = tt.supply
		s := &Sheet{Plan: p, Verdict: tt.verdict, Designs: &Designs{Best: tt.best}}
		s.Designs.Now = tt.now
		if p.Supply.Sought() {
			s.Wanted = &Wanted{}
		}
		if got := s.Concluded(); got != tt.want {
			t.Errorf("%s: %d, want %d", tt.what, got, tt.want)
		}
	}
	if got := (&Sheet{Plan: plan.Default()}).Concluded(); got != NoneServes {
		t.Errorf("not looked for: %d", got)
	}
}

// The difference of two costs is that of their hundredths. The tolerance is what
// two roundings of a double of 1000 leave.
func TestDearerBy(t *testing.T) {
	for _, tt := range []struct{ now, cost, want float64 }{
		{10, 10, 0}, {10.006, 10.004, -0.01}, {10.0051, 10.0149, 0}, {10, 12.5, 2.5}, {1000, 0.1, -999.9},
	} {
		if got := DearerBy(tt.now, tt.cost); math.Abs(got-tt.want) > 1e-12 {
			t.Errorf("%g after %g: %g more, want %g", tt.cost, tt.now, got, tt.want)
		}
	}
}
