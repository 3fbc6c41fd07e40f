// Package form writes the form, what is wrong in it, and the ways to keep a plan.
package form

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/care"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/works/parts"
)

// A form is the form on its way to the page.
type form struct {
	*block.Writer
	p    *plan.Plan // as far as it could be read: says which fields apply
	d    plan.Draft // what was typed
	errs map[string]plan.Error
	at   Place
	in   string          // the group that is being written
	seen map[string]bool // the names of the boxes that were written

	parts []parts.Line // the list of parts, as far as it is known
}

// Ask returns the groups of a job for a draft, with everything that was typed in them and
// what is wrong with it. p is the draft as far as it could be read; it decides
// which sections, records and fields are shown. What is not shown is kept in one
// hidden input. list is the plan's list of parts, where [Lists] asks for it.
//
// Every caution that applies to the plan has an empty place, with its name in
// data-caution; the builder and the page's script fill it.
func Ask(p *plan.Plan, d plan.Draft, errs []plan.Error, groups []Group, at Place, list ...parts.Line) string {
	f := &form{Writer: &block.Writer{}, p: p, d: d, errs: map[string]plan.Error{}, at: at, seen: map[string]bool{}, parts: list}
	for _, e := range errs {
		f.errs[e.Path] = e
	}
	// The first button of a form is the one that the Enter key presses.
	f.HTML(`<button class="out" tabindex="-1" aria-hidden="true">`).Text(words.Say("Work it out")).HTML(`</button>`)
	f.carried(plan.UnitsWas, unitCode(p.Units))
	f.carried(ShapeName, Shape(p, groups, at))
	f.carried(plan.AtName, at.String())
	f.carried(plan.OpenName, d.Get(plan.OpenName)) // to which the script adds
	f.carried(plan.TouchedName, "")                // the script adds what is typed in
	if how := f.d.Get(plan.HowName); how != "" {
		f.carried(plan.HowName, how)
		f.seen[plan.HowName] = true
	}
	for i := range groups {
		if g := &groups[i]; g.Applies(p) {
			f.group(g)
		}
	}
	f.carried(plan.RestName, d.Fold(f.seen))
	return f.String()
}

// carried writes what the form carries unseen.
func (f *form) carried(name, value string) {
	f.HTML(`<input type="hidden"`).Attr("name", name).Attr("value", value).HTML(`>`)
}

// carry carries what was typed at a path, which has no box.
func (f *form) carry(path string) {
	f.seen[path] = true
	f.carried(path, f.d.Get(path))
}

// group writes a group: a line, and its sections below it.
func (f *form) group(g *Group) {
	f.in = g.ID
	f.HTML(`<details class="group" name="group"`).Attr("id", "g-"+g.ID).Attr("data-group", g.ID)
	if g.ID == f.at.Group || f.amiss(g) {
		f.HTML(` open`)
	}
	f.HTML(`><summary`).Attr("id", "t-"+g.ID).HTML(`>`)
	f.line(g)
	f.HTML(`</summary>`)
	for _, name := range g.Sections {
		if s := plan.SectionNamed(name); s.Applies(f.p) {
			f.section(s, len(g.Sections) > 1)
		}
	}
	f.HTML(`</details>`)
}

// line is what stands in a group's line.
func (f *form) line(g *Group) {
	f.HTML(`<h3 class="group__name">`).Text(words.Say(g.Title)).HTML(`</h3> <span class="group__is">`).Text(lineOf(f.p, g)).HTML(`</span>`)
}

// amiss reports whether the first thing that is wrong stands in a group, and no
// other group is open.
func (f *form) amiss(g *Group) bool {
	if f.at.Group != "" {
		return false
	}
	for path := range f.errs {
		if in, _ := InGroups([]Group{*g}, path); in != nil {
			return true
		}
	}
	return false
}

// ShapeName is the name in form data of the [Shape] that the form was drawn for.
const ShapeName = "shape"

// Shape is a mark of what the form for p shows in a place: it changes when a section, a
// record, a field or a caution comes or goes, with the units, and with what all
// rows have.
func Shape(p *plan.Plan, groups []Group, at Place) string {
	h := numeric.NewHash()
	add := func(b bool) {
		if b {
			h.Add(3)
		} else {
			h.Add(1)
		}
	}
	for _, c := range []byte(at.Job + " " + at.Record) { // which group is open, the page knows by itself
		h.Add(c)
	}
	add(p.Units == unit.US)
	for g := range groups {
		for _, name := range groups[g].Sections {
			s := plan.SectionNamed(name)
			add(s.Applies(p))
			for _, c := range care.Catalogue {
				if c.In(s.Name) {
					add(c.Applies(p))
				}
			}
			n := s.Records(p)
			for i := range n {
				add(true)
				for _, f := range s.Fields() {
					add(f.Applies(p, i))
				}
			}
			add(false)
			if s.Name == "rows" && n > 1 {
				for _, f := range s.Fields() {
					v, same := f.Value(p, n-1), true
					for i := range n {
						same = same && (f.Value(p, i) == v || i == 0 && f.Name == "gap")
					}
					if add(same); same {
						for bits := math.Float64bits(v); bits > 0; bits >>= 8 {
							h.Add(byte(bits))
						}
					}
				}
			}
		}
	}
	return strconv.FormatUint(uint64(h), 36)
}

// unitCode is how the form names a system of units.
func unitCode(sys unit.System) string {
	return plan.FieldNamed("", "units").Options[sys].Code
}

func (f *form) section(s *plan.Section, several bool) {
	f.HTML(`<fieldset class="section"`).Attr("id", "f-"+s.Name).HTML(` tabindex="-1"><legend`)
	if !several {
		f.HTML(` class="out"`) // the line of its group says it
	}
	f.HTML(`>`).Text(words.Say(s.Title)).HTML(`</legend>`)
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
		f.records(s)
	} else {
		f.fields(s, 0)
	}
	f.HTML(`</fieldset>`)
}

// cautions leaves the places for the section's cautions before a field, or at
// its head.
func (f *form) cautions(s *plan.Section, field string) {
	for _, c := range care.Catalogue {
		if c.Stands(s.Name, field) && c.Applies(f.p) {
			f.Caution(c.Name)
		}
	}
}
