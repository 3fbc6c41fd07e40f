// Package page answers what the page asks: form text in, fragments out.
//
// A [Session] holds one plan between two questions of a page. The builder asks
// for the page as it is first seen, the browser program at every change.
package page

import (
	"strings"

	"evenrow/wasm/ground/csv"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/answer"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/build"
	"evenrow/wasm/shown/buy"
	"evenrow/wasm/shown/form"
	"evenrow/wasm/shown/propose"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/view"
	"evenrow/wasm/shown/watering"
	"evenrow/wasm/works/parts"
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
	At        string       // which job, group and record are in sight, as in an address; empty to leave them
	Owed      []string     // ids of the places that are still to be filled
	Order     []string     // of the parts of the job in sight, by the id of the first place in each; empty to leave it
	First     string       // the job that comes first today; empty where that is not worked out
	More      int          // what [Session.Rest] should be asked for next; 0 for nothing
	Number    int          // of the reply: a question that names another has missed what this one changed

	FileName string // of a file to be saved; empty for none
	FileKind string // its content type
	File     string // its content
}

// Start returns the page as it is first seen: the default plan's answer, with everything on
// it, as an example.
func Start() Reply {
	p := plan.Default()
	var s Session
	at := first()
	screen := s.screen(s.work(p), at)
	screen.Bare = false // who reads this has no script to ask for more
	for which := range sheet.Exploration(sheet.Explorations) {
		if screen.Needs(which) {
			screen.Sheet, screen.Done[which] = s.work(p, which), true
		}
	}
	s.work(p, sheet.Turning) // whose answer it is
	r := Reply{At: at.String()}
	r.Fragments = append(screen.Around(), screen.Whole())
	r.add("ask", form.Questions(plan.Draft{}, nil, true))
	r.add("share", form.Share(link(p)))
	r.clear()
	r.add("examples", form.Examples(examples()))
	noLog := func(string) string { return "" }
	advice, _ := watering.Advice(s.work(p), p, nil, nil)
	r.add("log", watering.Log(noLog, leastRows, func(int) string { return "" }))
	r.add("advice", advice)
	return r
}

// Answer reads the form and works the plan out. With errors the results stay
// as they are, or become those of the plan under [GoodName] if the form has one,
// and the page says that they are not of what the form holds, and lists what is
// wrong. The form itself is sent again only when what it shows changes, and of the
// rest what has changed since the last reply that the page has drawn.
func (s *Session) Answer(typed string) Reply {
	d := plan.ParseDraft(typed)
	s.hears(d)
	shape := d.Get(form.ShapeName)
	m := Apply(&d)
	if m.At.Job == form.Start {
		return s.questions(d, m)
	}
	at, was := m.At, m.was
	p, errs := d.Read()
	errs = form.Gathered(d, errs)
	r := Reply{Errors: errs, At: at.String()}
	groups := view.JobNamed(at.Job).Groups
	list := s.listed(d, p, errs, groups)
	if m.to != "" || m.Record != "" || shape != form.Shape(p, groups, at) {
		r.add("ask", form.Ask(p, d, errs, groups, at, list...))
	} else {
		r.Fragments = form.Summaries(p, groups, list...)
	}
	r.Focus = m.Focus()
	moved := at.Job != was.Job || shape == "" // a form that was never drawn has no job on the page
	if len(errs) > 0 {
		last := good(d)
		if last != nil {
			r.told(s.opened(s.screen(s.workOn(d, last), at), d), moved)
			r.Link = ""
		}
		r.wrong(errs)
		r.Announce = form.Aloud(errs)
		return s.sends(r)
	}
	r.told(s.opened(s.screen(s.workOn(d, p), at), d), moved)
	r.clear()
	if done := form.Removed(m.action, m.Record); done != "" {
		r.add("done", form.Done(done))
		r.Announce = words.Sentences(done, r.Announce)
	}
	if m.example {
		r.set("stale", form.Message(words.Say(form.AnExample)))
	}
	switch {
	case m.Record == "season":
		r.Announce = words.Sentences(words.Say("The season is moved."), r.Announce)
	case m.Record == "drain":
		r.Announce = words.Sentences(words.Say("The card is written anew."), r.Announce)
	case m.Record == "sky":
		r.Announce = words.Sentences(words.Say("The clock is set."), r.Announce)
	case m.to != "":
		r.Announce = "" // the focus says it
	}
	return s.sends(r)
}

// listed is the list of parts of a plan, or with errors in it of the last good one, where the
// form is to have names from it.
func (s *Session) listed(d plan.Draft, p *plan.Plan, errs []plan.Error, groups []form.Group) []parts.Line {
	if !form.Lists(p, groups) {
		return nil
	}
	if len(errs) > 0 {
		p = good(d)
	}
	if p == nil {
		return nil
	}
	return s.work(p).Parts
}

// A Move is where a form leads, and what it does besides being read.
type Move struct {
	At     form.Place // what is in sight afterwards
	Record string     // the path of the record of the form that was moved or added; that of a record 0 where the last is gone
	was    form.Place
	to     string // the address within the page that was asked for
	action string // that was asked for

	example bool // instead of a plan, as there is none yet
}

// Apply does what the button pressed asks for, as [plan.Draft.Apply] does, and what
// leads to another place.
func Apply(d *plan.Draft) Move {
	m := Move{was: view.Known(form.PlaceOf(d.Get(plan.AtName)), first())}
	m.At = m.was
	if to, leads := strings.CutPrefix(d.Get(plan.ActionName), plan.GoTo); leads {
		m.to, m.At = to, view.Find(to, m.was)
		if id := view.LongAt(to); id != "" && !strings.Contains(d.Get(plan.OpenName)+" ", " "+id+" ") {
			d.Set(plan.OpenName, d.Get(plan.OpenName)+" "+id)
		}
		d.Set(plan.ActionName, "")
	}
	if m.was.Job == form.Start && m.At.Job != form.Start && !d.Has("place.length") {
		m.example = true
		d.Fill(plan.Default())
	}
	m.action = d.Get(plan.ActionName)
	if m.At.Job == form.Start {
		propose.SwitchUnits(d)
		if m.action == form.AskMore {
			propose.More(d)
		}
	}
	if m.Record = d.Apply(); m.Record != "" && m.Record != "sky" && m.Record != "season" && m.Record != "drain" {
		m.At.Record = m.Record
		if j := view.JobNamed(m.At.Job); j != nil {
			if g, _ := form.InGroups(j.Groups, m.Record); g != nil {
				m.At.Group = g.ID
			}
		}
	}
	return m
}

// Focus is the id of the element that the reader is led to; empty for none.
func (m *Move) Focus() string {
	list, last := strings.CutSuffix(m.Record, ".0")
	to := m.to
	switch {
	case last:
		return "f-" + list
	case m.Record == "sky":
		return "f-sky"
	case m.Record == "season", m.Record == "drain":
		return "h-job"
	case m.Record != "":
		return "s-" + m.Record
	case to == "", strings.HasPrefix(to, "d-"): // a part that was opened by hand
		return ""
	case strings.HasPrefix(to, "f-"), strings.HasPrefix(to, "h-"), strings.HasPrefix(to, "plants"), strings.HasPrefix(to, "line-"), strings.HasPrefix(to, "take-"):
		return to
	case m.At.Job == m.was.Job && m.At.Record != "":
		return "s-" + m.At.Record
	case m.At.Job == m.was.Job && m.At.Group != "":
		return "t-" + m.At.Group
	}
	return "h-job"
}

// Open opens a link: what follows "#" in the page's address, perhaps with a slash and
// what is to be in sight. An empty one is
// the default plan. A link that cannot be read changes nothing but the message.
func (s *Session) Open(link string) Reply {
	p, at, err := opened(link)
	if err != "" {
		return stays(err)
	}
	return s.whole(p, at)
}

// OpenFirst is Open while the page shows nothing but the example, which must
// then not be taken for the plan in a link that cannot be read.
func (s *Session) OpenFirst(link string) Reply {
	p, at, err := opened(link)
	if err == "" {
		return s.whole(p, at)
	}
	// The example with its form, which is not in the page as delivered; and no link, as it
	// is no plan that was opened.
	s.sent, s.graded = nil, nil
	r := s.all(plan.Default(), first())
	r.Link, r.Title, r.Announce, r.Focus = "", "", "", "message"
	r.set("message", form.Message(err))
	r.stale(form.NotTheLink, nil)
	return s.sends(r)
}

// first is what is in sight of a plan before anything else is asked for.
func first() form.Place { return form.Place{Job: view.Jobs[0].ID} }

// opened reads a link, or says in a sentence why it cannot be opened.
func opened(link string) (p *plan.Plan, at form.Place, problem string) {
	link, place, _ := strings.Cut(strings.TrimPrefix(link, "#"), "/")
	at = view.Known(form.PlaceOf(place), first())
	if link == "" {
		return plan.Default(), at, ""
	}
	p, err := carry.ReadLink(link)
	if err != nil {
		return nil, at, words.Sentences(words.Say("This link cannot be opened."), err.Error())
	}
	return p, at, ""
}

// good is the plan that an error falls back to, nil for that whose answer the
// page shows already.
func good(d plan.Draft) *plan.Plan {
	if !d.Has(GoodName) {
		return nil
	}
	p, _, _ := opened(d.Get(GoodName))
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
	return s.whole(p, first())
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

// Parts, Cuts and Marks return tables of the plan in the form, for a spreadsheet. A plan
// with errors has none.
func (s *Session) Parts(typed string) Reply { return s.table(typed, PartsFile) }
func (s *Session) Cuts(typed string) Reply  { return s.table(typed, CutsFile) }
func (s *Session) Marks(typed string) Reply { return s.table(typed, MarksFile) }

func (s *Session) table(typed string, file func(*sheet.Sheet) Reply) Reply {
	return saved(typed, func(p *plan.Plan) Reply { return file(s.work(p)) })
}

// PartsFile returns the parts of a sheet as a table.
func PartsFile(s *sheet.Sheet) Reply { return tableFile(s, "parts", buy.Table(s)) }

// CutsFile returns the pieces of tubing of a sheet as a table.
func CutsFile(s *sheet.Sheet) Reply { return tableFile(s, "cuts", build.CutsTable(s)) }

// MarksFile returns every mark of a sheet's rows as a table.
func MarksFile(s *sheet.Sheet) Reply { return tableFile(s, "marks", build.MarksTable(s)) }

func tableFile(s *sheet.Sheet, of, table string) Reply {
	name := strings.TrimSuffix(FileName(s.Plan.Name), ".json") + "-" + of + ".csv"
	return Reply{FileName: name, FileKind: csv.Kind, File: table}
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
func (s *Session) whole(p *plan.Plan, at form.Place) Reply {
	s.sent, s.graded = nil, nil
	if at.Job == form.Start {
		return s.questions(plan.DraftOf(p), Move{At: at, to: form.Start})
	}
	return s.sends(s.all(p, at))
}

// all is everything for a plan in a job, the form included.
func (s *Session) all(p *plan.Plan, at form.Place) Reply {
	r := Reply{At: at.String()}
	groups := view.JobNamed(at.Job).Groups
	r.add("ask", form.Ask(p, plan.DraftOf(p), nil, groups, at, s.listed(plan.Draft{}, p, nil, groups)...))
	r.told(s.screen(s.work(p), at), true)
	r.clear()
	return r
}

func (r *Reply) add(id, html string) {
	r.Fragments = append(r.Fragments, block.Fragment{ID: id, HTML: html})
}

// set is add in place of what was added there.
func (r *Reply) set(id, html string) {
	for i := range r.Fragments {
		if r.Fragments[i].ID == id {
			r.Fragments[i].HTML = html
			return
		}
	}
	r.add(id, html)
}

// told adds the results of a plan without errors: of a job that the page does not
// show yet the whole screen.
func (r *Reply) told(screen *view.Screen, whole bool) {
	p := screen.Sheet.Plan
	r.Link = link(p)
	r.Title = scene.Title(p)
	r.Announce = answer.Announce(screen.Sheet)
	r.Fragments = append(r.Fragments, screen.Around()...)
	if whole {
		r.Fragments = append(r.Fragments, screen.Whole())
	} else {
		r.Fragments = append(r.Fragments, screen.Answered()...)
	}
	r.owes(screen, 0)
	r.Order = screen.Order()
	r.add("share", form.Share(r.Link))
}

// owes says what is still to be worked out for the job in sight, from an exploration on.
func (r *Reply) owes(screen *view.Screen, from int) {
	r.Owed, r.More = screen.Owed(sheet.Exploration(from))
}

// clear takes away what was said of another plan, or of errors.
func (r *Reply) clear() {
	r.add("errors", "")
	r.add("message", "")
	r.add("done", "")
	r.add("stale", "")
}

// wrong says what is wrong with the form, and that the answer is not to it.
func (r *Reply) wrong(errs []plan.Error) {
	r.add("errors", form.Errors(errs))
	r.stale(form.LastGood, errs)
}

// stale says that the answer on the page is not to what the reader looks for.
func (r *Reply) stale(why words.Text, errs []plan.Error) {
	r.set("stale", form.Message(words.Say(why)))
	r.set("always", form.Foot(errs))
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
