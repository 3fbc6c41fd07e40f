package form

import (
	"strings"

	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
)

// Sentence is an error as it stands below its field: the words of the summary,
// so that the two are known for the same, and what was typed.
func Sentence(e plan.Error) string {
	typed := e.Typed
	if typed == "" {
		return e.Text
	}
	const most = 100 // letters that are shown of it
	for i := range typed {
		if i >= most {
			typed = typed[:i] + " …"
			break
		}
	}
	return words.Sentences(e.Text, words.Say(`"{typed}" is kept as you typed it.`, typed))
}

// Gathered returns errors with those that are in a field of all rows, typed for all at
// once, as one.
func Gathered(d plan.Draft, errs []plan.Error) []plan.Error {
	rows := plan.SectionNamed("rows")
	n := d.Records(rows)
	if n < 2 || len(errs) < 2 {
		return errs
	}
	count := map[string]int{}
	for _, e := range errs {
		if f := fieldOfRow(e.Path); f != nil {
			count[f.Name]++
		}
	}
	var out []plan.Error
	for _, e := range errs {
		f := fieldOfRow(e.Path)
		if f == nil || count[f.Name] == 0 {
			if f == nil {
				out = append(out, e)
			}
			continue
		}
		if _, same := d.Common(f, n); same && count[f.Name] >= n-1 && count[f.Name] > 1 {
			count[f.Name] = 0 // the others say the same
			e.Path = plan.AllName + f.Name
		}
		out = append(out, e)
	}
	return out
}

// fieldOfRow is the field of rows that a path leads to, or nil.
func fieldOfRow(path string) *plan.Field {
	if !strings.HasPrefix(path, "rows.") {
		return nil
	}
	return plan.FieldNamed("rows", path[strings.LastIndexByte(path, '.')+1:])
}

// Errors is the summary of everything that is wrong, each leading to its field.
func Errors(errs []plan.Error) string {
	if len(errs) == 0 {
		return ""
	}
	w := &block.Writer{}
	w.HTML(`<div>`).Say("h2", "{n} {n|thing|things} to put right", words.N(len(errs))).HTML(`<ul>`)
	for _, e := range errs {
		w.HTML(`<li><a`).Attr("href", "#f-"+e.Path).HTML(`>`).Text(e.Text).HTML(`</a></li>`)
	}
	return w.HTML(`</ul></div>`).String()
}

// Aloud is what is read aloud of errors: how many, and the first.
func Aloud(errs []plan.Error) string {
	return words.Sentences(words.Say("{n} to put right:", words.N(len(errs))), Sentence(errs[0]))
}

// What stands above an answer that is not to what the form holds, or not to the
// plan that was asked for, as [Message].
const (
	LastGood   words.Text = "Below stands the answer to the last good plan, not to what the form holds now."
	NotYours   words.Text = "Below stands the answer to an example, not to your plan."
	AnExample  words.Text = "This is an example. Answer the five questions, and it is your own plan."
	NotTheLink words.Text = "Below stands an example, not the plan that you opened."
)

// Foot is the line that stays in sight on a narrow screen while there is no
// answer to what the form holds.
func Foot(errs []plan.Error) string {
	w := &block.Writer{}
	if len(errs) == 0 {
		return w.Text(words.Say(NotTheLink)).String()
	}
	return w.HTML(`<strong class="word word--no">`).Text(words.Say("{n} {n|thing|things} to put right:", words.N(len(errs)))).
		HTML(`</strong> `).Text(errs[0].Text).String()
}

// Removed says which record an action has removed; nothing where it has removed none.
func Removed(action, record string) string {
	one, number, _ := strings.Cut(strings.TrimPrefix(action, "remove-"), ".")
	if record == "" || !strings.HasPrefix(action, "remove-") {
		return ""
	}
	for _, s := range plan.Sections() {
		if s.One == one && s.List {
			return words.Say("{row} is removed.", words.Say(s.Record.Begin, number))
		}
	}
	return ""
}

// Done says what a button has done, with one that takes it back.
func Done(what string) string {
	w := &block.Writer{}
	return w.HTML(`<p>`).Text(what).HTML(` <button type="button" class="button" data-do="undo">`).Text(words.Say("Put it back")).HTML(`</button></p>`).String()
}

// Left is the line that stays in sight while the five questions are answered.
func Left(left int, errs []plan.Error) string {
	w := &block.Writer{}
	switch {
	case len(errs) > 0:
		return Foot(errs)
	case left == 5:
		w.Text(words.Say("Answer five questions"))
	case left > 0:
		w.Text(words.Say("{n} {n|question|questions} left", words.N(left)))
	default:
		w.Text(words.Say("All five are answered: propose a plan"))
	}
	return w.String()
}

// Message is a notice above the answer.
func Message(text string) string {
	if text == "" {
		return ""
	}
	w := &block.Writer{}
	return w.Tag("p", text).String()
}
