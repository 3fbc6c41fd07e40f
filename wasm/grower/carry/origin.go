package carry

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
)

// Numbers in links that are those of no section: under which it stands how values
// came to be, behind all sections, and how those that are not named there did.
const (
	originsID = 255
	restID    = -1
)

// appendOrigins appends how the values of p came to be; nothing when nothing is
// known of it.
func appendOrigins(b []byte, p *plan.Plan) []byte {
	var body []byte
	members := 0
	if o := p.How.Rest; o != plan.ByRule {
		members++
		body = writeInt(writeInt(body, restID), int64(o))
	}
	for _, s := range plan.Sections() {
		var of []byte
		fields := 0
		for _, f := range s.Fields() {
			came := p.Came(f)
			if came == nil {
				continue
			}
			fields++
			of = writeInt(of, int64(f.ID))
			if len(came) > 1 {
				of = writeHead(of, array, uint64(len(came)))
			}
			for _, o := range came {
				of = writeInt(of, int64(o))
			}
		}
		if fields > 0 {
			members++
			body = append(writeHead(writeInt(body, int64(s.ID)), mapping, uint64(fields)), of...)
		}
	}
	if members == 0 {
		return b
	}
	return append(writeHead(b, mapping, uint64(members)), body...)
}

// origins reads what appendOrigins wrote, or what is wrong with it. The plan has
// all its records by then, because the number is greater than any section's.
func (r *reader) origins(p *plan.Plan) *words.Remark {
	last := int64(restID - 1)
	for range r.expect(mapping) {
		id := r.integer()
		if r.bad || id <= last {
			return damaged
		}
		last = id
		if id == restID {
			p.How.Rest = r.origin()
			continue
		}
		s := sectionOf(id)
		if s == nil {
			return newer
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
			n := 1
			many := len(r.data) > 0 && r.data[0]>>5 == array
			if many {
				n = int(r.expect(array))
			}
			if r.bad || many && (n < 2 || n > s.Records(p)) {
				return damaged
			}
			came := make([]plan.Origin, n)
			for i := range came {
				came[i] = r.origin()
			}
			p.SetCame(f, came)
		}
	}
	if r.bad {
		return damaged
	}
	return nil
}

// origin reads one.
func (r *reader) origin() plan.Origin {
	n := r.integer()
	if n < 0 || n >= plan.Origins {
		r.bad = true
		return plan.ByRule
	}
	return plan.Origin(n)
}

// Names in files: of the member that tells how values came to be, and in it of
// those values that it does not name.
const (
	cameKey = "came"
	restKey = "*"
)

// appendCame appends the member that tells how values came to be: an object from
// a path, such as "rows.spacing", to a word, or to a list of words by record, the
// last of which stands for all that follow.
func appendCame(b []byte, p *plan.Plan) []byte {
	start := len(b)
	name := func(path string) {
		if len(b) > start {
			b = append(b, ", "...)
		} else {
			b = append(appendQuoted(append(b, ",\n\t"...), cameKey), ": {"...)
		}
		b = append(appendQuoted(b, path), ": "...)
	}
	if o := p.How.Rest; o != plan.ByRule {
		name(restKey)
		b = appendQuoted(b, o.Code())
	}
	for _, f := range plan.Fields() {
		came := p.Came(f)
		switch len(came) {
		case 0:
			continue
		case 1:
			name(f.PathOfAll())
			b = appendQuoted(b, came[0].Code())
			continue
		}
		name(f.PathOfAll())
		before := "["
		for _, o := range came {
			b = appendQuoted(append(b, before...), o.Code())
			before = ", "
		}
		b = append(b, ']')
	}
	if len(b) > start {
		b = append(b, '}')
	}
	return b
}

// came reads that member.
func (l *loader) came(p *plan.Plan, n *node) {
	if n.kind != 'o' {
		l.shape(cameKey, words.About("{name} must be an object in {braces}.", "{ }"))
		return
	}
	if most := len(plan.Fields()) + 1; len(n.keys) > most {
		l.shape(cameKey, words.About("{name} must have fewer names: a plan has less than {n} in one place.", words.N(most+1)))
		return
	}
	for i, path := range n.keys {
		v := &n.list[i]
		f := plan.FieldOfAll(path)
		known := path == restKey && v.kind == 's' || f != nil
		switch {
		case n.get(path) != v:
			l.shape(cameKey+"."+path, words.About("{name} must come only once."))
			continue
		case !known:
			l.shape(cameKey+"."+path, words.About("{name} is not part of a plan."))
			continue
		}
		list := []node{*v}
		if v.kind == 'a' {
			list = v.list
		}
		var came []plan.Origin
		for _, word := range list {
			o, known := plan.OriginOf(word.text)
			if word.kind != 's' || !known && word.text != "" {
				l.shape(cameKey+"."+path, words.About("{name} must be assumed, looked-up, typed or measured, in quotes."))
				break
			}
			came = append(came, o)
		}
		if f == nil && len(came) > 0 {
			p.How.Rest = came[0]
		} else if f != nil {
			p.SetCame(f, came)
		}
	}
}
