// Package form writes the form, what is wrong in it, and the ways to keep a plan.
package form

import (
	"strconv"
	"strings"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/catalogue"
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
// Every caution has an empty place, with its name in data-caution; the builder
// and the page's script fill it.
func Ask(p *plan.Plan, d plan.Draft, errs []plan.Error) string {
	f := &form{&block.Writer{}, p, d, map[string]plan.Error{}}
	for _, e := range errs {
		f.errs[e.Path] = e
	}
	// The first button of a form is the one that the Enter key presses.
	f.HTML(`<button class="out" tabindex="-1" aria-hidden="true">Work it out</button>`).
		HTML(`<input type="hidden"`).Attr("name", plan.UnitsWas).Attr("value", unitCode(p.Units)).HTML(`>`).
		HTML(`<input type="hidden"`).Attr("name", ShapeName).Attr("value", Shape(p)).HTML(`>`)
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
	f.HTML(`<nav aria-label="Parts of the form"><details class="to" id="d-parts"><summary>Parts of the form</summary><ul>`)
	for _, s := range plan.Sections() {
		if s.Applies(f.p) {
			f.HTML(`<li><a`).Attr("href", "#f-"+s.Name).HTML(`>`).Text(s.Title).HTML(`</a></li>`)
		}
	}
	f.HTML(`</ul></details></nav>`)
}

// ShapeName is the name in form data of the [Shape] that the form was drawn for.
const ShapeName = "shape"

// Shape is a mark of what the form for p shows: it changes when a section, a
// record, a field or a caution comes or goes, and with the units.
func Shape(p *plan.Plan) string {
	h := uint64(14695981039346656037) // FNV-1a
	add := func(b bool) {
		h ^= 1
		if b {
			h ^= 2
		}
		h *= 1099511628211
	}
	add(p.Units == unit.US)
	for _, s := range plan.Sections() {
		add(s.Applies(p))
		for i := range s.Cautions {
			add(s.Cautions[i].Applies(p))
		}
		for i := range s.Records(p) {
			add(true)
			for _, f := range s.Fields() {
				add(f.Applies(p, i))
			}
		}
		add(false)
	}
	return strconv.FormatUint(h, 36)
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

func (f *form) hidden(fd *plan.Field, i int) {
	path := plan.Path(fd, i)
	f.HTML(`<input type="hidden"`).Attr("name", path).Attr("value", f.d.Get(path)).HTML(`>`)
}

func (f *form) section(s *plan.Section) {
	f.HTML(`<fieldset class="section"`).Attr("id", "f-"+s.Name).HTML(` tabindex="-1"><legend>`).Text(s.Title).HTML(`</legend>`)
	if s.Intro != "" {
		f.HTML(`<p class="section__intro">`).Text(s.Intro).HTML(`</p>`)
	}
	if e, bad := f.errs[s.Name]; bad && s.Name != "" {
		f.HTML(`<p class="field__error">`).Text(Sentence(e)).HTML(`</p>`)
	}
	if s.Guide != "" {
		f.HTML(`<p class="section__guide"><a`).Attr("href", guideHref(s.Guide)).HTML(`>Guide: `).Text(guideName(s.Guide)).HTML(`</a></p>`)
	}
	f.cautions(s, "")
	if s.Name == "sky" {
		// Only a script can read the device's clock, and shows the button then.
		f.HTML(`<p><button class="button" type="button" data-do="` + plan.SetClock + `" hidden>Set the clock as on this device</button></p>`)
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
			f.action("add-"+s.One, "Add "+article(s.One)+s.One, "")
		}
	} else {
		f.fields(s, 0)
	}
	f.HTML(`</fieldset>`)
}

// cautions leaves the places for the section's cautions before a field, or at
// its head.
func (f *form) cautions(s *plan.Section, field string) {
	for i := range s.Cautions {
		if c := &s.Cautions[i]; c.Field == field && c.Applies(f.p) {
			f.Caution(c.Name)
		}
	}
}

// record writes one record of a list, with the buttons that move it.
func (f *form) record(s *plan.Section, i, n int) {
	id := s.Name + "." + strconv.Itoa(i+1)
	open := n == 1 || s.Name == "points"
	for path := range f.errs {
		open = open || strings.HasPrefix(path, id+".")
	}
	f.HTML(`<details class="record"`).Attr("id", "d-"+id)
	if open {
		f.HTML(` open`)
	}
	f.HTML(`><summary`).Attr("id", "s-"+id).HTML(`>`).Text(Summary(f.p, s, i)).HTML(`</summary>`)
	f.HTML(`<div role="group"`).Attr("aria-labelledby", "s-"+id).HTML(`>`)
	if s.Name == "emitters" {
		f.HTML(`<input type="hidden"`).Attr("name", id+"."+plan.KindWas).Attr("value", f.d.Get(id+".kind")).HTML(`>`)
	}
	f.fields(s, i)
	f.HTML(`<p class="record__do">`)
	number := "." + strconv.Itoa(i+1)
	name := " " + s.One + " " + strconv.Itoa(i+1)
	if n < s.Max {
		f.action("copy-"+s.One+number, "Copy", name)
	}
	if n > s.Min {
		f.action("remove-"+s.One+number, "Remove", name)
	}
	if s.Name != "points" && s.Name != "months" { // their order is given
		if i > 0 {
			f.action(s.One+"-up"+number, "Up", name)
		}
		if i < n-1 {
			f.action(s.One+"-down"+number, "Down", name)
		}
	}
	f.HTML(`</p></div></details>`)
}

// action writes a button that changes the form. hidden is added to its name
// for screen readers.
func (f *form) action(value, name, hidden string) {
	f.HTML(`<button class="button"`).Attr("name", plan.ActionName).Attr("value", value).HTML(`>`).Text(name)
	if hidden != "" {
		f.HTML(`<span class="out">`).Text(hidden).HTML(`</span>`)
	}
	f.HTML(`</button> `)
}

// Summary is one record in a few words, such as "Row 2: tomato, 30 plants".
func Summary(p *plan.Plan, s *plan.Section, i int) string {
	t := unit.Capital(s.One) + " " + strconv.Itoa(i+1)
	switch s.Name {
	case "rows":
		r := &p.Rows[i]
		if r.Crop >= 0 && r.Crop < len(catalogue.Crops) {
			t += ": " + p.CropName(r.Crop) + ", " + wording.Count(r.Plants, "plant", "plants")
		}
		if r.Zone > 1 {
			t += ", zone " + strconv.Itoa(r.Zone)
		}
	case "plantings":
		g := &p.Plantings[i]
		if g.Crop >= 0 && g.Crop < len(catalogue.Crops) {
			t += ": " + p.CropName(g.Crop)
		}
		if g.Times > 1 {
			t += ", " + strconv.Itoa(g.Times) + " times"
		}
	case "crops":
		if of := p.Crops[i].Of; of >= 0 && of < len(catalogue.Crops) {
			t += ": " + p.CropName(of)
		}
	case "runs":
		t += ": " + unit.Text(unit.Length, p.Units, p.Runs[i].Length)
	case "months":
		m := &p.Months[i]
		t = day.MonthName(i+1) + ": " + wording.Minus(unit.Text(unit.Temperature, p.Units, m.High)) + ", " + wording.Minus(unit.Text(unit.Temperature, p.Units, m.Low))
	case "emitters":
		t += ": " + unit.Text(unit.EmitterFlow, p.Units, p.Emitters[i].Flow)
	case "points":
		t += ": " + unit.Text(unit.Flow, p.Units, p.Supply.Points[i].Flow) + ", " + unit.Text(unit.Head, p.Units, p.Supply.Points[i].Head)
	}
	return t
}

// Summaries returns the summaries of all records, which change while the form
// itself stays.
func Summaries(p *plan.Plan) []block.Fragment {
	var fs []block.Fragment
	for _, s := range plan.Sections() {
		if !s.List || !s.Applies(p) {
			continue
		}
		for i := range s.Records(p) {
			w := &block.Writer{}
			w.Text(Summary(p, s, i))
			fs = append(fs, block.Fragment{ID: "s-" + s.Name + "." + strconv.Itoa(i+1), HTML: w.String()})
		}
	}
	return fs
}

func (f *form) fields(s *plan.Section, i int) {
	for _, fd := range s.Fields() {
		if fd.Applies(f.p, i) {
			f.cautions(s, fd.Name)
			f.field(fd, i)
		} else {
			f.hidden(fd, i)
		}
	}
}

// field writes one input: label left, with the unit in words for screen
// readers, input, unit, then hint and error.
func (f *form) field(fd *plan.Field, i int) {
	path := plan.Path(fd, i)
	typed := f.d.Get(path)
	if fd.Section == "" && fd.Name == "units" {
		f.radios(fd, path, typed)
		return
	}
	e, bad := f.errs[path]
	class := block.Markup("field")
	if fd.Type == plan.Choice || fd.Type == plan.Text {
		class = "field field--long"
	} else if fd.Type == plan.Date {
		class = "field field--date"
	}
	u := unit.Of(fd.Kind, f.p.Units)
	f.HTML(`<div class="`).HTML(class).HTML(`"><label`).Attr("for", "f-"+path).HTML(`>`).Text(fd.Label)
	if fd.Type == plan.Number && u.Words != "" {
		in := block.Markup(", in ")
		if fd.Kind == unit.Price { // "price per metre"
			in = ", "
		}
		f.HTML(`<span class="out">`).HTML(in).Text(u.Words).HTML(`</span>`)
	}
	f.HTML(`</label>`)
	hint := f.hint(fd)
	described := "e-" + path
	if hint != "" || fd.Guide != "" {
		described = "h-" + path + " " + described
	}
	common := func() {
		f.Attr("id", "f-"+path).Attr("name", path).Attr("aria-describedby", described)
		if bad {
			f.HTML(` aria-invalid="true"`)
		}
	}
	if fd.Type == plan.Choice {
		f.HTML(`<select`)
		common()
		f.HTML(`>`)
		f.options(fd, typed)
		f.HTML(`</select>`)
	} else {
		f.HTML(`<input`)
		common()
		f.Attr("value", typed)
		switch fd.Type {
		case plan.Number:
			f.HTML(` inputmode="`).HTML(keyboard(fd)).HTML(`"`)
		case plan.Whole:
			f.HTML(` inputmode="numeric"`)
		}
		f.HTML(` autocomplete="off" spellcheck="false">`)
	}
	if fd.Type == plan.Number && u.Symbol != "" {
		f.HTML(`<span class="field__unit" aria-hidden="true">`).Text(u.Symbol).HTML(`</span>`)
	}
	if hint != "" || fd.Guide != "" {
		f.HTML(`<p class="field__hint"`).Attr("id", "h-"+path).HTML(`>`).Text(hint)
		if fd.Guide != "" {
			f.HTML(` <a`).Attr("href", guideHref(fd.Guide)).HTML(`>Guide: `).Text(guideName(fd.Guide)).HTML(`</a>`)
		}
		f.HTML(`</p>`)
	}
	f.HTML(`<p class="field__error"`).Attr("id", "e-"+path)
	if bad {
		f.HTML(`>`).Text(Sentence(e))
	} else {
		f.HTML(` hidden>`)
	}
	f.HTML(`</p></div>`)
}

// keyboard is the one that a phone shows. Most lack a minus sign on the
// decimal one.
func keyboard(fd *plan.Field) block.Markup {
	if fd.Min < 0 {
		return "text"
	}
	return "decimal"
}

// hint is the help, the range and whether a unit may be typed, as sentences.
func (f *form) hint(fd *plan.Field) string {
	r := ""
	if fd.Type == plan.Number || fd.Type == plan.Whole || fd.Type == plan.Date {
		r = unit.Capital(fd.Range(f.p.Units)) + "."
		if also := unit.MayBeTyped(fd.Kind); also != "" {
			r += " " + also
		}
	}
	if fd.Help != "" && r != "" {
		return fd.Help + " " + r
	}
	return fd.Help + r
}

func (f *form) options(fd *plan.Field, typed string) {
	known := false
	for i, o := range fd.Options {
		f.HTML(`<option`).Attr("value", o.Code)
		if o.Code == typed {
			f.HTML(` selected`)
			known = true
		}
		label := o.Label
		if fd.Name == "crop" { // which the grower may have named
			label = f.p.CropName(i)
		}
		f.HTML(`>`).Text(label).HTML(`</option>`)
	}
	if !known { // kept, so that the error beside it makes sense
		f.HTML(`<option selected`).Attr("value", typed).HTML(`>`).Text(typed).HTML(`</option>`)
	}
}

// radios writes a choice as radio buttons.
func (f *form) radios(fd *plan.Field, path, typed string) {
	f.HTML(`<fieldset class="radios"`).Attr("id", "f-"+path).HTML(` tabindex="-1"><legend>`).Text(fd.Label).HTML(`</legend>`)
	for _, o := range fd.Options {
		f.HTML(`<label><input type="radio"`).Attr("id", "f-"+path+"-"+o.Code).Attr("name", path).Attr("value", o.Code)
		if o.Code == typed {
			f.HTML(` checked`)
		}
		f.HTML(`> `).Text(o.Label).HTML(`</label>`)
	}
	if fd.Help != "" {
		f.HTML(`<p class="field__hint">`).Text(fd.Help).HTML(`</p>`)
	}
	f.HTML(`</fieldset>`)
}

// Sentence is an error as it stands below its field: the words of the summary,
// so that the two are known for the same, and what was typed.
func Sentence(e plan.Error) string {
	s := e.Label + " " + e.Problem + "."
	if typed := e.Typed; typed != "" {
		const most = 100 // letters that are shown of it
		for i := range typed {
			if i >= most {
				typed = typed[:i] + " …"
				break
			}
		}
		s += " " + strconv.Quote(typed) + " is kept as you typed it."
	}
	return s
}

// Errors is the summary of everything that is wrong, each leading to its field.
func Errors(errs []plan.Error) string {
	if len(errs) == 0 {
		return ""
	}
	w := &block.Writer{}
	w.HTML(`<div><h2>`).Text(putRight(errs)).HTML(`</h2><ul>`)
	for _, e := range errs {
		w.HTML(`<li><a`).Attr("href", "#f-"+e.Path).HTML(`>`).Text(e.Label + " " + e.Problem + ".").HTML(`</a></li>`)
	}
	return w.HTML(`</ul></div>`).String()
}

func putRight(errs []plan.Error) string {
	return wording.Count(len(errs), "thing", "things") + " to put right"
}

// What stands above an answer that is not to what the form holds, or not to the
// plan that was asked for, as [Message].
const (
	LastGood   = "Below stands the answer to the last good plan, not to what the form holds now."
	NotYours   = "Below stands the answer to an example, not to your plan."
	NotTheLink = "Below stands an example, not the plan that you opened."
)

// Foot is the line that stays in sight on a narrow screen while there is no
// answer to what the form holds.
func Foot(errs []plan.Error) string {
	w := &block.Writer{}
	if len(errs) == 0 {
		return w.Text(NotTheLink).String()
	}
	return w.HTML(`<strong class="word word--no">`).Text(putRight(errs) + ":").HTML(`</strong> `).Text(errs[0].Error() + ".").String()
}

// Message is a notice above the answer.
func Message(text string) string {
	if text == "" {
		return ""
	}
	w := &block.Writer{}
	return w.HTML(`<p>`).Text(text).HTML(`</p>`).String()
}

func guideHref(guide string) string {
	page, heading, _ := strings.Cut(guide, "#")
	if heading != "" {
		heading = "#" + heading
	}
	return page + ".html" + heading
}

func guideName(guide string) string {
	page, _, _ := strings.Cut(guide, "#")
	return strings.ReplaceAll(page, "-", " ")
}

// article returns the indefinite article that goes before a word of ours.
func article(word string) string {
	if strings.ContainsRune("aeio", rune(word[0])) {
		return "an "
	}
	return "a "
}
