// Package carry turns a plan into text that can be kept and sent, and back: a
// compact link, and a JSON file. Both give back the plan to the last bit.
//
// # The link, version 1
//
// A link is the character 1 and then base64url (RFC 4648, section 5, without
// padding) of one CBOR value (RFC 8949): a map from the number of a section to
// its content. The content is a map from the number of a field to its value;
// for a list, an array of such maps, one for each record. Keys rise.
//
// A value that is its field's default is left out. In a list, what is left out
// is the value in the record before, or in the first record the default.
// Choices are positions, whole numbers are integers, dates are days since 1
// January 1970, and text is text. A number
// is in the plan's own units, as the shortest decimal that reads back as the
// same float64: an integer or a decimal fraction (tag 4). Where there is no
// such decimal it is a float64 in the inner unit.
//
// How values came to be stands under a number of its own, 255, where anything is
// known of it: a map from the number of a section to a map from the number of a
// field to its origin, or to an array of origins by record, the last of which
// stands for all that follow. Under -1 is the origin of all other values.
package carry

import (
	"strconv"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
)

// version is the first character of a link.
const version = '1'

// MaxLink is how many characters a link may have; one of every record, with every
// value different and in all its digits, takes less.
const MaxLink = 40 << 10

// Link returns p as a link: letters, digits, "-" and "_" only.
func Link(p *plan.Plan) string {
	start := new(plan.Plan)
	var body []byte
	sections := 0
	for _, s := range plan.Sections() {
		content := appendSection(nil, s, p, start)
		if content == nil {
			continue
		}
		sections++
		body = append(writeInt(body, int64(s.ID)), content...)
	}
	if content := appendOrigins(nil, p); content != nil {
		sections++
		body = append(writeInt(body, originsID), content...)
	}
	data := append(writeHead(nil, mapping, uint64(sections)), body...)
	return string(toBase64([]byte{version}, data))
}

// appendSection appends the content of a section; nothing when it is all
// defaults, or a list without records.
func appendSection(b []byte, s *plan.Section, p, before *plan.Plan) []byte {
	n := s.Records(p)
	if s.List {
		if n == 0 {
			return b
		}
		b = writeHead(b, array, uint64(n))
		s.Resize(before, 1)
	}
	s.SetDefaults(before, 0)
	for i := range n {
		var record []byte
		values := 0
		for _, f := range s.Fields() {
			same := f.Value(p, i) == f.Value(before, 0)
			if f.Type == plan.Text {
				same = *f.Text(p, i) == *f.Text(before, 0)
			}
			if same {
				continue
			}
			values++
			record = appendValue(writeInt(record, int64(f.ID)), f, p, i)
			f.Copy(before, 0, p, i)
		}
		if values == 0 && !s.List {
			return b
		}
		b = append(writeHead(b, mapping, uint64(values)), record...)
	}
	return b
}

func appendValue(b []byte, f *plan.Field, p *plan.Plan, i int) []byte {
	switch f.Type {
	case plan.Text:
		return writeText(b, *f.Text(p, i))
	case plan.Whole, plan.Choice, plan.Date:
		return writeInt(b, int64(*f.Int(p, i)))
	}
	v := *f.Number(p, i)
	if s, ok := unit.Shortest(f.Kind, p.Units, v); ok {
		if b, ok := writeDecimal(b, s); ok {
			return b
		}
	}
	return writeDouble(b, v)
}

// ReadLink returns the plan in a link, checked. The error is a [plan.Error]
// about the link as a whole: that it is too long, damaged, made by a newer
// Evenrow, or holds a plan with a value out of range.
func ReadLink(link string) (*plan.Plan, error) {
	switch {
	case link == "":
		return nil, linkError(words.About("{link} is empty."))
	case len(link) > MaxLink:
		return nil, linkError(words.About("{link} is longer than the longest plan, {n} characters.", words.N(MaxLink)))
	case '1' < link[0] && link[0] <= '9':
		return nil, linkError(newer)
	case link[0] != version:
		return nil, linkError(damaged)
	}
	data, ok := fromBase64(link[1:])
	if !ok {
		return nil, linkError(damaged)
	}
	p, problem := decode(data)
	if problem != nil {
		return nil, linkError(problem)
	}
	if errs := p.Check(); len(errs) > 0 {
		return nil, linkError(words.About("{link} holds a plan with something out of range: {first}", errs[0].Text))
	}
	return p, nil
}

// What is wrong with a link or a file as a whole.
var (
	newer   = words.About("{link} was made by a newer Evenrow: reload the page to get it.")
	damaged = words.About("{link} is damaged: some of it is missing or changed.")
)

func linkError(problem *words.Remark) error {
	return plan.Error{Text: problem.Of(words.Say("The link"))}
}

// decode returns the plan in CBOR, not yet checked, or what is wrong with it.
// Its lists are as long as the data at most.
func decode(data []byte) (*plan.Plan, *words.Remark) {
	p := new(plan.Plan)
	for _, s := range plan.Sections() {
		if !s.List {
			s.SetDefaults(p, 0)
		}
	}
	r := &reader{data: data}
	last := int64(-1)
	for range r.expect(mapping) {
		id := r.integer()
		if r.bad || id <= last {
			return nil, damaged
		}
		last = id
		if id == originsID {
			if problem := r.origins(p); problem != nil {
				return nil, problem
			}
			continue
		}
		s := sectionOf(id)
		if s == nil {
			return nil, newer
		}
		n := 1
		if s.List {
			n = int(r.expect(array))
			if n > s.Max {
				return nil, damaged
			}
			s.Resize(p, n)
		}
		for i := range n {
			if s.List && i == 0 {
				s.SetDefaults(p, 0)
			}
			if problem := r.record(s, p, i); problem != nil {
				return nil, problem
			}
		}
	}
	if r.bad || len(r.data) > 0 {
		return nil, damaged
	}
	return p, nil
}

// record reads one record on top of the one before it.
func (r *reader) record(s *plan.Section, p *plan.Plan, i int) *words.Remark {
	if i > 0 {
		for _, f := range s.Fields() {
			f.Copy(p, i, p, i-1)
		}
	}
	last := int64(-1)
	for range r.expect(mapping) {
		id := r.integer()
		if r.bad || id <= last {
			return damaged
		}
		last = id
		f := fieldOf(s, id)
		if f == nil {
			return newer
		}
		r.value(f, p, i)
	}
	if r.bad {
		return damaged
	}
	return nil
}

func (r *reader) value(f *plan.Field, p *plan.Plan, i int) {
	switch f.Type {
	case plan.Text:
		*f.Text(p, i) = r.text()
	case plan.Whole, plan.Choice, plan.Date:
		n := r.integer()
		if n < -1e9 || n > 1e9 { // an int may have 32 bits
			r.bad = true
			return
		}
		// A choice that this version does not have must not be kept, even for
		// a moment: the numbers that follow are read in the chosen units.
		if f.Type == plan.Choice && (n < 0 || n >= int64(len(f.Options))) {
			r.bad = true
			return
		}
		// Nor a day that no date can be written for, which a file would lose.
		if f.Type == plan.Date && (n < int64(day.First) || n > int64(day.Last)) {
			r.bad = true
			return
		}
		*f.Int(p, i) = int(n)
	default:
		x := r.real()
		if x.decimal == "" {
			*f.Number(p, i) = x.double + 0 // no negative zero
			return
		}
		shown, err := strconv.ParseFloat(x.decimal, 64)
		if err != nil {
			r.bad = true
			return
		}
		*f.Number(p, i) = unit.Of(f.Kind, p.Units).ToInner(shown)
	}
}

func sectionOf(id int64) *plan.Section {
	for _, s := range plan.Sections() {
		if int64(s.ID) == id {
			return s
		}
	}
	return nil
}

func fieldOf(s *plan.Section, id int64) *plan.Field {
	for _, f := range s.Fields() {
		if int64(f.ID) == id {
			return f
		}
	}
	return nil
}
