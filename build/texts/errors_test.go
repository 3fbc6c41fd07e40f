package texts

import (
	"html"
	"strings"
	"testing"

	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/page"
)

// What is said of a form, a link and a file that are wrong is in the lists too.
// What was typed, and a path, is digits here: no language changes those.
func TestNothingIsLeftOutsideOfErrors(t *testing.T) {
	l, problem := words.Read(program(t).Pseudo())
	if problem != "" {
		t.Fatal(problem)
	}
	words.Use(l)
	defer words.Use(nil)
	p := plan.Default()
	for name, r := range map[string]page.Reply{
		"no numbers":    new(page.Session).Answer(wrong("1 2")),
		"too much":      new(page.Session).Answer(wrong("123456789")),
		"marks":         new(page.Session).Answer(wrong("1,000")),
		"nothing typed": new(page.Session).Answer(wrong("")),
		"far too much":  new(page.Session).Answer(wrong("1e999")),
		"long":          new(page.Session).Answer(wrong(strings.Repeat("1", 5000))),
		"too many rows": new(page.Session).Answer("rows.99.plants=3"),
		"a table":       new(page.Session).Answer("sky.climate=own&months-table=1&action=fill-months"),
		"no link":       new(page.Session).OpenFirst("1zz"),
		"a newer link":  new(page.Session).Open("2"),
		"no file":       new(page.Session).OpenFile("[1"),
		"a newer file":  new(page.Session).OpenFile(`{"format": "evenrow plan 2"}`),
		"a fault":       page.Fault("1"),
	} {
		looked := false
		for _, f := range append(r.Fragments, block.Fragment{ID: "announce", HTML: html.EscapeString(r.Announce)}) {
			switch f.ID {
			case "ask", "errors", "message", "stale", "always", "announce":
				looked = looked || f.HTML != "" && f.ID != "announce"
				if found := english(f.HTML, p); found != "" {
					t.Errorf("%s, %s: no text: %s", name, f.ID, found)
				}
			}
		}
		if !looked {
			t.Errorf("%s: nothing is said", name)
		}
	}
}

// wrong is the form of the default plan with something else in its numbers and
// dates.
func wrong(typed string) string {
	d := plan.DraftOf(plan.Default())
	for _, s := range plan.Sections() {
		for i := range s.Records(plan.Default()) {
			for _, f := range s.Fields() {
				if f.Type != plan.Choice && f.Type != plan.Text {
					d.Set(plan.Path(f, i), typed)
				}
			}
		}
	}
	return d.Encode()
}
