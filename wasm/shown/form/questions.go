package form

import (
	"evenrow/wasm/ground/unit"
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
	typed := f.d.Get(q.Name)
	f.seen[q.Name] = true
	_, bad := f.errs[q.Name]
	class := block.Markup("field")
	if q.Type == plan.Choice {
		class = "field field--long"
	}
	label := q.Says()
	if whose {
		label = words.Say("{supply}: {field}", propose.SupplyName(q.Only), words.Within(q.Label, ""))
	}
	u := unit.Of(q.Kind, f.p.Units)
	f.HTML(`<div class="`).HTML(class).HTML(`"><label`).Attr("for", "f-"+q.Name).HTML(`>`)
	if q.Type == plan.Number {
		f.Half("{label}[, in {unit}]", label, words.Say(u.Words))
	} else {
		f.Text(label)
	}
	f.HTML(`</label>`)
	common := func() {
		f.Attr("id", "f-"+q.Name).Attr("name", q.Name).Attr("aria-describedby", "h-"+q.Name+" e-"+q.Name)
		if bad {
			f.HTML(` aria-invalid="true"`)
		}
	}
	if q.Type == plan.Choice {
		f.HTML(`<select`)
		common()
		f.HTML(`>`)
		if typed == "" {
			f.HTML(`<option value="" selected>`).Text(words.Say("choose one")).HTML(`</option>`)
		}
		for _, o := range q.Options {
			f.HTML(`<option`).Attr("value", o.Code)
			if o.Code == typed {
				f.HTML(` selected`)
			}
			f.HTML(`>`).Text(words.Say(o.Label)).HTML(`</option>`)
		}
		f.HTML(`</select>`)
	} else {
		f.HTML(`<input`)
		common()
		f.Attr("value", typed)
		if q.Type == plan.Number {
			f.HTML(` inputmode="`).HTML(keyboard(q.Field)).HTML(`"`)
		} else {
			f.HTML(` inputmode="numeric"`)
		}
		f.HTML(` autocomplete="off" spellcheck="false">`)
	}
	if q.Type == plan.Number && u.Symbol != "" {
		f.HTML(`<span class="field__unit" aria-hidden="true">`).Text(u.Symbol).HTML(`</span>`)
	}
	f.HTML(`<p class="field__hint"`).Attr("id", "h-"+q.Name).HTML(`>`).Text(f.about(q)).HTML(`</p>`)
	f.wrong(q.Name)
	f.HTML(`</div>`)
}

// about is the hint of a question.
func (f *form) about(q *propose.Question) string {
	if hint := f.hint(q.Field); !q.May {
		return hint
	} else {
		return words.Sentences(hint, words.Say("May be left empty."))
	}
}

// wrong writes the place for what is wrong with an input, with what is.
func (f *form) wrong(name string) {
	f.HTML(`<p class="field__error"`).Attr("id", "e-"+name)
	if e, bad := f.errs[name]; bad {
		f.HTML(`>`).Text(Sentence(e))
	} else {
		f.HTML(` hidden>`)
	}
	f.HTML(`</p>`)
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
