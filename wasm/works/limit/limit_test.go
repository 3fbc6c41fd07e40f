package limit

import (
	"math"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/pump"
	"evenrow/wasm/trade/water"
)

func TestEveryLimitHasItsName(t *testing.T) {
	named := map[string]Limit{}
	for l := range Limit(Limits) {
		name := Names[l]
		if name == "" {
			t.Errorf("limit %d, after %q, has no row in Names", l, Names[max(l, 1)-1])
		}
		if other, there := named[name]; there {
			t.Errorf("limits %d and %d are both called %q", other, l, name)
		}
		named[name] = l
		if s := l.Alone(); s == 0 || !s.Has(l) || s.Has((l+1)%Limits) {
			t.Errorf("the set of limit %d alone is %08b", l, s)
		}
	}
}

// A bound is broken beyond its figure, not at it, and what is left to it is 0
// there, falls steadily, and is negative on the wrong side alone.
func TestBounds(t *testing.T) {
	p := plan.Default()
	p.Limits.Reserve, p.Limits.Evenness, p.Limits.Speed = 1.5, 0.9, 2
	curve, err := pump.ByTwo(20, 1e-3)
	if err != nil {
		t.Fatal(err)
	}
	w := water.Water{Density: 1000}
	for _, tt := range []struct {
		what  string
		b     Bound
		at    float64
		worse float64 // on the wrong side
	}{
		{"a reserve", MarginOf(p, false), 1.5, 1.4},
		{"none once the filter is due", MarginOf(p, true), 0, -0.1},
		{"a speed", SpeedOf(p), 2, 2.1},
		{"an evenness", EvennessOf(p), 0.9, 0.89},
		{"a curve's end", CurveOf(curve), curve.LastFlow(), 1.01 * curve.LastFlow()},
		// Its rating in the sun, in Pa, over density and gravity; from below by
		// what a double of some 10 m may be off.
		{"tubing", RatingOf(0, w), catalogue.Tubes[0].InSun() / (1000 * water.Gravity), 1e3},
	} {
		if math.Abs(tt.b.At-tt.at) > 1e-12 {
			t.Errorf("%s is held to %g, want %g", tt.what, tt.b.At, tt.at)
		}
		better := 2*tt.at - tt.worse
		if tt.b.Broken(tt.b.At) || tt.b.Broken(better) || !tt.b.Broken(tt.worse) {
			t.Errorf("%s: broken at %g is %v, at %g %v, at %g %v", tt.what,
				tt.at, tt.b.Broken(tt.at), better, tt.b.Broken(better), tt.worse, tt.b.Broken(tt.worse))
		}
		if a, b, c := tt.b.Slack(better), tt.b.Slack(tt.b.At), tt.b.Slack(tt.worse); !(a > 0 && b == 0 && c < 0) {
			t.Errorf("%s: %g, %g and %g are left", tt.what, a, b, c)
		}
	}
	if none := CurveOf(nil); none.Broken(1e9) || none.Slack(1e9) <= 0 {
		t.Error("a tank's flow has an end")
	}
	// 10 m of head weigh as much as all of a speed, or as the whole of an evenness.
	for _, left := range []float64{MarginOf(p, false).Slack(11.5), SpeedOf(p).Slack(0), EvennessOf(p).Slack(1.9)} {
		if math.Abs(left-1) > 1e-12 {
			t.Errorf("%g is left, want 1", left)
		}
	}
	// Flows that differ by less than solutions do are the same.
	if CurveOf(curve).Broken(curve.LastFlow() * (1 + 1e-7)) {
		t.Error("a flow at the curve's end is beyond it")
	}
}
