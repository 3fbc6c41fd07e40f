package edge

import (
	"html"
	"io"
	"mime"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"evenrow/build/shell"
	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/form"
	"evenrow/wasm/shown/page"
	"evenrow/wasm/shown/view"
)

// An asked is what a request asks for: a plan, or a form that holds none yet.
type asked struct {
	typed bool         // in a form, and not a link
	draft plan.Draft   // what was typed
	at    form.Place   // the job in sight
	focus string       // id of the element that the reader is led to
	errs  []plan.Error // what is wrong in the form
	plan  *plan.Plan   // what the form holds, as far as it can be read
	last  *plan.Plan   // with errors the last plan without; nil when that is not known
	start *page.Asking // the five questions, where they are what is in sight; nil elsewhere

	key    string // the same key at one address is the same answer
	public bool   // what is asked for is nobody's own
}

// shown is the plan that is worked out for it.
func (a *asked) shown() *plan.Plan {
	switch {
	case len(a.errs) == 0:
		return a.plan
	case a.last != nil:
		return a.last
	}
	return plan.Default()
}

// read returns what the request asks for. When there is nothing to read, ok is
// false and the reply says why.
func (q *question) read(to *route) (a *asked, refusal reply, ok bool) {
	// Those who pass an address on may add to it, after an "&", or a "?" when it
	// has none.
	first, rest, _ := strings.Cut(q.r.URL.RawQuery, "&")
	posted := q.r.Method == http.MethodPost
	if posted || slices.Contains(to.methods, http.MethodPost) && strings.Contains(first, "=") {
		form, refusal, ok := q.typed()
		if !ok {
			return nil, refusal, false
		}
		if ours(form) {
			return readForm(form), reply{}, true
		}
		if posted && form != "" {
			return nil, q.refuse(http.StatusBadRequest, "This is no form of Evenrow", "Nothing in it has the name of a field of a plan."), false
		}
		first, rest = "", first
	}
	first, job, _ := strings.Cut(first, "/")
	at := view.Known(form.PlaceOf(job), form.Place{Job: view.Jobs[0].ID})
	p, d := plan.Default(), plan.Draft{}
	if first != "" {
		var err error
		if p, err = carry.ReadLink(first); err != nil {
			status := http.StatusBadRequest
			if len(first) > carry.MaxLink {
				status = http.StatusRequestURITooLong
			}
			return nil, q.refuse(status, "This link cannot be opened", err.Error()), false
		}
	}
	key := carry.Link(p)
	a = &asked{plan: p, at: at, key: key + "/" + at.String(), public: rest == "" && (first == "" || first == key && q.examples[key])}
	if at.Job == form.Start {
		if first != "" {
			d = plan.DraftOf(p)
		} else {
			a.key = "/" + at.String() // nobody has answered anything yet
		}
		start := page.Asked(d, page.Move{At: at})
		a.start = &start
	}
	return a, reply{}, true
}

// readForm reads what was typed, and does what the button pressed asks for.
func readForm(text string) *asked {
	d := plan.ParseDraft(text)
	last, _ := carry.ReadLink(d.Get(page.GoodName))
	if last != nil {
		d.TypedSince(last)
	}
	// The button below the questions is not the one of a form that works a plan out.
	if d.Get(plan.AtName) == form.Start && d.Get(plan.ActionName) == "" {
		d.Set(plan.ActionName, form.Propose)
	}
	m := page.Apply(&d)
	a := &asked{typed: true, at: m.At, focus: m.Focus(), key: "form " + text}
	if a.at.Job == form.Start {
		start := page.Asked(d, m)
		a.start, a.last = &start, last
		a.plan, a.errs = plan.Default(), start.Errors
		if last != nil {
			a.plan = last
		}
		return a
	}
	a.draft = d
	a.plan, a.errs = d.Read()
	a.errs = form.Gathered(d, a.errs)
	if len(a.errs) > 0 {
		// A link that does not open is none: the page says which plan it shows.
		a.last = last
	}
	return a
}

// ours reports whether a form has anything with the name of a field of ours, or
// of what stands beside the fields.
func ours(text string) bool {
	for pair := range strings.SplitSeq(text, "&") {
		name, _, _ := strings.Cut(pair, "=")
		name, _ = url.QueryUnescape(name)
		switch name {
		case plan.ActionName, plan.UnitsWas, plan.TableName, page.GoodName, form.ShapeName, plan.AtName, plan.RestName:
			return true
		}
		section := ""
		if dot := strings.IndexByte(name, '.'); dot >= 0 {
			section, name = name[:dot], name[strings.LastIndexByte(name, '.')+1:]
		}
		if plan.FieldNamed(section, name) != nil || section == "emitters" && name == plan.KindWas {
			return true
		}
	}
	return false
}

// typed reads the form that was sent, as it was sent: in the address, or in
// the body. When there is none to read, ok is false and the reply says why.
func (q *question) typed() (form string, refusal reply, ok bool) {
	if q.r.Method == http.MethodPost {
		if form, refusal, ok = q.body(); !ok {
			return "", refusal, false
		}
	} else if form = q.r.URL.RawQuery; len(form) > carry.MaxLink {
		return "", q.refuse(http.StatusRequestURITooLong, "This address is too long",
			"An address holds at most "+strconv.Itoa(carry.MaxLink>>10)+" kB of a form. Send a larger one with the button of the form."), false
	}
	if text, err := url.QueryUnescape(form); err != nil || !utf8.ValidString(text) {
		return "", q.refuse(http.StatusBadRequest, "This form cannot be read", "Its text must be UTF-8, and after every percent sign two digits, from 0 to 9 or A to F, as browsers send it."), false
	}
	return form, reply{}, true
}

// body reads the body, which must be a form.
func (q *question) body() (form string, refusal reply, ok bool) {
	no := func(status int, title, why string) (string, reply, bool) {
		return "", q.refuse(status, title, why), false
	}
	const wanted = "application/x-www-form-urlencoded"
	if coding := q.r.Header.Get("Content-Encoding"); coding != "" && !strings.EqualFold(coding, "identity") {
		return no(http.StatusUnsupportedMediaType, "This form is packed", "A form must be sent as it is, without a Content-Encoding.")
	}
	kind, more, err := mime.ParseMediaType(q.r.Header.Get("Content-Type"))
	if err != nil || kind != wanted {
		return no(http.StatusUnsupportedMediaType, "This is no form", "What is sent here must be a form, as "+wanted+".")
	}
	if set := more["charset"]; set != "" && !strings.EqualFold(set, "utf-8") {
		return no(http.StatusUnsupportedMediaType, "This form cannot be read", "The text of a form must be UTF-8.")
	}
	const title = "This form is too long"
	why := "A form may have at most " + strconv.Itoa(plan.MaxForm>>10) + " kB, and the largest plan takes less."
	if q.r.ContentLength > plan.MaxForm {
		return no(http.StatusRequestEntityTooLarge, title, why)
	}
	text, err := io.ReadAll(io.LimitReader(q.r.Body, plan.MaxForm+1))
	switch {
	case err != nil:
		return no(http.StatusBadRequest, "This form did not arrive whole", "The connection may have been lost. Go back and send it again.")
	case len(text) > plan.MaxForm:
		return no(http.StatusRequestEntityTooLarge, title, why)
	}
	return string(text), reply{}, true
}

// refuse is a page that says in words why there is no plan.
func (q *question) refuse(status int, title, why string) reply {
	body := "<p>" + html.EscapeString(why) + `</p><p><a href="` + shell.Address + `">Start from an example</a> instead, or read a guide:</p>`
	return reply{status: status, kind: pageKind, body: shell.Fill(q.shell.Refusal, map[string]string{
		shell.Title:   html.EscapeString(title),
		shell.Summary: html.EscapeString(why),
		shell.Body:    body,
	})}
}

// Content types.
const (
	pageKind    = "text/html; charset=utf-8"
	fileKind    = "application/json"
	seasonKind  = "text/calendar; charset=utf-8"
	pictureKind = "image/svg+xml"
)
