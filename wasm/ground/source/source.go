// Package source names the works that formulas, tables and check values come
// from, so that a number and its origin travel together.
package source

// A Standing says how far a value may be trusted.
type Standing uint8

const (
	Published Standing = iota // read in the named work
	Memory                    // a published work, quoted from memory
	Practice                  // common practice, no source
	Derived                   // follows from a definition or from other values
	Choice                    // our own, for want of a source or of what a plan would have to tell
)

// String is the standing as the page prints it.
func (s Standing) String() string {
	switch s {
	case Published:
		return "published"
	case Memory:
		return "from memory"
	case Practice:
		return "common practice, no source"
	case Choice:
		return "our own choice"
	}
	return "derived"
}

// A Ref is a place in a work.
type Ref struct {
	Work     string // title, authors, year; empty for Practice, Derived and Choice
	At       string // page, table, equation or example; may be empty
	Standing Standing
}

// String is the reference as one line: work, place and, unless it is
// published, its standing.
func (r Ref) String() string {
	s := r.Work
	if r.At != "" {
		if s != "" {
			s += ", "
		}
		s += r.At
	}
	if r.Standing != Published {
		if s != "" {
			s += " ("
			return s + r.Standing.String() + ")"
		}
		s = r.Standing.String()
	}
	return s
}
