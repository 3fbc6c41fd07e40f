package page

import (
	"strconv"

	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/view"
)

// StepName is the name in form data of what [Explorer.Rest] is asked for.
const StepName = "step"

// An Explorer tells what [Answer], [Open] and [OpenFile] leave out because it
// takes longer, one exploration at a time, so that a change in between need
// not wait for all. It keeps the plan it was last asked about. The zero value
// is ready.
type Explorer struct {
	link  string
	sheet *sheet.Sheet
}

// Rest returns the fragments of one exploration of the plan in the form: the
// one whose number, from 1, stands under [StepName]. More is the number of the
// next. With errors in the form it is the plan under [GoodName] that is explored.
func (e *Explorer) Rest(form string) Reply {
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
	s := e.of(p)
	which := sheet.Exploration(step - 1)
	s.Explore(which)
	r := Reply{Fragments: view.Explored(s, which, link)}
	if step < sheet.Explorations {
		r.More = step + 1
	}
	return r
}

// of returns the sheet of a plan, with what has been explored of it.
func (e *Explorer) of(p *plan.Plan) *sheet.Sheet {
	if l := carry.Link(p); e.sheet == nil || e.link != l {
		e.link, e.sheet = l, sheet.Answer(p)
	}
	return e.sheet
}
