package page

import (
	"html"
	"math"
	"net/url"
	"regexp"
	"slices"
	"strings"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/year/shots"
)

var useReading = regexp.MustCompile(`name="action" value="(correct-to[^"]*)"`)

// reading is a form of the default plan in July at its water, with what a button of the plan asks for.
func reading(t *testing.T, link, action string) url.Values {
	t.Helper()
	ask, _ := fragment(new(Session).Open(link+"/water"), "ask")
	data := filled(ask)
	data.Set(plan.AtName, "water")
	data.Set(TodayName, "2027-07-20")
	data.Set(plan.ActionName, action)
	return data
}

// cardOf is the card of a link's plan.
func cardOf(t *testing.T, link string) (*plan.Plan, *shots.Card) {
	t.Helper()
	p, err := carry.ReadLink(strings.TrimPrefix(link, "#"))
	if err != nil {
		t.Fatal(err)
	}
	s := sheet.Answer(p)
	s.Explore(sheet.Season)
	return p, s.Shots
}

// A drain reading that is used is part of the plan: its card, today's setting and the calendar go by
// it from the day after on, and not before; it says so, is measured, and can be taken back.
func TestAReadingThatIsUsed(t *testing.T) {
	var s Session
	was := link(plan.Default())
	log := []string{"2027-07-12|5|||||11|5", "2027-07-13|5|||||11|5"}
	advice, _ := fragment(s.Feedback(noted(reading(t, was, ""), log...).Encode()), "advice")
	m := useReading.FindStringSubmatch(advice)
	if m == nil || !strings.Contains(advice, "Use this reading from 14 July on") {
		t.Fatal(advice)
	}
	r := s.Answer(reading(t, was, html.UnescapeString(m[1])).Encode())
	if len(r.Errors) > 0 || r.Focus != "h-job" || !strings.HasPrefix(r.Announce, "The card is written anew.") {
		t.Errorf("%v, focus %q, %q", r.Errors, r.Focus, r.Announce)
	}
	_, before := cardOf(t, was)
	p, after := cardOf(t, r.Link)
	if f := plan.FieldNamed("sky", "adjust"); p.Origin(f, 0) != plan.Measured || p.Sky.Adjust < 1.05 || p.Sky.Adjust > 1.3 {
		t.Errorf("the correction is %v, %s", p.Sky.Adjust, p.Origin(f, 0).Code())
	}
	// What each day needs is found apart: before the reading as it was, and from then on that
	// many times as much; the starts stay.
	on := day.Of(2027, 7, 14)
	if !slices.Equal(before.Hand.Starts, after.Hand.Starts) {
		t.Errorf("the starts were %v and are %v", before.Hand.Starts, after.Hand.Starts)
	}
	at := func(c *shots.Card, d day.Day) *shots.Line {
		for i := range c.Lines {
			if l := &c.Lines[i]; d >= l.From && d < l.From+day.Day(l.Days) {
				return l
			}
		}
		return nil
	}
	more := 0
	for d := before.Lines[0].From; at(before, d) != nil; d++ {
		a, b := at(before, d), at(after, d)
		if d >= on && b.From < on {
			t.Fatalf("%s stands in a line from %s on", d.ISO(), b.From.ISO())
		}
		for sky := range a.Sets {
			x, y := &a.Sets[sky].Zones[0], &b.Sets[sky].Zones[0]
			if d < on-13 && (x.Given != y.Given || len(x.Shots) != len(y.Shots)) {
				t.Errorf("%s: %g s in %d, were %g in %d", d.ISO(), y.Given, len(y.Shots), x.Given, len(x.Shots))
			}
			if d >= on && a.From >= on && math.Abs(y.Run-x.Run*p.Sky.Adjust) > 1e-6*x.Run {
				t.Errorf("%s: %g s are needed, were %g", d.ISO(), y.Run, x.Run)
			}
			if d >= on && y.Given > x.Given {
				more++
			}
			if y.Given < y.Run-1e-6 || len(y.Shots) > p.Timer.Programmes {
				t.Errorf("%s: %g s in %d shots, %g needed", d.ISO(), y.Given, len(y.Shots), y.Run)
			}
		}
	}
	if more < 50 {
		t.Errorf("more on %d days", more)
	}
	// It is said at today's setting and at the card, and the log knows that it is used.
	data := reading(t, r.Link, "")
	data.Set(StepName, stepOf(sheet.Season))
	for _, id := range []string{"today", "timer"} {
		if got, _ := fragment(s.Rest(data.Encode()), id); !strings.Contains(got, "From 14 July 2027 on the card is corrected by your drain reading: plants are counted to take up ") {
			t.Errorf("%s does not say it: %.400s", id, got)
		}
		s.sent = nil
	}
	again, _ := fragment(s.Feedback(noted(reading(t, r.Link, ""), log...).Encode()), "advice")
	if useReading.MatchString(again) || !strings.Contains(again, "The plan goes by this reading") {
		t.Error(again)
	}
	// The calendar has another setting from then on, and the same before.
	form := func(link string) url.Values { return reading(t, link, "") }
	old, new := settings(s.Calendar(form(was).Encode()).File), settings(s.Calendar(form(r.Link).Encode()).File)
	if _, there := new["20270714"]; !there || new["20270714"] == old["20270714"] || new["20270515"] != old["20270515"] {
		t.Errorf("%v\n%v", old, new)
	}
	// Taken back, the plan is what it was.
	back := s.Answer(reading(t, r.Link, plan.CorrectBack).Encode())
	if q, _ := cardOf(t, back.Link); q.Sky != plan.Default().Sky || back.Link != was {
		t.Errorf("%+v\n%s, was\n%s", q.Sky, back.Link, was)
	}
}

// settings are what a calendar has the timer set to, by date.
func settings(file string) map[string]string {
	all := map[string]string{}
	on := ""
	for line := range strings.Lines(strings.ReplaceAll(file, "\r\n ", "")) {
		switch name, value, _ := strings.Cut(strings.TrimSpace(line), ":"); {
		case name == "DTSTART;VALUE=DATE":
			on = value
		case name == "SUMMARY" && strings.HasPrefix(value, "Set the timer"):
			all[on] = value
		}
	}
	return all
}

// A second reading goes on from the first: what was counted before it stays until then, and is
// what comes back.
func TestASecondReading(t *testing.T) {
	d := plan.DraftOf(plan.Default())
	step := func(action string) *plan.Plan {
		d.Set(plan.ActionName, action)
		if got := d.Apply(); got != "drain" {
			t.Fatalf("%s leads to %q", action, got)
		}
		p, errs := d.Read()
		if len(errs) > 0 {
			t.Fatal(errs)
		}
		return p
	}
	first, second := day.Of(2027, 7, 1), day.Of(2027, 7, 15)
	step(plan.Default().Sky.CorrectTo(first, 1.1))
	p := step(plan.Default().Sky.CorrectTo(second, 1.3))
	for on, want := range map[day.Day]float64{first: 1.1, second - 1: 1.1, second: 1.3, second + 300: 1.3} {
		if got := p.Sky.AdjustOn(on); math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %g, want %g", on.ISO(), got, want)
		}
	}
	if p = step(plan.CorrectBack); math.Abs(p.Sky.AdjustOn(second)-1.1) > 1e-9 || p.Sky.Corrected() {
		t.Errorf("%+v", p.Sky)
	}
	if sky := plan.Default().Sky; sky.CorrectTo(second, 4.5) != "" || sky.CorrectTo(second, 0.1) != "" {
		t.Error("a correction that no plan may hold")
	}
	for _, wrong := range []string{plan.CorrectTo + "soon.110", plan.CorrectTo + "2027-07-01.900", plan.CorrectTo, plan.CorrectBack} {
		d := plan.DraftOf(plan.Default())
		d.Set(plan.ActionName, wrong)
		if got := d.Apply(); got != "" {
			t.Errorf("%s leads to %q", wrong, got)
		}
	}
}
