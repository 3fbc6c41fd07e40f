package view

import "evenrow/wasm/grower/plan"

// months offers a box for a table that is copied from elsewhere. What is pasted
// stays there until the button is pressed and it can be read.
func (f *form) months() {
	const path = plan.TableName
	e, bad := f.errs[path]
	f.html(`<div class="field field--long"><label for="f-months-table">Paste a table here</label><textarea id="f-months-table" rows="4" autocomplete="off" spellcheck="false" aria-describedby="h-months-table e-months-table"`).
		attr("name", path)
	if bad {
		f.html(` aria-invalid="true"`)
	}
	f.html(`>`).text(f.d.Get(path)).html(`</textarea>`).
		html(`<p class="field__hint" id="h-months-table">Twelve lines, January first, each with a high and a low: 4,5 -2. Decimal commas are fine.</p>`).
		html(`<p class="field__error" id="e-months-table"`)
	if bad {
		f.html(`>`).text(e.Label + " " + e.Problem + ".")
	} else {
		f.html(` hidden>`)
	}
	f.html(`</p></div>`)
	f.action(plan.FillMonths, "Fill in the months", "")
}
