package page

import (
	"strconv"
	"strings"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/form"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/watering"
	"evenrow/wasm/year/drain"
)

// leastRows is how many days the log shows at least.
const leastRows = 1

// Feedback answers the log of the drain: form holds the plan and the log, and
// under plan.ActionName which of the log's buttons was pressed. The log itself
// is sent again only when its rows change; what stands below a row always is.
// Errors are those of the log.
func (s *Session) Feedback(typed string) Reply {
	d := plan.ParseDraft(typed)
	p, errs := d.Read()
	r := Reply{}
	rows := max(leastRows, drain.Rows(d.Get))
	action := d.Get(plan.ActionName)
	row, remove := strings.CutPrefix(action, watering.LogRemove)
	switch {
	case action == watering.LogCSV:
		return Reply{FileName: "drain.csv", FileKind: "text/csv", File: drain.CSV(d.Get)}
	case action == watering.LogAdd:
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
	var worked *sheet.Sheet
	near := day.Day(p.Season.LastFrost)
	if len(errs) == 0 && drain.Rows(d.Get) > 0 {
		worked = s.work(p, sheet.Season)
		near = worked.Season.First/2 + worked.Season.Last/2
	}
	log, slips := drain.Read(d.Get, p.Units == unit.US, near)
	hint := watering.Hints(worked, p, log)
	if action != "" {
		r.add("log", watering.Log(d.Get, rows, hint))
	}
	for row := 1; row <= rows || d.Has(drain.Path(row, drain.DayName)); row++ {
		r.add(watering.HintName(row), hint(row))
	}
	html, aloud := watering.Advice(worked, p, log, slips)
	r.add("advice", html)
	if r.Errors = watering.Slips(slips); len(slips) > 0 {
		aloud = form.Sentence(r.Errors[0])
	}
	if action != watering.LogOpen {
		r.Announce = aloud
	}
	return r
}

// without takes a row out of the log; those after it move up.
func without(d *plan.Draft, row int) {
	names := drain.Names()
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
