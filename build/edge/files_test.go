package edge

import (
	"encoding/csv"
	"net/http"
	"net/http/httptest"
	"os"
	"regexp"
	"strings"
	"testing"

	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/page"
	"evenrow/wasm/shown/sheet"
)

func requestTo(host string) *http.Request {
	r := httptest.NewRequest("GET", "/plan", nil)
	r.Host = host
	return r
}

func TestFilesArePlans(t *testing.T) {
	for _, x := range plan.Examples() {
		w := ask(t, "GET", "/plan.json?"+carry.Link(x.Plan), "")
		p, errs := carry.ReadJSON(w.Body.Bytes())
		if len(errs) > 0 || carry.Link(p) != carry.Link(x.Plan) {
			t.Errorf("%s: the file is another plan: %v", x.Key, errs)
		}
		if got := w.Header().Get("Content-Disposition"); !regexp.MustCompile(`^attachment; filename="[a-z0-9-]+\.json"$`).MatchString(got) {
			t.Errorf("%s: %s", x.Key, got)
		}
	}
}

// The calendar of the page and that of the address are the same file.
func TestCalendars(t *testing.T) {
	for _, x := range plan.Examples() {
		w := ask(t, "GET", "/plan.ics?"+carry.Link(x.Plan), "")
		if want := page.CalendarFile(worked(x.Plan)); w.Code != 200 || w.Body.String() != want.File || !strings.HasPrefix(want.File, "BEGIN:VCALENDAR\r\n") {
			t.Errorf("%s: code %d, %.200s", x.Key, w.Code, w.Body)
		}
		if got := w.Header().Get("Content-Disposition"); !regexp.MustCompile(`^attachment; filename="[a-z0-9-]+\.ics"$`).MatchString(got) {
			t.Errorf("%s: %s", x.Key, got)
		}
	}
}

// An independent reader finds every part in the table.
func TestTablesHaveEveryPart(t *testing.T) {
	for _, x := range plan.Examples() {
		w := ask(t, "GET", "/plan.csv?"+carry.Link(x.Plan), "")
		text := w.Body.String()
		if strings.Count(text, "\n") != strings.Count(text, "\r\n") || !strings.HasSuffix(text, "\r\n") {
			t.Errorf("%s: lines do not end as RFC 4180 has it", x.Key)
		}
		lines, err := csv.NewReader(w.Body).ReadAll()
		if err != nil {
			t.Fatalf("%s: %v", x.Key, err)
		}
		want := sheet.Answer(x.Plan).Parts
		if len(lines) != len(want)+1 {
			t.Fatalf("%s: %d lines for %d parts", x.Key, len(lines), len(want))
		}
		for i, l := range want {
			got := lines[i+1]
			if got[1] != l.Name || got[5] != l.Why || (got[2] != "") != (l.Count > 0) || (got[4] != "") != (l.Length > 0) {
				t.Errorf("%s: %+v is written as %q", x.Key, l, got)
			}
		}
	}
}

func TestNothingInATableIsAFormula(t *testing.T) {
	for in, want := range map[string]string{
		"=1+1":              "'=1+1",
		"+1":                "'+1",
		"-1":                "'-1",
		"@SUM(A1)":          "'@SUM(A1)",
		"\t=1":              "'\t=1",
		"\r=1":              "'\r=1",
		"=HYPERLINK(\"x\")": "'=HYPERLINK(\"x\")",
		"a=1":               "a=1",
		"25 mm, long":       "25 mm, long",
		"":                  "",
	} {
		if got := plain(in); got != want {
			t.Errorf("plain(%q) = %q, want %q", in, got, want)
		}
	}
}

var classes = regexp.MustCompile(` class="([^"]*)"`)

// A picture by itself has no style sheet: every class of the plan view must
// have its attributes, in colours of the style.
func TestPicturesNeedNoStyle(t *testing.T) {
	style, err := os.ReadFile("../../site/css/10-tokens.css")
	if err != nil {
		t.Fatal(err)
	}
	for _, colour := range []string{paper, sheer, ink, edges, water, alarm} {
		if !strings.Contains(string(style), "light-dark("+colour+",") {
			t.Errorf("%s is no colour of the style by day", colour)
		}
	}
	for _, x := range plan.Examples() {
		page := ask(t, "GET", "/plan?"+carry.Link(x.Plan), "").Body.String()
		at := strings.Index(page, `id="map"`)
		drawing := wide(page[at:])
		found := classes.FindAllStringSubmatch(drawing, -1)
		for _, m := range found {
			if look[m[1]] == "" && !strings.HasPrefix(m[1], "picture") {
				t.Errorf("%s: nothing says how %q looks", x.Key, m[1])
			}
		}
		picture := ask(t, "GET", "/plan.svg?"+carry.Link(x.Plan), "").Body.String()
		if len(found) < 5 || strings.Contains(picture, "class=") || strings.Contains(picture, "<a ") || !strings.Contains(picture, " plants\"") && strings.Count(picture, "<path") < 5 {
			t.Errorf("%s: %d classes in the page, and the picture\n%.400s", x.Key, len(found), picture)
		}
	}
}

func TestShort(t *testing.T) {
	if got := short("Zoë's plot", 10); got != "Zoë's plot" {
		t.Errorf("got %q", got)
	}
	if got := short("Zoë's plot, no. 2", 12); got != "Zoë's plot…" {
		t.Errorf("got %q", got)
	}
}

// worked is a plan with its season.
func worked(p *plan.Plan) *sheet.Sheet {
	s := sheet.Answer(p)
	s.Explore(sheet.Season)
	return s
}
