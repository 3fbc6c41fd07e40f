package view

import (
	"regexp"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/year/shots"
)

// The tank is reckoned for the line that takes most from it, also where a few
// thirsty plants share a valve with many others and are done before those are
// grown.
func TestTheTankHoldsTheDayThatTakesMost(t *testing.T) {
	shared := plan.Default()
	shared.Rows[0].Plants, shared.Rows[3].Plants = 30, 5
	for _, p := range []*plan.Plan{plan.Default(), shared} {
		s := sheet.Answer(p)
		s.Explore(sheet.Season)
		most, peak := 0.0, 0.0
		for i := range s.Shots.Lines {
			given, _ := s.Shots.Lines[i].Sets[shots.Hot].Given()
			most = max(most, given)
			if i == s.Shots.Peak {
				peak = given
			}
		}
		t.Logf("%.0f L at most, %.0f L in the line of greatest use", most*1e3, peak*1e3)
		sc := scene.New(s, nil)
		html := said(t, s, "tank")
		if want := sc.Amount(unit.Volume, most) + " on a hot day"; !strings.Contains(html, want) {
			t.Errorf("%q is not in %.400s", want, html)
		}
	}
}

// Where the emitters of one zone stay shut, what the other is given is not what
// all plants are, the tank is not said to last, and a round has no end.
func TestAZoneThatStaysShutIsNotCounted(t *testing.T) {
	p := plan.Default()
	p.Emitters = append(p.Emitters, p.Emitters[0])
	e := &p.Emitters[1]
	e.Opens, e.Closes, e.Lowest, e.Highest = 5e5, 4e5, 6e5, 8e5
	p.Rows[3].Zone, p.Rows[3].Emitter = 2, 1
	s := sheet.Work(p)
	if s.Verdict != sheet.No || s.Zones[0].Open == 0 || s.Zones[1].Open > 0 {
		t.Fatalf("verdict %d", s.Verdict)
	}
	tank := said(t, s, "tank")
	if strings.Contains(tank, "all plants together") || strings.Contains(tank, "The tank holds") || !strings.Contains(tank, "only plants of zones in which every emitter opens are given") {
		t.Errorf("the tank: %.600s", tank)
	}
	if got := said(t, s, "zones"); strings.Contains(got, ">0\u00a0min</td></tr></tfoot>") || !strings.Contains(got, "One round") || !regexp.MustCompile(`One round.*?>–</td></tr>`).MatchString(got) {
		t.Errorf("the zones: %s", got)
	}
	if got := said(t, sheet.Work(plan.Default()), "tank"); !strings.Contains(got, "all plants together are given") || !strings.Contains(got, "The tank holds") {
		t.Errorf("the tank of a plan that serves: %.600s", got)
	}
}
