package page

import (
	"cmp"
	"slices"
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

// A season that is moved to another year is the next edition of the same calendar: every event
// keeps its name, and has a later date and a higher number.
func TestAMovedSeasonReplacesItsCalendar(t *testing.T) {
	read := func(to string) (ids []string, first string, edition string) {
		d := plan.DraftOf(plan.Default())
		d.Set(plan.ActionName, to)
		var s Session
		for line := range strings.Lines(s.Calendar(d.Encode()).File) {
			switch name, value, _ := strings.Cut(strings.TrimSpace(line), ":"); name {
			case "UID":
				ids = append(ids, value)
			case "SEQUENCE":
				edition = value
			case "DTSTART;VALUE=DATE":
				first = min(value, cmp.Or(first, value))
			}
		}
		slices.Sort(ids)
		return ids, first, edition
	}
	ids, first, edition := read("")
	moved, later, next := read(plan.SeasonTo + "2028")
	if len(ids) < 10 || !slices.Equal(ids, moved) || edition != "0" || next != "1" || first[:4] != "2027" || later[:4] != "2028" {
		t.Errorf("edition %s from %s, then %s from %s\n%v\n%v", edition, first, next, later, ids, moved)
	}
	if _, _, same := read(plan.SeasonTo + "2027"); same != "0" {
		t.Errorf("edition %s of a season that stays", same)
	}
}
