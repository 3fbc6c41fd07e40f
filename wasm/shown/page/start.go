package page

import (
	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/form"
	"evenrow/wasm/shown/propose"
)

// questions answers the form of the five questions: what is wrong in it, how many
// are left, and once they are answered and a plan is asked for, that plan.
func (s *Session) questions(d plan.Draft, m Move) Reply {
	r := Reply{At: form.Start, Title: words.Say("Five questions")}
	if m.was.Job != form.Start && !asked(d) {
		p, _ := d.Read() // what can be read of it
		propose.AnswersOf(p).Write(&d)
	}
	a, errs, left := propose.Read(d)
	if m.action == form.Propose {
		if errs = append(errs, propose.Unanswered(d, errs)...); len(errs) == 0 {
			return s.proposed(a, known(d))
		}
		r.Announce = form.Aloud(errs)
	} else {
		errs = typedWrong(errs)
	}
	r.Errors = errs
	if m.to != "" || m.action != "" || d.Get(form.ShapeName) != form.StartShape(d) {
		r.add("ask", form.Questions(d, errs, true))
	}
	switch {
	case m.action == form.AskMore:
		r.Focus = "f-" + propose.Prefix + "crop." + words.N(propose.Lines(d))
	case m.to != "":
		r.Focus = "h-job"
	}
	r.clear()
	r.add("always", form.Left(left, errs))
	if m.action == form.Propose {
		r.add("errors", form.Errors(errs))
	}
	return s.sends(r)
}

// asked reports whether a draft has anything of the five questions.
func asked(d plan.Draft) bool { return d.Has(propose.SupplyAt) || d.Has(propose.Prefix+"length") }

// typedWrong leaves out what is only missing yet.
func typedWrong(errs []plan.Error) []plan.Error {
	var wrong []plan.Error
	for _, e := range errs {
		if e.Typed != "" {
			wrong = append(wrong, e)
		}
	}
	return wrong
}

// known is what a draft says besides the answers: the plan that stood before, and the day.
// Of that plan nothing counts that has something wrong in it.
func known(d plan.Draft) propose.Known {
	have := propose.Known{Today: day.ParseMoment(d.Get(TodayName)).Day}
	if d.Has("place.length") {
		p, errs := d.Read()
		for _, e := range errs {
			p.Forget(e.Path)
		}
		have.Before = p
	}
	return have
}

// proposed is the whole page of a proposal, with what became of the answers.
func (s *Session) proposed(a propose.Answers, have propose.Known) Reply {
	p, outcome := propose.Of(work.New(propose.Units, nil), a, have)
	s.sent = nil
	r := s.all(p, first())
	w := &block.Writer{}
	for _, said := range outcome.Said(p) {
		w.Tag("p", said)
	}
	r.set("done", w.String())
	r.Focus = "h-job"
	return s.sends(r)
}
