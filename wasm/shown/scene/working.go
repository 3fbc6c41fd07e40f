package scene

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/words"
)

// Formula prints a formula with the values that went in, the result and its
// source.
func (sc *Scene) Formula(f *formula.Formula, in ...float64) {
	if f == nil {
		return
	}
	w := formula.Of(f, in...)
	sc.HTML(`<div class="working"><p class="working__text">`).Text(f.Text).HTML(`</p><dl>`)
	for _, l := range append(w.Lines(sc.Sys), w.Answer(sc.Sys)) {
		sc.HTML(`<div><dt>`).Text(l.Letter).HTML(`</dt><dd>`).Text(l.Value).HTML(`</dd><dd>`).Text(l.Meaning).HTML(`</dd></div>`)
	}
	sc.HTML(`</dl><cite>`).Text(words.Say("Source: {source}", f.Source.String())).HTML(`</cite></div>`)
}
