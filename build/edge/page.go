package edge

import (
	"html"
	"net/http"
	"strings"

	"evenrow/build/shell"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/answer"
	"evenrow/wasm/shown/form"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/view"
)

// page draws the form for what was typed, and what is told about the plan shown:
// the form's own, or with errors the last one without, or an example when that
// is not known.
func (q *question) page(a *asked) reply {
	out := reply{status: http.StatusOK, kind: pageKind}
	if !a.typed {
		a.draft = plan.DraftOf(a.plan)
	}
	values := map[string]string{
		"ask":      opened(form.Ask(a.plan, a.draft, a.errs), a.record),
		"examples": q.offered,
	}
	title, shown := "Something to put right", a.shown()
	if len(a.errs) > 0 {
		out.status = http.StatusUnprocessableEntity
		values["errors"] = form.Errors(a.errs)
		stale := form.LastGood
		if a.last == nil {
			stale = form.NotYours
		}
		values["stale"] = form.Message(words.Say(stale))
	}
	s := q.sheet(shown, sheet.Prompt()...)
	if len(a.errs) == 0 {
		title = scene.Title(shown)
	}
	told := view.Told(s, address)
	for _, which := range sheet.Prompt() {
		told = append(told, view.Explored(s, which, address)...)
		q.pause()
	}
	for _, f := range told {
		values[f.ID] = f.HTML
	}
	// Cautions stand beside the form, and once more for paper.
	for _, id := range []string{"ask", "cautions"} {
		values[id] = shell.Cautions(values[id], q.caution)
	}
	values[shell.Title] = html.EscapeString(title)
	values[shell.Summary] = html.EscapeString(answer.Announce(s))
	values[shell.Origin] = html.EscapeString(q.origin())
	values[shell.Link] = carry.Link(shown)
	out.body = shell.Fill(q.shell.Plan, values)
	return out
}

func (q *question) caution(name string) string { return q.shell.Cautions[name] }

// address is that of a plan's page.
func address(p *plan.Plan) string { return shell.Address + "?" + carry.Link(p) }

// opened unfolds a record of the form and gives it the focus, as the planner's
// script would.
func opened(form, record string) string {
	if record == "" {
		return form
	}
	form = strings.Replace(form, ` id="d-`+record+`">`, ` id="d-`+record+`" open>`, 1)
	return strings.Replace(form, ` id="s-`+record+`">`, ` id="s-`+record+`" autofocus>`, 1)
}

func examples() []form.Example {
	var list []form.Example
	for _, e := range plan.Examples() {
		list = append(list, form.Example{Title: e.Title, Summary: words.Say(e.Summary), Link: address(e.Plan)})
	}
	return list
}
