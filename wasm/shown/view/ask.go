package view

import (
	"strconv"
	"strings"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
)

// A form is the form on its way to the page.
type form struct {
	*writer
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
	f := &form{&writer{}, p, d, map[string]plan.Error{}}
	for _, e := range errs {
		f.errs[e.Path] = e
	}
	// The first button of a form is the one that the Enter key presses.
	f.html(`<button class="out" tabindex="-1" aria-hidden="true">Work it out</button>`).
		html(`<input type="hidden"`).attr("name", plan.UnitsWas).attr("value", unitCode(p.Units)).html(`>`).
		html(`<input type="hidden"`).attr("name", ShapeName).attr("value", Shape(p)).html(`>`)
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
	f.html(`<nav aria-label="Parts of the form"><details class="to" id="d-parts"><summary>Parts of the form</summary><ul>`)
	for _, s := range plan.Sections() {
		if s.Applies(f.p) {
			f.html(`<li><a`).attr("href", "#f-"+s.Name).html(`>`).text(s.Title).html(`</a></li>`)
		}
	}
	f.html(`</ul></details></nav>`)
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
	f.html(`<input type="hidden"`).attr("name", path).attr("value", f.d.Get(path)).html(`>`)
}

func (f *form) section(s *plan.Section) {
	f.html(`<fieldset class="section"`).attr("id", "f-"+s.Name).html(` tabindex="-1"><legend>`).text(s.Title).html(`</legend>`)
	if s.Intro != "" {
		f.html(`<p class="section__intro">`).text(s.Intro).html(`</p>`)
	}
	if e, bad := f.errs[s.Name]; bad && s.Name != "" {
		f.html(`<p class="field__error">`).text(Sentence(e)).html(`</p>`)
	}
	if s.Guide != "" {
		f.html(`<p class="section__guide"><a`).attr("href", guideHref(s.Guide)).html(`>Guide: `).text(guideName(s.Guide)).html(`</a></p>`)
	}
	f.cautions(s, "")
	if s.Name == "sky" {
		// Only a script can read the device's clock, and shows the button then.
		f.html(`<p><button class="button" type="button" data-do="` + plan.SetClock + `" hidden>Set the clock as on this device</button></p>`)
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
	f.html(`</fieldset>`)
}

// cautions leaves the places for the section's cautions before a field, or at
// its head.
func (f *form) cautions(s *plan.Section, field string) {
	for i := range s.Cautions {
		if c := &s.Cautions[i]; c.Field == field && c.Applies(f.p) {
			f.caution(c.Name)
		}
	}
}

// caution leaves a place for a caution.
func (w *writer) caution(name string) {
	w.html(`<div class="caution" role="note"`).attr("data-caution", name).html(`></div>`)
}

// cautions leaves places for every caution of the plan, once, for paper: the
// form is not printed.
func (sc *scene) cautions() {
	had := ""
	for _, s := range plan.Sections() {
		for i := range s.Cautions {
			c := &s.Cautions[i]
			if mark := c.Name + " "; c.Applies(sc.s.Plan) && !strings.Contains(had, mark) {
				had += mark
				sc.caution(c.Name)
			}
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
	f.html(`<details class="record"`).attr("id", "d-"+id)
	if open {
		f.html(` open`)
	}
	f.html(`><summary`).attr("id", "s-"+id).html(`>`).text(Summary(f.p, s, i)).html(`</summary>`)
	f.html(`<div role="group"`).attr("aria-labelledby", "s-"+id).html(`>`)
	if s.Name == "emitters" {
		f.html(`<input type="hidden"`).attr("name", id+"."+plan.KindWas).attr("value", f.d.Get(id+".kind")).html(`>`)
	}
	f.fields(s, i)
	f.html(`<p class="record__do">`)
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
	f.html(`</p></div></details>`)
}

// action writes a button that changes the form. hidden is added to its name
// for screen readers.
func (f *form) action(value, name, hidden string) {
	f.html(`<button class="button"`).attr("name", plan.ActionName).attr("value", value).html(`>`).text(name)
	if hidden != "" {
		f.html(`<span class="out">`).text(hidden).html(`</span>`)
	}
	f.html(`</button> `)
}

// Summary is one record in a few words, such as "Row 2: tomato, 30 plants".
func Summary(p *plan.Plan, s *plan.Section, i int) string {
	t := unit.Capital(s.One) + " " + strconv.Itoa(i+1)
	switch s.Name {
	case "rows":
		r := &p.Rows[i]
		if r.Crop >= 0 && r.Crop < len(catalogue.Crops) {
			t += ": " + p.CropName(r.Crop) + ", " + count(r.Plants, "plant", "plants")
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
		t = day.MonthName(i+1) + ": " + minus(unit.Text(unit.Temperature, p.Units, m.High)) + ", " + minus(unit.Text(unit.Temperature, p.Units, m.Low))
	case "emitters":
		t += ": " + unit.Text(unit.EmitterFlow, p.Units, p.Emitters[i].Flow)
	case "points":
		t += ": " + unit.Text(unit.Flow, p.Units, p.Supply.Points[i].Flow) + ", " + unit.Text(unit.Head, p.Units, p.Supply.Points[i].Head)
	}
	return t
}

// Summaries returns the summaries of all records, which change while the form
// itself stays.
func Summaries(p *plan.Plan) []Fragment {
	var fs []Fragment
	for _, s := range plan.Sections() {
		if !s.List || !s.Applies(p) {
			continue
		}
		for i := range s.Records(p) {
			w := &writer{}
			w.text(Summary(p, s, i))
			fs = append(fs, Fragment{"s-" + s.Name + "." + strconv.Itoa(i+1), w.String()})
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
	class := markup("field")
	if fd.Type == plan.Choice || fd.Type == plan.Text {
		class = "field field--long"
	} else if fd.Type == plan.Date {
		class = "field field--date"
	}
	u := unit.Of(fd.Kind, f.p.Units)
	f.html(`<div class="`).html(class).html(`"><label`).attr("for", "f-"+path).html(`>`).text(fd.Label)
	if fd.Type == plan.Number && u.Words != "" {
		in := markup(", in ")
		if fd.Kind == unit.Price { // "price per metre"
			in = ", "
		}
		f.html(`<span class="out">`).html(in).text(u.Words).html(`</span>`)
	}
	f.html(`</label>`)
	hint := f.hint(fd)
	described := "e-" + path
	if hint != "" || fd.Guide != "" {
		described = "h-" + path + " " + described
	}
	common := func() {
		f.attr("id", "f-"+path).attr("name", path).attr("aria-describedby", described)
		if bad {
			f.html(` aria-invalid="true"`)
		}
	}
	if fd.Type == plan.Choice {
		f.html(`<select`)
		common()
		f.html(`>`)
		f.options(fd, typed)
		f.html(`</select>`)
	} else {
		f.html(`<input`)
		common()
		f.attr("value", typed)
		switch fd.Type {
		case plan.Number:
			f.html(` inputmode="`).html(keyboard(fd)).html(`"`)
		case plan.Whole:
			f.html(` inputmode="numeric"`)
		}
		f.html(` autocomplete="off" spellcheck="false">`)
	}
	if fd.Type == plan.Number && u.Symbol != "" {
		f.html(`<span class="field__unit" aria-hidden="true">`).text(u.Symbol).html(`</span>`)
	}
	if hint != "" || fd.Guide != "" {
		f.html(`<p class="field__hint"`).attr("id", "h-"+path).html(`>`).text(hint)
		if fd.Guide != "" {
			f.html(` <a`).attr("href", guideHref(fd.Guide)).html(`>Guide: `).text(guideName(fd.Guide)).html(`</a>`)
		}
		f.html(`</p>`)
	}
	f.html(`<p class="field__error"`).attr("id", "e-"+path)
	if bad {
		f.html(`>`).text(Sentence(e))
	} else {
		f.html(` hidden>`)
	}
	f.html(`</p></div>`)
}

// keyboard is the one that a phone shows. Most lack a minus sign on the
// decimal one.
func keyboard(fd *plan.Field) markup {
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
		f.html(`<option`).attr("value", o.Code)
		if o.Code == typed {
			f.html(` selected`)
			known = true
		}
		label := o.Label
		if fd.Name == "crop" { // which the grower may have named
			label = f.p.CropName(i)
		}
		f.html(`>`).text(label).html(`</option>`)
	}
	if !known { // kept, so that the error beside it makes sense
		f.html(`<option selected`).attr("value", typed).html(`>`).text(typed).html(`</option>`)
	}
}

// radios writes a choice as radio buttons.
func (f *form) radios(fd *plan.Field, path, typed string) {
	f.html(`<fieldset class="radios"`).attr("id", "f-"+path).html(` tabindex="-1"><legend>`).text(fd.Label).html(`</legend>`)
	for _, o := range fd.Options {
		f.html(`<label><input type="radio"`).attr("id", "f-"+path+"-"+o.Code).attr("name", path).attr("value", o.Code)
		if o.Code == typed {
			f.html(` checked`)
		}
		f.html(`> `).text(o.Label).html(`</label>`)
	}
	if fd.Help != "" {
		f.html(`<p class="field__hint">`).text(fd.Help).html(`</p>`)
	}
	f.html(`</fieldset>`)
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
	w := &writer{}
	w.html(`<div><h2>`).text(putRight(errs)).html(`</h2><ul>`)
	for _, e := range errs {
		w.html(`<li><a`).attr("href", "#f-"+e.Path).html(`>`).text(e.Label + " " + e.Problem + ".").html(`</a></li>`)
	}
	return w.html(`</ul></div>`).String()
}

func putRight(errs []plan.Error) string { return count(len(errs), "thing", "things") + " to put right" }

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
	w := &writer{}
	if len(errs) == 0 {
		return w.text(NotTheLink).String()
	}
	return w.html(`<strong class="word word--no">`).text(putRight(errs) + ":").html(`</strong> `).text(errs[0].Error() + ".").String()
}

// Message is a notice above the answer.
func Message(text string) string {
	if text == "" {
		return ""
	}
	w := &writer{}
	return w.html(`<p>`).text(text).html(`</p>`).String()
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
