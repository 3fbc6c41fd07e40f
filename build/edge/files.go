package edge

import (
	"net/http"

	"evenrow/wasm/grower/carry"
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

// table is a table of a plan that page makes, lengths in the plan's units.
func table(file func(*sheet.Sheet) page.Reply) func(*question, *asked) reply {
	return func(q *question, a *asked) reply {
		r := file(q.sheet(a.plan))
		return reply{status: http.StatusOK, kind: r.FileKind, name: r.FileName, body: r.File}
	}
}
