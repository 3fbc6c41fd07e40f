package edge

import (
	"encoding/csv"
	"net/http"
	"strconv"
	"strings"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/carry"
	"evenrow/wasm/shown/buy"
	"evenrow/wasm/shown/page"
	"evenrow/wasm/shown/sheet"
)

// file is the plan as the file that the planner saves and opens.
func file(_ *question, a *asked) reply {
	return reply{status: http.StatusOK, kind: fileKind, name: page.FileName(a.plan.Name), body: string(carry.JSON(a.plan))}
}

// calendar is the plan's season as an iCalendar file (RFC 5545).
func calendar(q *question, a *asked) reply {
	r := page.CalendarFile(q.sheet(a.plan, sheet.Season))
	return reply{status: http.StatusOK, kind: seasonKind, name: r.FileName, body: r.File}
}

// table is the parts of a plan as comma-separated values (RFC 4180), lengths
// in the plan's units.
func table(q *question, a *asked) reply {
	p := a.plan
	var b strings.Builder
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	record := func(fields ...string) {
		for i := range fields {
			fields[i] = plain(fields[i])
		}
		w.Write(fields) // into memory: it does not fail
	}
	record("Group", "Part", "Number", "Spare in it", "Length, "+unit.Of(unit.Length, p.Units).Symbol, "Where it comes from")
	for _, l := range q.sheet(p).Parts {
		number, spare, length := "", "", ""
		if l.Count > 0 {
			number = strconv.Itoa(l.Count)
		}
		if l.Spare > 0 {
			spare = strconv.Itoa(l.Spare)
		}
		if l.Length > 0 {
			length = unit.Figure(unit.Length, p.Units, l.Length)
		}
		record(words.Say(buy.GroupNames[l.Group]), l.Name, number, spare, length, l.Why)
	}
	w.Flush()
	name := strings.TrimSuffix(page.FileName(p.Name), ".json") + "-parts.csv"
	return reply{status: http.StatusOK, kind: tableKind, name: name, body: b.String()}
}

// plain is a text as it stands in a table. A spreadsheet takes what begins with
// one of these signs for a formula and carries it out; with an apostrophe
// before it, it is text.
func plain(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		s = "'" + s
	}
	return s
}
