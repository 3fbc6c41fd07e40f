package view

import (
	"math"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/water"
)

// fourAtATap is a row of four plants at a tap of 1.65 bar, whose backflow device
// and the like take 0.5 bar of the eight litres an hour.
func fourAtATap() *plan.Plan {
	p := plan.Default()
	p.Supply.Kind, p.Supply.Static, p.Supply.Regulator, p.Supply.Devices = plan.Mains, 1.65e5, 0, 0.5e5
	p.Rows = p.Rows[:1]
	p.Rows[0].Plants = 4
	return p
}

// By hand: 1.65 - 0.5 - 1.03 = 0.12 bar are 1.226 m at 20 °C, less the rise of
// 0.4 m and next to no friction, so 0.82 m are to spare of the 1 m asked for.
func TestDevicesTakeAllOfItFromFourPlants(t *testing.T) {
	p := fourAtATap()
	s := sheet.Work(p)
	want := 0.12e5/(998.207*water.Gravity) - 0.4
	if got := s.Zones[0].Margin; s.Verdict != sheet.Nearly || s.Findings[0].Kind != sheet.ShortReserve || math.Abs(got-want) > 0.01 {
		t.Errorf("verdict %d, findings %v, %.3f m to spare, want %.3f", s.Verdict, s.Findings, got, want)
	}
	if got := said(t, s, "answer"); !strings.Contains(got, "with less than your safety margin") || !strings.Contains(got, "0.08\u00a0bar (0.8\u00a0m) to spare") {
		t.Errorf("the answer: %s", got)
	}
	p.Supply.Devices -= 0.02e5
	if s := sheet.Work(p); s.Verdict != sheet.Yes {
		t.Errorf("with 0.2 m less: verdict %d, findings %v", s.Verdict, s.Findings)
	}
}

// Where devices ask for more than a tap has, its water does not stand below the
// emitters: nothing of it is left for them.
func TestDevicesThatTakeAll(t *testing.T) {
	p := plain(fourAtATap())
	p.Supply.Devices = 2e5
	got := said(t, sheet.Work(p), "answer")
	if strings.Contains(got, "below the lowest") || !strings.Contains(got, "No emitter opens") || !strings.Contains(got, "Nothing of the head of the supply is left for the shut emitters.") {
		t.Errorf("the answer: %s", got)
	}
}

// Where emitters open and shut in turn, or the water never gets over a height,
// nothing is to spare.
func TestNothingIsToSpareWhereSomePlantGetsNothing(t *testing.T) {
	shuts := fourAtATap()
	shuts.Supply.Devices = 2e5
	high := plan.Default()
	high.Runs = append(high.Runs, high.Runs[0])
	high.Runs[0].Rise, high.Runs[1].Rise = 60, -60
	for _, p := range []*plan.Plan{shuts, high} {
		s := sheet.Work(p)
		if s.Verdict != sheet.No || s.Zones[0].Margin < 0 {
			t.Errorf("verdict %d, margin %g", s.Verdict, s.Zones[0].Margin)
		}
		for _, id := range []string{"answer", "always"} {
			if got := said(t, s, id); strings.Contains(strings.ToLower(got), "to spare") {
				t.Errorf("%s: %s", id, got)
			}
		}
	}
}
