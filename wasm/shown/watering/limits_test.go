package watering

import (
	"strings"
	"testing"

	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/year/shots"
)

// Each thing that a timer cannot do is told in sentences of its own, and so is each
// way to a valve for each planting.
func TestEveryLimitOfATimerIsTold(t *testing.T) {
	s := sheet.Answer(plan.Default())
	s.Explore(sheet.Season)
	set := &s.Shots.Lines[s.Shots.Peak].Sets[shots.Hot].Zones[0]
	sc, said := part{scene.New(s, nil)}, map[string]int{}
	tell := func(k int, got string) {
		if !strings.HasSuffix(got, ".") || strings.ContainsAny(got, "{}") || strings.Contains(got, "  ") {
			t.Errorf("kind %d is told as %q", k, got)
		}
		if other, there := said[got]; there {
			t.Errorf("kinds %d and %d are both told as %q", other, k, got)
		}
		said[got] = k
	}
	for k := range shots.LimitKind(shots.LimitKinds) {
		if limits[k] == nil {
			t.Errorf("limit %d is told by nothing", k)
			continue
		}
		tell(int(k), limits[k](sc, &shots.Limit{Kind: k, Sky: shots.Hot, Set: set, Dryest: &set.Beds[0], Over: 600, Round: 900}))
	}
	for k, text := range ownValves {
		tell(k, words.Say(text, "3"))
	}
}
