package page

import (
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
)

func TestCalendar(t *testing.T) {
	d := plan.DraftOf(plan.Default())
	r := new(Session).Calendar(d.Encode())
	if r.FileName != "millrace-tunnel.ics" || !strings.HasPrefix(r.FileKind, "text/calendar") || !strings.Contains(r.File, "SUMMARY:Plant out: tomato\\, 30 plants\r\n") || len(r.Errors) > 0 {
		t.Errorf("%s, %s, %v:\n%.400s", r.FileName, r.FileKind, r.Errors, r.File)
	}
	d.Set("season.last-frost", "soon")
	if r := new(Session).Calendar(d.Encode()); r.File != "" || len(r.Errors) != 1 || r.Errors[0].Path != "season.last-frost" {
		t.Errorf("a wrong plan: %v, %.100s", r.Errors, r.File)
	}
}

// When the last record of a list goes, the reader is led to the list.
func TestFocusOfAnEmptyList(t *testing.T) {
	d := plan.DraftOf(plan.Default())
	d.Set(plan.ActionName, "add-planting")
	if r := new(Session).Answer(d.Encode()); r.Focus != "s-plantings.1" {
		t.Errorf("focus %q after the first is added", r.Focus)
	}
	d.Apply()
	d.Set(plan.ActionName, "remove-planting.1")
	if r := new(Session).Answer(d.Encode()); r.Focus != "f-plantings" {
		t.Errorf("focus %q after the last is removed", r.Focus)
	}
}
