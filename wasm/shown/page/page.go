// Package page answers what the page asks: form text in, fragments out.
//
// A [Session] holds one plan between two questions of a page. The builder asks
// for the page as it is first seen, the browser program at every change.
package page

import (
	"strings"

	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/answer"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/form"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/view"
	"evenrow/wasm/shown/watering"
	"evenrow/wasm/year/ical"
)

// GoodName is the name in form data of the link to the plan that an error falls
// back to: the last one without errors that the grower left standing, not one
// that stood in the form for a moment while a number was typed.
const GoodName = "good"

// A Reply is what changes on the page.
type Reply struct {
	Fragments []block.Fragment
	Errors    []plan.Error // every one; empty when the plan could be worked out
	Link      string       // of the plan, beginning with "#"; empty when there are errors
	Title     string       // of the page; empty to leave it
	Announce  string       // to be read aloud once; empty for nothing
	Focus     string       // id of the element that the reader's attention belongs to; empty to leave it
	More      int          // what [Session.Rest] should be asked for next; 0 for nothing

	FileName string // of a file to be saved; empty for none
	FileKind string // its content type
	File     string // its content
}

// Start returns the page for the default plan, with everything on it.
func Start() Reply {
	p := plan.Default()
	var s Session
	r := s.whole(p)
	for which := range sheet.Exploration(sheet.Explorations) {
		r.Fragments = append(r.Fragments, view.Explored(s.work(p, which), which, link)...)
	}
	r.Fragments = append(r.Fragments, block.Fragment{ID: "examples", HTML: form.Examples(examples())})
	noLog := func(string) string { return "" }
	advice, _ := watering.Advice(s.work(p), p, nil, nil)
	r.add("log", watering.Log(noLog, leastRows, func(int) string { return "" }))
	r.add("advice", advice)
	r.Announce = ""
	return r
}

// Answer reads the form and works the plan out. With errors the results stay
// as they are, or become those of the plan under [GoodName] if the form has one,
// and the page says that they are not of what the form holds, and lists what is
// wrong. The form itself is sent again only when what it shows changes.
func (s *Session) Answer(typed string) Reply {
	d := plan.ParseDraft(typed)
	shape := d.Get(form.ShapeName)
	record := d.Apply()
	p, errs := d.Read()
	r := Reply{Errors: errs}
	if record != "" || shape != form.Shape(p) {
		r.add("ask", form.Ask(p, d, errs))
	} else {
		r.Fragments = form.Summaries(p)
	}
	if record != "" {
		r.Focus = "s-" + record
		if list, last := strings.CutSuffix(record, ".0"); last {
			r.Focus = "f-" + list
		}
	}
	if len(errs) > 0 {
		if last := good(d); last != nil {
			r.told(s.work(last))
			r.Link = ""
		}
		r.wrong(errs)
		r.Announce = form.Aloud(errs)
		return r
	}
	r.told(s.work(p))
	r.clear()
	if record == "sky" {
		r.Announce = words.Sentences(words.Say("The clock is set."), r.Announce)
	}
	return r
}

// Open opens a link: what follows "#" in the page's address. An empty one is
// the default plan. A link that cannot be read changes nothing but the message.
func (s *Session) Open(link string) Reply {
	p, err := opened(link)
	if err != "" {
		return stays(err)
	}
	return s.whole(p)
}

// OpenFirst is Open while the page shows nothing but the example, which must
// then not be taken for the plan in a link that cannot be read.
func (s *Session) OpenFirst(link string) Reply {
	p, err := opened(link)
	if err != "" {
		r := refused(err)
		r.stale(form.NotTheLink, nil)
		return r
	}
	return s.whole(p)
}

// opened reads a link, or says in a sentence why it cannot be opened.
func opened(link string) (*plan.Plan, string) {
	link = strings.TrimPrefix(link, "#")
	if link == "" {
		return plan.Default(), ""
	}
	p, err := carry.ReadLink(link)
	if err != nil {
		return nil, words.Sentences(words.Say("This link cannot be opened."), err.Error())
	}
	return p, ""
}

// good is the plan that an error falls back to, nil for that whose answer the
// page shows already.
func good(d plan.Draft) *plan.Plan {
	if !d.Has(GoodName) {
		return nil
	}
	p, _ := opened(d.Get(GoodName))
	return p
}

// OpenFile opens a file that [Save] made.
func (s *Session) OpenFile(json string) Reply {
	p, errs := carry.ReadJSON([]byte(json))
	if len(errs) > 0 {
		more := ""
		if n := len(errs) - 1; n > 0 {
			more = words.Say("{n} more {n|thing is|things are} wrong in it.", words.N(n))
		}
		return stays(words.Sentences(words.Say("This file cannot be opened."), errs[0].Text, more))
	}
	return s.whole(p)
}

// Save returns the plan in the form as a file. A plan with errors is not saved.
func Save(typed string) Reply {
	return saved(typed, func(p *plan.Plan) Reply {
		return Reply{FileName: FileName(p.Name), FileKind: "application/json", File: string(carry.JSON(p))}
	})
}

// Calendar returns the season of the plan in the form as an iCalendar file. A
// plan with errors has none.
func (s *Session) Calendar(typed string) Reply {
	return saved(typed, func(p *plan.Plan) Reply { return CalendarFile(s.work(p, sheet.Season)) })
}

// CalendarFile returns the iCalendar file of a sheet whose season was explored.
func CalendarFile(s *sheet.Sheet) Reply {
	p := s.Plan
	name := strings.TrimSuffix(FileName(p.Name), ".json") + ".ics"
	return Reply{FileName: name, FileKind: "text/calendar;charset=utf-8", File: ical.Write(s.Season.Calendar(p))}
}

func saved(typed string, write func(*plan.Plan) Reply) Reply {
	d := plan.ParseDraft(typed)
	d.Apply()
	p, errs := d.Read()
	if len(errs) > 0 {
		r := Reply{Errors: errs}
		r.wrong(errs)
		return r
	}
	return write(p)
}

// Sentence is an error as it stands beside its field.
func Sentence(e plan.Error) string { return form.Sentence(e) }

// whole returns everything for a plan, the form included.
func (s *Session) whole(p *plan.Plan) Reply {
	r := Reply{}
	r.add("ask", form.Ask(p, plan.DraftOf(p), nil))
	r.told(s.work(p))
	r.clear()
	return r
}

func (r *Reply) add(id, html string) {
	r.Fragments = append(r.Fragments, block.Fragment{ID: id, HTML: html})
}

// told adds the results of a plan without errors.
func (r *Reply) told(s *sheet.Sheet) {
	r.More = 1
	r.Link = link(s.Plan)
	r.Title = scene.Title(s.Plan)
	r.Announce = answer.Announce(s)
	r.Fragments = append(r.Fragments, view.Told(s, link)...)
	r.add("share", form.Share(r.Link))
}

// clear takes away what was said of another plan, or of errors.
func (r *Reply) clear() {
	r.add("errors", "")
	r.add("message", "")
	r.add("stale", "")
}

// wrong says what is wrong with the form, and that the answer is not to it.
func (r *Reply) wrong(errs []plan.Error) {
	r.add("errors", form.Errors(errs))
	r.stale(form.LastGood, errs)
}

// stale says that the answer on the page is not to what the reader looks for.
func (r *Reply) stale(why words.Text, errs []plan.Error) {
	r.add("stale", form.Message(words.Say(why)))
	foot := form.Foot(errs)
	for i := range r.Fragments {
		if r.Fragments[i].ID == "always" {
			r.Fragments[i].HTML = foot
			return
		}
	}
	r.add("always", foot)
}

// stays refuses what was to take the place of the plan on the page.
func stays(why string) Reply {
	return refused(words.Sentences(why, words.Say("The plan that stood here is still here.")))
}

func refused(why string) Reply {
	r := Reply{Focus: "message"}
	r.add("message", form.Message(why))
	return r
}

func link(p *plan.Plan) string { return "#" + strings.TrimPrefix(carry.Link(p), "#") }

func examples() []form.Example {
	var list []form.Example
	for _, e := range plan.Examples() {
		list = append(list, form.Example{Title: e.Title, Summary: words.Say(e.Summary), Link: link(e.Plan)})
	}
	return list
}

// FileName makes a file's name of a plan's, in letters that every system takes.
func FileName(plan string) string {
	var b []byte
	for _, c := range []byte(plan) {
		if c >= 'A' && c <= 'Z' {
			c += 'a' - 'A'
		}
		if c >= 'a' && c <= 'z' || c >= '0' && c <= '9' {
			b = append(b, c)
		} else if len(b) > 0 && b[len(b)-1] != '-' {
			b = append(b, '-')
		}
	}
	name := strings.Trim(string(b), "-")
	if name == "" {
		name = "plan"
	}
	return name + ".json"
}

// Fault is the reply when the program itself has failed at something.
func Fault(doing string) Reply {
	return refused(words.Say("The planner has a fault ({doing}). Your plan is still in the form. Change it a little, or load the page again.", doing))
}
