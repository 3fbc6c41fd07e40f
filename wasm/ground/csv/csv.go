// Package csv writes comma-separated values (RFC 4180).
package csv

import "strings"

// Kind is the content type of a file of them whose first line names the columns.
const Kind = "text/csv; charset=utf-8; header=present"

// A Table is such a file in the making. Its zero value is empty.
type Table struct{ b strings.Builder }

// Row adds a line.
func (t *Table) Row(cells ...string) {
	for i, s := range cells {
		if i > 0 {
			t.b.WriteByte(',')
		}
		t.cell(s)
	}
	t.b.WriteString("\r\n")
}

// cell writes a cell, in quotes where it needs them. A spreadsheet takes what begins
// with one of some signs for a formula and carries it out; with an apostrophe before
// it, it is text.
func (t *Table) cell(s string) {
	if s != "" && strings.IndexByte("=+-@\t\r", s[0]) >= 0 {
		s = "'" + s
	}
	if strings.ContainsAny(s, ",\"\r\n") {
		s = `"` + strings.ReplaceAll(s, `"`, `""`) + `"`
	}
	t.b.WriteString(s)
}

func (t *Table) String() string { return t.b.String() }
