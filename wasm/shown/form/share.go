package form

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/block"
)

// Share offers the ways to keep a plan and to take it elsewhere. link is the
// plan's address within the page, beginning with "#"; the script puts the
// page's own address before it.
func Share(link string) string {
	w := &block.Writer{}
	w.Say("p", "The link holds the whole plan. Whoever opens it sees the same rows and the same answer.").
		HTML(`<p class="share__link"><label for="link">`).Text(words.Say("Link to this plan")).
		HTML(`</label><input id="link" readonly data-link`).Attr("value", link).
		HTML(`> <button type="button" class="button" data-do="copy"`).Attr("data-done", words.Say("Copied")).
		HTML(`>`).Text(words.Say("Copy the link")).HTML(`</button></p><p class="share__do">`)
	button := func(do block.Markup, name words.Text) *block.Writer {
		return w.HTML(`<button type="button" class="button" data-do="`).HTML(do).HTML(`">`).Text(words.Say(name)).HTML(`</button>`)
	}
	button("save", "Save as a file").HTML(` `)
	button("calendar", "Save the calendar").
		HTML(` <label class="button">`).Text(words.Say("Open a file")).HTML(`<input type="file" class="out" accept="application/json,.json" data-open></label> `)
	button("print", "Print").HTML(`</p>`)
	return w.String()
}

// An Example is a plan to start from.
type Example struct {
	Title, Summary string
	Link           string // beginning with "#"
}

// Examples lists plans to start from.
func Examples(list []Example) string {
	w := &block.Writer{}
	w.HTML(`<ul class="examples">`)
	for _, e := range list {
		w.HTML(`<li><a`).Attr("href", e.Link).HTML(`>`).Text(e.Title).HTML(`</a> `).Text(e.Summary).HTML(`</li>`)
	}
	return w.HTML(`</ul>`).String()
}
