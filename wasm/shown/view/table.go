package view

// A table writes an HTML table in a box that scrolls sideways by itself, so
// that the page never does.
type table struct {
	w       *writer
	numeric []bool
}

// table opens a table with its caption, which is for screen readers, and its
// columns. A column whose name begins with "#" holds figures.
func (w *writer) table(caption string, columns ...string) *table {
	t := &table{w: w}
	w.html(`<div class="scroll" role="region" tabindex="0"`).attr("aria-label", caption).html(`><table><caption class="out">`).
		text(caption).html(`</caption><thead><tr>`)
	for _, c := range columns {
		number := c != "" && c[0] == '#'
		t.numeric = append(t.numeric, number)
		if number {
			w.html(`<th scope="col" class="n">`).text(c[1:])
		} else {
			w.html(`<th scope="col">`).text(c)
		}
		w.html(`</th>`)
	}
	w.html(`</tr></thead><tbody>`)
	return t
}

// row writes a row; its first cell names it.
func (t *table) row(cells ...string) {
	t.w.html(`<tr>`)
	t.cells(cells)
}

// explained is row with a small line below the name.
func (t *table) explained(name, small string, cells ...string) {
	t.w.html(`<tr><th scope="row">`).text(name).html(` <small>`).text(small).html(`</small></th>`)
	t.rest(cells)
}

// total writes a row below a rule.
func (t *table) total(cells ...string) {
	t.w.html(`<tr class="total">`)
	t.cells(cells)
}

// group writes a heading across the table.
func (t *table) group(name string) {
	t.w.html(`</tbody><tbody><tr class="group"><th scope="rowgroup" colspan="`).num(len(t.numeric)).html(`">`).text(name).html(`</th></tr>`)
}

// across writes a small line below a row, over the whole width.
func (t *table) across(small string) {
	t.w.html(`<tr class="under"><td colspan="`).num(len(t.numeric)).html(`"><small>`).text(small).html(`</small></td></tr>`)
}

func (t *table) cells(cells []string) {
	t.w.html(`<th scope="row">`).text(cells[0]).html(`</th>`)
	t.rest(cells[1:])
}

func (t *table) rest(cells []string) {
	for i, c := range cells {
		switch {
		case t.numeric[i+1]:
			t.w.html(`<td class="n">`).text(c).html(`</td>`)
		default:
			t.w.html(`<td>`).text(c).html(`</td>`)
		}
	}
	t.w.html(`</tr>`)
}

func (t *table) end() { t.w.html(`</tbody></table></div>`) }

// fold opens a part that is shown on request; close it with "</details>".
func (w *writer) fold(name string) { w.foldAs("", name) }

// foldAs is fold with an id, so that a link can lead to it.
func (w *writer) foldAs(id, name string) {
	w.html(`<details`)
	if id != "" {
		w.attr("id", id)
	}
	w.html(`><summary>`).text(name).html(`</summary>`)
}
