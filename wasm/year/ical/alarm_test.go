package ical

import (
	"strings"
	"testing"

	"evenrow/wasm/ground/day"
)

// An alarm has the three properties that one on a display needs, in an order that
// the grammar allows, within its event (RFC 5545, sections 3.6.6, 3.8.6.1 and
// 3.8.6.3). An event without one has none.
func TestAlarm(t *testing.T) {
	e := Event{UID: "u", First: day.Of(2027, 5, 16), Days: 1, Summary: "Set the timer: 8 × 6 min, at once", Alarm: 6}
	got := strings.Join(unfold(one(e)), "\n")
	want := "BEGIN:VALARM\nACTION:DISPLAY\nDESCRIPTION:Set the timer: 8 × 6 min\\, at once\nTRIGGER:-PT6H\nEND:VALARM\nEND:VEVENT\n"
	if !strings.Contains(got, want) {
		t.Errorf("%s\nlacks\n%s", got, want)
	}
	e.Alarm = 0
	if got := one(e); strings.Contains(got, "ALARM") || strings.Contains(got, "TRIGGER") {
		t.Error(got)
	}
}
