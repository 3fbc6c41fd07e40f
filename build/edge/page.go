package edge

import (
	"html"
	"net/http"
	"strings"

	"evenrow/build/shell"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/answer"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/form"
	"evenrow/wasm/shown/page"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/view"
)

// page draws the form for what was typed, and what is told about the plan shown:
// the form's own, or with errors the last one without, or an example when that
// is not known.
func (q *question) page(a *asked) reply {
	done := ""
	switch {
	case a.start == nil:
	case !a.start.Ready:
		return q.questions(a)
	default:
		a, done = q.proposed(a.start)
	}
	out := reply{status: http.StatusOK, kind: pageKind}
	if !a.typed {
		a.draft = plan.DraftOf(a.plan)
	}
	title, shown := "Something to put right", a.shown()
	s := q.sheet(shown, sheet.Prompt()...)
	values := map[string]string{
		"ask":      focused(form.Ask(a.plan, a.draft, a.errs, view.JobNamed(a.at.Job).Groups, a.at, s.Parts...), a.focus),
		"examples": q.offered,
		"done":     done,
	}
	if len(a.errs) > 0 {
		out.status = http.StatusUnprocessableEntity
		values["errors"] = form.Errors(a.errs)
		stale := form.LastGood
		if a.last == nil {
			stale = form.NotYours
		}
		values["stale"] = form.Message(words.Say(stale))
	}
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

// questions draws the five questions, with what was answered and what is wrong with it.
func (q *question) questions(a *asked) reply {
	out := reply{status: http.StatusOK, kind: pageKind}
	title, link := words.Say("Five questions"), carry.Link(a.plan)
	values := map[string]string{
		"ask":         focused(form.Questions(a.start.Draft, a.errs, false), a.focus),
		"examples":    q.offered,
		"jobs":        jobs(link, form.Start),
		"heading":     html.EscapeString(title),
		shell.Title:   html.EscapeString(title),
		shell.Summary: html.EscapeString(words.Say("From five answers a whole plan is proposed, with all that was assumed marked as such.")),
		shell.Origin:  html.EscapeString(q.origin()),
		shell.Link:    link,
	}
	if len(a.errs) > 0 {
		out.status = http.StatusUnprocessableEntity
		values["errors"] = form.Errors(a.errs)
	}
	out.body = shell.Fill(q.shell.Plan, values)
	return out
}

// proposed is the plan that the answers lead to, as a link to it would ask for it, and what there
// is to say of it. The search for it takes no more than an ordinary page does.
func (q *question) proposed(start *page.Asking) (a *asked, said string) {
	m := work.New(proposal, func() bool { return !q.turn.Pause(1) })
	p, said := start.Propose(m)
	if m.Gone() {
		panic(gone{})
	}
	return &asked{plan: p, at: form.Place{Job: view.Jobs[0].ID}}, said
}

func (q *question) caution(name string) string { return q.shell.Cautions[name] }

// address is that of a plan's page.
func address(p *plan.Plan) string { return shell.Address + "?" + carry.Link(p) }

// jobs leads to the five questions and to the pages of a plan, one for each job.
func jobs(link, here string) string {
	w := &block.Writer{}
	to := func(id string, title words.Text) {
		w.HTML(`<li><a`).Attr("href", shell.Address+"?"+link+"/"+id)
		if id == here {
			w.HTML(` aria-current="page"`)
		}
		w.HTML(`>`).Text(words.Say(title)).HTML(`</a></li>`)
	}
	to(form.Start, "Five questions")
	for i := range view.Jobs {
		to(view.Jobs[i].ID, view.Jobs[i].Title)
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
