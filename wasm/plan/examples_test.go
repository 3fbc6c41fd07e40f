package plan

import "testing"

func TestExamplesAreSound(t *testing.T) {
	for _, x := range Examples() {
		for _, e := range x.Plan.Check() {
			t.Errorf("%s: %v", x.Key, e)
		}
	}
}
