package page

import (
	"strings"
	"testing"

	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/form"
)

// Whoever looks into a job before a question is answered sees the example there, in the
// units that were chosen, and not a plan of empty boxes; what was answered stays.
func TestAJobBeforeTheQuestionsShowsTheExample(t *testing.T) {
	for _, units := range []string{"metric", "us"} {
		var s Session
		ask, _ := fragment(Start(), "ask")
		data := filled(ask)
		data.Set("units", units)
		data.Set(plan.ActionName, "show.answer")
		data.Set("ask.width", "3,5")
		r := s.Answer(data.Encode())
		p, err := carry.ReadLink(strings.TrimPrefix(r.Link, "#"))
		if err != nil || len(r.Errors) > 0 || p.Name != plan.Default().Name || len(p.Rows) != len(plan.Default().Rows) || len(p.Check()) > 0 {
			t.Fatalf("%s: no example: %v, %v, %+v", units, err, r.Errors, p)
		}
		if got := plan.FieldNamed("", "units").Options[p.Units].Code; got != units {
			t.Errorf("the example is in %s units, and %s were chosen", got, units)
		}
		if d := p.Place.Length - plan.Default().Place.Length; d < -0.01 || d > 0.01 {
			t.Errorf("%s: the place is %g m long", units, p.Place.Length)
		}
		if said, _ := fragment(r, "stale"); !strings.Contains(said, string(form.AnExample)) {
			t.Errorf("%s: it does not say that it is an example: %s", units, said)
		}
		ask, _ = fragment(r, "ask")
		if got := filled(ask).Get("ask.width"); got != "3,5" {
			t.Errorf("%s: what was answered is now %q", units, got)
		}
	}
}

// Who goes back to the questions, changes an answer and asks for a plan again has the path
// that was typed in the plan before, and a season of this year.
func TestAPlanProposedAgainKeepsWhatWasTyped(t *testing.T) {
	var s Session
	ask, _ := fragment(Start(), "ask")
	data := filled(ask)
	for name, v := range map[string]string{"ask.crop.1": "tomato", "ask.plants.1": "20", "ask.medium": "bucket", "ask.length": "9", "ask.width": "4",
		"ask.supply": "mains", "ask.distance": "8", TodayName: "2031-03-02T10:00", plan.ActionName: form.Propose} {
		data.Set(name, v)
	}
	step := func(action string, set ...string) (r Reply, p *plan.Plan) {
		data.Set(plan.ActionName, action)
		for i := 0; i < len(set); i += 2 {
			data.Set(set[i], set[i+1])
		}
		if r = s.Answer(data.Encode()); len(r.Errors) > 0 {
			t.Fatal(r.Errors)
		}
		ask, _ := fragment(r, "ask")
		data = filled(ask)
		data.Set(TodayName, "2031-03-02T10:00")
		if r.Link != "" {
			p, _ = carry.ReadLink(strings.TrimPrefix(r.Link, "#"))
		}
		return r, p
	}
	_, p := step(form.Propose)
	if p.SeasonYear() != 2031 {
		t.Errorf("the season is that of %d", p.SeasonYear())
	}
	step(plan.GoTo+"answer/place", "place.path", "0.95", plan.TouchedName, "place.path")
	step(plan.GoTo + form.Start)
	r, p := step(form.Propose, "ask.plants.1", "12")
	f := plan.FieldNamed("place", "path")
	if p.Place.Path != 0.95 || p.Origin(f, 0) != plan.Typed || p.Rows[0].Plants != 12 && len(p.Rows) == 1 {
		t.Errorf("the path is %v, %s; rows %+v", p.Place.Path, p.Origin(f, 0).Code(), p.Rows)
	}
	if done, _ := fragment(r, "done"); !strings.Contains(done, "As you had it before: Place: "+f.Within()) {
		t.Error(done)
	}
	// What was said of the proposal goes with the next change.
	if done, sent := fragment(func() Reply { r, _ := step("", "place.path", "0.9"); return r }(), "done"); !sent || done != "" {
		t.Errorf("still says %q", done)
	}
}
