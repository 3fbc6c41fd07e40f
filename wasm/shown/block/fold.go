package block

import "evenrow/wasm/ground/words"

// Fold is a part that is shown on request, which inside writes.
func (w *Writer) Fold(name string, inside func()) { w.FoldAs("", name, inside) }

// FoldAs is [Writer.Fold] with an id, so that a link can lead to it.
func (w *Writer) FoldAs(id, name string, inside func()) {
	w.HTML(`<details`)
	if id != "" {
		w.Attr("id", id)
	}
	w.HTML(`><summary>`).Text(name).HTML(`</summary>`)
	inside()
	w.HTML(`</details>`)
}

// SameAsTable folds the figures of a picture, for who reads figures and for who
// cannot see it.
func (w *Writer) SameAsTable(inside func()) { w.Fold(words.Say("The same as a table"), inside) }

// Working folds the formulas behind what was said.
func (w *Writer) Working(inside func()) { w.Fold(words.Say("Show the working"), inside) }
