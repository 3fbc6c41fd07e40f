package view

import (
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
)

// A tank that a float valve fills is never to be filled by hand, and a tap has none.
func TestTanksThatFillThemselves(t *testing.T) {
	for _, c := range []struct {
		kind, fill int
		float      bool
	}{
		{plan.PumpPoints, plan.FilledByHand, false},
		{plan.PumpPoints, plan.FilledByFloat, true},
		{plan.Mains, plan.FilledByFloat, false},
	} {
		p := plan.Default()
		p.Supply.Kind, p.Supply.Fill = c.kind, c.fill
		s := sheet.Work(p)
		html := ""
		for _, f := range Everything(s, nil) {
			if f.ID == "tank" {
				html += f.HTML
			}
		}
		hand := strings.Contains(html, "fill it")
		if float := strings.Contains(html, "float valve keeps"); html == "" || float != c.float || hand == float && c.kind != plan.Mains {
			t.Errorf("%+v: float %v, by hand %v", c, float, hand)
		}
	}
}
