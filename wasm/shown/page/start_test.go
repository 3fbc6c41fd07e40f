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
