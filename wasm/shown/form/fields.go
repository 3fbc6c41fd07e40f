package form

import (
	"strings"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
)

// inSight is how many boxes of a section or record there are before the rest is
// unfolded.
const inSight = 8

// fields writes the boxes of a record, those that apply.
func (f *form) fields(s *plan.Section, i int) {
	f.list(s, func(fd *plan.Field) bool { return fd.Applies(f.p, i) && !(byButton(s) && fd.Type == plan.Text) }, func(fd *plan.Field) {
		f.cautions(s, fd.Name)
		path := plan.Path(fd, i)
		f.box(fd, i, path, f.d.Get(path))
	})
}

// list writes the fields of a section that apply: what comes after the first of
// them is folded, unless something is wrong there.
func (f *form) list(s *plan.Section, applies func(*plan.Field) bool, write func(*plan.Field)) {
	var rest []*plan.Field
	n := 0
	for _, fd := range s.Fields() {
		if !applies(fd) {
			continue
		}
		if n++; n > inSight {
			rest = append(rest, fd)
			continue
		}
		write(fd)
	}
	if len(rest) == 0 {
		return
	}
	wrong := false
	for path := range f.errs {
		section, name := path, path
		if dot := strings.IndexByte(path, '.'); dot >= 0 {
			section, name = path[:dot], path[strings.LastIndexByte(path, '.')+1:]
		}
		for _, fd := range rest {
			wrong = wrong || fd.Name == name && (section == s.Name || section+"." == plan.AllName)
		}
	}
	title := words.Say("More")
	if s.Name == "emitters" || s.Name == "supply" {
		title = words.Say("From the data sheet")
	}
	f.more(title, wrong, func() {
		for _, fd := range rest {
			write(fd)
		}
	})
}

// more folds what is seldom wanted.
func (f *form) more(title string, open bool, inside func()) {
	f.HTML(`<details class="more"`)
	if open {
		f.HTML(` open`)
	}
	f.HTML(`>`).Tag("summary", title)
	inside()
	f.HTML(`</details>`)
}

// box writes the input of a field in record i, whose value is typed under path.
func (f *form) box(fd *plan.Field, i int, path, typed string) {
	if fd.Section == "" && fd.Name == "units" {
		f.seen[path] = true
		f.radios(fd, path, typed)
		return
	}
	var none words.Text
	if strings.HasPrefix(path, plan.AllName) {
		none = "They differ"
	}
	f.input(input{fd, path, fd.Says(), f.hint(fd), fd.Guide, none, func() { f.origin(fd, i, path) }}, typed)
}

// An input is one box with what stands around it.
type input struct {
	*plan.Field
	path        string
	label, hint string
	guide       string
	none        words.Text // what a list says while nothing is chosen; empty where that is wrong
	below       func()     // writes what stands between hint and error; nil for nothing
}

// input writes one: label left, with the unit in words for screen
// readers, box, unit, then hint and error.
func (f *form) input(in input, typed string) {
	f.seen[in.path] = true
	_, bad := f.errs[in.path]
	class := block.Markup("field")
	if in.Type == plan.Choice || in.Type == plan.Text {
		class = "field field--long"
	} else if in.Type == plan.Date {
		class = "field field--date"
	}
	u := unit.Of(in.Kind, f.p.Units)
	f.HTML(`<div class="`).HTML(class).HTML(`"><label`).Attr("for", "f-"+in.path).HTML(`>`)
	switch {
	case in.Type != plan.Number || u.Words == "":
		f.Text(in.label)
	case in.Kind == unit.Price:
		f.Half("{label}[, {price}]", in.label, words.Say(u.Words)) // "price per metre"
	default:
		f.Half("{label}[, in {unit}]", in.label, words.Say(u.Words))
	}
	f.HTML(`</label>`)
	described := "e-" + in.path
	if in.hint != "" || in.guide != "" {
		described = "h-" + in.path + " " + described
	}
	common := func() {
		f.Attr("id", "f-"+in.path).Attr("name", in.path).Attr("aria-describedby", described)
		if bad {
			f.HTML(` aria-invalid="true"`)
		}
	}
	if in.Type == plan.Choice {
		f.HTML(`<select`)
		common()
		f.HTML(`>`)
		f.options(in.Field, typed, in.none)
		f.HTML(`</select>`)
	} else {
		f.HTML(`<input`)
		common()
		f.Attr("value", typed)
		switch in.Type {
		case plan.Number:
			f.HTML(` inputmode="`).HTML(keyboard(in.Field)).HTML(`"`)
		case plan.Whole:
			f.HTML(` inputmode="numeric"`)
		}
		f.HTML(` autocomplete="off" spellcheck="false">`)
	}
	if in.Type == plan.Number && u.Symbol != "" {
		f.HTML(`<span class="field__unit" aria-hidden="true">`).Text(u.Symbol).HTML(`</span>`)
	}
	if in.hint != "" || in.guide != "" {
		f.HTML(`<p class="field__hint"`).Attr("id", "h-"+in.path).HTML(`>`).Text(in.hint)
		if in.guide != "" {
			f.HTML(` `)
			f.guide(in.guide)
		}
		f.HTML(`</p>`)
	}
	if in.below != nil {
		in.below()
	}
	f.wrong(in.path)
	f.HTML(`</div>`)
}

// wrong writes the place for what is wrong with an input, with what is.
func (f *form) wrong(path string) {
	f.HTML(`<p class="field__error"`).Attr("id", "e-"+path)
	if e, bad := f.errs[path]; bad {
		f.HTML(`>`).Text(Sentence(e))
	} else {
		f.HTML(` hidden>`)
	}
	f.HTML(`</p>`)
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
	if !ranged(fd) {
		return f.bounds(fd)
	}
	return words.Sentences(f.bounds(fd), unit.MayBeTyped(fd.Kind))
}

// bounds is the help and the range.
func (f *form) bounds(fd *plan.Field) string {
	help := words.Say(fd.Help)
	if !ranged(fd) {
		return help
	}
	low, high := fd.Limits(f.p.Units)
	return words.Sentences(help, words.Say("From {low} to {high}.", low, high))
}

// ranged reports whether a field has a range.
func ranged(fd *plan.Field) bool {
	return fd.Type == plan.Number || fd.Type == plan.Whole || fd.Type == plan.Date
}

func (f *form) options(fd *plan.Field, typed string, none words.Text) {
	known := typed == "" && none != ""
	if known {
		f.HTML(`<option value="" selected>`).Text(words.Say(none)).HTML(`</option>`)
	}
	for i, o := range fd.Options {
		f.HTML(`<option`).Attr("value", o.Code)
		if o.Code == typed {
			f.HTML(` selected`)
			known = true
		}
		label := o.Says()
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
	f.HTML(`<fieldset class="radios"`).Attr("id", "f-"+path).HTML(` tabindex="-1">`).Say("legend", fd.Label)
	for _, o := range fd.Options {
		f.HTML(`<label><input type="radio"`).Attr("id", "f-"+path+"-"+o.Code).Attr("name", path).Attr("value", o.Code)
		if o.Code == typed {
			f.HTML(` checked`)
		}
		f.HTML(`> `).Text(o.Says()).HTML(`</label>`)
	}
	if fd.Help != "" {
		f.HTML(`<p class="field__hint">`).Text(words.Say(fd.Help)).HTML(`</p>`)
	}
	f.HTML(`</fieldset>`)
}

// guide leads to a guide, "pump-curve", or to a heading of one, "timer#drain".
func (f *form) guide(to string) {
	page, heading, _ := strings.Cut(to, "#")
	if heading != "" {
		heading = "#" + heading
	}
	f.HTML(`<a`).Attr("href", page+".html"+heading).HTML(`>`).Text(words.Say("Guide: {name}", words.Say(guideNames[page]))).HTML(`</a>`)
}

// guideNames are what the form calls the guides that it leads to.
var guideNames = map[string]words.Text{
	"assembly": "assembly", "emitters": "emitters", "filter": "filter", "glossary": "glossary", "layout": "layout", "media": "media",
	"method": "method", "pump-curve": "pump curve", "season": "season", "starting": "starting", "timer": "timer", "weather": "weather",
}
