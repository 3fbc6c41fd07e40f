package page

import (
	"math/rand/v2"
	"net/url"
	"reflect"
	"runtime"
	"strconv"
	"testing"
	"weak"

	"evenrow/build/hostile"
	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/view"
	"evenrow/wasm/shown/watering"
	"evenrow/wasm/year/drain"
)

// A question of a page, by the name that the worker knows.
type question struct{ ask, text string }

func (q question) put(s *Session) Reply {
	switch q.ask {
	case "answer":
		return s.Answer(q.text)
	case "rest":
		return s.Rest(q.text)
	case "feedback":
		return s.Feedback(q.text)
	case "open":
		return s.Open(q.text)
	case "openFirst":
		return s.OpenFirst(q.text)
	case "openFile":
		return s.OpenFile(q.text)
	}
	panic(q.ask)
}

// few is how many plants a plan of a test may have: what holds for it does not
// hang on their number, and its questions are worked out many times.
const few = 30

// pages returns, for each of a run's pages, three plans that are asked for there.
func pages(run, n int) [][]*plan.Plan {
	all := make([][]*plan.Plan, n)
	for i, k := 0, 0; i < n; k++ {
		s := hostile.Numbered(run, k)
		var p *plan.Plan
		switch k % 3 {
		case 0:
			p = hostile.Ordinary(s)
		case 1:
			p = hostile.Uneven(s)
		default:
			p, _ = hostile.Plan(s)
		}
		plants := 0
		for r := range p.Rows {
			plants += p.Rows[r].Plants
		}
		if plants > few {
			continue
		}
		if all[i] = append(all[i], p); len(all[i]) == 3 {
			i++
		}
	}
	return all
}

// questions returns what a page may ask about some plans: each as a form, right
// and wrong, as a link and as a file, what is to be explored of it, and its log.
func questions(plans []*plan.Plan) []question {
	day, out := drain.Path(1, drain.DayName), drain.Path(1, drain.Columns[0].Name)
	all := []question{{"open", "#1zz"}, {"openFirst", "#1zz"}, {"openFile", `{"format":`}, {"openFirst", ""}}
	for i, p := range plans {
		other := plans[(i+1)%len(plans)]
		form, _ := url.ParseQuery(plan.DraftOf(p).Encode())
		as := func(pairs ...string) string {
			changed := url.Values{}
			for name := range form {
				changed.Set(name, form.Get(name))
			}
			for i := 0; i < len(pairs); i += 2 {
				changed.Set(pairs[i], pairs[i+1])
			}
			return changed.Encode()
		}
		const wrong, length = "twelve", "place.length"
		all = append(all,
			question{"answer", as()},
			question{"answer", as(length, wrong)},
			question{"answer", as(length, wrong, GoodName, link(p))},
			question{"answer", as(length, wrong, GoodName, link(other))},
			question{"answer", as("name", "another")},
			question{"answer", as("runs.1.rise", "0")},
			question{"answer", as("runs.1.rise", "-0")}, // the same plan
			question{"answer", as(plan.ActionName, "add-row")},
			question{"open", carry.Link(p)},
			question{"openFirst", link(p)},
			question{"openFile", string(carry.JSON(p))},
			question{"feedback", as()},
			question{"feedback", as(day, "2027-07-12", out, "40")},
			question{"feedback", as(day, "2027-07-12", plan.ActionName, watering.LogAdd)},
			question{"feedback", as(length, wrong, day, "2027-07-12")},
			question{"rest", as(StepName, "0")},
		)
		for step := range sheet.Explorations {
			number, job := strconv.Itoa(step+1), ""
			for i := range view.Jobs {
				if view.Jobs[i].Needs(sheet.Exploration(step)) {
					job = view.Jobs[i].ID
				}
			}
			all = append(all,
				question{"rest", as(StepName, number, plan.AtName, job)},
				question{"rest", as(StepName, number, plan.AtName, job)}, // twice, because most of what is asked is this
				question{"rest", as(StepName, number, plan.AtName, job, length, wrong, GoodName, link(other))},
			)
		}
	}
	return all
}

// stepOf is an exploration as a form asks for it.
func stepOf(which sheet.Exploration) string { return strconv.Itoa(int(which) + 1) }

// Whatever a page has asked before, and in whatever order, it is answered as by a
// planner that has just been started. In between, explorations are cut anywhere.
func TestAnswersDoNotHangOnWhatWasAskedBefore(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	held, worked, cut := 0, 0, 0
	for number, plans := range pages(21, 4) {
		all := questions(plans)
		fresh := map[question]Reply{}
		var s Session
		for n := range 150 {
			q := all[rnd.IntN(len(all))]
			want, known := fresh[q]
			if !known {
				want = q.put(new(Session))
				fresh[q] = want
			}
			before := s.sheet
			got := q.put(&s)
			got.Number = want.Number // which counts what was asked before
			got.Order = want.Order   // in which a part stays where it stood until it is worked out
			if !reflect.DeepEqual(got, want) {
				for i := range min(len(got.Fragments), len(want.Fragments)) {
					if got.Fragments[i] != want.Fragments[i] {
						t.Errorf("%s reads\n%s\nwant\n%s", got.Fragments[i].ID, got.Fragments[i].HTML, want.Fragments[i].HTML)
						break
					}
				}
				t.Fatalf("page %d, question %d: %s %s is answered otherwise than by a new planner", number, n, q.ask, q.text)
			}
			switch {
			case s.sheet != before:
				worked++
			case before != nil && len(got.Fragments) > 0:
				held++
			}
			if s.sheet != nil && rnd.IntN(4) == 0 {
				if which := rnd.IntN(sheet.Explorations); !s.explored[which] {
					s.sheet.ExploreWithin(1<<rnd.IntN(20), sheet.Exploration(which))
					cut++
				}
			}
		}
	}
	t.Logf("%d answers came from what was held, %d were worked out, %d explorations were cut", held, worked, cut)
	if held < 150 || worked < 150 || cut < 50 {
		t.Errorf("%d answers came from what was held, and %d were worked out; %d explorations were cut", held, worked, cut)
	}
}

// The explorations of a plan, and its log, go on from the sheet of its answer.
func TestThePlanThatWasAnsweredIsNotWorkedOutAgain(t *testing.T) {
	form := plan.DraftOf(plan.Default()).Encode()
	for _, first := range []question{
		{"answer", form},
		{"open", ""},
		{"openFirst", carry.Link(plan.Default())},
		{"openFile", string(carry.JSON(plan.Default()))},
	} {
		var s Session
		first.put(&s)
		answered := s.sheet
		if answered == nil {
			t.Fatalf("nothing is held after %s", first.ask)
		}
		s.Feedback(form + "&" + drain.Path(1, drain.DayName) + "=2027-07-12")
		for step := range sheet.Explorations {
			s.Rest(form + "&" + StepName + "=" + stepOf(sheet.Exploration(step)))
			if s.sheet != answered {
				t.Fatalf("after %s, step %d worked the plan out again", first.ask, step+1)
			}
		}
		seasons := s.sheet.Season
		s.Rest(form + "&" + StepName + "=" + stepOf(sheet.Season))
		if s.sheet.Season != seasons {
			t.Error("what was explored is explored again")
		}
	}
}

// There is one sheet: that of the plan before goes when another is asked for.
func TestOnePlanIsHeld(t *testing.T) {
	var s Session
	examples := plan.Examples()
	s.Answer(plan.DraftOf(examples[0].Plan).Encode())
	before := weak.Make(s.sheet)
	if runtime.GC(); before.Value() == nil {
		t.Fatal("the sheet is not held")
	}
	s.Answer(plan.DraftOf(examples[1].Plan).Encode())
	if runtime.GC(); before.Value() != nil {
		t.Error("the sheet of the plan before is still held")
	}
	runtime.KeepAlive(&s)
}

// What a fault of ours leaves half done answers no question.
func TestNothingIsHeldAfterAFault(t *testing.T) {
	var s Session
	form := plan.DraftOf(plan.Default()).Encode()
	s.Answer(form)
	s.sheet.Layout = nil // which the next exploration needs
	rest := form + "&" + StepName + "=" + stepOf(sheet.Starting)
	func() {
		defer func() {
			if recover() == nil {
				t.Fatal("there is no fault")
			}
		}()
		s.Rest(rest)
	}()
	got, want := s.Rest(rest), new(Session).Rest(rest)
	if got.Number = want.Number; !reflect.DeepEqual(got, want) {
		t.Error("after a fault the same question is answered otherwise")
	}
}
