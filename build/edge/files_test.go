package edge

import (
	"encoding/csv"
	"math"
	"net/http"
	"net/http/httptest"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
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
			if got[1] != l.Name || got[7] != l.Why || (got[2] != "") != (l.Count > 0) || (got[4] != "") != (l.Length > 0) || (got[5] != "") != (l.Rolls > 0) || (got[6] != "") != (l.Roll > 0) {
				t.Errorf("%s: %+v is written as %q", x.Key, l, got)
			}
		}
	}
}

// The pieces of a plan's tubing add up to its parts, and every plant has its mark.
func TestTablesOfCutsAndMarks(t *testing.T) {
	read := func(path string, p *plan.Plan) [][]string {
		w := ask(t, "GET", path+"?"+carry.Link(p), "")
		lines, err := csv.NewReader(w.Body).ReadAll()
		if err != nil || len(lines) < 2 || w.Code != 200 {
			t.Fatalf("%s: %d, %v, %d lines", path, w.Code, err, len(lines))
		}
		return lines[1:]
	}
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	for _, x := range plan.Examples() {
		s := sheet.Answer(x.Plan)
		u := unit.Of(unit.Bore, x.Plan.Units)
		metres, rolls := map[string]float64{}, map[string]map[string]bool{}
		pieces := 0.0
		for _, line := range read("/plan-cuts.csv", x.Plan) {
			metres[line[1]] += u.ToInner(number(line[3]))
			if rolls[line[1]] == nil {
				rolls[line[1]] = map[string]bool{}
			}
			rolls[line[1]][line[4]] = true
			pieces++
		}
		for _, l := range s.Parts {
			if l.Length > 0 && (math.Abs(metres[l.Name]-l.Length) > pieces*u.ToInner(0.05) || len(rolls[l.Name]) != l.Rolls) {
				t.Errorf("%s: %g m of %s from %d rolls, want %g of %d", x.Key, metres[l.Name], l.Name, len(rolls[l.Name]), l.Length, l.Rolls)
			}
		}
		lines := read("/plan-marks.csv", x.Plan)
		if len(lines) != len(s.Layout.Plants) {
			t.Fatalf("%s: %d marks for %d plants", x.Key, len(lines), len(s.Layout.Plants))
		}
		for i, line := range lines {
			p := &s.Layout.Plants[i]
			row := &x.Plan.Rows[p.Row]
			at := row.First + float64(p.Number-1)*row.Spacing
			if line[0] != strconv.Itoa(p.Row+1) || line[1] != strconv.Itoa(p.Number) || math.Abs(u.ToInner(number(line[2]))-at) > u.ToInner(0.05) || line[3] != strconv.Itoa(row.PerPlant) {
				t.Fatalf("%s: plant %d of row %d is marked by %q", x.Key, p.Number, p.Row+1, line)
			}
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
