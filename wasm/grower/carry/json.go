package carry

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
)

// formatKey and format mark a file as a plan and name its version.
const (
	formatKey = "format"
	formatAny = "evenrow plan "
	format    = formatAny + "1"
)

// MaxFile is how many bytes a JSON file may have.
const MaxFile = 256 << 10

// maxNames is how many names an object may have.
const maxNames = 64

// innerMark stands before a number that is in the inner unit, because no
// decimal in the plan's units reads back as it.
const innerMark = "SI "

// JSON returns p as a JSON file (RFC 8259): an object with the format's name,
// the plan's own fields, and one object or array of objects for each section,
// under the names that field paths are made of. Every value is written, those
// that do not apply included. How values came to be stands in a last member, where
// anything is known of it. Numbers are in the plan's units, and "" where one
// was left empty; choices are words, and dates as ISO 8601 writes them.
func JSON(p *plan.Plan) []byte {
	b := append([]byte("{\n\t\""+formatKey+"\": "), '"')
	b = append(b, format+`"`...)
	for _, s := range plan.Sections() {
		switch {
		case s.Name == "":
			for _, f := range s.Fields() {
				b = appendMember(append(b, ",\n\t"...), f, p, 0)
			}
		case !s.List:
			b = appendQuoted(append(b, ",\n\t"...), s.Name)
			b = appendObject(append(b, ": "...), s, p, 0)
		default:
			b = appendQuoted(append(b, ",\n\t"...), s.Name)
			b = append(b, ": ["...)
			n := s.Records(p)
			for i := range n {
				if i > 0 {
					b = append(b, ',')
				}
				b = appendObject(append(b, "\n\t\t"...), s, p, i)
			}
			if n > 0 {
				b = append(b, "\n\t"...)
			}
			b = append(b, ']')
		}
	}
	return append(appendCame(b, p), "\n}\n"...)
}

func appendObject(b []byte, s *plan.Section, p *plan.Plan, i int) []byte {
	b = append(b, '{')
	for k, f := range s.Fields() {
		if k > 0 {
			b = append(b, ", "...)
		}
		b = appendMember(b, f, p, i)
	}
	return append(b, '}')
}

func appendMember(b []byte, f *plan.Field, p *plan.Plan, i int) []byte {
	b = append(appendQuoted(b, f.Name), ": "...)
	switch f.Type {
	case plan.Whole:
		return strconv.AppendInt(b, int64(*f.Int(p, i)), 10)
	case plan.Number:
		v := *f.Number(p, i)
		if f.Empty && v == plan.Unset {
			return append(b, `""`...)
		}
		if s, ok := unit.Shortest(f.Kind, p.Units, v); ok {
			return append(b, s...)
		}
		return appendQuoted(b, innerMark+strconv.FormatFloat(v, 'g', -1, 64))
	}
	return appendQuoted(b, f.Typed(p, i))
}

// ReadJSON returns the plan in a JSON file, or everything that is wrong with
// it. Errors about values have the paths that the form has, so that they can
// stand beside the fields. Fields that the file leaves out take their
// defaults, and a list that it leaves out is that of [plan.Default], as in a
// form; an empty list is one without records. Names that no plan has are errors.
func ReadJSON(data []byte) (*plan.Plan, []plan.Error) {
	fail := func(problem *words.Remark) (*plan.Plan, []plan.Error) {
		return nil, []plan.Error{{Text: problem.Of(words.Say("The file"))}}
	}
	if len(data) > MaxFile {
		return fail(words.About("{file} must be at most {n} kB.", words.N(MaxFile>>10)))
	}
	in := parser{data: data}
	root := in.document()
	if in.bad {
		return fail(words.About("{file} is not JSON, or only part of it: see line {line}.", words.N(in.line())))
	}
	mark := root.get(formatKey)
	if root.kind != 'o' || mark == nil || mark.kind != 's' || !strings.HasPrefix(mark.text, formatAny) {
		return fail(words.About("{file} is not a plan: it must say {this}.", `"`+formatKey+`": "`+format+`"`))
	}
	if mark.text != format {
		return fail(newer)
	}

	l := loader{found: map[string]plan.Error{}, fresh: plan.Default()}
	p := new(plan.Plan)
	known := []string{formatKey, cameKey}
	for _, s := range plan.Sections() {
		if s.Name != "" {
			known = append(known, s.Name)
		}
		l.section(s, p, &root)
	}
	for _, f := range plan.SectionNamed("").Fields() {
		known = append(known, f.Name)
	}
	l.strangers("", &root, known)
	if n := root.get(cameKey); n != nil {
		l.came(p, n)
	}
	if errs := append(l.errs, p.CheckAlso(l.found)...); len(errs) > 0 {
		return nil, errs
	}
	return p, nil
}

// get returns the value of a key, or nil.
func (n *node) get(key string) *node {
	for i, k := range n.keys {
		if k == key {
			return &n.list[i]
		}
	}
	return nil
}

// A loader fills a plan from JSON and gathers what is wrong.
type loader struct {
	errs  []plan.Error          // about names and shapes
	found map[string]plan.Error // about values, by path
	fresh *plan.Plan            // has the lists that are left out
}

// shape notes what is wrong with the name or the value at a path, of which ""
// is the whole file.
func (l *loader) shape(path string, problem *words.Remark) {
	name := path
	if path == "" {
		name = words.Say("The file")
	}
	l.errs = append(l.errs, plan.Error{Path: path, Text: problem.Of(name)})
}

// section reads a section from the file's object.
func (l *loader) section(s *plan.Section, p *plan.Plan, root *node) {
	if s.Name == "" {
		s.SetDefaults(p, 0)
		l.record(s, p, 0, "", root)
		return
	}
	n := root.get(s.Name)
	if !s.List {
		s.SetDefaults(p, 0)
		if n != nil {
			l.object(s, p, 0, s.Name, n)
		}
		return
	}
	if n == nil {
		s.CopyRecords(p, l.fresh)
		return
	}
	if n.kind != 'a' {
		l.shape(s.Name, words.About("{name} must be a list in [ ]."))
		return
	}
	if len(n.list) > s.Max {
		// Only their number is reported.
		s.Resize(p, s.Max+1)
		return
	}
	s.Resize(p, len(n.list))
	for i := range n.list {
		s.SetDefaults(p, i)
		l.object(s, p, i, s.Name+"."+strconv.Itoa(i+1), &n.list[i])
	}
}

func (l *loader) object(s *plan.Section, p *plan.Plan, i int, path string, n *node) {
	if n.kind != 'o' {
		l.shape(path, words.About("{name} must be an object in {braces}.", "{ }"))
		return
	}
	known := make([]string, 0, 16)
	for _, f := range s.Fields() {
		known = append(known, f.Name)
	}
	l.strangers(path+".", n, known)
	l.record(s, p, i, path, n)
}

func (l *loader) record(s *plan.Section, p *plan.Plan, i int, path string, n *node) {
	for _, f := range s.Fields() {
		v := n.get(f.Name)
		if v == nil {
			continue
		}
		if problem := set(f, p, i, v); problem != nil {
			l.found[plan.Path(f, i)] = f.ErrorAt(i, v.text, problem)
		}
	}
}

// strangers reports names that are unknown or come twice.
func (l *loader) strangers(prefix string, n *node, known []string) {
	if len(n.keys) > maxNames {
		l.shape(strings.TrimSuffix(prefix, "."), words.About("{name} must have fewer names: a plan has less than {n} in one place.", words.N(maxNames)))
		return
	}
	for i, key := range n.keys {
		if n.get(key) != &n.list[i] {
			l.shape(prefix+key, words.About("{name} must come only once."))
		} else if !slices.Contains(known, key) {
			l.shape(prefix+key, words.About("{name} is not part of a plan."))
		}
	}
}

// set puts a JSON value into a field, or says what it must be.
func set(f *plan.Field, p *plan.Plan, i int, v *node) *words.Remark {
	switch {
	case f.Type == plan.Number && v.kind == 's' && strings.HasPrefix(v.text, innerMark):
		x, err := strconv.ParseFloat(v.text[len(innerMark):], 64)
		if err != nil || math.IsInf(x, 0) || math.IsNaN(x) {
			return words.About("{field} must be a number.")
		}
		*f.Number(p, i) = x + 0 // no negative zero
		return nil
	case f.Empty && v.kind == 's' && v.text == "":
		*f.Number(p, i) = plan.Unset
		return nil
	case f.Type == plan.Number && v.kind == 'n':
		x, err := strconv.ParseFloat(v.text, 64)
		if err == nil {
			x = unit.Of(f.Kind, p.Units).ToInner(x + 0)
		}
		if err != nil || math.IsInf(x, 0) {
			return unit.Smaller
		}
		*f.Number(p, i) = x
		return nil
	case f.Type == plan.Number || f.Type == plan.Whole && v.kind != 'n':
		return words.About("{field} must be a number, without quotes.")
	case f.Type == plan.Whole:
		return f.Read(p, i, v.text)
	case v.kind != 's':
		return words.About("{field} must be text in quotes.")
	}
	return f.Read(p, i, v.text)
}
