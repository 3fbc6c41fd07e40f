package page

import (
	"slices"
	"strconv"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/form"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/view"
)

// TodayName is the name in form data of the day on which a plan is looked at, with
// the time of the device's clock or without: "2027-07-15T14:05", as
// [day.ParseMoment] takes it. The calculation knows no other clock.
const TodayName = "today"

// LanguagesName is the name in form data of the reader's languages, as a browser lists them: a
// first plan has the currency of where they are spoken.
const LanguagesName = "languages"

// StepName is the name in form data of what [Session.Rest] is asked for.
const StepName = "step"

// A Session answers what one page asks, one question after another. It holds
// the plan that was worked out last, one and no more, so that what can wait goes
// on from the answer; any other plan is worked out when it is asked for. What it
// answers is what a new one would, but for the order of parts that it has not worked out
// yet. The zero value is ready.
type Session struct {
	link     string       // of the plan that is held
	sheet    *sheet.Sheet // nil when none is
	explored [sheet.Explorations]bool
	rest     *sheet.Rest // what its answer rests on, once explored

	graded map[string]sheet.Verdict // how grave each part of a job was when it was last worked out, by its id
	sent   map[string]string        // what the page has drawn, by the id of its place
	number int                      // of the last reply
}

// Rest returns the fragments of one exploration of the plan in the form: the
// one whose number, from 1, stands under [StepName], as far as they belong to the job in
// sight. More is the number of the next that the job needs. With errors in the form it
// is the plan under [GoodName] that is explored.
//
// [Session.Answer], [Session.Open] and [Session.OpenFile] leave the explorations
// out, because they take longer. They are asked for one at a time, so that a
// change in between need not wait for all.
func (s *Session) Rest(typed string) Reply {
	d := plan.ParseDraft(typed)
	s.hears(d)
	d.Apply()
	p, errs := d.Read()
	step, _ := strconv.Atoi(d.Get(StepName))
	if len(errs) > 0 {
		p = good(d)
	}
	if p == nil || step < 1 || step > sheet.Explorations {
		return Reply{}
	}
	which := sheet.Exploration(step - 1)
	at := view.Known(form.PlaceOf(d.Get(plan.AtName)), first())
	if at.Job == form.Start {
		return Reply{}
	}
	screen := s.opened(s.screen(s.workOn(d, p, which), at), d)
	r := Reply{}
	for _, f := range screen.Explored(which) {
		if f.ID != "always" || len(errs) == 0 { // where the errors stand at the foot
			r.Fragments = append(r.Fragments, f)
		}
	}
	r.owes(screen, step)
	screen.Done[which] = true
	r.Order = screen.Order()
	if which == sheet.Season {
		r.First = view.First(screen.Sheet)
	}
	return s.sends(r)
}

// SeenName is the name in form data of the number of the last reply that the page
// has drawn whole.
const SeenName = "seen"

// hears forgets what it has sent when the page has not drawn all of it.
func (s *Session) hears(d plan.Draft) {
	if seen, _ := strconv.Atoi(d.Get(SeenName)); seen != s.number {
		s.sent = nil
	}
}

// sends leaves out of a reply what the page has drawn already, and numbers it.
func (s *Session) sends(r Reply) Reply {
	if s.sent == nil {
		s.sent = map[string]string{}
	}
	kept := r.Fragments[:0]
	for _, f := range r.Fragments {
		if f.ID == "job" {
			s.sent = map[string]string{} // its places are new, and hold what came with it
		}
		if html, same := s.sent[f.ID]; same && html == f.HTML && f.ID != "ask" {
			continue
		}
		s.sent[f.ID] = f.HTML
		kept = append(kept, f)
	}
	r.Fragments = kept
	s.number++
	r.Number = s.number
	return r
}

// screen is a job with the plan that is held on it.
func (s *Session) screen(held *sheet.Sheet, at form.Place) *view.Screen {
	if s.graded == nil {
		s.graded = map[string]sheet.Verdict{}
	}
	return &view.Screen{Job: view.JobNamed(at.Job), Sheet: held, Link: link, Bare: true, Graded: s.graded}
}

// opened is a screen with the long sections that a form has open.
func (s *Session) opened(screen *view.Screen, d plan.Draft) *view.Screen {
	screen.Open = d.Get(plan.OpenName)
	return screen
}

// workOn is [Session.work], looked at on the day that the form holds.
func (s *Session) workOn(d plan.Draft, p *plan.Plan, also ...sheet.Exploration) *sheet.Sheet {
	worked := s.work(p, also...)
	worked.Now = day.ParseMoment(d.Get(TodayName))
	return worked
}

// work returns the sheet of a plan, with the explorations that are named, on no
// day.
func (s *Session) work(p *plan.Plan, also ...sheet.Exploration) *sheet.Sheet {
	held := *s
	*s = Session{number: held.number, graded: held.graded} // nothing that a fault leaves half done is held, nor two plans at once
	if l := link(p); held.sheet == nil || held.link != l {
		held = Session{link: l, sent: held.sent, number: held.number, graded: held.graded}
		held.sheet = sheet.Bare(p)
	}
	for _, which := range also {
		if !held.explored[which] {
			held.sheet.Explore(which)
			held.explored[which] = true
		}
	}
	held.sheet.Now = day.Moment{}
	// The answer's own words go by what it rests on, once that is asked for: an answer
	// is the same whatever was asked before.
	if held.sheet.Rest != nil {
		held.rest = held.sheet.Rest
	}
	held.sheet.Rest = nil
	if slices.Contains(also, sheet.Turning) {
		held.sheet.Rest = held.rest
	}
	*s = held
	return held.sheet
}
