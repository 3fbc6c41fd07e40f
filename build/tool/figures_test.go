package tool

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/view"
)

// What the guides say of how long plants last is what the page says of the same
// plants, and no guide says another time.
func TestGuidesLastAsLongAsThePage(t *testing.T) {
	f := figures()
	s := sheet.Answer(plan.Default())
	s.Explore(sheet.Season)
	page := ""
	for _, part := range view.Explored(s, sheet.Season, nil) {
		if part.ID == "outage" {
			page = regexp.MustCompile(`<[^>]*>`).ReplaceAllString(part.HTML, "")
		}
	}
	for _, want := range []string{"on a hot day, it has water until", "(" + f["outage-noon"] + ")", "fortnight from " + f["need-from"] + ", " + f["outage-crop"] + " in row"} {
		if !strings.Contains(strings.Replace(page, "If it stops at noon of a hot day, it", "on a hot day, it", 1), want) {
			t.Errorf("the page does not say %q: %.600s", want, page)
		}
	}
	// The cautious count: no longer than a full medium at noon's rate.
	if f["outage-full"] == "" || f["outage-noon"] == "" || f["outage-noon"] >= f["outage-full"] {
		t.Errorf("at noon %q, with a full medium %q", f["outage-noon"], f["outage-full"])
	}
	for file, figure := range map[string]string{"timer": "{{figure outage-noon}}", "method": "{{figure outage-noon}}"} {
		b, err := os.ReadFile("../../content/guides/" + file + ".md")
		if err != nil {
			t.Fatal(err)
		}
		if text := string(b); !strings.Contains(text, figure) || strings.Contains(text, "about five hours") || strings.Contains(text, "0.3 L/h") {
			t.Errorf("%s.md has a time of its own", file)
		}
	}
}
