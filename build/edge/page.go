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
	"evenrow/wasm/shown/block"
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
		"ask":      focused(form.Ask(a.plan, a.draft, a.errs, view.JobNamed(a.at.Job).Groups, a.at), a.focus),
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
	screen := &view.Screen{Job: view.JobNamed(a.at.Job), Sheet: s, Link: address, Brief: true}
	for _, which := range sheet.Prompt() {
		screen.Done[which] = true
	}
	for _, f := range append(screen.Around(), screen.Whole()) {
		values[f.ID] = f.HTML
		q.pause()
	}
	values["jobs"] = jobs(carry.Link(shown), a.at.Job)
	values["heading"] = html.EscapeString(words.Say(screen.Title))
	// Cautions stand beside the form, and once more for paper.
	for _, id := range []string{"ask", "job"} {
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

// jobs leads to the pages of a plan, one for each job.
func jobs(link, here string) string {
	w := &block.Writer{}
	for i := range view.Jobs {
		j := &view.Jobs[i]
		w.HTML(`<li><a`).Attr("href", shell.Address+"?"+link+"/"+j.ID)
		if j.ID == here {
			w.HTML(` aria-current="page"`)
		}
		w.HTML(`>`).Text(words.Say(j.Title)).HTML(`</a></li>`)
	}
	return w.String()
}

// focused gives an element the focus, as the planner's script would.
func focused(form, id string) string {
	if id == "" {
		return form
	}
	return strings.Replace(form, ` id="`+id+`"`, ` id="`+id+`" autofocus`, 1)
}

func examples() []form.Example {
	var list []form.Example
	for _, e := range plan.Examples() {
		list = append(list, form.Example{Title: e.Title, Summary: words.Say(e.Summary), Link: address(e.Plan)})
	}
	return list
}
