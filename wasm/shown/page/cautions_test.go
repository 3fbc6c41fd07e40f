package page

import (
	"net/url"
	"strings"
	"testing"

	"evenrow/wasm/grower/care"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/form"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/view"
)

// In the browser the form is drawn again when a caution comes or goes, and the
// list that is printed with every answer.
func TestCautionsFollowTheFormInTheBrowser(t *testing.T) {
	for from, to := range map[string]string{"pump-points": "mains", "mains": "pump-two", "gravity": "mains", "pump-two": "gravity"} {
		data := start(t)
		data.Set("supply.kind", from)
		form, _ := fragment(new(Session).Answer(data.Encode()), "ask")
		if form != "" {
			data = filled(form)
		}
		data.Set("supply.kind", to)
		r := new(Session).Answer(data.Encode())
		form, drawn := fragment(r, "ask")
		list, told := fragment(r, "cautions")
		if !drawn || !told {
			t.Fatalf("%s to %s: the form is drawn: %v, the cautions are: %v", from, to, drawn, told)
		}
		for name, part := range map[string]string{"form": form, "list": list} {
			if pump := strings.HasPrefix(to, "pump"); strings.Contains(part, `data-caution="electricity"`) != pump {
				t.Errorf("%s to %s: in the %s, the caution of a pump is %v", from, to, name, !pump)
			}
		}
	}
	// One that hangs on a field alone changes the form too.
	data := start(t)
	data = inJob(t, data, "grow")
	data.Set("season.shelter", "open")
	if form, drawn := fragment(new(Session).Answer(data.Encode()), "ask"); !drawn || strings.Contains(form, `data-caution="tunnel"`) {
		t.Error("without a shelter the caution of one stays")
	}
}

// Every caution that a section declares is on paper once.
func TestEveryCautionOfTheFormIsPrinted(t *testing.T) {
	for _, e := range plan.Examples() {
		form, list := "", ""
		for i := range view.Jobs {
			asked := new(Session).whole(e.Plan, jobAt(view.Jobs[i].ID))
			part, _ := fragment(asked, "ask")
			form += part
			part, _ = fragment(asked, "job")
			_, part, _ = strings.Cut(part, `<div id="cautions">`)
			list += part
		}
		seen := 0
		for _, c := range care.Catalogue {
			box := `data-caution="` + c.Name + `"`
			n := strings.Count(list, box)
			// Electricity belongs to what drives the water and to the timer, which are two jobs.
			if n > 2 || (n > 0) != strings.Contains(form, box) || n == 2 && strings.Count(form, box) < 2 {
				t.Errorf("%s: %s stands %d times on paper, and %d times in the form", e.Key, box, n, strings.Count(form, box))
			}
			seen += n
		}
		if seen < 8 {
			t.Errorf("%s: %d cautions", e.Key, seen)
		}
	}
}

// The tasks, on the page and in the calendar, put the electricity after the
// last clamp, and never have a pump run shut.
func TestTasksPutElectricityLast(t *testing.T) {
	p := plan.Default()
	var s Session
	r := s.Rest(plan.DraftOf(p).Encode() + "&" + StepName + "=" + stepOf(sheet.Season) + "&at=grow")
	tasks, _ := fragment(r, "tasks")
	for name, text := range map[string]string{
		"page":     tasks,
		"calendar": strings.ReplaceAll(strings.ReplaceAll(s.Calendar(plan.DraftOf(p).Encode()).File, "\r\n ", ""), "\\,", ","),
	} {
		for _, want := range []string{"unplugged, or the tap shut, until every joint is clamped and the cautions are met", "all closed but one, open a crack"} {
			if !strings.Contains(text, want) {
				t.Errorf("the %s lacks %q", name, want)
			}
		}
		for _, bad := range []string{"away from water until it is tested", "open, then closed"} {
			if strings.Contains(text, bad) {
				t.Errorf("the %s says %q", name, bad)
			}
		}
	}
}

// jobAt is the place of a job with all groups closed.
func jobAt(job string) form.Place { return form.Place{Job: job} }

// inJob is a form with another job in sight.
func inJob(t *testing.T, data url.Values, job string) url.Values {
	t.Helper()
	data.Set(plan.ActionName, plan.GoTo+job)
	form, drawn := fragment(new(Session).Answer(data.Encode()), "ask")
	if !drawn {
		t.Fatal("another job does not draw the form")
	}
	return filled(form)
}
