package form

import (
	"strings"

	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/care"
	"evenrow/wasm/grower/plan"
)

// A Group is the inputs of a job that belong together: closed, they are one line.
type Group struct {
	ID       string     // of the address: "answer/rows"
	Title    words.Text // "Rows"
	Sections []string   // names of sections of a plan, whose fields it holds
	Hazards  care.Set   // of what is told in it; each has a caution that stands in one of these sections
}

// Applies reports whether a plan has anything of the group.
func (g *Group) Applies(p *plan.Plan) bool {
	for _, name := range g.Sections {
		if plan.SectionNamed(name).Applies(p) {
			return true
		}
	}
	return false
}

// holds reports whether it is the group of a section.
func (g *Group) holds(section string) bool {
	for _, name := range g.Sections {
		if name == section {
			return true
		}
	}
	return false
}

// A Place is what is in sight: a job, perhaps one of its groups open, and in that
// perhaps one record of a list.
type Place struct {
	Job    string
	Group  string // empty while all are closed
	Record string // "rows.7"; empty while none of several is open
}

// String is the place as an address has it: "answer/rows/rows.7".
func (at Place) String() string {
	s := at.Job
	if at.Group != "" {
		s += "/" + at.Group
		if at.Record != "" {
			s += "/" + at.Record
		}
	}
	return s
}

// PlaceOf reads a place as an address has it, without asking whether there is
// such a one.
func PlaceOf(s string) Place {
	job, rest, _ := strings.Cut(s, "/")
	group, record, _ := strings.Cut(rest, "/")
	return Place{job, group, record}
}

// InGroups returns the group and the record of the field or section with a path, such
// as "rows.7.spacing"; the group is nil where none of these holds it.
func InGroups(groups []Group, path string) (g *Group, record string) {
	section, rest, _ := strings.Cut(path, ".")
	switch {
	case section+"." == plan.AllName:
		section, rest = "rows", ""
	case path == plan.TableName:
		section = "months"
	}
	s := plan.SectionNamed(section)
	if s == nil {
		if rest != "" {
			return nil, ""
		}
		section, s = "", plan.SectionNamed("") // the plan's own fields have paths of one word
	}
	if s.List {
		if number, _, _ := strings.Cut(rest, "."); number != "" {
			record = section + "." + number
		}
	}
	for i := range groups {
		if groups[i].holds(section) {
			return &groups[i], record
		}
	}
	return nil, ""
}
