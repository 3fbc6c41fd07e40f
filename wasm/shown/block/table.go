package block

import (
	"strings"

	"evenrow/wasm/ground/words"
)

// Say writes a text in an element.
func (w *Writer) Say(name Markup, t words.Text, args ...string) *Writer {
	return w.Tag(name, words.Say(t, args...))
}

// Linked writes a text in which what stands between brackets leads to an address:
// "How to flush: [Flushing]."
func (w *Writer) Linked(href string, t words.Text, args ...string) *Writer {
	before, rest, _ := strings.Cut(words.Say(t, args...), "[")
	name, after, _ := strings.Cut(rest, "]")
	return w.Text(before).HTML("<a").Attr("href", href).HTML(">").Text(name).HTML("</a>").Text(after)
}

// Half writes a text of which what stands between brackets is read aloud and
// not seen: "Copy[ row 2]".
func (w *Writer) Half(t words.Text, args ...string) *Writer {
	before, rest, _ := strings.Cut(words.Say(t, args...), "[")
	heard, after, _ := strings.Cut(rest, "]")
	return w.Text(before).HTML(`<span class="out">`).Text(heard).HTML(`</span>`).Text(after)
}

// Figures is the name of a table's column that holds figures.
func Figures(name string) string { return "#" + name }

// A Heading is a table of which nothing is written until its rows are: see
// [Heading.Rows].
type Heading struct {
	w       *Writer
	caption string
	columns []string
}

// Table is a table with its caption, which is for screen readers, and its
// columns, those of figures as [Figures] names them.
func (w *Writer) Table(caption string, columns ...string) Heading {
	return Heading{w, caption, columns}
}

// A Table writes the rows of an HTML table in a box that scrolls sideways by
// itself, so that the page never does.
type Table struct {
	w       *Writer
	numeric []bool

	Name func() // writes the name of a row of [Table.Explained] and [Table.Pressed]; nil for the name as it is
}

// Rows writes a whole table, with the rows that inside writes.
func (h Heading) Rows(inside func(t *Table)) {
	w, t := h.w, &Table{w: h.w}
	w.HTML(`<div class="scroll" role="region" tabindex="0"`).Attr("aria-label", h.caption).HTML(`><table><caption class="out">`).
		Text(h.caption).HTML(`</caption><thead><tr>`)
	for _, c := range h.columns {
		number := c != "" && c[0] == '#'
		t.numeric = append(t.numeric, number)
		if number {
			w.HTML(`<th scope="col" class="n">`).Text(c[1:])
		} else {
			w.HTML(`<th scope="col">`).Text(c)
		}
		w.HTML(`</th>`)
	}
	w.HTML(`</tr></thead><tbody>`)
	inside(t)
	w.HTML(`</tbody></table></div>`)
}

// Row writes a row; its first cell names it.
func (t *Table) Row(cells ...string) {
	t.w.HTML(`<tr>`)
	t.cells(cells)
}

// named writes the name of a row.
func (t *Table) named(row string) *Writer {
	t.w.HTML(`<tr><th scope="row">`)
	if t.Name != nil {
		t.Name()
		return t.w
	}
	return t.w.Text(row)
}

// Explained is [Table.Row] with a small line below the name.
func (t *Table) Explained(name, small string, cells ...string) {
	t.named(name).HTML(` <small>`).Text(small).HTML(`</small></th>`)
	t.rest(cells)
}

// Led is [Table.Explained] with a link behind the small line, which is read aloud
// with the row's name.
func (t *Table) Led(name, small, href, link string, cells ...string) {
	t.w.HTML(`<tr><th scope="row">`).Text(name).HTML(` <small>`).Text(small).HTML(` <a`).Attr("href", href).HTML(`>`).Text(link).
		HTML(`<span class="out">: `).Text(name).HTML(`</span></a></small></th>`)
	t.rest(cells)
}

// Pressed is [Table.Explained] whose last cell is a button of the plan's form, which sends name and
// value. Behind the figure on it comes what is read aloud and not seen.
func (t *Table) Pressed(row, small string, name Markup, value, aloud string, cells ...string) {
	t.named(row).HTML(` <small>`).Text(small).HTML(`</small></th>`)
	last := len(cells) - 1
	for i, c := range cells[:last] {
		if t.numeric[i+1] {
			t.w.HTML(`<td class="n">`)
		} else {
			t.w.HTML(`<td>`)
		}
		t.w.Text(c).HTML(`</td>`)
	}
	t.w.HTML(`<td class="n"><button class="figure" form="plan"`).Attr("name", string(name)).Attr("value", value).HTML(`>`).Text(cells[last]).
		HTML(`<span class="out"> `).Text(aloud).HTML(`</span></button></td></tr>`)
}

// Total writes a row below a rule.
func (t *Table) Total(cells ...string) {
	t.w.HTML(`<tr class="total">`)
	t.cells(cells)
}

// Group writes a heading across the table.
func (t *Table) Group(name string) {
	t.w.HTML(`</tbody><tbody><tr class="group"><th scope="rowgroup" colspan="`).Num(len(t.numeric)).HTML(`">`).Text(name).HTML(`</th></tr>`)
}

// Across writes a small line below a row, over the whole width.
func (t *Table) Across(small string) {
	t.w.HTML(`<tr class="under"><td colspan="`).Num(len(t.numeric)).HTML(`"><small>`).Text(small).HTML(`</small></td></tr>`)
}

func (t *Table) cells(cells []string) {
	t.w.HTML(`<th scope="row">`).Text(cells[0]).HTML(`</th>`)
	t.rest(cells[1:])
}

func (t *Table) rest(cells []string) {
	for i, c := range cells {
		switch {
		case t.numeric[i+1]:
			t.w.HTML(`<td class="n">`).Text(c).HTML(`</td>`)
		default:
			t.w.HTML(`<td>`).Text(c).HTML(`</td>`)
		}
	}
	t.w.HTML(`</tr>`)
}

// Figure writes one figure of a list: its name, its value, and a small word.
func (w *Writer) Figure(label, value, small string) {
	w.HTML(`<div><dt>`).Text(label).HTML(`</dt><dd>`).Text(value)
	if small != "" {
		w.HTML(` <small>`).Text(small).HTML(`</small>`)
	}
	w.HTML(`</dd></div>`)
}

// Caution leaves a place for a caution.
func (w *Writer) Caution(name string) {
	w.HTML(`<div class="caution" role="note"`).Attr("data-caution", name).HTML(`></div>`)
}
