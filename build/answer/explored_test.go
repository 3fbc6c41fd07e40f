package answer

import (
	"bytes"
	"testing"

	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/view"
)

// Every exploration has a name of its own, sections on the page, and adds
// something to the JSON of some example.
func TestEveryExplorationIsShown(t *testing.T) {
	names := map[string]sheet.Exploration{}
	added := [sheet.Explorations]bool{}
	for _, e := range plan.Examples() {
		s := sheet.Bare(e.Plan)
		before, err := written(s)
		for which := range sheet.Exploration(sheet.Explorations) {
			if other, taken := names[which.Name()]; which.Name() == "" || taken && other != which {
				t.Fatalf("exploration %d has no row in sheet/explore.go, or one with the name of another: %q", which, which.Name())
			}
			names[which.Name()] = which
			s.Explore(which)
			after, fault := written(s)
			if err != nil || fault != nil {
				t.Fatal(err, fault)
			}
			added[which] = added[which] || !bytes.Equal(before, after)
			before = after
			if len(view.Explored(s, which, func(p *plan.Plan) string { return carry.Link(p) })) == 0 {
				t.Fatalf("the exploration %s has no section in view/sections.go", which.Name())
			}
		}
	}
	for which, has := range added {
		if !has {
			t.Errorf("the exploration %s adds nothing to the JSON of any example: a part of the document in build/answer is missing", sheet.Exploration(which).Name())
		}
	}
}
