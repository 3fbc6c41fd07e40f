package page

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
)

// The day comes with the question, and is not remembered for the next one.
func TestTheDayComesWithTheQuestion(t *testing.T) {
	var s Session
	data := start(t)
	data.Set(StepName, stepOf(sheet.Season))
	data.Set(plan.AtName, "water")
	for _, c := range [][2]string{{"2027-07-30T14:05", "If the pump stops now, at 14:05, "}, {"", "This page does not know what day it is."}, {"2027-07-30", "Today, 30 July 2027: "}, {"yesterday", "This page does not know what day it is."}} {
		data.Set(TodayName, c[0])
		if got, there := fragment(s.Rest(data.Encode()), "today"); !there || !strings.Contains(strings.ReplaceAll(got, "\u00a0", " "), c[1]) {
			t.Errorf("on %q: %q is not in %s", c[0], c[1], got)
		}
	}
	if got, there := fragment(new(Session).Rest(data.Encode()), "today"); !there || !strings.Contains(got, "does not know what day") {
		t.Errorf("a page that has told no day is told of one: %s", got)
	}
}

// One button moves the season; the form is sent again, and the reader is led to it.
func TestTheSeasonMovesByOneButton(t *testing.T) {
	var s Session
	data := start(t)
	data.Set(TodayName, "2027-10-02")
	data.Set(StepName, stepOf(sheet.Season))
	data.Set(plan.AtName, "grow/season")
	today, _ := fragment(s.Rest(data.Encode()), "week")
	_, after, _ := strings.Cut(today, `name="action" value="`)
	action, _, _ := strings.Cut(after, `"`)
	data.Set("action", action)
	r := s.Answer(data.Encode())
	form, sent := fragment(r, "ask")
	if action != "season-to.2028" || !sent || !strings.Contains(form, "2028-05-12") || strings.Contains(form, "2027-05-12") || len(r.Errors) > 0 || r.Focus != "h-job" || !strings.HasPrefix(r.Announce, "The season is moved.") {
		t.Errorf("%q: focus %q, announced %q, %v, the form is sent: %t", action, r.Focus, r.Announce, r.Errors, sent)
	}
	// What sets the clock leads to the place of the clock.
	data.Set("action", "set-clock")
	data.Set(plan.AtName, "grow/sky")
	if r = s.Answer(data.Encode()); r.Focus != "f-sky" {
		t.Errorf("the clock is set at %q", r.Focus)
	}
	if form, _ = fragment(r, "ask"); !strings.Contains(form, `id="f-sky"`) {
		t.Error("nothing in the form has the id f-sky")
	}
}

// While the timer waters something the job of the timer comes first, and in winter it
// does not.
func TestWaterComesFirstInSeason(t *testing.T) {
	for today, want := range map[string]string{"2027-07-30T14:05": "water", "2027-12-24": "answer", "2027-04-05": "answer", "": "answer"} {
		var s Session
		data := start(t)
		data.Set(StepName, stepOf(sheet.Season))
		data.Set(TodayName, today)
		if r := s.Rest(data.Encode()); r.First != want {
			t.Errorf("on %q %q comes first, want %s", today, r.First, want)
		}
	}
}

// What is grave stands first as soon as it is known, and stays there while it is typed
// on; what is mended goes back to its place.
func TestTheGravestPartComesFirst(t *testing.T) {
	var s Session
	data := start(t)
	data.Set(plan.AtName, "mend")
	faults := func(r Reply) bool { return slices.Index(r.Order, "faults") < slices.Index(r.Order, "flush") }
	change := func(regulator string) (at, then bool) {
		data.Set("supply.regulator", regulator)
		at = faults(s.Answer(data.Encode()))
		data.Set(StepName, strconv.Itoa(int(sheet.Faulting)+1))
		return at, faults(s.Rest(data.Encode()))
	}
	for _, c := range []struct {
		regulator, why string
		at, then       bool
	}{
		{data.Get("supply.regulator"), "no emitter is outside its range", false, false},
		{"0.9", "one is, which is not worked out at once", false, true},
		{"0.8", "it is still", true, true},
		{data.Get("supply.regulator"), "it is mended", true, false},
	} {
		if at, then := change(c.regulator); at != c.at || then != c.then {
			t.Errorf("%s: what faults do comes first at once: %v, want %v; and then: %v, want %v", c.why, at, c.at, then, c.then)
		}
	}
}
