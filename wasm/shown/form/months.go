package form

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
)

// months offers a box for a table that is copied from elsewhere. What is pasted
// stays there until the button is pressed and it can be read.
func (f *form) months() {
	const path = plan.TableName
	e, bad := f.errs[path]
	f.seen[path] = true
	f.HTML(`<div class="field field--long"><label for="f-months-table">`).Text(words.Say("Paste a table here")).
		HTML(`</label><textarea id="f-months-table" rows="4" autocomplete="off" spellcheck="false" aria-describedby="h-months-table e-months-table"`).
		Attr("name", path)
	if bad {
		f.HTML(` aria-invalid="true"`)
	}
	f.HTML(`>`).Text(f.d.Get(path)).HTML(`</textarea>`).
		HTML(`<p class="field__hint" id="h-months-table">`).Text(words.Say("Twelve lines, January first, each with a high and a low: 4,5 -2. Decimal commas are fine.")).HTML(`</p>`).
		HTML(`<p class="field__error" id="e-months-table"`)
	if bad {
		f.HTML(`>`).Text(e.Text)
	} else {
		f.HTML(` hidden>`)
	}
	f.HTML(`</p></div>`)
	f.action(plan.FillMonths, "Fill in the months")
}
