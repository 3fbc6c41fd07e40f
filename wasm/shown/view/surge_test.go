package view

import (
	"math"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/works/surge"
)

func TestSurgeInWords(t *testing.T) {
	at := func(change func(b *surge.Blow)) *sheet.Sheet {
		s := sheet.Work(plan.Default())
		change(&s.Surge[1])
		return s
	}
	pump := plan.Default()
	pump.Supply.Regulator = 0
	alone := sheet.Work(pump)
	for _, w := range []struct {
		s    *sheet.Sheet
		want string
	}{{alone, "With every valve shut the pressure reaches 3.29\u00a0bar (33.6\u00a0m). Warm tubing carries less: in the sun, taken to be 50\u00a0°C warm, the weakest may carry 2.44\u00a0bar (24.9\u00a0m) for long."}, {sheet.Work(plan.Default()), "Nothing."}} {
		if got := said(t, w.s, "findings"); !strings.Contains(got, w.want) {
			t.Errorf("not said: %s\nin %s", w.want, got)
		}
	}
	for _, tt := range []struct {
		s    *sheet.Sheet
		want []string
	}{
		{sheet.Work(plan.Default()), []string{"The tubing stands it. The 16 mm tubing comes nearest", "make 2.14\u00a0bar, and in the sun, taken to be 50\u00a0°C warm, it may carry 2.44\u00a0bar", ">at once<", "and soft drip tubing and all other pipe 61\u00a0% (ISO 4427"}},
		{alone, []string{"The 16 mm tubing may not even carry the pressure at rest: 3.29\u00a0bar"}},
		{at(func(b *surge.Blow) { b.Rest, b.Rise, b.Closing = 3.5e5, 2e5, 0.42 }), []string{"With less pressure at rest a valve may shut faster. Set the regulator lower.", "Shut valves slowly.", "rise to 5.50\u00a0bar", "Over 0.5\u00a0s or more", ">0.5\u00a0s<"}},
		{at(func(b *surge.Blow) { b.Rest, b.Rise, b.Closing = 5e5, 2e5, math.Inf(1) }), []string{"not even carry the pressure at rest: 5.00\u00a0bar", ">–<"}},
		{&sheet.Sheet{Plan: plan.Default()}, []string{"as soon as"}},
	} {
		got := said(t, tt.s, "surge")
		for _, want := range tt.want {
			if !strings.Contains(got, want) {
				t.Errorf("not said: %s\nin %s", want, got)
			}
		}
	}
}

// Whatever tubing is nearest to its limit, the time named is enough for all.
func TestTheTimeToShutIsEnoughForAll(t *testing.T) {
	for _, e := range plan.Examples() {
		s := sheet.Work(e.Plan)
		longest := 0.0
		for _, b := range s.Surge {
			longest = max(longest, b.Closing)
		}
		got := said(t, s, "surge")
		if tells := strings.Contains(got, "Shut valves slowly."); tells != (longest > 0 && !math.IsInf(longest, 1)) {
			t.Errorf("%s: valves are to be shut slowly: %v, the longest time is %g s", e.Key, tells, longest)
		} else if tells && !strings.Contains(got, "Over "+wording.Closing(longest)+" or more all tubing") {
			t.Errorf("%s: not over %s: %.500s", e.Key, wording.Closing(longest), got)
		}
	}
}
