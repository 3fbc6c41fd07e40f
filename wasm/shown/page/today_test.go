package page

import (
	"slices"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
)

// The day comes with the question, and is not remembered for the next one.
func TestTheDayComesWithTheQuestion(t *testing.T) {
	var s Session
	data := start(t)
	data.Set(StepName, "2")
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
	data.Set("step", "2")
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
		data.Set(StepName, "2")
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
	data.Set(plan.AtName, "water")
	tank := func(r Reply) bool { return slices.Index(r.Order, "tank") < slices.Index(r.Order, "shots") }
	explore := func() Reply {
		data.Set(StepName, "2")
		return s.Rest(data.Encode())
	}
	if s.Answer(data.Encode()); tank(explore()) {
		t.Error("a tank that holds stands first")
	}
	data.Set("supply.tank", "50")
	if tank(s.Answer(data.Encode())) {
		t.Error("the tank stands first before it is worked out")
	}
	if !tank(explore()) {
		t.Errorf("a tank that a day empties does not stand first: %v", s.graded)
	}
	data.Set("supply.tank", "51")
	if !tank(s.Answer(data.Encode())) {
		t.Error("the tank leaves its place while it is worked out again")
	}
	data.Set("supply.tank", "2000")
	if !tank(s.Answer(data.Encode())) || tank(explore()) {
		t.Error("a tank that holds again stays first")
	}
}
