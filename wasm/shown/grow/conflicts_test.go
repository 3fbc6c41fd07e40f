package grow

import (
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/year/season"
)

// Each thing that does not fit is told in sentences of its own.
func TestEveryConflictIsTold(t *testing.T) {
	s := sheet.Answer(plan.Default())
	s.Explore(sheet.Season)
	sc, said := part{scene.New(s, nil)}, map[string]season.ConflictKind{}
	for k := range season.ConflictKind(season.ConflictKinds) {
		if clashes[k] == nil {
			t.Errorf("conflict %d is told by nothing", k)
			continue
		}
		c := season.Conflict{Kind: k, Planting: 0, Other: 1, Row: 1, Count: 70, Until: s.Season.Plantings[0].Dates[season.Slab] + 3}
		got := clashes[k](clash{sc, &c, s.Season})
		if !strings.HasSuffix(got, ".") || strings.ContainsAny(got, "{}") || strings.Contains(got, "  ") {
			t.Errorf("conflict %d is told as %q", k, got)
		}
		if other, there := said[got]; there {
			t.Errorf("conflicts %d and %d are both told as %q", other, k, got)
		}
		said[got] = k
	}
}
