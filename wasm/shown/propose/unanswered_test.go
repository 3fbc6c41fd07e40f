package propose

import (
	"testing"

	"evenrow/wasm/grower/plan"
)

// Each question that has no answer is an error at its first input, and one of which
// something else is wrong is none besides.
func TestUnanswered(t *testing.T) {
	d := plan.Draft{}
	paths := func() []string {
		_, errs, _ := Read(d)
		var all []string
		for _, e := range append(errs, Unanswered(d, errs)...) {
			all = append(all, e.Path)
		}
		return all
	}
	for _, step := range []struct {
		name, text string
		want       []string
	}{
		{"units", "metric", []string{"ask.crop.1", "ask.medium", "ask.length", "ask.supply", "ask.distance"}},
		{"ask.crop.1", "tomato", []string{"ask.plants.1", "ask.medium", "ask.length", "ask.supply", "ask.distance"}},
		{"ask.plants.1", "20", []string{"ask.medium", "ask.length", "ask.supply", "ask.distance"}},
		{"ask.length", "6", []string{"ask.width", "ask.medium", "ask.supply", "ask.distance"}},
		{"ask.width", "3", []string{"ask.medium", "ask.supply", "ask.distance"}},
		{"ask.medium", "pot", []string{"ask.supply", "ask.distance"}},
		{"ask.supply", "gravity", []string{"ask.tank-height", "ask.distance"}},
		{"ask.supply", "mains", []string{"ask.distance"}},
		{"ask.distance", "8", nil},
		{"ask.supply", "pump", []string{"ask.shut-off"}},
		{"ask.power", "1/2 HP", nil}, // the power alone is an answer
	} {
		d.Set(step.name, step.text)
		if got := paths(); len(got) != len(step.want) {
			t.Errorf("after %s: %v, want %v", step.name, got, step.want)
		} else {
			for i := range got {
				if got[i] != step.want[i] {
					t.Errorf("after %s: %v, want %v", step.name, got, step.want)
					break
				}
			}
		}
	}
}
