package view

import (
	"strconv"

	"evenrow/wasm/day"
	"evenrow/wasm/season"
)

// tasks lists what is to be done, week by week, for the wall.
func (sc *scene) tasks() {
	s := sc.s.Season
	if s == nil || len(s.Tasks) == 0 {
		sc.tag("p", "There is nothing to do yet.")
		return
	}
	sc.tag("p", "From "+s.First.Words()+" to "+s.Last.Words()+". Weeks begin on Monday. Save it as a calendar file to have it on your phone.")
	t := sc.table("What to do, week by week", "What, and how", "When")
	var told [season.TaskKinds]bool
	row := func(k *season.Task, when string) {
		if told[k.Kind] { // how is said once
			t.row(s.Title(sc.s.Plan, k), when)
			return
		}
		told[k.Kind] = true
		t.explained(s.Title(sc.s.Plan, k), k.Note(), when)
	}
	repeated := false
	for i := range s.Tasks {
		k := &s.Tasks[i]
		if k.Times < 2 || k.Every != 7 || i >= mostTasks {
			continue
		}
		if !repeated {
			t.group("Every week")
		}
		repeated = true
		row(k, k.Day.Words()+" to "+k.Last().Words())
	}
	monday := day.Day(0)
	for i := range s.Tasks {
		k := &s.Tasks[i]
		if i >= mostTasks || k.Times > 1 && k.Every == 7 {
			continue
		}
		if m := k.Day - day.Day(k.Day.Weekday()); m != monday {
			monday = m
			t.group("Week of " + monday.Words())
		}
		when := k.Day.WeekdayName() + ", " + k.Day.Short()
		switch {
		case k.Days > 1:
			when += " to " + k.Last().Short()
		case k.Times > 1:
			when += ", then every " + count(k.Every, "day", "days") + " until " + k.Last().Short()
		}
		row(k, when)
	}
	t.end()
	if n := len(s.Tasks) - mostTasks; n > 0 {
		sc.tag("p", "And "+strconv.Itoa(n)+" more tasks, which the calendar file holds.")
	}
}
