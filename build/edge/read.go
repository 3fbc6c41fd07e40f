package edge

import (
	"html"
	"io"
	"mime"
	"net/http"
	"strconv"
	"strings"

	"evenrow/build/shell"
	"evenrow/wasm/carry"
	"evenrow/wasm/plan"
)

// ofLink is an answer for the plan in a link, or the refusal of the link.
// Without a link it is for the plan that everyone starts from.
func ofLink(answer func(*question, *plan.Plan) reply) func(*question) reply {
	return func(q *question) reply {
		p, refusal := q.linked()
		if p == nil {
			return refusal
		}
		return answer(q, p)
	}
}

// linked reads the plan in the address. When there is none to read, p is nil
// and the reply says why.
func (q *question) linked() (p *plan.Plan, refusal reply) {
	// Those who pass an address on may add to it, always after an "&".
	link, _, _ := strings.Cut(q.r.URL.RawQuery, "&")
	if link == "" {
		return plan.Default(), reply{}
	}
	p, err := carry.ReadLink(link)
	if err == nil {
		return p, reply{}
	}
	status := http.StatusBadRequest
	if len(link) > carry.MaxLink {
		status = http.StatusRequestURITooLong
	}
	return nil, q.refuse(status, "This link cannot be opened", err.Error()+".")
}

// typed reads the form that was sent, as it was sent: in the address, or in
// the body. When there is none to read, ok is false and the reply says why.
func (q *question) typed() (form string, ok bool, refusal reply) {
	if q.r.Method != http.MethodPost {
		if len(q.r.URL.RawQuery) > carry.MaxLink {
			return "", false, q.refuse(http.StatusRequestURITooLong, "This address is too long",
				"An address holds at most "+strconv.Itoa(carry.MaxLink>>10)+" kB of a form. Send a larger one with the button of the form.")
		}
		return q.r.URL.RawQuery, true, reply{}
	}
	const wanted = "application/x-www-form-urlencoded"
	if kind, _, err := mime.ParseMediaType(q.r.Header.Get("Content-Type")); err != nil || kind != wanted {
		return "", false, q.refuse(http.StatusUnsupportedMediaType, "This is no form", "What is sent here must be a form, as "+wanted+".")
	}
	tooMuch := q.refuse(http.StatusRequestEntityTooLarge, "This form is too long",
		"A form may have at most "+strconv.Itoa(plan.MaxForm>>10)+" kB, and the largest plan takes less than half of that.")
	if q.r.ContentLength > plan.MaxForm {
		return "", false, tooMuch
	}
	body, err := io.ReadAll(io.LimitReader(q.r.Body, plan.MaxForm+1))
	switch {
	case err != nil:
		return "", false, q.refuse(http.StatusBadRequest, "This form did not arrive whole", "The connection may have been lost. Go back and send it again.")
	case len(body) > plan.MaxForm:
		return "", false, tooMuch
	}
	return string(body), true, reply{}
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
	tableKind   = "text/csv; charset=utf-8; header=present"
	fileKind    = "application/json"
	seasonKind  = "text/calendar; charset=utf-8"
	pictureKind = "image/svg+xml"
)
