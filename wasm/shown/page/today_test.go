package page

import (
	"strings"
	"testing"
)

// The day comes with the question, and is not remembered for the next one.
func TestTheDayComesWithTheQuestion(t *testing.T) {
	var s Session
	data := start(t)
	data.Set(StepName, "1")
	for _, c := range [][2]string{{"2027-07-30T14:05", "If the pump stops now, at 14:05, "}, {"", "This page does not know what day it is."}, {"2027-07-30", "Today, 30 July 2027: "}, {"yesterday", "This page does not know what day it is."}} {
		data.Set(TodayName, c[0])
		if got, there := fragment(s.Rest(data.Encode()), "today"); !there || !strings.Contains(strings.ReplaceAll(got, "\u00a0", " "), c[1]) {
			t.Errorf("on %q: %q is not in %s", c[0], c[1], got)
		}
	}
	if got, there := fragment(Start(), "today"); !there || strings.Contains(got, "Today") {
		t.Errorf("the page as it is delivered knows the day: %s", got)
	}
}

// One button moves the season; the form is sent again, and the reader is led to it.
func TestTheSeasonMovesByOneButton(t *testing.T) {
	var s Session
	data := start(t)
	data.Set(TodayName, "2027-10-02")
	data.Set("step", "1")
	today, _ := fragment(s.Rest(data.Encode()), "today")
	_, after, _ := strings.Cut(today, `name="action" value="`)
	action, _, _ := strings.Cut(after, `"`)
	data.Set("action", action)
	r := s.Answer(data.Encode())
	form, sent := fragment(r, "ask")
	if action != "season-to.2028" || !sent || !strings.Contains(form, "2028-05-12") || strings.Contains(form, "2027-05-12") || len(r.Errors) > 0 || r.Focus != "s-season" || !strings.HasPrefix(r.Announce, "The season is moved.") {
		t.Errorf("%q: focus %q, announced %q, %v, the form is sent: %t", action, r.Focus, r.Announce, r.Errors, sent)
	}
	if !strings.Contains(form, `id="s-season"`) {
		t.Error("nothing in the form has the id s-season")
	}
}
