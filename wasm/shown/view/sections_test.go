package view

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"evenrow/wasm/shown/sheet"
)

// A row of the sections is whole: it has an id that no other has, it is worked
// out by something, which draws it, and it stands below a heading. Of each
// exploration something is shown.
func TestSectionsAreWhole(t *testing.T) {
	ids, shown := map[string]bool{}, map[When]bool{}
	for i, c := range Chapters {
		if (c.Title == "") != (i == 0) {
			t.Errorf("chapter %d has the title %q", i, c.Title)
		}
		for k, s := range c.Sections {
			switch {
			case s.ID == "" || ids[s.ID]:
				t.Errorf("%q, section %d of chapter %d, has no id of its own", s.ID, k, i)
			case s.With == Never || s.With > by(sheet.Explorations-1) || s.With < OnRequest:
				t.Errorf("section %s does not say what works it out", s.ID)
			case (s.draw == nil) != (s.With == OnRequest):
				t.Errorf("section %s: nothing draws it, or two do", s.ID)
			case i > 0 && k == 0 && s.Title == "":
				t.Errorf("section %s has no heading, and stands below none", s.ID)
			case s.Title == "" && i > 0 && s.With != c.Sections[k-1].With:
				t.Errorf("section %s is worked out at another time than what it stands below", s.ID)
			}
			ids[s.ID], shown[s.With] = true, true
		}
	}
	for which := range sheet.Exploration(sheet.Explorations) {
		if !shown[by(which)] {
			t.Errorf("nothing shows exploration %d", which)
		}
	}
}

// What a room draws has a row.
func TestWhatRoomsDrawIsShown(t *testing.T) {
	rows, err := os.ReadFile("sections.go")
	if err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob("../*/*.go")
	if err != nil {
		t.Fatal(err)
	}
	drawn := 0
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range regexp.MustCompile(`(?m)^func ([A-Z]\w*)\(\w+ \*scene\.Scene\) \{`).FindAllStringSubmatch(string(text), -1) {
			drawn++
			if section := filepath.Base(filepath.Dir(name)) + "." + m[1]; !strings.Contains(string(rows), "draw: "+section+"}") && !strings.Contains(string(rows), "draw: "+section+",") {
				t.Errorf("%s draws a section that has no row in sections.go", section)
			}
		}
	}
	if drawn < 20 {
		t.Errorf("%d sections are drawn", drawn)
	}
}
