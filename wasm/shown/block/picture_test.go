package block

import "testing"

func TestWhatIsOpenedIsClosed(t *testing.T) {
	for want, write := range map[string]func(w *Writer){
		`<details id="a"><summary>A &amp; B</summary>x</details>`: func(w *Writer) {
			w.FoldAs("a", "A & B", func() { w.Text("x") })
		},
		`<details><summary>The same as a table</summary></details><details><summary>Show the working</summary></details>`: func(w *Writer) {
			w.SameAsTable(func() {})
			w.Working(func() {})
		},
		`<figure><svg class="picture narrow" width="340" height="20" viewBox="0 0 340 20" role="img" aria-label="T"><g/></svg>` +
			`<svg class="picture wide" width="760" height="20" viewBox="0 0 760 20" role="img" aria-label="T"><g/></svg><figcaption>&lt;C&gt;</figcaption></figure>`: func(w *Writer) {
			w.Picture("<C>", func(class Markup, width float64) { w.SVG(class, width, 20, "T", func() { w.HTML(`<g/>`) }) })
		},
	} {
		w := &Writer{}
		if write(w); w.String() != want {
			t.Errorf("%s\nwant %s", w, want)
		}
	}
}
