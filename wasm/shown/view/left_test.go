package view

import (
	"reflect"
	"strings"
	"testing"

	"evenrow/build/hostile"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
)

// strained are plans that are cut at some bound: the examples, ordinary ones,
// a ring, and some of everything.
func strained() []*plan.Plan {
	var list []*plan.Plan
	for _, e := range plan.Examples() {
		list = append(list, e.Plan)
	}
	for n := range 2 {
		p, _ := hostile.Plan(hostile.Numbered(11, n))
		list = append(list, hostile.Ordinary(hostile.Numbered(11, n)), p)
	}
	return append(list, hostile.Ring(hostile.Numbered(12, 1), 120))
}

// plenty is more than any plan of this file takes, in units of work.
const plenty = 1 << 40

// Wherever an exploration is cut, each of its sections says so and nothing else;
// where it is not, they are those of a calculation without a bound.
func TestWhatIsCutSaysSo(t *testing.T) {
	cut, through := map[sheet.Exploration]int{}, 0
	for _, p := range strained() {
		s := sheet.AnswerWithin(plenty, p, nil)
		for which := range sheet.Exploration(sheet.Explorations) {
			s.ExploreWithin(plenty, which)
			want := Explored(s, which, linked)
			for units := 0; ; units = max(1, 4*units) {
				q := *s
				q.Rest = nil
				q.Season, q.Demand, q.Shots, q.Flush, q.Zoning, q.Loop, q.Startup, q.Faults, q.Headroom, q.Designs, q.Chance = s.Season, s.Demand, s.Shots, nil, nil, nil, nil, nil, nil, nil, nil
				if !q.ExploreWithin(units, which) {
					t.Fatalf("%s: somebody waits", p.Name)
				}
				got := Explored(&q, which, linked)
				if !q.Left[which] {
					if !reflect.DeepEqual(got, want) {
						t.Errorf("%s, exploration %d: with %d units, which are enough, it reads otherwise", p.Name, which, units)
					}
					through++
					break
				}
				cut[which]++
				for i, f := range got {
					if f.ID != want[i].ID || f.HTML != "<p>"+string(leftOut)+"</p>" {
						t.Errorf("%s, exploration %d, %d units: %s reads %q", p.Name, which, units, f.ID, f.HTML)
					}
				}
			}
		}
	}
	for which := sheet.Flushing; which < sheet.Explorations; which++ {
		if cut[which] < 20 {
			t.Errorf("exploration %d was cut %d times", which, cut[which])
		}
	}
	if through == 0 {
		t.Error("nothing came to its end")
	}
}

// Wherever the search for fixes is cut, the answer says so; it is the same
// answer, and each fix that it offers is true by itself.
func TestFixesThatAreCutSaySo(t *testing.T) {
	cut, kept := 0, 0
	for _, p := range strained() {
		s := sheet.AnswerWithin(plenty, p, nil)
		for units := 0; ; units = more(units) {
			q := sheet.AnswerWithin(units, p, nil)
			if q.Verdict != s.Verdict || !reflect.DeepEqual(q.Findings, s.Findings) || !reflect.DeepEqual(q.Parts, s.Parts) {
				t.Fatalf("%s, %d units: another answer", p.Name, units)
			}
			answer := func(s *sheet.Sheet) string {
				return Told(s, linked)[0].HTML + Explored(s, sheet.Helping, linked)[0].HTML
			}
			html := answer(q)
			if said := strings.Contains(html, "Not every change was tried"); said != q.Untried {
				t.Errorf("%s, %d units: cut %v, said %v", p.Name, units, q.Untried, said)
			}
			for _, f := range append(Told(q, linked), Explored(q, sheet.Helping, linked)...) {
				if strings.Contains(f.HTML, "NaN") || strings.Contains(f.HTML, "Inf") {
					t.Errorf("%s, %d units: %s", p.Name, units, f.HTML)
				}
			}
			if !q.Untried {
				if want := answer(s); html != want {
					t.Errorf("%s: with %d units, which are enough, the answer reads otherwise:\n%s\nwant\n%s", p.Name, units, html, want)
				}
				break
			}
			cut++
			for i := range q.Fixes {
				if f := &q.Fixes[i]; f.Solves && f.Plan != nil {
					if kept++; sheet.AnswerWithin(0, f.Plan, nil).Verdict != sheet.Yes {
						t.Errorf("%s, %d units: a fix of kind %d does not solve", p.Name, units, f.Kind)
					}
				}
			}
		}
	}
	if cut < 40 || kept < 5 {
		t.Errorf("%d were cut, and %d fixes kept", cut, kept)
	}
}

// What is not sure is not claimed: a search beside fixes that were cut knows of
// no cheapest.
func TestACutSearchKnowsNoCheapest(t *testing.T) {
	for _, key := range []string{"long-field", "wrong-pump", "balcony"} {
		s := sheet.Work(planOf(t, key))
		s.Designs.Cut = true
		html := Explored(s, sheet.Searching, linked)[0].HTML
		for _, claim := range []string{"the cheapest that does", "nothing cheaper works", "No design works"} {
			if strings.Contains(html, claim) {
				t.Errorf("%s: %q", key, claim)
			}
		}
	}
}

// Whoever leaves gets no sheet, at whatever question it is noticed.
func TestWhoeverLeavesGetsNoSheet(t *testing.T) {
	p := hostile.Ring(hostile.Numbered(12, 1), 300)
	asked := 0
	s := sheet.AnswerFor(p, func() bool { asked++; return false })
	first := asked
	s.Explore(sheet.Starting)
	if first == 0 || asked == first {
		t.Fatalf("asked %d times, then %d", first, asked-first)
	}
	for leaves := 0; leaves < first; leaves += 1 + first/5 {
		n := 0
		if sheet.AnswerFor(p, func() bool { n++; return n > leaves }) != nil {
			t.Errorf("after question %d of %d there is an answer", leaves, first)
		}
	}
	for _, leaves := range []int{0, (asked - first) / 2} {
		n := 0
		s := sheet.AnswerFor(p, func() bool { n++; return n > first+leaves })
		if s.Explore(sheet.Starting) || s.Startup != nil {
			t.Error("it goes on exploring")
		}
	}
}

// more are the next units to try: in large steps while hardly anything is done
// with them, and in small ones after.
func more(units int) int {
	if units < 1<<16 {
		return max(1, 4*units)
	}
	return units * 4 / 3
}

// A row of 300 plants with 4 emitters of 16 L/h each, at a tap of 1 L/min, gets
// its water in a hundred hours and more a day. Whatever the timer, that is
// worked out and drawn, in no more words than another plan's.
func TestATapThatGivesNextToNothing(t *testing.T) {
	for kind := range 3 {
		for window := range 2 {
			p := plan.Default()
			p.Supply.Kind, p.Supply.Static, p.Supply.TapFlow, p.Supply.Regulator = plan.Mains, 3e5, 1.0/6e4, 0
			p.Rows = p.Rows[:1]
			r := &p.Rows[0]
			r.Plants, r.Spacing, r.PerPlant = 300, 0.3, 4
			e := &p.Emitters[0]
			e.Flow, e.Opens, e.Closes, e.Lowest = 16/3.6e6, 0, 0, 1e3
			p.Timer.Kind, p.Timer.Window = kind, window
			if errs := p.Check(); len(errs) > 0 {
				t.Fatal(errs)
			}
			s := sheet.Answer(p)
			s.Explore(sheet.Season)
			long := 0
			for _, f := range Explored(s, sheet.Season, linked) {
				if long += len(f.HTML); strings.Contains(f.HTML, "NaN") || strings.Contains(f.HTML, "Inf") {
					t.Errorf("timer %d, %d: %s", kind, window, f.HTML)
				}
			}
			if s.Shots == nil || len(s.Shots.Lines) == 0 || long > 400_000 {
				t.Errorf("timer %d, %d: %d bytes", kind, window, long)
			}
		}
	}
}

// linked is a link that tells plans apart by name.
func linked(p *plan.Plan) string { return "#" + p.Name }
