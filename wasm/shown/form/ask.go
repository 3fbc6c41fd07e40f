// Package form writes the form, what is wrong in it, and the ways to keep a plan.
package form

import (
	"strconv"

	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
)

// A form is the form on its way to the page.
type form struct {
	*block.Writer
	p    *plan.Plan // as far as it could be read: says which fields apply
	d    plan.Draft // what was typed
	errs map[string]plan.Error
}

// Ask returns the whole form for a draft, with everything that was typed and
// what is wrong with it. p is the draft as far as it could be read; it decides
// which sections, records and fields are shown. What is not shown is kept in
// hidden inputs.
//
// Every caution that applies to the plan has an empty place, with its name in
// data-caution; the builder and the page's script fill it.
func Ask(p *plan.Plan, d plan.Draft, errs []plan.Error) string {
	f := &form{&block.Writer{}, p, d, map[string]plan.Error{}}
	for _, e := range errs {
		f.errs[e.Path] = e
	}
	// The first button of a form is the one that the Enter key presses.
	f.HTML(`<button class="out" tabindex="-1" aria-hidden="true">`).Text(words.Say("Work it out")).HTML(`</button>`).
		HTML(`<input type="hidden"`).Attr("name", plan.UnitsWas).Attr("value", unitCode(p.Units)).HTML(`>`).
		HTML(`<input type="hidden"`).Attr("name", ShapeName).Attr("value", Shape(p)).HTML(`>`)
	if how := f.d.Get(plan.HowName); how != "" {
		f.HTML(`<input type="hidden"`).Attr("name", plan.HowName).Attr("value", how).HTML(`>`)
	}
	f.contents()
	for _, s := range plan.Sections() {
		if s.Applies(p) {
			f.section(s)
		} else {
			f.keep(s)
		}
	}
	return f.String()
}

// contents leads to each section: the form is long on a phone.
func (f *form) contents() {
	name := words.Say("Parts of the form")
	f.HTML(`<nav`).Attr("aria-label", name).HTML(`><details class="to" id="d-parts">`).Tag("summary", name).HTML(`<ul>`)
	for _, s := range plan.Sections() {
		if s.Applies(f.p) {
			f.HTML(`<li><a`).Attr("href", "#f-"+s.Name).HTML(`>`).Text(words.Say(s.Title)).HTML(`</a></li>`)
		}
	}
	f.HTML(`</ul></details></nav>`)
}

// ShapeName is the name in form data of the [Shape] that the form was drawn for.
const ShapeName = "shape"

// Shape is a mark of what the form for p shows: it changes when a section, a
// record, a field or a caution comes or goes, and with the units.
func Shape(p *plan.Plan) string {
	h := numeric.NewHash()
	add := func(b bool) {
		if b {
			h.Add(3)
		} else {
			h.Add(1)
		}
	}
	add(p.Units == unit.US)
	for _, s := range plan.Sections() {
		add(s.Applies(p))
		for _, c := range plan.Cautions() {
			if c.Section == s.Name {
				add(c.Applies(p))
			}
		}
		for i := range s.Records(p) {
			add(true)
			for _, f := range s.Fields() {
				add(f.Applies(p, i))
			}
		}
		add(false)
	}
	return strconv.FormatUint(uint64(h), 36)
}

// unitCode is how the form names a system of units.
func unitCode(sys unit.System) string {
	return plan.FieldNamed("", "units").Options[sys].Code
}

// keep writes what is not shown.
func (f *form) keep(s *plan.Section) {
	for i := range s.Records(f.p) {
		for _, fd := range s.Fields() {
			f.hidden(fd, i)
		}
	}
}

func (f *form) section(s *plan.Section) {
	f.HTML(`<fieldset class="section"`).Attr("id", "f-"+s.Name).HTML(` tabindex="-1">`).Say("legend", s.Title)
	if s.Intro != "" {
		f.HTML(`<p class="section__intro">`).Text(words.Say(s.Intro)).HTML(`</p>`)
	}
	if e, bad := f.errs[s.Name]; bad && s.Name != "" {
		f.HTML(`<p class="field__error">`).Text(Sentence(e)).HTML(`</p>`)
	}
	if s.Guide != "" {
		f.HTML(`<p class="section__guide">`)
		f.guide(s.Guide)
		f.HTML(`</p>`)
	}
	f.cautions(s, "")
	if s.Name == "sky" {
		// Only a script can read the device's clock, and shows the button then.
		f.HTML(`<p><button class="button" type="button" data-do="`).HTML(plan.SetClock).HTML(`" hidden>`).Text(words.Say("Set the clock as on this device")).HTML(`</button></p>`)
	}
	if s.Name == "months" {
		f.months()
	}
	if s.List {
		n := s.Records(f.p)
		for i := range n {
			f.record(s, i, n)
		}
		if n < s.Max {
			f.action("add-"+s.One, s.Record.Add)
		}
	} else {
		f.fields(s, 0)
	}
	f.HTML(`</fieldset>`)
}

// cautions leaves the places for the section's cautions before a field, or at
// its head.
func (f *form) cautions(s *plan.Section, field string) {
	for _, c := range plan.Cautions() {
		if c.Section == s.Name && c.Field == field && c.Applies(f.p) {
			f.Caution(c.Name)
		}
	}
}
