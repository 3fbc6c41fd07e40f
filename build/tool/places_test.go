package tool

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/page"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/view"
)

// Every fragment of the first page has one place: among the parts below the
// answer, or in the template of the page itself.
func TestEveryFragmentHasAPlace(t *testing.T) {
	text, err := os.ReadFile("../../site/templates/index.html")
	if err != nil {
		t.Fatal(err)
	}
	places := map[string]bool{}
	for _, m := range regexp.MustCompile(`id="([a-z]+)"[^>]*>\{\{index \$?\.Fragments "([a-z]+)"`).FindAllStringSubmatch(string(text), -1) {
		if m[1] != m[2] {
			t.Errorf("the place %s holds the fragment %s", m[1], m[2])
		}
		places[m[1]] = true
	}
	if len(places) < 5 {
		t.Fatalf("the template has %d places", len(places))
	}
	// The foot, which says something else before the first answer, and what a button has done, begin
	// empty of the planner's words.
	for _, id := range []string{"always", "done"} {
		places[id] = strings.Contains(string(text), `id="`+id+`"`)
	}
	for _, j := range jobs() {
		for _, a := range j.Asked {
			places[a.ID] = true
		}
	}
	for _, f := range page.Start().Fragments {
		if !places[f.ID] {
			t.Errorf("there is no place for %s", f.ID)
		}
		delete(places, f.ID)
	}
	for id := range places {
		t.Errorf("nothing fills the place %s", id)
	}
}

// A page without scripts has the parts that are explored for it, and no other.
func TestAPageWithoutScriptsHasWhatIsPrompt(t *testing.T) {
	s := sheet.Work(plan.Default())
	shown := map[string]bool{}
	for i := range view.Jobs {
		screen := &view.Screen{Job: &view.Jobs[i], Sheet: s, Brief: true}
		for which := range screen.Done {
			screen.Done[which] = true
		}
		for _, m := range regexp.MustCompile(`<div id="([a-z]+)"`).FindAllStringSubmatch(screen.Whole().HTML, -1) {
			shown[m[1]] = true
		}
	}
	for which := range sheet.Exploration(sheet.Explorations) {
		for _, f := range view.Explored(s, which, nil) {
			if has, prompt := shown[f.ID], which.Prompt(); has != prompt {
				t.Errorf("%s: on the page without scripts %v, explored for it %v", f.ID, has, prompt)
			}
		}
	}
}

// The browser tests compare every section that is worked out: their list, which
// they cannot take from Go, lacks none.
func TestTheBrowserTestsKnowEverySection(t *testing.T) {
	text, err := os.ReadFile("../e2e/form.js")
	if err != nil {
		t.Fatal(err)
	}
	for i := range view.Jobs {
		for _, s := range view.Jobs[i].Sections {
			if s.With != view.OnRequest && !strings.Contains(string(text), `"`+s.ID+`"`) {
				t.Errorf("build/e2e/form.js does not name the section %s", s.ID)
			}
		}
	}
}
