package plan

import (
	"strconv"
	"strings"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
)

// A Draft is what was typed, by path, as it was typed. Records of lists are
// counted from 1 in paths.
type Draft struct {
	values map[string]string
	table  *words.Remark // what is wrong with a pasted table that was to be used
}

// DraftOf returns p as it would be typed, values that do not apply included.
func DraftOf(p *Plan) Draft {
	d := Draft{values: map[string]string{}}
	for _, s := range sections {
		d.put(s, p)
	}
	d.settle(&p.How)
	return d
}

// put types all records of a section of p.
func (d *Draft) put(s *Section, p *Plan) {
	for i := range s.Records(p) {
		for _, f := range s.Fields() {
			d.Set(Path(f, i), f.Typed(p, i))
		}
	}
}

// Fill types a plan where nothing was typed. Its numbers stay in its own units
// until [Draft.Apply] changes them to those of the draft.
func (d *Draft) Fill(p *Plan) {
	of := DraftOf(p)
	d.Set(UnitsWas, of.values["units"])
	for path, text := range of.values {
		if !d.Has(path) {
			d.Set(path, text)
		}
	}
}

// Get returns what was typed at a path, "" when nothing was.
func (d Draft) Get(path string) string { return d.values[path] }

// Has reports whether the form had the path at all, be it left empty.
func (d Draft) Has(path string) bool {
	_, has := d.values[path]
	return has
}

// Set types text at a path.
func (d *Draft) Set(path, text string) {
	if d.values == nil {
		d.values = map[string]string{}
	}
	d.values[path] = text
}

// Records returns how many records of a list the draft has: the greatest
// number in its paths.
func (d Draft) Records(s *Section) int {
	n := 0
	prefix := s.Name + "."
	for path := range d.values {
		rest, ok := strings.CutPrefix(path, prefix)
		if !ok {
			continue
		}
		number, name, _ := strings.Cut(rest, ".")
		if i, err := strconv.Atoi(number); err == nil && len(number) <= 3 && i > n && FieldNamed(s.Name, name) != nil {
			n = i
		}
	}
	return n
}

// each calls do for every field that the draft can hold, record by record.
func (d Draft) each(do func(f *Field, i int)) {
	for _, s := range sections {
		n := 1
		if s.List {
			n = d.Records(s)
		}
		for i := range n {
			for _, f := range s.Fields() {
				do(f, i)
			}
		}
	}
}

// Read returns the plan that was typed, and everything that is wrong with it.
// A path that the form does not have takes the field's default, and a list of
// which it has nothing takes that of [Default], so that a short form works; a
// field left empty is missing. With errors the plan is still whole, with
// defaults in the places of what could not be read, and serves to see which
// fields apply, but must not be worked out.
func (d Draft) Read() (*Plan, []Error) {
	p := blank()
	found := map[string]Error{}
	fresh := Default()
	for _, s := range sections {
		n := 1
		if s.List {
			if n = d.Records(s); n == 0 {
				s.CopyRecords(p, fresh)
				continue
			}
			if n > s.Max {
				found[s.Name] = s.countError(n)
				n = s.Max
			}
			s.Resize(p, n)
		}
		for i := range n {
			s.SetDefaults(p, i)
			for _, f := range s.Fields() {
				path := Path(f, i)
				if typed, has := d.values[path]; has {
					problem := tooLong(typed)
					if problem == nil {
						problem = f.Read(p, i, typed)
					}
					if problem != nil {
						found[path] = f.ErrorAt(i, typed, problem)
					}
				}
			}
		}
	}
	p.How = d.history()
	for _, s := range sections {
		p.How.shorten(s, s.Records(p))
	}
	errs := p.CheckAlso(found)
	for k := range errs {
		if typed, has := d.values[errs[k].Path]; has {
			errs[k].Typed = typed
		}
	}
	if problem := d.tableProblem(); problem != nil {
		errs = append(errs, Error{Path: TableName, Text: problem.Of(words.Say("The pasted table"))})
	}
	return p, errs
}

// Shorten rounds the numbers of p that are others than those of old to what is
// easily typed, which is less than a part in 10⁹: they were worked out, and stand
// in boxes.
func (p *Plan) Shorten(old *Plan) {
	for _, s := range sections {
		for i := range s.Records(p) {
			for _, f := range s.Fields() {
				if f.Type == Number && (i >= s.Records(old) || *f.Number(p, i) != *f.Number(old, i)) {
					f.Read(p, i, unit.Exact(f.Kind, p.Units, *f.Number(p, i)))
				}
			}
		}
	}
}

// CopyRecords gives p the section's records of from.
func (s *Section) CopyRecords(p, from *Plan) {
	n := s.Len(from)
	s.Resize(p, n)
	for i := range n {
		for _, f := range s.Fields() {
			f.Copy(p, i, from, i)
		}
	}
}

// Copy gives record i of p the value in record k of from.
func (f *Field) Copy(p *Plan, i int, from *Plan, k int) {
	if f.Type == Text {
		*f.Text(p, i) = *f.Text(from, k)
	}
	f.SetValue(p, i, f.Value(from, k))
}
