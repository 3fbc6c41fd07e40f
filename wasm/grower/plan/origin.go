package plan

import (
	"strconv"
	"strings"
)

// An Origin is how a value came to be.
type Origin uint8

const (
	ByRule   Origin = iota // nobody has said: assumed where it is the field's default, else typed
	Assumed                // by us, or left as it stood
	LookedUp               // averages of a place, the table of a data sheet
	Typed                  // by the grower
	Measured               // on the spot
	Origins  = iota
)

// origins are the letter of each in form data and links, and its word in files
// and controls. They are permanent.
var origins = [Origins]struct {
	letter byte
	word   string
}{
	ByRule: {'-', ""}, Assumed: {'a', "assumed"}, LookedUp: {'l', "looked-up"}, Typed: {'t', "typed"}, Measured: {'m', "measured"},
}

// Code is the word for it in files and in form data, such as "looked-up"; ""
// for [ByRule].
func (o Origin) Code() string { return origins[o].word }

// OriginOf is the inverse of [Origin.Code]. [ByRule] has no word.
func OriginOf(code string) (Origin, bool) {
	for o := Assumed; o < Origins; o++ {
		if origins[o].word == code {
			return o, true
		}
	}
	return ByRule, false
}

// History is how the values of a plan came to be, where something is known of
// it. The zero value knows nothing.
type History struct {
	Rest Origin // of what has nothing of its own: [Assumed] in a plan that was proposed
	by   []came // never changed in its place, so copies share it; by place of the field; no lists are empty, or of nothing but ByRule
}

// came is how the values of one field came to be, by record: the last stands for
// all that follow, and no other is needed for that.
type came struct {
	at int // place in allFields
	by []Origin
}

// of returns the place of a field, and its list.
func (h *History) of(f *Field) (k int, by []Origin) {
	for k = range h.by {
		if h.by[k].at >= f.at {
			if h.by[k].at == f.at {
				by = h.by[k].by
			}
			return k, by
		}
	}
	return len(h.by), nil
}

// set takes the origins of a field, by record, the last for all that follow. It
// keeps the list, which is not changed any more.
func (h *History) set(f *Field, by []Origin) {
	n := shortest(by)
	// A list that was handed out stays as it was.
	list := make([]came, 0, len(h.by)+1)
	k, old := h.of(f)
	list = append(list, h.by[:k]...)
	if n > 0 {
		list = append(list, came{f.at, by[:n]})
	}
	if old != nil {
		k++
	}
	h.by = append(list, h.by[k:]...)
	if len(h.by) == 0 {
		h.by = nil
	}
}

// shortest is how many origins say as much as all.
func shortest(by []Origin) int {
	n := len(by)
	for n > 1 && by[n-1] == by[n-2] {
		n--
	}
	if n == 1 && by[0] == ByRule {
		n = 0
	}
	return n
}

// said is what is known of record i by itself.
func (h *History) said(f *Field, i int) Origin {
	if _, by := h.of(f); by != nil {
		return by[min(i, len(by)-1)]
	}
	return ByRule
}

// all returns what is known of the first n records of a field.
func (h *History) all(f *Field, n int) []Origin {
	by := make([]Origin, n)
	for i := range by {
		by[i] = h.said(f, i)
	}
	return by
}

// put says how record i of n came to be.
func (h *History) put(f *Field, i, n int, o Origin) {
	by := h.all(f, max(n, i+1))
	by[i] = o
	h.set(f, by)
}

// Origin returns how the value in record i came to be; never [ByRule].
func (p *Plan) Origin(f *Field, i int) Origin {
	if o := p.How.said(f, i); o != ByRule {
		return o
	}
	if p.How.Rest != ByRule {
		return p.How.Rest
	}
	same := f.Value(p, i) == f.Default
	if f.Type == Text {
		same = *f.Text(p, i) == ""
	}
	if same {
		return Assumed
	}
	return Typed
}

// SetOrigin says how the value in record i came to be; [ByRule] takes back what
// was said.
func (p *Plan) SetOrigin(f *Field, i int, o Origin) {
	p.How.put(f, i, SectionNamed(f.Section).Records(p), o)
}

// Forget takes back what was said of the value at a path, if it is one: it counts as
// assumed.
func (p *Plan) Forget(path string) {
	if f, i := fieldAt(path); f != nil {
		p.SetOrigin(f, i, Assumed)
	}
}

// Propose marks every value of p as assumed, whatever was known of it. What was
// told is then set by [Plan.SetOrigin].
func (p *Plan) Propose() { p.How = History{Rest: Assumed} }

// Came returns what is known of the field: an origin for each record, of which
// the last stands for all that follow; nil for nothing. The list must not be
// changed.
func (p *Plan) Came(f *Field) []Origin {
	_, by := p.How.of(f)
	n := min(len(by), SectionNamed(f.Section).Records(p))
	return by[:shortest(by[:n])]
}

// SetCame is the inverse of [Plan.Came], once the plan has all its records. What is
// said of more of them is left out.
func (p *Plan) SetCame(f *Field, by []Origin) {
	if n := SectionNamed(f.Section).Records(p); len(by) > n {
		by = by[:n]
	}
	p.How.set(f, append([]Origin(nil), by...))
}

// shorten forgets what was said of records of s from the n-th.
func (h *History) shorten(s *Section, n int) {
	if h.by == nil {
		return
	}
	for _, f := range s.Fields() {
		if _, by := h.of(f); len(by) > n {
			h.set(f, by[:n:n])
		}
	}
}

// Names in form data that tell how values came to be.
const (
	HowName     = "how"     // what is known: see [Draft.Apply]
	HowOf       = "how."    // before a path: the code of the origin that was chosen for that value
	TouchedName = "touched" // paths, with spaces between, that were typed in since the form was drawn
)

// restName stands in form data for what has nothing of its own.
const restName = "*"

// String is the history as it stands in form data: "*=a;rows.spacing=tta", a
// letter for each record, the last for all that follow; "-" where nothing is
// known.
func (h *History) String() string {
	var b strings.Builder
	write := func(name string, by ...Origin) {
		if b.Len() > 0 {
			b.WriteByte(';')
		}
		b.WriteString(name)
		b.WriteByte('=')
		for _, o := range by {
			b.WriteByte(origins[o].letter)
		}
	}
	if h.Rest != ByRule {
		write(restName, h.Rest)
	}
	for _, c := range h.by {
		write(allFields[c.at].PathOfAll(), c.by...)
	}
	return b.String()
}

// PathOfAll is the path of the field in all records: "rows.spacing".
func (f *Field) PathOfAll() string {
	if f.Section == "" {
		return f.Name
	}
	return f.Section + "." + f.Name
}

// parseHistory is the inverse of [History.String]. It leaves out what it does not
// understand: a form may hold anything.
func parseHistory(text string) (h History) {
	for text != "" {
		var one string
		one, text, _ = strings.Cut(text, ";")
		name, letters, _ := strings.Cut(one, "=")
		by := make([]Origin, 0, len(letters))
		for _, c := range []byte(letters) {
			for o := range origins {
				if origins[o].letter == c {
					by = append(by, Origin(o))
				}
			}
		}
		if len(by) == 0 || len(by) < len(letters) {
			continue
		}
		if name == restName {
			h.Rest = by[0]
			continue
		}
		if f := FieldOfAll(name); f != nil && len(by) <= max(SectionNamed(f.Section).Max, 1) {
			h.set(f, by)
		}
	}
	return h
}

// FieldOfAll is the inverse of [Field.PathOfAll]; nil for a path of no field.
func FieldOfAll(path string) *Field {
	section, name, in := strings.Cut(path, ".")
	if !in {
		section, name = "", section
	}
	return FieldNamed(section, name)
}

// fieldAt is the inverse of [Path].
func fieldAt(path string) (f *Field, i int) {
	section, name, in := strings.Cut(path, ".")
	if !in {
		return FieldNamed("", section), 0
	}
	s := SectionNamed(section)
	if s == nil || s.Name == "" {
		return nil, 0
	}
	if s.List {
		var number string
		number, name, _ = strings.Cut(name, ".")
		n, err := strconv.Atoi(number)
		if err != nil || n < 1 || n > s.Max || strconv.Itoa(n) != number {
			return nil, 0
		}
		i = n - 1
	}
	return FieldNamed(section, name), i
}

// history is how the values of the draft came to be, with what was typed and
// chosen since the form was drawn.
func (d *Draft) history() History {
	h := parseHistory(d.values[HowName])
	records := map[string]int{} // by section, counted once
	put := func(path string, o Origin) {
		f, i := fieldAt(path)
		if f == nil {
			return
		}
		n, counted := records[f.Section]
		if !counted {
			n = d.records(SectionNamed(f.Section))
			records[f.Section] = n
		}
		h.put(f, i, n, o)
	}
	chosen := func(measured bool) {
		for name, code := range d.values {
			if path, is := strings.CutPrefix(name, HowOf); is {
				if o, known := OriginOf(code); known && (o == Measured) == measured {
					put(path, o)
				}
			}
		}
	}
	chosen(false)
	for _, path := range strings.Fields(d.values[TouchedName]) {
		put(path, Typed)
	}
	chosen(true)
	return h
}

// records is how many records of a section are read from the draft.
func (d *Draft) records(s *Section) int {
	if !s.List {
		return 1
	}
	if n := d.Records(s); n > 0 {
		return min(n, s.Max)
	}
	return s.Len(Default())
}

// settle keeps in [HowName] alone how the values came to be.
func (d *Draft) settle(h *History) {
	for name := range d.values {
		if name == HowName || name == TouchedName || strings.HasPrefix(name, HowOf) {
			delete(d.values, name)
		}
	}
	if text := h.String(); text != "" {
		d.Set(HowName, text)
	}
}

// TypedSince marks as typed every value that differs from that of p at the same
// path. A form without scripts cannot say what was typed in; p is the plan that
// it was drawn for. It must come before [Draft.Apply], while records stand where
// they stood and numbers are in the units of p.
func (d *Draft) TypedSince(p *Plan) {
	old, q := DraftOf(p), p.Clone()
	touched := []string{d.values[TouchedName]}
	d.each(func(f *Field, i int) {
		path := Path(f, i)
		typed, has := d.values[path]
		if was, had := old.values[path]; !has || !had || typed == was {
			return
		}
		// The same number may be written in another way.
		problem := f.Read(q, i, typed)
		q.Units = p.Units
		if problem == nil && f.Type != Text && f.Value(q, i) == f.Value(p, i) {
			return
		}
		touched = append(touched, path)
	})
	if len(touched) > 1 {
		d.Set(TouchedName, strings.Join(touched, " "))
	}
}
