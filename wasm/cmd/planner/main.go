//go:build js && wasm

// Command planner is the program that runs in the browser's worker. It is the
// only package that knows JavaScript: it sets one global object, evenrow, whose
// functions take a string and return a plain object.
package main

import (
	"syscall/js"

	"evenrow/wasm/shown/page"
)

func main() {
	evenrow := js.Global().Get("Object").New()
	var session page.Session // of the one page whose worker this is
	for name, answer := range map[string]func(string) page.Reply{
		"answer":    session.Answer,
		"rest":      session.Rest,
		"feedback":  session.Feedback,
		"open":      session.Open,
		"openFirst": session.OpenFirst,
		"openFile":  session.OpenFile,
		"save":      page.Save,
		"calendar":  session.Calendar,
		"parts":     session.Parts,
		"cuts":      session.Cuts,
		"marks":     session.Marks,
		"speak":     page.Speak,
		"compare":   page.Compare,
		"paper":     session.Paper,
	} {
		evenrow.Set(name, js.FuncOf(func(_ js.Value, args []js.Value) any {
			text := ""
			if len(args) > 0 && args[0].Type() == js.TypeString {
				text = args[0].String()
			}
			return object(ask(name, answer, text))
		}))
	}
	js.Global().Set("evenrow", evenrow)
	select {}
}

// ask answers a question. A panic is a fault of ours: the page says so and
// goes on with the plan that stood there.
func ask(name string, answer func(string) page.Reply, text string) (r page.Reply) {
	defer func() {
		if recover() != nil {
			r = page.Fault(name)
		}
	}()
	return answer(text)
}

// object turns a reply into a plain object.
func object(r page.Reply) map[string]any {
	fragments := make([]any, len(r.Fragments))
	for i, f := range r.Fragments {
		fragments[i] = map[string]any{"id": f.ID, "html": f.HTML}
	}
	errs := make([]any, len(r.Errors))
	for i, e := range r.Errors {
		errs[i] = map[string]any{"path": e.Path, "text": page.Sentence(e)}
	}
	return map[string]any{
		"fragments": fragments, "errors": errs,
		"link": r.Link, "title": r.Title, "announce": r.Announce, "focus": r.Focus, "at": r.At, "owed": list(r.Owed), "order": list(r.Order), "first": r.First, "more": r.More, "number": r.Number,
		"fileName": r.FileName, "fileKind": r.FileKind, "file": r.File,
	}
}

func list(ids []string) []any {
	all := make([]any, len(ids))
	for i, id := range ids {
		all[i] = id
	}
	return all
}
