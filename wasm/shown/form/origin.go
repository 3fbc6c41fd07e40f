package form

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
)

// came are the words for how a value came to be.
var came [plan.Origins]words.Text = [...]words.Text{
	plan.ByRule: "", plan.Assumed: "Assumed.", plan.LookedUp: "Looked up.", plan.Typed: "Typed.", plan.Measured: "Measured.",
}

// origin writes how the value of a field came to be, and where it can be measured
// a box to say that it was. A box that is not ticked is not sent, so one that was
// drawn ticked says under it that the value is typed.
func (f *form) origin(fd *plan.Field, i int, path string) {
	if fd.Type == plan.Text {
		return
	}
	f.HTML(`<div class="field__origin"><span`).Attr("id", "o-"+path).HTML(`>`).Text(Came(f.p, fd, i)).HTML(`</span>`)
	if fd.Measure != "" {
		name := plan.HowOf + path
		measured := f.p.Origin(fd, i) == plan.Measured
		if measured {
			f.HTML(`<input type="hidden"`).Attr("name", name).Attr("value", plan.Typed.Code()).HTML(`>`)
		}
		f.HTML(` <label><input type="checkbox"`).Attr("id", "m-"+path).Attr("name", name).Attr("value", plan.Measured.Code())
		if measured {
			f.HTML(` checked`)
		}
		f.HTML(`> `).Half("Measured[: {field}]", fd.Says()).HTML(`</label>`)
	}
	f.HTML(`</div>`)
}

// Came says how the value in record i of a field came to be and, of one that is
// not known, how it is found on the spot.
func Came(p *plan.Plan, fd *plan.Field, i int) string {
	o := p.Origin(fd, i)
	how := ""
	if o == plan.Assumed || o == plan.LookedUp || o == plan.Typed && fd.Unproven {
		how = words.Say(fd.Measure)
	}
	return words.Sentences(words.Say(came[o]), how)
}

// Origins returns how the values of a section that are shown came to be, which
// changes while the form itself stays.
func Origins(p *plan.Plan, s *plan.Section) []block.Fragment {
	var fs []block.Fragment
	for i := range s.Records(p) {
		for _, fd := range s.Fields() {
			if fd.Type == plan.Text || fd.Section == "" || !fd.Applies(p, i) {
				continue
			}
			w := &block.Writer{}
			w.Text(Came(p, fd, i))
			fs = append(fs, block.Fragment{ID: "o-" + plan.Path(fd, i), HTML: w.String()})
		}
	}
	return fs
}
