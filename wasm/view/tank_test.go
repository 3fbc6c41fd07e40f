package view

import (
	"strings"
	"testing"

	"evenrow/wasm/plan"
	"evenrow/wasm/sheet"
	"evenrow/wasm/shots"
	"evenrow/wasm/unit"
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
		sc := newScene(s)
		html := sc.part("tank", (*scene).tank).HTML
		if want := sc.amount(unit.Volume, most) + " on a hot day"; !strings.Contains(html, want) {
			t.Errorf("%q is not in %.400s", want, html)
		}
	}
}
