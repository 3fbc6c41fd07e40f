package view

import (
	"slices"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/year/season"
)

// tasks lists what is to be done, a line for each week, for the wall.
func (sc *scene) tasks() {
	s := sc.s.Season
	if s == nil || len(s.Tasks) == 0 {
		sc.tag("p", "There is nothing to do yet.")
		return
	}
	sc.cardName(s.First)
	sc.html(`<p>`).text("From " + s.First.Words() + " to " + s.Last.Words()).html(`. <a href="#h-share">Save it as a calendar file</a> to have it on your phone.</p>`)
	list := s.Tasks[:min(len(s.Tasks), mostTasks)]
	weekly := func(t *season.Task) bool { return t.Every == 7 && t.Times > 1 }
	t := sc.table("Tasks by week", "Week from Monday", "What")
	if slices.ContainsFunc(list, func(t season.Task) bool { return weekly(&t) }) {
		sc.html(`<tr><th scope="row">Every week</th><td>`)
		sc.week(s, list, weekly, func(k *season.Task) string { return k.Day.Short() + " to " + k.Last().Words() })
		sc.html(`</td></tr>`)
	}
	monday := func(t *season.Task) day.Day { return t.Day - day.Day(t.Day.Weekday()) }
	for i := 0; i < len(list); {
		m, any := monday(&list[i]), false
		from := i
		for ; i < len(list) && monday(&list[i]) == m; i++ {
			any = any || !weekly(&list[i])
		}
		if !any {
			continue
		}
		sc.html(`<tr><th scope="row">`).text(m.Words()).html(`</th><td>`)
		sc.week(s, list[from:i], func(k *season.Task) bool { return !weekly(k) }, func(k *season.Task) string {
			when := k.Day.WeekdayName()[:3] + " " + k.Day.Short()
			switch {
			case k.Days > 1:
				when += " to " + k.Last().Short()
			case k.Times > 1:
				when += " and every " + count(k.Every, "day", "days") + " until " + k.Last().Short()
			}
			return when
		})
		sc.html(`</td></tr>`)
	}
	t.end()
	if n := len(s.Tasks) - mostTasks; n > 0 {
		sc.tag("p", "And "+count(n, "more task", "more tasks")+", which the calendar file holds.")
	}
	sc.fold("How each of these is done")
	how := sc.table("How each task is done", "Task", "How")
	var told [season.TaskKinds]bool
	for i := range s.Tasks {
		if k := &s.Tasks[i]; !told[k.Kind] {
			told[k.Kind] = true
			how.row(k.Kind.String(), k.Note())
		}
	}
	how.end()
	sc.html(`</details>`)
}

// week writes the tasks that are wanted, a line for each, in a cell. What is
// the same but for its planting stands in one line.
func (sc *scene) week(s *season.Season, list []season.Task, wanted func(*season.Task) bool, when func(*season.Task) string) {
	was, kind := "", season.TaskKind(-1)
	for i := range list {
		k := &list[i]
		if !wanted(k) {
			continue
		}
		if w := when(k); w != was || k.Kind != kind {
			if was != "" {
				sc.html(`<br>`)
			}
			sc.tag("strong", w).text(" " + s.Title(sc.s.Plan, k))
			was, kind = w, k.Kind
			continue
		}
		sc.text("; " + s.For(sc.s.Plan, k))
	}
}
