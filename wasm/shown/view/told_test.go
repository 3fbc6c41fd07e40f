package view

import (
	"encoding/xml"
	"io"
	"math"
	"regexp"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/answer"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/form"
	"evenrow/wasm/shown/sheet"
)

// sheets are all examples, and plans at the edges of what may be typed.
func sheets() map[string]*sheet.Sheet {
	all := map[string]*sheet.Sheet{}
	for _, e := range plan.Examples() {
		all[e.Key] = sheet.Work(e.Plan)
	}
	power := plan.Default()
	power.Supply.Kind = plan.PumpPower
	all["power only"] = sheet.Work(power)

	wanted := plan.Default()
	wanted.Supply.Kind, wanted.Units = plan.PumpWanted, unit.US
	all["a pump yet to be bought, US units"] = sheet.Work(wanted)
	beyond := wanted.Clone()
	beyond.Emitters[0].Lowest, beyond.Runs[0].Rise = 9e5, 60
	beyond.Emitters[0].Highest = 10e5
	all["more than any pump"] = sheet.Work(beyond)

	one := plan.Default()
	one.Rows = one.Rows[:1]
	one.Rows[0].Plants = 1
	all["one plant"] = sheet.Work(one)

	zones := plan.Default()
	zones.Units = unit.US
	for i := range zones.Rows {
		zones.Rows[i].Zone = i + 1
	}
	all["four zones, US units"] = sheet.Work(zones)

	tap := plan.Default()
	tap.Supply.Kind, tap.Supply.Regulator = plan.Mains, 0
	tap.Supply.Static, tap.Supply.TapFlow = 3e5, 20.0/6e4
	all["a tap"] = sheet.Work(tap)
	return all
}

// whole reads a fragment as XML, which is stricter than the page needs, and
// returns its ids.
func whole(t *testing.T, name, html string) (ids []string) {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader("<x>" + html + "</x>"))
	d.AutoClose = []string{"input"}
	d.Entity = xml.HTMLEntity
	d.Strict = false
	for {
		token, err := d.Token()
		if err == io.EOF {
			return ids
		}
		if err != nil {
			t.Fatalf("%s is not well formed: %v", name, err)
		}
		if e, ok := token.(xml.StartElement); ok {
			for _, a := range e.Attr {
				if a.Name.Local == "id" {
					ids = append(ids, a.Value)
				}
			}
		}
	}
}

func TestFragmentsAreWellFormedAndFinite(t *testing.T) {
	wrong := regexp.MustCompile(`NaN|Inf|\bnone\b [a-z]|%!|e\+\d`)
	for key, s := range sheets() {
		seen := map[string]bool{}
		fragments := append(Everything(s, func(*plan.Plan) string { return "#1x" }), block.Fragment{ID: "ask", HTML: form.Ask(s.Plan, plan.DraftOf(s.Plan), nil, Groups(), form.Place{})})
		for _, f := range fragments {
			name := key + ", " + f.ID
			for _, id := range append(whole(t, name, f.HTML), f.ID) {
				if seen[id] {
					t.Errorf("%s: the id %s stands twice", name, id)
				}
				seen[id] = true
			}
			if m := wrong.FindString(f.HTML); m != "" {
				t.Errorf("%s prints %q", name, m)
			}
		}
	}
}

// A picture is drawn for both widths, and has a table that says the same: within
// its section, or as the section below it.
func TestEveryPictureHasATable(t *testing.T) {
	below := map[string]string{"map": "fares", "pieces": "cuts", "spots": "parts"}
	pictures := 0
	for key, s := range sheets() {
		all := Everything(s, nil)
		table := map[string]bool{}
		for _, f := range all {
			table[f.ID] = strings.Contains(f.HTML, "<table>")
		}
		for _, f := range all {
			wide, narrow := strings.Count(f.HTML, `class="picture wide"`), strings.Count(f.HTML, `class="picture narrow"`)
			if wide != narrow {
				t.Errorf("%s, %s: %d wide pictures and %d narrow ones", key, f.ID, wide, narrow)
			}
			if wide > 0 && !table[f.ID] && !table[below[f.ID]] {
				t.Errorf("%s, %s: a picture without a table", key, f.ID)
			}
			pictures += wide
		}
	}
	if pictures == 0 {
		t.Fatal("no pictures")
	}
}

func TestAnswerBeginsWithTheVerdict(t *testing.T) {
	all := sheets()
	for key, want := range map[string]string{
		"millrace":   "Yes. All 120 emitters open, and every plant gets nearly the same water.",
		"wrong-pump": "No. No emitter opens, and no plant gets water.",
		"one plant":  "Yes. The emitter opens, and the plant gets its water.",
		"power only": "Yes, with a pump of at least 12.1\u00a0m at 4.00\u00a0L/min, at most 25.2\u00a0m with everything shut. All 120 emitters open, and every plant gets nearly the same water.",
	} {
		s, ok := all[key]
		if !ok {
			t.Errorf("there is no plan %s", key)
			continue
		}
		if got := answer.Announce(s); got != want {
			t.Errorf("%s: %q\nwant %q", key, got, want)
		}
		html := Told(s, nil)[0].HTML
		word, _, _ := strings.Cut(want, ". ")
		if !strings.Contains(html, ">"+word+".</strong>") {
			t.Errorf("%s: the answer does not begin with %s", key, word)
		}
	}
}

func TestFiguresAreAtMostFive(t *testing.T) {
	for key, s := range sheets() {
		if n := strings.Count(Told(s, nil)[0].HTML, "<dt>"); n > 5 {
			t.Errorf("%s: %d figures under the answer", key, n)
		}
	}
}

// A result that is not finite, which none should be, is printed as a dash.
func TestDashForWhatIsNotFinite(t *testing.T) {
	s := sheet.Work(plan.Default())
	z := &s.Zones[0]
	z.Margin, z.Flow, z.Head = math.NaN(), math.Inf(1), math.NaN()
	z.Even.EU, z.Alike.EU, z.Alike.Mean, z.LeadSpeed, z.Least = math.NaN(), math.NaN(), math.NaN(), math.NaN(), math.NaN()
	for i := range z.Solution.Head {
		z.Solution.Head[i] = math.NaN()
	}
	for _, f := range Everything(s, nil) {
		if strings.Contains(f.HTML, "NaN") || strings.Contains(f.HTML, "Inf") || strings.Contains(f.HTML, "none ") {
			t.Errorf("%s prints what is not a number", f.ID)
		}
		if f.ID == "answer" && !strings.Contains(f.HTML, "–") {
			t.Error("the answer has no dash")
		}
	}
}

// Every plant stands on the plan view once for each width, as the sign of its
// state.
func TestOneDropForEveryPlant(t *testing.T) {
	for _, tt := range []struct {
		key   string
		class string
		drops int
	}{
		{"millrace", `class="drop"`, 120},
		{"wrong-pump", `class="drop drop--empty"`, 120},
	} {
		html := ""
		for _, f := range Everything(sheets()[tt.key], nil) {
			if f.ID == "map" {
				html, _, _ = strings.Cut(f.HTML, "<figcaption>")
			}
		}
		n := 0
		for _, path := range strings.Split(html, "<path ")[1:] {
			if strings.HasPrefix(path, tt.class) {
				d, _, _ := strings.Cut(path, "/>")
				n += strings.Count(d, "Z")
			}
		}
		if n != 2*tt.drops {
			t.Errorf("%s: %d drops of %s, want %d in each of two pictures", tt.key, n, tt.class, tt.drops)
		}
	}
}

func TestRoundStep(t *testing.T) {
	for _, tt := range []struct{ v, want float64 }{{1, 1}, {1.1, 2}, {2.1, 5}, {5.1, 10}, {0.03, 0.05}, {700, 1000}} {
		if got := block.RoundStep(tt.v); math.Abs(got-tt.want) > 1e-12*tt.want {
			t.Errorf("roundStep(%g) = %g, want %g", tt.v, got, tt.want)
		}
	}
}

// fragment is one of the fragments of a plan.
func fragment(t *testing.T, p *plan.Plan, id string) string {
	t.Helper()
	s := sheet.Work(p)
	for _, f := range Everything(s, nil) {
		if f.ID == id {
			return f.HTML
		}
	}
	t.Fatalf("no fragment %s", id)
	return ""
}

// What a tank gives is the fall of its water, not nothing.
func TestTankGivesItsFall(t *testing.T) {
	for _, e := range plan.Examples() {
		if e.Key != "balcony" {
			continue
		}
		got := strings.ReplaceAll(fragment(t, e.Plan, "budget"), "\u00a0", " ")
		if !strings.Contains(got, "Where the 0.16 bar (1.6 m) go") || strings.Contains(got, "Lift") {
			t.Errorf("the budget of a tank 1.6 m up: %s", got)
		}
	}
}

// The numbers of many rows do not run into each other.
func TestRowNumbersHaveRoom(t *testing.T) {
	numbers := func(rows int) int {
		p := plan.Default()
		plan.SectionNamed("rows").Resize(p, rows)
		_, narrow, _ := strings.Cut(fragment(t, p, "map"), `class="picture narrow"`)
		narrow, _, _ = strings.Cut(narrow, "</svg>")
		return len(regexp.MustCompile(`>\d+</text></a>`).FindAllString(narrow, -1))
	}
	if got := numbers(4); got != 4 {
		t.Errorf("%d of 4 rows have their numbers", got)
	}
	if got := numbers(40); got < 5 || got > 20 {
		t.Errorf("%d of 40 rows have their numbers on a narrow picture", got)
	}
}

// What is said of a label that cannot be so, in the units of the plan, and what it
// says of a pump that is too weak.
func TestLabelsInWords(t *testing.T) {
	label := func(sys unit.System, head, flow, power float64) *plan.Plan {
		p := plan.Default()
		p.Units, p.Supply.Kind = sys, plan.PumpTwo
		p.Supply.ShutOff, p.Supply.MaxFlow, p.Supply.Label = head, flow, power
		return p
	}
	weak := plan.Default()
	weak.Supply.Kind, weak.Supply.Power = plan.PumpPower, 5
	for _, tt := range []struct {
		p         *plan.Plan
		want, not string
	}{
		{label(unit.Metric, 3, 800/6e4, 10), "A pump of 3.0 m and 800.00 L/min puts up to 151 W into the water, and one with 10 W on its label at most 8 W. If the flow is that of an hour, type it with its unit: 800.0 L/h.", ""},
		{label(unit.US, 3, 800/6e4, 10), "A pump of 9.8 ft and 211.34 gal/min puts up to 0.20 hp into the water, and one with 0.01 hp on its label at most 0.01 hp. If the flow is that of an hour, type it with its unit: 211.34 gal/h.", ""},
		{label(unit.Metric, 100, 2000/6e4, 10), "cannot all be so", "of an hour"},
		{label(unit.Metric, 3, 800/3.6e6, 10), "", "cannot all be so"},
		{weak, "A pump of 5 W cannot be such a one: 12.1 m at 4.00 L/min are 8 W in the water alone, and of what is on a label at most 4 W gets there.", ""},
	} {
		got := strings.ReplaceAll(said(t, sheet.Answer(tt.p), "findings"), "\u00a0", " ")
		if !strings.Contains(got, tt.want) || tt.not != "" && strings.Contains(got, tt.not) {
			t.Errorf("said %.600s, want %q and not %q", got, tt.want, tt.not)
		}
	}
}

// A pump that is bought by the figures that the answer prints makes the answer Yes, in
// either system: at the least and at the most that they allow.
func TestTheWantedPumpAsItIsPrinted(t *testing.T) {
	for _, sys := range []unit.System{unit.Metric, unit.US} {
		for _, key := range []string{"millrace", "balcony", "ring"} {
			p := planOf(t, key).Clone()
			p.Units, p.Supply.Kind, p.Runs[0].Rise = sys, plan.PumpWanted, 0.5
			v := inTheAnswer(t, p, `Yes, with a pump of at least ([\d.]+)\x{a0}(?:m|ft) at ([\d.]+)\x{a0}(?:L|gal)/min, at most ([\d.]+)\x{a0}(?:m|ft) with everything shut\.`)
			head := unit.Of(unit.Head, sys)
			least, top, flow := head.ToInner(v[0]), head.ToInner(v[2]), unit.Of(unit.Flow, sys).ToInner(v[1])
			for _, points := range [][]plan.Point{
				{{Head: top}, {Flow: flow, Head: least}},
				{{Head: top}, {Flow: flow, Head: top - 1e-3}},
				{{Head: least + 1e-3}, {Flow: flow, Head: least}},
				{{Head: top}, {Flow: flow / 2, Head: least + 2e-3}, {Flow: flow, Head: least}},
			} {
				q := p.Clone()
				q.Supply.Kind, q.Supply.Regulator, q.Supply.Devices = plan.PumpPoints, 0, 0
				q.Supply.Points = points
				if s := sheet.Answer(q); s.Verdict != sheet.Yes {
					t.Errorf("system %d, %s: %+v: %+v", sys, key, points, s.Findings[0])
				}
			}
		}
	}
}
