package view

import (
	"regexp"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
)

var markupOf = regexp.MustCompile(`<[^>]*>`)

// exploredAs returns one fragment of a plan as words.
func exploredAs(t *testing.T, p *plan.Plan, which sheet.Exploration) string {
	t.Helper()
	s := sheet.Answer(p)
	s.Explore(which)
	all := Explored(s, which, func(*plan.Plan) string { return "#" })
	if len(all) != 1 {
		t.Fatalf("%d fragments", len(all))
	}
	words := markupOf.ReplaceAllString(all[0].HTML, " ")
	if strings.Contains(words, "NaN") || strings.Contains(words, "Inf") || len(words) < 50 {
		t.Errorf("%s: %s", p.Name, words)
	}
	return words
}

func TestFaultsAndChanceOfExamples(t *testing.T) {
	kinds := []int{plan.PumpPoints, plan.PumpTwo, plan.PumpPower, plan.GravityTank, plan.Mains}
	for _, e := range plan.Examples() {
		t.Log(exploredAs(t, e.Plan, sheet.Faulting))
		t.Log(exploredAs(t, e.Plan, sheet.Chancing))
		for _, kind := range kinds {
			p := e.Plan.Clone()
			p.Supply.Kind, p.Filter.Present, p.Supply.Regulator = kind, 0, 0
			if len(p.Check()) > 0 {
				continue
			}
			if words := exploredAs(t, p, sheet.Faulting); kind != plan.PumpPower && strings.Contains(words, "between the two sides") {
				t.Errorf("%s: a filter that is not there: %s", p.Name, words)
			}
		}
	}
}

// What is written on the gauge is the sooner of the two.
func TestWhatToWriteOnTheGauge(t *testing.T) {
	p := plan.Default()
	if words := exploredAs(t, p, sheet.Faulting); !strings.Contains(words, "The loss at which you clean comes before") {
		t.Errorf("a strong pump: %s", words)
	}
	p.Supply.Points = []plan.Point{{Flow: 0, Head: 14}, {Flow: 2e-4, Head: 12}, {Flow: 4e-4, Head: 6}}
	p.Filter.Rated, p.Filter.Fouling = 6e-5, 9e4
	if words := exploredAs(t, p, sheet.Faulting); !strings.Contains(words, "before the loss at which you meant to clean") {
		t.Errorf("a weak pump: %s", words)
	}
}

// Where no emitter opens, the plan does say what drives the water.
func TestNothingRuns(t *testing.T) {
	for _, which := range []sheet.Exploration{sheet.Faulting, sheet.Chancing} {
		if words := exploredAs(t, planOf(t, "wrong-pump"), which); !strings.Contains(words, "Look at the answer first") {
			t.Error(words)
		}
	}
}

// Of plants that are alike none is named for its luck in the draws; the ends
// of rows that get less are.
func TestThePlantThatIsShortMostOften(t *testing.T) {
	if words := exploredAs(t, plan.Default(), sheet.Chancing); !strings.Contains(words, "no plant was short more often than luck explains") {
		t.Error(words)
	}
	if words := exploredAs(t, planOf(t, "long-field"), sheet.Chancing); !strings.Contains(words, "plant 129 was short most often") {
		t.Error(words)
	}
}

// With zones, the systems without a short plant are those without one in the
// zone that is spoken of.
func TestChanceOfOneZoneOfSeveral(t *testing.T) {
	p := plan.Default()
	p.Rows[3].Zone = 2
	if words := exploredAs(t, p, sheet.Chancing); !strings.Contains(words, "no plant of that zone does") {
		t.Error(words)
	}
}

// Worse emitters and blocked ones leave more plants short, and the page says so.
func TestChanceSpeaksOfShortPlants(t *testing.T) {
	p := plan.Default()
	p.Emitters[0].CV = 0.01
	if words := exploredAs(t, p, sheet.Chancing); !strings.Contains(words, "No plant ever got less") {
		t.Error(words)
	}
	p.Emitters[0].CV = 0.1
	if words := exploredAs(t, p, sheet.Chancing); !strings.Contains(words, "plants gets less") || !strings.Contains(words, "smaller CV") {
		t.Error(words)
	}
	p.Chance.Blocked = 0.1
	if words := exploredAs(t, p, sheet.Chancing); !strings.Contains(words, "replace blocked emitters, and give each plant two") {
		t.Error(words)
	}
	for i := range p.Rows {
		p.Rows[i].PerPlant = 2
	}
	if words := exploredAs(t, p, sheet.Chancing); strings.Contains(words, "give each plant two") || !strings.Contains(words, "it has others") {
		t.Errorf("two at each plant already: %s", words)
	}
}
