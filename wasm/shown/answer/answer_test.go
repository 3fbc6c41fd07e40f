package answer

import (
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/design"
	"evenrow/wasm/works/limit"
)

// planOf returns an example.
func planOf(t *testing.T, key string) *plan.Plan {
	t.Helper()
	for _, e := range plan.Examples() {
		if e.Key == key {
			return e.Plan
		}
	}
	t.Fatalf("no example %q", key)
	return nil
}

// A negative head is how far the water stands too low.
func TestWaterBelowTheEmittersInWords(t *testing.T) {
	sc := part{scene.Bare(&sheet.Sheet{Plan: plan.Default()}, unit.Metric)}
	for _, c := range []struct {
		f    sheet.Finding
		want string
	}{
		{sheet.Finding{Kind: sheet.NeverOpen, Row: -1, Value: -0.3, Limit: 7}, "The water stands 0.3\u00a0m below the lowest of the shut emitters."},
		{sheet.Finding{Kind: sheet.NeverOpen, Row: -1, Value: 3, Limit: 7}, "those that are shut get at most 0.29\u00a0bar (3.0\u00a0m)."},
		{sheet.Finding{Kind: sheet.OutsidePlace, Row: 2, Value: -6.49, Limit: 12}, "Row 3 begins 6.49\u00a0m before the place."},
		{sheet.Finding{Kind: sheet.NarrowPath, Row: 2, Base: 1, Value: 0.55, Limit: 0.6}, "Between rows 2 and 3 there is 0.55\u00a0m, and you want a path of 0.6\u00a0m."},
		{sheet.Finding{Kind: sheet.NarrowPath, Row: 2, Base: 1, Value: -0.1, Limit: 0.6}, "Nothing is free between rows 2 and 3, and you want a path of 0.6\u00a0m."},
		{sheet.Finding{Kind: sheet.NearWall, Row: 2, Value: 0.05, Limit: 0.1}, "Row 3 comes within 0.05\u00a0m of a wall, and you want 0.1\u00a0m to be free there."},
		{sheet.Finding{Kind: sheet.NearWall, Row: 2, Value: -0.2, Limit: 0.1}, "Row 3 reaches 0.2\u00a0m beyond a wall with its slabs, bags, buckets or pots, and you want 0.1\u00a0m to be free before it."},
		{sheet.Finding{Kind: sheet.NearWall, Row: 2, Value: 0, Limit: 0.1}, "Row 3 touches a wall, and you want 0.1\u00a0m to be free there."},
		{sheet.Finding{Kind: sheet.InTheDoor, Row: 1, Value: 0, Limit: 0.8}, "Row 2 stands in the way in: nothing should stand within 0.8\u00a0m of the door."},
		{sheet.Finding{Kind: sheet.OutsidePlace, Row: 2, Value: 13, Limit: 12}, "Row 3 reaches 13\u00a0m, and the place ends at 12\u00a0m."},
	} {
		if got := sc.explain(&c.f); !strings.Contains(got, c.want) {
			t.Errorf("%s\nwant %s", got, c.want)
		}
	}
}

// One, several and all emitters above their range are told in one grammar.
func TestEmittersAboveTheirRangeInWords(t *testing.T) {
	sc := part{scene.Bare(&sheet.Sheet{Plan: plan.Default(), Verdict: sheet.Nearly, Zones: []sheet.ZoneResult{{Emitters: 3}}}, unit.Metric)}
	for n, want := range []string{1: "1 runs", 2: "2 run", 3: "all of them run"} {
		sc.S.Findings = []sheet.Finding{{Kind: sheet.AboveRange, Count: n}}
		if _, got := sc.verdict(); n > 0 && got != "Every emitter opens, but "+want+" above the pressure that such emitters are made for." {
			t.Error(got)
		}
	}
}

// What a remedy says in figures is enough as it is printed, whichever of the two
// for a pressure is read: so much higher a tank, a regulator set to so much, a
// filter cleaned at so much, or emitters that make do with so much.
func TestRemediesAsTheyArePrinted(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 14))
	tried := map[sheet.FixKind]int{}
	number := regexp.MustCompile(`([\d.]+)\x{a0}(bar|psi|m|ft)\b`)
	for n := range 500 {
		p := planOf(t, []string{"balcony", "millrace"}[n%2])
		p.Units = unit.System(r.IntN(2))
		p.Filter.Fouling *= 1 + 7*r.Float64()
		p.Limits.Reserve = 2 * r.Float64()
		switch n % 5 {
		case 0:
			p.Supply.Kind, p.Supply.Regulator = plan.GravityTank, 0
			p.Runs[0].Rise = -p.Emitters[0].Lowest/1e4*r.Float64() + 0.3
		case 1:
			p.Filter.Fouling = (0.5 + 2*r.Float64()) * 1e5
			p.Filter.Rated = p.Filter.Rated / 6
		case 2, 3:
			p.Supply.Kind = plan.PumpTwo
			p.Supply.ShutOff, p.Supply.MaxFlow = 12+30*r.Float64(), (5+60*r.Float64())/6e4
			p.Supply.Regulator = float64(r.IntN(2)) * 1e5 * (1 + 3*r.Float64())
		}
		if len(p.Check()) > 0 {
			continue
		}
		s := sheet.Answer(p)
		sc := part{scene.New(s, nil)}
		for i := range s.Fixes {
			f := &s.Fixes[i]
			for _, c := range []*sheet.Change{&f.Change, f.And} {
				if !f.Solves || c == nil {
					continue
				}
				var set func(q *plan.Plan, v float64)
				switch c.Kind {
				case sheet.RaiseTank:
					set = func(q *plan.Plan, v float64) { q.Runs[0].Rise = p.Runs[0].Rise - v }
				case sheet.AddRegulator:
					set = func(q *plan.Plan, v float64) { q.Supply.Regulator = v }
				case sheet.CleanerFilter:
					set = func(q *plan.Plan, v float64) { q.Filter.Fouling = v }
				case sheet.LowerEmitters:
					e := &p.Emitters[p.Rows[s.Layout.Plants[s.Zones[s.Critical].Worst].Row].Emitter]
					set = func(q *plan.Plan, v float64) {
						for i := range q.Emitters {
							if c := &q.Emitters[i]; e == &p.Emitters[i] {
								c.Lowest, c.Opens, c.Closes = v, e.Opens*v/e.Lowest, e.Closes*v/e.Lowest
							}
						}
					}
				default:
					continue
				}
				tried[c.Kind]++
				for _, m := range number.FindAllStringSubmatch(sc.change(c), -1) {
					v, _ := strconv.ParseFloat(m[1], 64)
					switch kind := m[2]; {
					case kind == "bar" || kind == "psi":
						v = unit.Of(unit.Pressure, p.Units).ToInner(v)
					case c.Kind == sheet.RaiseTank:
						v = unit.Of(unit.Head, p.Units).ToInner(v)
					default:
						v = s.Layout.Network.Water.PressureHead(unit.Of(unit.Head, p.Units).ToInner(v))
					}
					q := f.Plan.Clone()
					set(q, v)
					if a := sheet.Answer(q); a.Verdict != sheet.Yes {
						t.Errorf("plan %d, system %d: %s: read as %s %s: %+v", n, p.Units, sc.change(c), m[1], m[2], a.Findings[0])
					}
				}
			}
		}
	}
	t.Log(tried)
	for _, k := range []sheet.FixKind{sheet.RaiseTank, sheet.AddRegulator, sheet.CleanerFilter, sheet.LowerEmitters} {
		if tried[k] < 5 {
			t.Errorf("%d remedies of kind %d", tried[k], k)
		}
	}
}

// With a tank that stands so much lower as a design says, as it is printed, the
// answer is Yes.
func TestTheTankThatCouldStandLower(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 14))
	tried := 0
	for n := range 60 {
		p := planOf(t, []string{"balcony", "millrace"}[n%2])
		p.Units = unit.System(r.IntN(2))
		p.Supply.Kind, p.Supply.Regulator = plan.GravityTank, 0
		p.Runs[0].Rise = -p.Emitters[0].Lowest / 1e4 * (1.1 + r.Float64())
		p.Limits.Reserve = 1.5 * r.Float64()
		s := sheet.Answer(p)
		s.Explore(sheet.Searching)
		for i := range s.Designs.Best {
			b := &s.Designs.Best[i]
			m := regexp.MustCompile(`it could stand ([\d.]+)\x{a0}(?:m|ft) lower`).FindStringSubmatch(part{scene.New(s, nil)}.designWords(b, i, s.Designs))
			if m == nil {
				continue
			}
			v, _ := strconv.ParseFloat(m[1], 64)
			q := b.Take.Clone()
			q.Runs[0].Rise += unit.Of(unit.Length, p.Units).ToInner(v)
			tried++
			if a := sheet.Answer(q); a.Verdict != sheet.Yes {
				t.Errorf("plan %d, system %d: %s: %+v", n, p.Units, m[0], a.Findings[0])
			}
		}
	}
	if tried < 30 {
		t.Errorf("only %d designs", tried)
	}
}

// No pump gives less than no head, and none is said to.
func TestADesignThatNeedsNoPump(t *testing.T) {
	s := sheet.Answer(plan.Default())
	d := &sheet.Designs{Best: []sheet.Best{{Design: design.Design{Head: -0.5, Flow: 2e-5}}, {Design: design.Design{Head: -0.5, Flow: 2e-5, Present: true}}}}
	for i, want := range []string{"falls far enough by itself: the link puts a very weak pump in the place", "takes 0.00\u00a0bar (0.0\u00a0m) at 1.20\u00a0L/min, which"} {
		if got := (part{scene.New(s, nil)}).designWords(&d.Best[i], i, d); !strings.Contains(got, want) || strings.Contains(got, "−") {
			t.Errorf("%s", got)
		}
	}
}

// Every kind of finding has its words: whatever turns a yes a sentence for the
// answer and a name for what ends a room, and each a reason with its figures.
func TestEveryFindingIsTold(t *testing.T) {
	sc := part{scene.New(sheet.Answer(plan.Default()), nil)}
	sc.S.Water, sc.S.Wanted = make([]sheet.RowWater, 2), &sheet.Wanted{Does: true, Least: 12, Flow: 1e-4, Most: 20}
	for k := range sheet.FindingKind(sheet.FindingKinds) {
		told := &tellings[k]
		judges := sheet.Kinds[k].Verdict != sheet.Yes
		if has := told.line != "" || told.lineOf != nil; has != judges {
			t.Errorf("kind %d, %v: a sentence for the answer: %v, want %v", k, k, has, judges)
		}
		if has := told.end != ""; has != judges {
			t.Errorf("kind %d, %v: a name for what ends a room: %v, want %v", k, k, has, judges)
		}
		if told.line != "" && told.lineOf != nil || told.why != "" && told.whyOf != nil {
			t.Errorf("kind %d, %v: a plain text and a function for the same", k, k)
		}
		if told.why == "" && told.whyOf == nil {
			t.Errorf("kind %d, %v: no reason", k, k)
			continue
		}
		for _, zones := range []int{1, 2} {
			sc.S.Zones = make([]sheet.ZoneResult, zones)
			f := &sheet.Finding{Kind: k, Count: 3, Row: 0, Plant: 2, Value: 4, Limit: 5, Zone: 1, Base: 1}
			said := []string{sc.explain(f)}
			if judges {
				said = append(said, sc.headline(f))
			}
			for _, text := range said {
				if !strings.HasSuffix(text, ".") || strings.ContainsAny(text, "{}") || strings.Contains(text, "  ") {
					t.Errorf("%v is told as %q", k, text)
				}
			}
		}
	}
}

// How plants' water compares is told in a sentence of its own.
func TestEverySamenessIsTold(t *testing.T) {
	said := map[string]int{}
	for k := range alike {
		got := words.Say(alike[k].line, "All 3 emitters", "3")
		if !strings.HasPrefix(got, "All 3 emitters open") || !strings.HasSuffix(got, ".") {
			t.Errorf("sameness %d is told as %q", k, got)
		}
		if other, there := said[got]; there {
			t.Errorf("%d and %d are both told as %q", other, k, got)
		}
		said[got] = k
	}
}

// Each limit that designs fail is told in a sentence of its own.
func TestEveryLimitIsTold(t *testing.T) {
	said := map[string]limit.Limit{}
	for l, text := range broken {
		got := words.Say(text)
		if !strings.HasSuffix(got, ".") {
			t.Errorf("%q, limit %d, is told as %q", limit.Names[l], l, got)
		}
		if other, there := said[got]; there {
			t.Errorf("%q and %q are both told as %q", limit.Names[other], limit.Names[l], got)
		}
		said[got] = limit.Limit(l)
	}
}

// Each change is one sentence with its figures, and no two say the same; two
// changes are two sentences.
func TestEveryChangeIsASentence(t *testing.T) {
	said := map[string]sheet.Change{}
	for kind := range sheet.FixKind(sheet.FixKinds) {
		if kind == sheet.Redesign { // it takes a whole fix
			continue
		}
		if changes[kind] == nil {
			t.Errorf("%q, fix %d, is told by nothing", sheet.FixesOf[kind].Name, kind)
			continue
		}
		for _, c := range []sheet.Change{{}, {Most: 30}, {Regulator: 1e5}, {Regulator: 2e5}} {
			for _, stands := range []float64{0, 2e5} {
				p := plan.Default()
				p.Supply.Regulator = stands
				c.Kind, c.Value, c.Flow, c.Index = kind, 1.5, 1e-4, 1
				sc := part{scene.Bare(&sheet.Sheet{Plan: p}, unit.Metric)}
				sc.Weight = 9800
				got := sc.change(&c)
				if got == "" || got[0] < 'A' || got[0] > 'Z' || strings.Count(got, ". ") > 0 || !strings.HasSuffix(got, ".") || strings.ContainsAny(got, "{}") {
					t.Errorf("%+v is told as %q", c, got)
				}
				if d, there := said[got]; there && d.Kind != kind {
					t.Errorf("%+v and %+v are both told as %q", c, d, got)
				}
				said[got] = c
				for v, words := range map[float64]string{c.Most: "at most 2.94", c.Regulator: "set"} {
					drives := kind == sheet.NewPump || kind == sheet.MorePressure
					if drives && v > 0 && v != stands && !strings.Contains(got, words) {
						t.Errorf("%+v: %q lacks %q", c, got, words)
					}
				}
			}
		}
	}
	// One for each kind and one more for the regulator that stands; of a pump and
	// a tap each six more: at most so much, the same without a regulator, before the
	// one that stands, that one set anew, and another at either of two pressures.
	if want := int(sheet.Redesign) + 1 + 2*6; len(said) != want {
		t.Errorf("%d sentences, want %d", len(said), want)
	}
	sc := part{scene.Bare(&sheet.Sheet{Plan: plan.Default()}, unit.Metric)}
	both := sheet.Fix{Change: sheet.Change{Kind: sheet.MiddleFeed}, And: &sheet.Change{Kind: sheet.CloseRing}}
	if got := sc.remedy(&both); got != "Do both: Feed the header in its middle. Tie the far ends of the rows with a second header." {
		t.Error(got)
	}
}

// Each conclusion is told in its own sentences, and none claims to know the
// cheapest where the search was ended.
func TestEveryConclusionIsTold(t *testing.T) {
	said := map[string]string{}
	for _, tt := range []struct {
		what    string
		supply  int
		set     float64 // Pa, of the regulator that stands
		verdict sheet.Verdict
		best    sheet.Best
		want    string
	}{
		{"a pump that is sought", plan.PumpPower, 0, sheet.Yes, sheet.Best{Wanted: &sheet.Wanted{}}, "each design says which it takes"},
		{"a regulator", plan.PumpTwo, 0, sheet.No, sheet.Best{Regulator: 1e5}, "Your pump is too strong"},
		{"a regulator set anew", plan.PumpTwo, 2e5, sheet.No, sheet.Best{Regulator: 1e5}, "as you have set it"},
		{"another tap", plan.Mains, 0, sheet.No, sheet.Best{}, "works with the tap that you have. Each needs another"},
		{"dearer", plan.GravityTank, 0, sheet.Yes, sheet.Best{Design: design.Design{Present: true, Cost: 12}}, "Your plan costs 10.00, and nothing cheaper"},
		{"cheaper", plan.PumpTwo, 0, sheet.Yes, sheet.Best{Design: design.Design{Present: true, Cost: 8}}, "it could cost 8.00 instead of 10.00"},
		{"one that serves", plan.PumpTwo, 0, sheet.No, sheet.Best{Design: design.Design{Present: true, Cost: 12}}, "Design 1 serves with the pump that you have"},
	} {
		for _, cut := range []bool{false, true} {
			p := plan.Default()
			p.Supply.Kind, p.Supply.Regulator = tt.supply, tt.set
			d := &sheet.Designs{Best: []sheet.Best{tt.best}}
			d.Now, d.Cut = 10, cut
			sc := part{scene.Bare(&sheet.Sheet{Plan: p, Verdict: tt.verdict, Designs: d, Wanted: tt.best.Wanted}, unit.Metric)}
			sc.Weight = 9800
			got := sc.concludes(d)
			if !strings.Contains(got, tt.want) || !strings.HasSuffix(got, ".") || strings.ContainsAny(got, "{}") {
				t.Errorf("%s: %q, want %q", tt.what, got, tt.want)
			}
			if before, there := said[got]; there && before != tt.what {
				t.Errorf("%s is told as %s: %q", tt.what, before, got)
			}
			said[got] = tt.what
			for _, claim := range []string{"the cheapest that does", "nothing cheaper works", "No design works"} {
				if cut && strings.Contains(got, claim) {
					t.Errorf("%s: a search that was ended says %q", tt.what, got)
				}
			}
		}
	}
	// The costs where the pump is sought, and of a cheaper
	// design, are told alike whether the search was ended or not.
	if want := 2*7 - 2; len(said) != want {
		t.Errorf("%d conclusions, want %d", len(said), want)
	}
}
