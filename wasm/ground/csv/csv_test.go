package csv

import (
	"encoding/csv"
	"slices"
	"strings"
	"testing"
)

// What is written is read back by the reader of the standard library, cell by cell; and
// nothing begins as a formula does.
func FuzzTable(f *testing.F) {
	f.Add("a", `b "c"`, "d,e\r\nf")
	f.Add("=1+2", "@x", "-5")
	f.Add("", "\t", "+")
	f.Fuzz(func(t *testing.T, a, b, c string) {
		var table Table
		table.Row("one", "two", "three")
		table.Row(a, b, c)
		r := csv.NewReader(strings.NewReader(table.String()))
		rows, err := r.ReadAll()
		if err != nil || len(rows) != 2 {
			t.Fatalf("%q: %d rows, %v", table.String(), len(rows), err)
		}
		for i, typed := range []string{a, b, c} {
			got := rows[1][i]
			if got != "" && strings.ContainsRune("=+-@\t\r", rune(got[0])) {
				t.Errorf("%q is a formula", got)
			}
			// The reader takes the two ends of a line for one.
			if same := strings.ReplaceAll(typed, "\r\n", "\n"); !slices.Contains([]string{same, "'" + same}, got) {
				t.Errorf("%q reads back as %q", typed, got)
			}
		}
	})
}
