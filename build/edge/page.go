package edge

import (
	"html"
	"net/http"
	"strings"

	"evenrow/build/shell"
	"evenrow/wasm/carry"
	"evenrow/wasm/page"
	"evenrow/wasm/plan"
	"evenrow/wasm/sheet"
	"evenrow/wasm/view"
)

// page answers with the page of a plan, from a link or from a form.
func (q *question) page() reply {
	first, _, _ := strings.Cut(q.r.URL.RawQuery, "&")
	if q.r.Method != http.MethodPost && !strings.Contains(first, "=") {
		p, refusal := q.linked()
		if p == nil {
			return refusal
		}
		return q.draw(p, plan.DraftOf(p), nil, p, "")
	}
	form, ok, refusal := q.typed()
	if !ok {
		return refusal
	}
	d := plan.ParseDraft(form)
	record := d.Apply()
	p, errs := d.Read()
	if len(errs) == 0 {
		return q.draw(p, d, nil, p, record)
	}
	// A link that does not open is none: the page says which plan it shows.
	last, _ := carry.ReadLink(d.Get(page.GoodName))
	return q.draw(p, d, errs, last, record)
}

// draw draws the form for a draft, and what is told about the plan shown: the
// draft's own, or with errors the last one without, or an example when that
// is not known. record is the path of the record that was moved or added.
func (q *question) draw(p *plan.Plan, d plan.Draft, errs []plan.Error, shown *plan.Plan, record string) reply {
	out := reply{status: http.StatusOK, kind: pageKind}
	values := map[string]string{
		"ask":      shell.Cautions(opened(view.Ask(p, d, errs), record), q.caution),
		"examples": view.Examples(examples()),
	}
	title := "Something to put right"
	if len(errs) > 0 {
		out.status = http.StatusUnprocessableEntity
		values["errors"] = view.Errors(errs)
		stale := view.LastGood
		if shown == nil {
			shown, stale = plan.Default(), view.NotYours
		}
		values["stale"] = view.Message(stale)
	}
	s := q.sheet(shown, sheet.Prompt...)
	if len(errs) == 0 {
		title = view.Title(shown)
	}
	told := view.Told(s, address)
	for _, which := range sheet.Prompt {
		told = append(told, view.Explored(s, which, address)...)
	}
	for _, f := range told {
		values[f.ID] = shell.Cautions(f.HTML, q.caution)
	}
	values[shell.Title] = html.EscapeString(title)
	values[shell.Summary] = html.EscapeString(view.Announce(s))
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

func examples() []view.Example {
	var list []view.Example
	for _, e := range plan.Examples() {
		list = append(list, view.Example{Title: e.Title, Summary: e.Summary, Link: address(e.Plan)})
	}
	return list
}
