package page

import (
	"strconv"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/view"
)

// StepName is the name in form data of what [Session.Rest] is asked for.
const StepName = "step"

// A Session answers what one page asks, one question after another. It holds
// the plan that was worked out last, one and no more, so that what can wait goes
// on from the answer; any other plan is worked out when it is asked for. What it
// answers is what a new one would. The zero value is ready.
type Session struct {
	link     string       // of the plan that is held
	sheet    *sheet.Sheet // nil when none is
	explored [sheet.Explorations]bool
}

// Rest returns the fragments of one exploration of the plan in the form: the
// one whose number, from 1, stands under [StepName]. More is the number of the
// next. With errors in the form it is the plan under [GoodName] that is explored.
//
// [Session.Answer], [Session.Open] and [Session.OpenFile] leave the explorations
// out, because they take longer. They are asked for one at a time, so that a
// change in between need not wait for all.
func (s *Session) Rest(form string) Reply {
	d := plan.ParseDraft(form)
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
	r := Reply{Fragments: view.Explored(s.work(p, which), which, link)}
	if step < sheet.Explorations {
		r.More = step + 1
	}
	return r
}

// work returns the sheet of a plan, with the explorations that are named.
func (s *Session) work(p *plan.Plan, also ...sheet.Exploration) *sheet.Sheet {
	held := *s
	*s = Session{} // nothing that a fault leaves half done is held, nor two plans at once
	if l := link(p); held.sheet == nil || held.link != l {
		held = Session{link: l}
		held.sheet = sheet.Answer(p)
	}
	for _, which := range also {
		if !held.explored[which] {
			held.sheet.Explore(which)
			held.explored[which] = true
		}
	}
	*s = held
	return held.sheet
}
