package view

import (
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/form"
	"evenrow/wasm/shown/sheet"
)

// A row of a job is whole: it has an id that no other section has unless it is the same one
// again, it is worked out by something, which draws it, and it stands below a
// heading. Of each exploration something is shown.
func TestSectionsAreWhole(t *testing.T) {
	drawn, shown, jobs := map[string]uintptr{}, map[When]bool{}, map[string]bool{}
	whole := func(where string, k int, of []Section) {
		s := of[k]
		by, known := drawn[s.ID]
		switch {
		case s.ID == "" || known && by != reflect.ValueOf(s.draw).Pointer():
			t.Errorf("%q, section %d of %s, has no id of its own", s.ID, k, where)
		case s.With == Never || int(s.With) > sheet.Explorations || s.With < OnRequest:
			t.Errorf("section %s does not say what works it out", s.ID)
		case (s.draw == nil) != (s.With == OnRequest):
			t.Errorf("section %s: nothing draws it, or two do", s.ID)
		case s.Title == "" && k > 0 && s.With != of[k-1].With && where != "the frame":
			t.Errorf("section %s is worked out at another time than what it stands below", s.ID)
		}
		if drawn[s.ID], shown[s.With] = reflect.ValueOf(s.draw).Pointer(), true; s.Open && (s.line != nil) != (s.folds != nil) {
			t.Errorf("section %s is never folded, and has a line for it, or is, and has none", s.ID)
		}
		if s.Title != "" && !s.Open && s.line == nil && s.With != OnRequest {
			t.Errorf("section %s is folded, and no line says what it comes to", s.ID)
		}
	}
	for k := range Frame {
		whole("the frame", k, Frame)
	}
	feet := 0
	for i := range Jobs {
		j := &Jobs[i]
		if j.ID == "" || jobs[j.ID] || j.Title == "" || j.Asks == "" || len(j.Sections) == 0 {
			t.Errorf("job %d, %q, is not whole", i, j.ID)
		}
		if jobs[j.ID] = true; j.Foot {
			feet++
		}
		for k := range j.Sections {
			whole("job "+j.ID, k, j.Sections)
		}
		if !j.Sections[0].Open {
			t.Errorf("what job %s is for is folded", j.ID)
		}
	}
	if feet != 3 {
		t.Errorf("%d jobs stand at the foot of a phone, want 3", feet)
	}
	for which := range sheet.Exploration(sheet.Explorations) {
		if !shown[by(which)] {
			t.Errorf("nothing shows exploration %d", which)
		}
	}
}

// Every section of the plan is asked for in one group of one job.
func TestEveryInputHasItsJob(t *testing.T) {
	in := map[string]int{}
	ids := map[string]bool{}
	for _, g := range Groups() {
		if g.ID == "" || ids[g.ID] || g.Title == "" || len(g.Sections) == 0 {
			t.Errorf("group %q is not whole", g.ID)
		}
		ids[g.ID] = true
		for _, name := range g.Sections {
			in[name]++
		}
	}
	for _, s := range plan.Sections() {
		if in[s.Name] != 1 {
			t.Errorf("section %q of the plan is asked for in %d groups", s.Name, in[s.Name])
		}
		if delete(in, s.Name); Find("f-"+s.Name, form.Place{Job: "why"}).Group == "" {
			t.Errorf("nothing leads to section %q", s.Name)
		}
	}
	for name := range in {
		t.Errorf("the plan has no section %q", name)
	}
}

// Every group has a line for when it is closed, which says where nobody has said anything
// of it, and nothing of the kind where one value was typed.
func TestEveryGroupHasItsLine(t *testing.T) {
	line := func(p *plan.Plan, group string) string {
		for _, f := range form.Summaries(p, Groups()) {
			if f.ID == "t-"+group {
				_, is, _ := strings.Cut(f.HTML, `<span class="group__is">`)
				return strings.ReplaceAll(strings.TrimSuffix(is, "</span>"), "\u00a0", " ")
			}
		}
		return ""
	}
	own, proposed := plan.Default(), plan.Default()
	own.Sky.Climate = plan.OwnClimate
	proposed.Propose()
	for _, g := range Groups() {
		if line(own, g.ID) == "" {
			t.Errorf("group %s has no line", g.ID)
		}
	}
	if got, want := line(proposed, "runs"), "8 m, up 0.4 m, assumed"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	proposed.SetOrigin(plan.FieldNamed("runs", "rise"), 0, plan.Measured)
	if got, want := line(proposed, "runs"), "8 m, up 0.4 m"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}

// What an address within the page names.
func TestFind(t *testing.T) {
	in := form.Place{Job: "mend"}
	for to, want := range map[string]string{
		"water": "water", "water/timer": "water/timer", "answer/rows/rows.7": "answer/rows/rows.7",
		"f-rows.7.spacing": "answer/rows/rows.7", "f-all.spacing": "answer/rows", "f-points.2.head": "answer/supply/points.2", "f-units": "answer/place", "f-place.length": "answer/place",
		"f-months.1.high": "grow/sky/months.1", "f-months-table": "grow/sky", "f-log.2.out": "water", "h-log": "water", "h-parts": "buy", "h-timer": "water", "plants-3": "answer",
		"f-nothing.1.x": "mend", "nothing": "mend", "": "mend", "water/none": "water", "f-": "answer/place",
	} {
		if got := Find(to, in).String(); got != want {
			t.Errorf("%q leads to %s, want %s", to, got, want)
		}
	}
}

// The page opens groups by itself: that changes nothing else of the form, and what
// stands in one leads there, whichever was open when it was drawn.
func TestAnOpenGroupChangesNothingElse(t *testing.T) {
	p := plan.Default()
	groups := JobNamed("answer").Groups
	shut, open := form.Place{Job: "answer"}, form.Place{Job: "answer", Group: "place"}
	if form.Shape(p, groups, shut) != form.Shape(p, groups, open) {
		t.Error("the form is drawn anew after a group was opened")
	}
	if row := (form.Place{Job: "answer", Group: "rows", Record: "rows.2"}); form.Shape(p, groups, row) == form.Shape(p, groups, shut) {
		t.Error("a row that is opened is not drawn")
	}
	for _, at := range []form.Place{shut, open} {
		if html := form.Ask(p, plan.DraftOf(p), nil, groups, at); !strings.Contains(html, `value="show.answer/rows/rows.2"`) {
			t.Errorf("in %s, no button leads to row 2", at)
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
