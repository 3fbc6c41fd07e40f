package propose

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
)

// again proposes anew from the questions as a plan fills them in.
func again(p *plan.Plan, change func(a *Answers)) (*plan.Plan, Outcome) {
	a := AnswersOf(p)
	change(&a)
	return Of(work.New(units, nil), a, Known{Before: p})
}

// say has a grower type or measure a value.
func say(p *plan.Plan, section, name string, v float64, o plan.Origin) {
	f := plan.FieldNamed(section, name)
	for i := range plan.SectionNamed(section).Records(p) {
		f.SetValue(p, i, v)
		p.SetOrigin(f, i, o)
	}
}

var tapAndTwenty = []string{"ask.crop.1", "tomato", "ask.plants.1", "20", "ask.medium", "bucket", "ask.length", "9", "ask.width", "4",
	"ask.supply", "mains", "ask.distance", "8", "ask.rise", "0.4"}

// Whatever a grower has changed in a plan that was proposed stays when another is proposed from
// changed answers, also what moves the rows; what nobody has said is found anew.
func TestAProposalMadeAgainKeepsWhatWasSaid(t *testing.T) {
	_, p, _ := journey(t, tapAndTwenty...)
	kept := []struct {
		section, name string
		v             float64
		o             plan.Origin
	}{
		{"place", "path", 0.9, plan.Typed}, {"place", "door", 1.2, plan.Measured}, {"place", "margin", 0.2, plan.Typed}, {"place", "water", 12, plan.Measured},
		{"emitters", "flow", 3.0 / 3.6e6, plan.Typed}, {"runs", "elbows", 5, plan.Typed}, {"rows", "slope", 0.01, plan.Measured}, {"limits", "reserve", 2, plan.Typed},
		{"timer", "channels", 3, plan.Typed}, {"season", "shelter", plan.Heated, plan.Typed}, {"rows", "spacing", 0.45, plan.Typed},
	}
	for _, k := range kept {
		say(p, k.section, k.name, k.v, k.o)
	}
	p.SetOrigin(plan.FieldNamed("runs", "rise"), 0, plan.Measured)
	tank := p.Supply.Tank
	q, o := again(p, func(a *Answers) { a.Crops[0].Plants = 12; a.Length = 8 })
	if errs := q.Check(); len(errs) > 0 {
		t.Fatal(errs)
	}
	if o.Verdict != sheet.Answer(q).Verdict {
		t.Errorf("is said to be %v", o.Verdict)
	}
	stands(t, "again", q, o)
	for _, k := range kept {
		f := plan.FieldNamed(k.section, k.name)
		if got := f.Value(q, 0); got != k.v || q.Origin(f, 0) != k.o {
			t.Errorf("%s is %v, %s; it was %v, %s", f.PathOfAll(), got, q.Origin(f, 0).Code(), k.v, k.o.Code())
		}
	}
	if f := plan.FieldNamed("runs", "rise"); q.Origin(f, 0) != plan.Measured || q.Runs[0].Rise != 0.4 {
		t.Errorf("the measured rise is %v, %s", q.Runs[0].Rise, q.Origin(f, 0).Code())
	}
	if f := plan.FieldNamed("supply", "tank"); q.Origin(f, 0) != plan.Assumed || q.Supply.Tank != tank {
		t.Errorf("the tank is %v, %s", q.Supply.Tank, q.Origin(f, 0).Code())
	}
	said := strings.Join(o.Said(q), " ")
	if !strings.Contains(said, "As you had it before: ") || !strings.Contains(said, "Place: water temperature, width of the door, path between rows and free strip at the walls; ") || strings.Contains(said, "Not as you had it") {
		t.Error(said)
	}
	// A rise that is answered anew is typed.
	r, _ := again(p, func(a *Answers) { a.Rise = 0.6 })
	if f := plan.FieldNamed("runs", "rise"); r.Origin(f, 0) != plan.Typed || r.Runs[0].Rise != 0.6 {
		t.Errorf("the rise that was answered is %v, %s", r.Runs[0].Rise, r.Origin(f, 0).Code())
	}
}

// A figure that is asked for, and that the grower has emptied, does not come back.
func TestAnAnswerThatWasEmptiedIsAssumed(t *testing.T) {
	_, p, _ := journey(t, tapAndTwenty...)
	say(p, "supply", "static", 5e5, plan.Typed)
	q, _ := again(p, func(a *Answers) { a.Static = plan.Unset })
	f := plan.FieldNamed("supply", "static")
	if q.Supply.Static != f.Default || q.Origin(f, 0) != plan.Assumed {
		t.Errorf("the pressure is %v, %s", q.Supply.Static, q.Origin(f, 0).Code())
	}
}

// What the search finds better than what was typed is said, and so is what does not go with
// the new answers at all.
func TestWhatCannotStayIsSaid(t *testing.T) {
	_, p, o := journey(t, tapAndTwenty...)
	if o.Verdict != sheet.Yes {
		t.Fatal(o.Verdict)
	}
	say(p, "supply", "regulator", 0.1e5, plan.Typed) // opens no emitter
	q, o := again(p, func(*Answers) {})
	if said := strings.Join(o.Said(q), " "); o.Verdict != sheet.Yes || q.Supply.Regulator == 0.1e5 || !strings.Contains(said, "Not as you had it before") {
		t.Errorf("%v, %v: %s", o.Verdict, q.Supply.Regulator, said)
	}
	if f := plan.FieldNamed("supply", "regulator"); q.Origin(f, 0) != plan.Assumed {
		t.Errorf("the regulator is %s", q.Origin(f, 0).Code())
	}
}

// A supply line of several runs, and the curve of a pump by points, stay while the answers are
// their sum and their ends.
func TestALineAndACurveStay(t *testing.T) {
	p := plan.Default()
	plan.SectionNamed("runs").Resize(p, 2)
	p.Runs[1].Rise, p.Runs[1].Length = 0.5, 3
	q, _ := again(p, func(a *Answers) { a.Crops[0].Plants -= 5 })
	if len(q.Runs) != 2 || q.Runs[0].Length != 8 || q.Runs[1].Rise != 0.5 || q.Runs[1].Length != 3 || q.Supply.Kind != plan.PumpPoints || !slices.Equal(q.Supply.Points, p.Supply.Points) {
		t.Errorf("%+v\n%+v", q.Runs, q.Supply)
	}
	r, _ := again(p, func(a *Answers) { a.Distance += 2; a.MaxFlow *= 2 })
	if len(r.Runs) != 1 || r.Supply.Kind != plan.PumpTwo {
		t.Errorf("%+v\n%+v", r.Runs, r.Supply)
	}
}

// Whatever was said before, and whatever is answered now, the proposal is a plan.
func TestEveryPlanBeforeGivesAPlan(t *testing.T) {
	r := rand.New(rand.NewPCG(20261130, 8))
	kept, lost := 0, 0
	for i := range 60 {
		p, _ := Of(work.New(units, nil), some(r), Known{})
		for _, s := range plan.Sections() {
			for _, f := range s.Fields() {
				if f.Type == plan.Text || f.Name == "spacing" || r.IntN(4) > 0 {
					continue
				}
				for n := range s.Records(p) {
					was := f.Value(p, n)
					if f.Type == plan.Choice {
						f.SetValue(p, n, float64(r.IntN(len(f.Options))))
					} else if v := was * (0.5 + r.Float64()); v >= f.Min && v <= f.Max {
						f.SetValue(p, n, v)
					}
					if len(p.Check()) > 0 {
						f.SetValue(p, n, was)
						continue
					}
					p.SetOrigin(f, n, plan.Typed)
				}
			}
		}
		a := some(r)
		q, o := Of(work.New(units, nil), a, Known{Before: p})
		name := fmt.Sprintf("%d: %+v", i, a)
		if errs := q.Check(); len(errs) > 0 {
			t.Fatalf("%s\nis no plan: %v", name, errs)
		}
		if v := sheet.Answer(q).Verdict; v != o.Verdict {
			t.Errorf("%s\nis said to be %v, and is %v", name, o.Verdict, v)
		}
		stands(t, name, q, o)
		kept += len(o.Kept)
		lost += len(o.Lost)
	}
	t.Logf("kept %d, lost %d", kept, lost)
	if kept < 60 || lost == 0 {
		t.Errorf("kept %d, lost %d", kept, lost)
	}
}

// A season that nobody has dated is that of this year, or where it is too late in it of the
// next; one that somebody has dated stays.
func TestTheSeasonOfAProposal(t *testing.T) {
	a, _, _ := Read(typed(tapAndTwenty...))
	first := -1
	for on := day.Of(2029, 1, 1); on < day.Of(2030, 1, 1); on++ {
		p, o := Of(work.New(0, nil), a, Known{Today: on})
		want := 2029
		if o.Late {
			want = 2030
			if first < 0 {
				first = on.OfYear()
			}
		} else if first >= 0 {
			t.Fatalf("too late on day %d, and not on %s", first, on.ISO())
		}
		if p.SeasonYear() != want || p.Origin(plan.FieldNamed("season", "last-frost"), 0) != plan.Assumed {
			t.Fatalf("%s: the season is that of %d", on.ISO(), p.SeasonYear())
		}
		said := strings.Join(o.Said(p), " ")
		if !strings.Contains(said, "The dates are assumed: last frost on 12 May "+fmt.Sprint(want)) || strings.Contains(said, "too late") != o.Late {
			t.Fatal(said)
		}
	}
	// Tomatoes take some seventy days to the first harvest, and the default year has its first frost
	// on 8 October: the last day to plant is in the last third of July.
	if from, to := day.Of(2029, 7, 15).OfYear(), day.Of(2029, 8, 10).OfYear(); first < from || first > to {
		t.Errorf("too late from day %d", first)
	}
	p, _ := Of(work.New(units, nil), a, Known{})
	if p.SeasonYear() != plan.Default().SeasonYear() {
		t.Error("a season of no day is moved")
	}
	say(p, "season", "after", 10, plan.Typed)
	q, o := Of(work.New(units, nil), a, Known{Before: p, Today: day.Of(2031, 11, 11)})
	if q.SeasonYear() != p.SeasonYear() || q.Season.After != 10 || strings.Contains(strings.Join(o.Said(q), " "), "dates are assumed") {
		t.Errorf("%+v, %q", q.Season, o.Said(q))
	}
}
