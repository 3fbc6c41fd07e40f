package view

import (
	"encoding/xml"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
)

// A printed is the page of a plan as a reader sees it, without pictures: the
// words of each fragment, its lists of figures, and its tables.
type printed struct {
	s       *sheet.Sheet
	words   map[string]string            // by fragment
	figures map[string]map[string]string // by fragment and label
	tables  map[string][]grid            // by fragment
}

// A grid is a table: its caption and its cells, headings first.
type grid struct {
	caption string
	rows    [][]string
}

// read prints all fragments of a plan of which everything was explored.
func read(t *testing.T, s *sheet.Sheet) *printed {
	t.Helper()
	p := &printed{s, map[string]string{}, map[string]map[string]string{}, map[string][]grid{}}
	for _, f := range Everything(s, nil) {
		p.figures[f.ID] = map[string]string{}
		d := xml.NewDecoder(strings.NewReader("<x>" + strings.ReplaceAll(f.HTML, "\u00a0", " ") + "</x>"))
		d.Entity, d.Strict = xml.HTMLEntity, false
		var words, cell strings.Builder
		var label string
		g := &grid{}
		for {
			token, err := d.Token()
			if err == io.EOF {
				break
			}
			if err != nil {
				t.Fatalf("%s: %v", f.ID, err)
			}
			switch e := token.(type) {
			case xml.StartElement:
				switch e.Name.Local {
				case "svg":
					if err := d.Skip(); err != nil {
						t.Fatal(err)
					}
				case "table":
					g = &grid{}
				case "tr":
					g.rows = append(g.rows, nil)
				case "td", "th", "caption", "dt", "dd":
					cell.Reset()
				}
			case xml.CharData:
				words.Write(e)
				cell.Write(e)
			case xml.EndElement:
				switch e.Name.Local {
				case "caption":
					g.caption = cell.String()
				case "td", "th":
					g.rows[len(g.rows)-1] = append(g.rows[len(g.rows)-1], cell.String())
				case "table":
					p.tables[f.ID] = append(p.tables[f.ID], *g)
				case "dt":
					label = cell.String()
				case "dd":
					if _, ok := p.figures[f.ID][label]; !ok {
						p.figures[f.ID][label] = cell.String()
					}
				case "p", "li", "figcaption", "h3", "summary":
					words.WriteByte('\n')
				}
			}
		}
		p.words[f.ID] = words.String()
	}
	return p
}

// said returns the groups of a pattern in a fragment's words; nil where it does
// not say so.
func (p *printed) said(fragment, pattern string) []string {
	m := regexp.MustCompile(pattern).FindStringSubmatch(p.words[fragment])
	if m == nil {
		return nil
	}
	return m[1:]
}

// figure returns the groups of a pattern in the figure of a label.
func (p *printed) figure(fragment, label, pattern string) []string {
	m := regexp.MustCompile(pattern).FindStringSubmatch(p.figures[fragment][label])
	if m == nil {
		return nil
	}
	return m[1:]
}

// cell returns a cell by the beginnings of its table's caption, its row's name and
// its column's.
func (p *printed) cell(fragment, caption, row, column string) []string {
	for _, g := range p.tables[fragment] {
		if !strings.HasPrefix(g.caption, caption) || len(g.rows) == 0 {
			continue
		}
		for c, name := range g.rows[0] {
			if !strings.HasPrefix(name, column) {
				continue
			}
			for _, r := range g.rows[1:] {
				if len(r) > c && strings.HasPrefix(r[0], row) {
					return []string{r[c]}
				}
			}
		}
	}
	return nil
}

// A fact is a number, or a few, that the page prints in several places.
type fact struct {
	name string
	at   []func(p *printed) []string // nil where a plan's page does not have it
}

// zone names the zone of the weakest emitter, as tables do.
func (p *printed) zone() string { return strconv.Itoa(p.s.Zones[p.s.Critical].Zone) }

// weakest is the plant of the weakest emitter.
func (p *printed) weakest() (row, plant string) {
	w := p.s.Layout.Plants[p.s.Zones[p.s.Critical].Worst]
	return strconv.Itoa(w.Row + 1), strconv.Itoa(w.Number)
}

// tied is the column of a comparison with a ring in which the plan itself stands.
func (p *printed) tied() string {
	if p.s.Plan.Header.Layout == plan.Ring {
		return "With one"
	}
	return "Without"
}

const (
	pressure = `([\d.]+ (?:bar|psi))`
	aHead    = `([\d.]+ (?:m|ft))`
)

var facts = []fact{
	{"what is left at the weakest emitter, as pressure", []func(p *printed) []string{
		func(p *printed) []string { return p.figure("answer", "To spare", "^"+pressure) },
		func(p *printed) []string { return p.figure("answer", "It lacks", "^"+pressure) },
		func(p *printed) []string { return p.said("answer", "has "+pressure+` \([^)]*\) more than it needs`) },
		func(p *printed) []string { return p.said("always", pressure+" (?:to spare|short) at") },
	}},
	{"what is left at the weakest emitter, as pressure in the tables", []func(p *printed) []string{
		func(p *printed) []string { return p.figure("answer", "To spare", "^"+pressure) },
		func(p *printed) []string { return p.cell("zones", "The zones", "Zone "+p.zone(), "To spare") },
		func(p *printed) []string { return p.cell("ring", "The rows closed", "To spare", p.tied()) },
	}},
	{"what is left at the weakest emitter, as head", []func(p *printed) []string{
		func(p *printed) []string { return p.figure("answer", "To spare", `\(`+aHead) },
		func(p *printed) []string { return p.said("answer", `\(`+aHead+`\) more than it needs`) },
		func(p *printed) []string { return p.cell("pump", "The zones", p.zone(), "To spare") },
	}},
	{"the weakest emitter", []func(p *printed) []string{
		func(p *printed) []string { return p.figure("answer", "Weakest emitter", `row (\d+), plant (\d+)`) },
		func(p *printed) []string { return p.said("always", `row (\d+), plant (\d+)`) },
		func(p *printed) []string { return p.said("pressure", `weakest emitter, row (\d+), plant (\d+)`) },
		func(p *printed) []string { return p.said("map", `the weakest: row (\d+), plant (\d+)`) },
	}},
	{"the head at the weakest emitter", []func(p *printed) []string{
		func(p *printed) []string { return p.figure("answer", "Weakest emitter", `\(`+aHead) },
		func(p *printed) []string {
			row, plant := p.weakest()
			return p.cell("rows", "Row "+row+", plant", plant, "Head")
		},
		func(p *printed) []string { return p.said("headroom", `weakest emitter has, `+aHead) },
	}},
	{"the least pressure in the row of the weakest emitter", []func(p *printed) []string{
		func(p *printed) []string {
			if row, _ := p.weakest(); len(p.s.Layout.Zones) == 1 && alone(p.s.Plan) {
				return p.cell("fares", "The rows in figures", row, "Pressure")
			}
			return nil
		},
		func(p *printed) []string {
			if len(p.s.Layout.Zones) == 1 && alone(p.s.Plan) {
				return p.figure("answer", "Weakest emitter", "^"+pressure)
			}
			return nil
		},
	}},
	{"the flow of the zone", []func(p *printed) []string{
		func(p *printed) []string { return p.figure("answer", "Flow", `^([\d.]+)`) },
		func(p *printed) []string { return p.cell("zones", "The zones", "Zone "+p.zone(), "Flow") },
		func(p *printed) []string { return p.cell("pump", "The zones", p.zone(), "Flow") },
		func(p *printed) []string { return p.said("pump", `works: .* at ([\d.]+)`) },
	}},
	{"what the supply gives", []func(p *printed) []string{
		func(p *printed) []string { return p.cell("zones", "The zones", "Zone "+p.zone(), "Head at the") },
		func(p *printed) []string { return p.cell("pump", "The zones", p.zone(), "Head of the supply") },
		func(p *printed) []string { return p.said("pump", `works: [\d.]+ \S+ \(`+aHead) },
	}},
	{"what the budget adds up to", []func(p *printed) []string{
		func(p *printed) []string { return p.said("budget", "Where the "+pressure) },
		func(p *printed) []string { return p.cell("budget", "Where the head", "Given ", "Pressure") },
	}},
	{"how alike the plants' water is", []func(p *printed) []string{
		func(p *printed) []string { return p.figure("answer", "Plants alike (EU)", `^([\d.]+ %)`) },
		func(p *printed) []string { return p.cell("evenness", "Measures", "Emission", "Plants alike") },
		func(p *printed) []string { return p.cell("pump", "The zones", p.leastAlike(), "EU") },
		func(p *printed) []string { return p.cell("ring", "The rows closed", "Evenness", p.tied()) },
	}},
	{"how true emitters are to their make", []func(p *printed) []string{
		func(p *printed) []string {
			if p.leastAlike() == "" {
				return nil
			}
			if v := p.cell("evenness", "Measures", "Emission", "True to make"); v != nil {
				return v
			}
			return p.cell("evenness", "Measures", "Emission", "Plants alike")
		},
		func(p *printed) []string {
			return p.cell("chance", "Water of the plants", p.leastAlike(), "EU by formula")
		},
	}},
	{"the evenness that is asked for", []func(p *printed) []string{
		func(p *printed) []string { return p.figure("answer", "Plants alike (EU)", `limit is ([\d.]+ %)`) },
		func(p *printed) []string { return p.said("evenness", `Your limit is ([\d.]+ %)`) },
	}},
	{"the time for a litre", []func(p *printed) []string{
		func(p *printed) []string { return p.figure("evenness", "Time for one litre", `^([\d.]+) min`) },
		func(p *printed) []string {
			return p.figure("evenness", "Time for one litre (0.26 gal)", `^([\d.]+) min`)
		},
		func(p *printed) []string { return p.said("zones", `A litre for every plant takes ([\d.]+) min\.`) },
		func(p *printed) []string { return p.cell("zones", "The zones", "One round", "Runs for") },
	}},
	{"how many plants there are", []func(p *printed) []string{
		func(p *printed) []string { return p.said("answer", `(\d+) plants?\n`) },
		func(p *printed) []string { return p.cell("zones", "The zones", "One round", "Plants") },
	}},
	{"the reserve", []func(p *printed) []string{
		func(p *printed) []string { return p.cell("budget", "Where the head", "Safety margin", "Head") },
		func(p *printed) []string { return p.said("headroom", "over your safety margin of "+aHead) },
	}},
	{"what the plan costs", []func(p *printed) []string{
		func(p *printed) []string { return p.said("designs", `instead of ([\d.]+)\.\n`) },
		func(p *printed) []string { return p.said("designs", `Your plan as it stands costs ([\d.]+)\.`) },
	}},
	{"the fortnight of greatest need", []func(p *printed) []string{
		func(p *printed) []string { return p.said("shots", `of greatest need, from (\d+ \w+),`) },
		func(p *printed) []string { return p.said("tank", `of greatest need, from (\d+ \w+),`) },
		func(p *printed) []string { return p.said("tank", `Of what is given from (\d+ \w+),`) },
	}},
	{"what all plants are given on a typical day", []func(p *printed) []string{
		func(p *printed) []string { return p.said("tank", `are given ([\d.]+ \w+) on a typical day`) },
		func(p *printed) []string { return p.cell("tank", "Water of all", "A typical day", "Given") },
	}},
	{"what drains on a hot day", []func(p *printed) []string{
		func(p *printed) []string {
			return p.said("tank", `drain on a typical day and ([\d.]+ \w+) on a hot day`)
		},
		func(p *printed) []string { return p.cell("tank", "Water of all", "A hot day", "Drains") },
	}},
	{"how long plants last on a hot day", []func(p *printed) []string{
		func(p *printed) []string { return p.said("outage", `until \d\d:\d\d \((\d+) h (\d\d) min\)`) },
		func(p *printed) []string {
			// The plants that suffer first are named in the sentence.
			who := p.said("outage", `of a hot day in the (?:week|fortnight) from \d+ \w+, (.*?) has water`)
			if who == nil {
				return nil
			}
			name := strings.ToUpper(who[0][:1]) + who[0][1:] + " a hot day"
			v := p.cell("outage", "How long plants last", name, "Stops at 9:00")
			if v == nil {
				return nil
			}
			return regexp.MustCompile(`(\d+) h (\d\d) min`).FindStringSubmatch(v[0])[1:]
		},
	}},
	{"what tubing may carry in the sun", []func(p *printed) []string{
		func(p *printed) []string { return p.said("surge", `may carry (?:only )?`+pressure) },
		func(p *printed) []string { return p.said("findings", `weakest may carry `+pressure) },
	}},
	{"when the first plants go out", []func(p *printed) []string{
		func(p *printed) []string {
			return p.said("season", `before (\d+ \w+ \d+), when the first plants go out`)
		},
		func(p *printed) []string { return p.earliest("Plant out") },
	}},
	{"when the last row is cleared", []func(p *printed) []string{
		func(p *printed) []string { return p.said("season", `last plants are removed on (\d+ \w+ \d+)`) },
		func(p *printed) []string { return p.latest("Remove plants") },
	}},
}

// leastAlike is the number of the zone that the evenness is of; empty where none
// of its emitters is open.
func (p *printed) leastAlike() string {
	z := p.s.LeastAlike()
	if z.Open == 0 {
		return ""
	}
	return strconv.Itoa(z.Zone)
}

// alone reports whether a plan has one emitter, so that the weakest has the least
// pressure.
func alone(p *plan.Plan) bool { return len(p.Emitters) == 1 }

// earliest and latest are the first and the last date of a column of the plantings.
func (p *printed) earliest(column string) []string { return p.date(column, -1) }

func (p *printed) latest(column string) []string { return p.date(column, 1) }

func (p *printed) date(column string, sign int) []string {
	best := ""
	for _, g := range p.tables["season"] {
		if !strings.HasPrefix(g.caption, "Dates of every planting") {
			continue
		}
		for _, r := range g.rows[1:] {
			for c, name := range g.rows[0] {
				if name == column && len(r) > c && (best == "" || sign*order(r[c], best) > 0) {
					best = r[c]
				}
			}
		}
	}
	if best == "" {
		return nil
	}
	return []string{best}
}

// order compares two dates such as "4 April 2027".
func order(a, b string) int {
	at, err := time.Parse("2 January 2006", a)
	bt, err2 := time.Parse("2 January 2006", b)
	if err != nil || err2 != nil {
		panic(a + " or " + b + " is no date")
	}
	return at.Compare(bt)
}

// figureOf is a printed value without the unit, for columns that name it above.
func figureOf(values []string) []string {
	out := make([]string, len(values))
	for i, v := range values {
		out[i], _, _ = strings.Cut(v, " ")
	}
	return out
}

// Whatever the page prints twice, it prints alike.
func TestSectionsAgree(t *testing.T) {
	plans := map[string]*sheet.Sheet{}
	for name, s := range sheets() {
		plans[name] = s
	}
	for i, p := range mixed(60) {
		plans["mixed plan "+strconv.Itoa(i)] = sheet.Work(p)
	}
	hot := plan.Default()
	hot.Supply.Regulator = 0 // more pressure than the tubing carries
	plans["no regulator"] = sheet.Work(hot)
	compared := make([]int, len(facts))
	twice := make([][]bool, len(facts))
	for i := range facts {
		twice[i] = make([]bool, len(facts[i].at))
	}
	for name, s := range plans {
		if len(s.Zones) == 0 {
			continue
		}
		p := read(t, s)
		for i, f := range facts {
			var first []string
			from := -1
			for k, at := range f.at {
				v := at(p)
				if v == nil || v[0] == "–" {
					continue
				}
				if !strings.Contains(v[0], " 2") && !strings.HasPrefix(f.name, "the fortnight") {
					v = figureOf(v)
				}
				twice[i][k] = true
				if from < 0 {
					first, from = v, k
					continue
				}
				compared[i]++
				if strings.Join(v, " ") != strings.Join(first, " ") {
					t.Errorf("%s: %s is %v in place %d and %v in place %d", name, f.name, first, from+1, v, k+1)
				}
			}
		}
	}
	for i, f := range facts {
		if compared[i] == 0 {
			t.Errorf("%s is nowhere printed twice", f.name)
		}
		for k, found := range twice[i] {
			if !found {
				t.Errorf("%s is not found in place %d: has its wording changed?", f.name, k+1)
			}
		}
	}
}

// The lines of the budget add up on the page too: what is left beyond the
// reserve, and the reserve, are what the answer says is to spare.
func TestTheReserveIsInWhatIsToSpare(t *testing.T) {
	p := read(t, sheet.Work(plan.Default()))
	number := func(v []string) float64 {
		x, err := strconv.ParseFloat(figureOf(v)[0], 64)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	beyond, kept := p.cell("budget", "Where the head", "Beyond the safety margin", "Pressure"), p.cell("budget", "Where the head", "Safety margin", "Pressure")
	spare := p.figure("answer", "To spare", "^"+pressure)
	// Three figures rounded to a hundredth each.
	if d := number(beyond) + number(kept) - number(spare); d > 0.015 || d < -0.015 {
		t.Errorf("%v beyond %v in reserve, and %v to spare", beyond, kept, spare)
	}
}

// The tables of the start give pressures at the supply in the plan's unit, and
// levels of the water for a tank alone.
func TestOpeningsArePressures(t *testing.T) {
	us, tank := plan.Default(), plan.Default()
	us.Units = unit.US
	tank.Supply.Kind, tank.Supply.Regulator, tank.Runs[0].Rise = plan.GravityTank, 0, -30
	for want, p := range map[string]*plan.Plan{"bar": plan.Default(), "psi": us, "m": tank} {
		got := read(t, sheet.Work(p)).cell("starting", "Start of each row", "Row 1", "Its first emitter")
		if len(got) == 0 || !strings.HasSuffix(got[0], " "+want) {
			t.Errorf("%v, want %s", got, want)
		}
	}
}
