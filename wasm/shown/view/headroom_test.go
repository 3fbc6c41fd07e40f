package view

import (
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/headroom"
)

func TestHeadroomInWords(t *testing.T) {
	with := func(sys unit.System, rooms ...headroom.Room) *sheet.Sheet {
		p := plan.Default()
		p.Units = sys
		s := sheet.Work(p)
		s.Headroom = rooms
		return s
	}
	reserve := sheet.EndOf(sheet.ShortReserve)
	for _, tt := range []struct {
		s    *sheet.Sheet
		want []string
	}{
		{with(unit.Metric), []string{"None: the answer is not Yes"}},
		{with(unit.Metric, headroom.Room{Most: 6, Fails: 7, Why: reserve}), []string{"up to 6 more plants, one", "What ends it: your safety margin."}},
		{with(unit.Metric, headroom.Room{Most: 1, Fails: 2, Why: headroom.End{Limit: headroom.Refused}}), []string{"up to 1 more plant, one", "What ends it: the most that the form takes."}},
		{with(unit.Metric, headroom.Room{Most: 0, Fails: 1, Why: sheet.EndOf(sheet.OffCurve)}), []string{"Not one more plant. What ends it: the end of the pump&#39;s curve."}},
		{with(unit.Metric, headroom.Room{Most: 360, Fails: 361, Why: headroom.End{Limit: headroom.Enough}}), []string{"A lot: with 360 more plants", "360 or more", "more is not looked for"}},
		{with(unit.Metric, headroom.Room{Most: 1}, headroom.Room{Kind: headroom.Rise, Most: 213, Fails: 217, Why: reserve}),
			[]string{"Rise of the supply line", "21.3\u00a0m<", "safety margin, at 21.7\u00a0m or before"}},
		{with(unit.US, headroom.Room{Most: 1}, headroom.Room{Kind: headroom.Rise, Most: 10, Fails: 11, Why: reserve}), []string{"3.3\u00a0ft<"}},
		{with(unit.Metric, headroom.Room{Most: 1}, headroom.Room{Kind: headroom.Fouling, Most: 14, Fails: 15, Why: sheet.EndOf(sheet.Fouled)}),
			[]string{"Loss of the filter", "0.14\u00a0bar<", "once the filter is due"}},
		{with(unit.Metric, headroom.Room{Most: 1}, headroom.Room{Kind: headroom.InRow, Row: 3, Most: 3, Fails: 4, Why: reserve}),
			[]string{"Plants in row 4", "3 plants<", "1\u00a0m<"}},
	} {
		got := said(t, tt.s, "headroom")
		for _, want := range tt.want {
			if !strings.Contains(got, want) {
				t.Errorf("not said: %s\nin %s", want, got)
			}
		}
	}
}
