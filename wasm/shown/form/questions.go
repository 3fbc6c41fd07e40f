package form

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/propose"
)

// What the buttons of the questions ask for.
const (
	AskMore = "ask-more" // another line of crops
	Propose = "propose"  // a plan from the answers
)

// Start is the place of the five questions.
const Start = "start"

// StartShape is a mark of what the questions show, as [Shape] is of a job's form.
func StartShape(d plan.Draft) string {
	_, a := propose.Drawn(d)
	return Start + words.N(propose.Lines(d)) + d.Get(propose.SupplyAt) + unitCode(a.Units)
}

// Questions returns the five questions as a form, with what was typed
// and what is wrong with it. Of the supplies, only the figures of the one that is
// chosen are shown; before that none, or those of all where no script
// shows them as soon as one is chosen. What is not shown is kept.
func Questions(d plan.Draft, errs []plan.Error, scripted bool) string {
	list, a := propose.Drawn(d)
	f := &form{Writer: &block.Writer{}, p: &plan.Plan{Units: a.Units}, d: d, errs: map[string]plan.Error{}, seen: map[string]bool{}}
	for _, e := range errs {
		f.errs[e.Path] = e
	}
	// The first button of a form is the one that the Enter key presses.
	f.HTML(`<button class="out" tabindex="-1" aria-hidden="true"`).Attr("name", plan.ActionName).Attr("value", Propose).HTML(`>`).Text(words.Say("Propose a plan")).HTML(`</button>`)
	f.carried(plan.UnitsWas, unitCode(a.Units))
	f.carried(ShapeName, StartShape(d))
	f.carried(plan.AtName, Start)
	for n, title := range propose.Asks {
		f.HTML(`<fieldset class="section ask"`).Attr("id", "ask-"+words.N(n+1)).HTML(`>`).Say("legend", title)
		line := 0
		for i := range list {
			q := &list[i]
			if q.Of != n {
				continue
			}
			if q.Line != line {
				if line > 0 {
					f.HTML(`</div>`)
				}
				line = q.Line
				f.HTML(`<div class="ask__crop" role="group"`).Attr("aria-label", words.Say("Crop {n}", words.N(line))).HTML(`>`)
			}
			switch {
			case a.Supply != plan.Unset && !q.Applies(&a), scripted && a.Supply == plan.Unset && q.Only != plan.Unset:
				continue
			case q.Name == propose.SupplyAt || q.Name == propose.Prefix+"medium":
				f.choose(q)
			default:
				f.question(q, a.Supply == plan.Unset && q.Only != plan.Unset)
			}
		}
		if line > 0 {
			f.HTML(`</div>`)
			if line < propose.MaxCrops {
				f.HTML(`<p class="record__do">`)
				f.action(AskMore, "Another crop")
				f.HTML(`</p>`)
			}
		}
		f.HTML(`</fieldset>`)
	}
	f.seen["units"] = true
	f.radios(plan.FieldNamed("", "units"), "units", unitCode(a.Units))
	f.carried(plan.RestName, d.Fold(f.seen))
	f.HTML(`<p class="ask__do">`)
	f.HTML(`<button class="button button--main"`).Attr("name", plan.ActionName).Attr("value", Propose).HTML(`>`).Text(words.Say("Propose a plan")).HTML(`</button></p>`)
	return f.String()
}

// question writes one input of the questions. Where no supply is chosen yet, its
// label says which one it belongs to.
func (f *form) question(q *propose.Question, whose bool) {
	label := q.Says()
	if whose {
		label = words.Say("{supply}: {field}", propose.SupplyName(q.Only), words.Within(q.Label, ""))
	}
	f.input(input{q.Field, q.Name, label, f.about(q), "", "choose one", nil}, f.d.Get(q.Name))
}

// about is the hint of a question. That a unit may be typed is said once for all of
// them, with the units.
func (f *form) about(q *propose.Question) string {
	hint := f.bounds(q.Field)
	if q.May {
		hint = words.Sentences(hint, words.Say("May be left empty."))
	}
	return hint
}

// choose writes a question as radio buttons.
func (f *form) choose(q *propose.Question) {
	typed := f.d.Get(q.Name)
	f.seen[q.Name] = true
	f.HTML(`<div class="radios" role="radiogroup" tabindex="-1"`).Attr("id", "f-"+q.Name).Attr("aria-label", q.Says()).Attr("aria-describedby", "e-"+q.Name).HTML(`>`)
	for _, o := range q.Options {
		f.HTML(`<label><input type="radio"`).Attr("id", "f-"+q.Name+"-"+o.Code).Attr("name", q.Name).Attr("value", o.Code)
		if o.Code == typed {
			f.HTML(` checked`)
		}
		f.HTML(`> `).Text(words.Say(o.Label)).HTML(`</label>`)
	}
	f.HTML(`</div>`)
	f.wrong(q.Name)
}
