package page

import (
	"strconv"
	"strings"

	"evenrow/wasm/drain"
	"evenrow/wasm/plan"
	"evenrow/wasm/sheet"
	"evenrow/wasm/view"
)

// leastRows is how many days the log shows at least.
const leastRows = 3

// Feedback answers the log of the drain: form holds the plan and the log, and
// under plan.ActionName which of the log's buttons was pressed. The log itself
// is sent again only when its rows change.
func (e *Explorer) Feedback(form string) Reply {
	d := plan.ParseDraft(form)
	p, errs := d.Read()
	r := Reply{}
	rows := max(leastRows, drain.Rows(d.Get))
	action := d.Get(plan.ActionName)
	row, remove := strings.CutPrefix(action, view.LogRemove)
	switch {
	case action == view.LogCSV:
		return Reply{FileName: "drain.csv", FileKind: "text/csv", File: drain.CSV(d.Get)}
	case action == view.LogAdd:
		for rows < drain.MaxRows && d.Has(drain.Path(rows, drain.DayName)) {
			rows++ // what the form shows already, and one
		}
		r.Focus = "f-" + drain.Path(rows, drain.DayName)
	case remove:
		n, _ := strconv.Atoi(row)
		without(&d, max(n, 1))
		rows = max(leastRows, drain.Rows(d.Get))
		r.Focus = "f-" + drain.Path(min(max(n, 1), rows), drain.DayName)
	}
	if action != "" {
		r.add("log", view.Log(d.Get, rows))
	}
	log, slips := drain.Read(d.Get)
	var s *sheet.Sheet
	if len(errs) == 0 && len(log) > 0 {
		s = e.of(p)
		if s.Season == nil {
			s.Explore(sheet.Season)
		}
	}
	html, aloud := view.Advice(s, p, log, slips)
	r.add("advice", html)
	if action != view.LogOpen {
		r.Announce = aloud
	}
	return r
}

// without takes a row out of the log; those after it move up.
func without(d *plan.Draft, row int) {
	names := []string{drain.DayName}
	for _, c := range drain.Columns {
		names = append(names, c.Name)
	}
	for ; row <= drain.MaxRows; row++ {
		for _, name := range names {
			next := ""
			if row < drain.MaxRows {
				next = d.Get(drain.Path(row+1, name))
			}
			d.Set(drain.Path(row, name), next)
		}
	}
}
