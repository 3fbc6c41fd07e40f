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
	f.list(s, func(fd *plan.Field) bool { return fd.Applies(f.p, i) }, func(fd *plan.Field) {
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

// box writes one input: label left, with the unit in words for screen
// readers, input, unit, then hint and error.
func (f *form) box(fd *plan.Field, i int, path, typed string) {
	f.seen[path] = true
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
	f.HTML(`<div class="`).HTML(class).HTML(`"><label`).Attr("for", "f-"+path).HTML(`>`)
	label := fd.Says()
	switch {
	case fd.Type != plan.Number || u.Words == "":
		f.Text(label)
	case fd.Kind == unit.Price:
		f.Half("{label}[, {price}]", label, words.Say(u.Words)) // "price per metre"
	default:
		f.Half("{label}[, in {unit}]", label, words.Say(u.Words))
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
		f.options(fd, path, typed)
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
			f.HTML(` `)
			f.guide(fd.Guide)
		}
		f.HTML(`</p>`)
	}
	f.origin(fd, i, path)
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
	help := words.Say(fd.Help)
	if fd.Type != plan.Number && fd.Type != plan.Whole && fd.Type != plan.Date {
		return help
	}
	low, high := fd.Limits(f.p.Units)
	return words.Sentences(help, words.Say("From {low} to {high}.", low, high), unit.MayBeTyped(fd.Kind))
}

func (f *form) options(fd *plan.Field, path, typed string) {
	known := false
	for i, o := range fd.Options {
		f.HTML(`<option`).Attr("value", o.Code)
		if o.Code == typed {
			f.HTML(` selected`)
			known = true
		}
		label := words.Say(o.Label)
		if fd.Name == "crop" { // which the grower may have named
			label = f.p.CropName(i)
		}
		f.HTML(`>`).Text(label).HTML(`</option>`)
	}
	if !known && typed == "" && strings.HasPrefix(path, plan.AllName) {
		f.HTML(`<option selected value="">`).Text(words.Say("They differ")).HTML(`</option>`)
	} else if !known { // kept, so that the error beside it makes sense
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
		f.HTML(`> `).Text(words.Say(o.Label)).HTML(`</label>`)
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
