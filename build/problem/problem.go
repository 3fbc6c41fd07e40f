// Package problem collects what is wrong in the source files of the site, so
// that an author sees all of it at once and where to mend it.
package problem

import (
	"cmp"
	"errors"
	"slices"
	"strconv"
)

// A Problem is something wrong in a source file.
type Problem struct {
	File string // as the author knows it, such as "content/guides/pump-curve.md"
	Line int    // from 1; 0 when it concerns the whole file
	Text string // in full words, lower case, no full stop
}

// Error is the problem as "file:line: text", or "file: text" when it has no line.
func (p Problem) Error() string {
	if p.Line == 0 {
		return p.File + ": " + p.Text
	}
	return p.File + ":" + strconv.Itoa(p.Line) + ": " + p.Text
}

// A List is the problems met so far. The zero value is ready to use.
type List struct{ all []Problem }

// Add notes a problem.
func (l *List) Add(file string, line int, text string) {
	l.all = append(l.all, Problem{file, line, text})
}

// Err joins the problems, sorted by file, line and text and each told once. It
// is nil when there are none.
func (l *List) Err() error {
	slices.SortFunc(l.all, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Text, b.Text))
	})
	var errs []error
	for _, p := range slices.Compact(slices.Clone(l.all)) {
		errs = append(errs, p)
	}
	return errors.Join(errs...)
}
