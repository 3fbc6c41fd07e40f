package form

import (
	"strconv"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/wording"
)

// Sentence is an error as it stands below its field: the words of the summary,
// so that the two are known for the same, and what was typed.
func Sentence(e plan.Error) string {
	s := e.Label + " " + e.Problem + "."
	if typed := e.Typed; typed != "" {
		const most = 100 // letters that are shown of it
		for i := range typed {
			if i >= most {
				typed = typed[:i] + " …"
				break
			}
		}
		s += " " + strconv.Quote(typed) + " is kept as you typed it."
	}
	return s
}

// Errors is the summary of everything that is wrong, each leading to its field.
func Errors(errs []plan.Error) string {
	if len(errs) == 0 {
		return ""
	}
	w := &block.Writer{}
	w.HTML(`<div><h2>`).Text(putRight(errs)).HTML(`</h2><ul>`)
	for _, e := range errs {
		w.HTML(`<li><a`).Attr("href", "#f-"+e.Path).HTML(`>`).Text(e.Label + " " + e.Problem + ".").HTML(`</a></li>`)
	}
	return w.HTML(`</ul></div>`).String()
}

func putRight(errs []plan.Error) string {
	return wording.Count(len(errs), "thing", "things") + " to put right"
}

// What stands above an answer that is not to what the form holds, or not to the
// plan that was asked for, as [Message].
const (
	LastGood   = "Below stands the answer to the last good plan, not to what the form holds now."
	NotYours   = "Below stands the answer to an example, not to your plan."
	NotTheLink = "Below stands an example, not the plan that you opened."
)

// Foot is the line that stays in sight on a narrow screen while there is no
// answer to what the form holds.
func Foot(errs []plan.Error) string {
	w := &block.Writer{}
	if len(errs) == 0 {
		return w.Text(NotTheLink).String()
	}
	return w.HTML(`<strong class="word word--no">`).Text(putRight(errs) + ":").HTML(`</strong> `).Text(errs[0].Error() + ".").String()
}

// Message is a notice above the answer.
func Message(text string) string {
	if text == "" {
		return ""
	}
	w := &block.Writer{}
	return w.HTML(`<p>`).Text(text).HTML(`</p>`).String()
}
