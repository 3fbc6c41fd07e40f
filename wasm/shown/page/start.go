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

// An Asking is what stands in the form of the five questions.
type Asking struct {
	Draft   plan.Draft
	Answers propose.Answers
	Errors  []plan.Error // what is worth saying now
	Left    int          // how many are still to be answered
	Ready   bool         // a plan is asked for, and can be proposed
}

// Asked reads the five questions. Who comes to them from a plan finds its answers there.
func Asked(d plan.Draft, m Move) Asking {
	if m.was.Job != form.Start && !asked(d) && d.Has("place.length") {
		p, _ := d.Read() // what can be read of it
		propose.AnswersOf(p).Write(&d)
	}
	a, errs, left := propose.Read(d)
	q := Asking{Draft: d, Answers: a, Left: left}
	if m.action != form.Propose {
		q.Errors = typedWrong(errs)
	} else if q.Errors = append(errs, propose.Unanswered(d, errs)...); len(q.Errors) == 0 {
		q.Ready = true
	}
	return q
}

// Propose returns the plan that the answers lead to, and what there is to say of it, as
// paragraphs. The plan that stood before is that of the draft.
func (q *Asking) Propose(m *work.Meter) (p *plan.Plan, said string) {
	p, outcome := propose.Of(m, q.Answers, known(q.Draft))
	w := &block.Writer{}
	for _, text := range outcome.Said(p) {
		w.Tag("p", text)
	}
	return p, w.String()
}

// questions answers the form of the five questions: what is wrong in it, how many
// are left, and once they are answered and a plan is asked for, that plan.
func (s *Session) questions(d plan.Draft, m Move) Reply {
	r := Reply{At: form.Start, Title: words.Say("Five questions")}
	q := Asked(d, m)
	if q.Ready {
		return s.proposed(&q)
	}
	d, r.Errors = q.Draft, q.Errors
	if m.action == form.Propose {
		r.Announce = form.Aloud(r.Errors)
	}
	if m.to != "" || m.action != "" || d.Get(form.ShapeName) != form.StartShape(d) {
		r.add("ask", form.Questions(d, r.Errors, true))
	}
	switch {
	case m.action == form.AskMore:
		r.Focus = "f-" + propose.Prefix + "crop." + words.N(propose.Lines(d))
	case m.to != "":
		r.Focus = "h-job"
	}
	r.clear()
	r.add("always", form.Left(q.Left, r.Errors))
	if m.action == form.Propose {
		r.add("errors", form.Errors(r.Errors))
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
	have := propose.Known{Today: day.ParseMoment(d.Get(TodayName)).Day, Currency: propose.Currency(d.Get(LanguagesName))}
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
func (s *Session) proposed(q *Asking) Reply {
	p, said := q.Propose(work.New(propose.Units, nil))
	s.sent = nil
	r := s.all(p, first())
	r.set("done", said)
	r.Focus = "h-job"
	return s.sends(r)
}
