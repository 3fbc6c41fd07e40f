package hostile

import (
	"testing"

	"evenrow/wasm/plan"
	"evenrow/wasm/sheet"
)

// The headline speaks of plants, and is true of them, of whatever kind it is:
// examples whose rows have few plants, emitters of several kinds and zones of
// their own, and a supply of about what they need.
func TestTheHeadlineIsTrueOfThePlants(t *testing.T) {
	same := map[string]int{}
	for n := range 1200 {
		s := Numbered(5, n)
		examples := plan.Examples()
		p := examples[s.below(len(examples))].Plan.Clone()
		p.Place.Length, p.Place.Width = 90, 90
		p.Limits.Reserve = 0
		p.Header.Layout, p.Header.Feed = s.below(3), s.below(2)
		p.Header.Tube, p.Runs[0].Tube = 1+s.below(6), 1+s.below(6)
		for i := range p.Rows {
			p.Rows[i].Plants = 1 + s.below(20)
			p.Rows[i].PerPiece = 1
		}
		mix(s, p)
		fit(s, p)
		if len(p.Check()) > 0 {
			continue
		}
		kind, fault := headline(sheet.Answer(p))
		if same[kind]++; fault != "" {
			t.Errorf("plan %d: %s", n, fault)
		}
	}
	t.Log(same)
	for _, kind := range []string{"same", "nearly", "zone", "nearly zone", "not", "its"} {
		if same[kind] == 0 {
			t.Errorf("no plan of the kind %q among them: %v", kind, same)
		}
	}
}
