package view

import (
	"math"
	"strings"
	"testing"

	"evenrow/wasm/plan"
	"evenrow/wasm/sheet"
	"evenrow/wasm/surge"
)

func TestSurgeInWords(t *testing.T) {
	at := func(change func(b *surge.Blow)) *sheet.Sheet {
		s := sheet.Work(plan.Default())
		change(&s.Surge[1])
		return s
	}
	for _, tt := range []struct {
		s    *sheet.Sheet
		want []string
	}{
		{sheet.Work(plan.Default()), []string{"The tubing stands it. The 16 mm tubing comes nearest", "may carry 4.00\u00a0bar", ">at once<", "only 3.02\u00a0bar, less than the "}},
		{at(func(b *surge.Blow) { b.Rest, b.Rise, b.Closing = 3.5e5, 2e5, 0.42 }), []string{"Shut valves slowly.", "rise to 5.50\u00a0bar", "Over 0.5\u00a0s or more", ">0.5\u00a0s<"}},
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
