package form

import "evenrow/wasm/shown/block"

// Share offers the ways to keep a plan and to take it elsewhere. link is the
// plan's address within the page, beginning with "#"; the script puts the
// page's own address before it.
func Share(link string) string {
	w := &block.Writer{}
	w.HTML(`<p>The link holds the whole plan. Whoever opens it sees the same rows and the same answer.</p>`).
		HTML(`<p class="share__link"><label for="link">Link to this plan</label><input id="link" readonly data-link`).Attr("value", link).
		HTML(`> <button type="button" class="button" data-do="copy" data-done="Copied">Copy the link</button></p>`).
		HTML(`<p class="share__do"><button type="button" class="button" data-do="save">Save as a file</button> `).
		HTML(`<button type="button" class="button" data-do="calendar">Save the calendar</button> `).
		HTML(`<label class="button">Open a file<input type="file" class="out" accept="application/json,.json" data-open></label> `).
		HTML(`<button type="button" class="button" data-do="print">Print</button></p>`)
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
