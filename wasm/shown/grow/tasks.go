package grow

import (
	"slices"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/care"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/year/season"
)

// Tasks lists what is to be done, a line for each week, for the wall.
func Tasks(the *scene.Scene) {
	sc := part{the}
	s := sc.S.Season
	if s == nil || len(s.Tasks) == 0 {
		sc.Say("p", "There is nothing to do yet.")
		return
	}
	sc.CardName(s.First)
	sc.Say("p", "From {first} to {last}.", s.First.Words(), s.Last.Words())
	sc.HTML(`<p class="screen">`).Linked("#h-share", "[Save it as a calendar file] to have it on your phone.").HTML(`</p>`)
	list := s.Tasks[:min(len(s.Tasks), mostTasks)]
	weekly := func(t *season.Task) bool { return t.Every == 7 && t.Times > 1 }
	sc.Table(words.Say("Tasks by week"), words.Say("Week from Monday"), words.Say("What")).Rows(func(*block.Table) {
		if slices.ContainsFunc(list, func(t season.Task) bool { return weekly(&t) }) {
			sc.HTML(`<tr><th scope="row">`).Text(words.Say("Every week")).HTML(`</th><td>`)
			sc.week(s, list, weekly, func(k *season.Task) string { return words.Say("{first} to {last}", k.Day.Short(), k.Last().Words()) })
			sc.HTML(`</td></tr>`)
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
			sc.HTML(`<tr><th scope="row">`).Text(m.Words()).HTML(`</th><td>`)
			sc.week(s, list[from:i], func(k *season.Task) bool { return !weekly(k) }, func(k *season.Task) string {
				switch {
				case k.Days > 1:
					return words.Say("{first} to {last}", k.Day.InWeek(), k.Last().Short())
				case k.Times > 1:
					return words.Say("{first} and every {n} {n|day|days} until {last}", k.Day.InWeek(), words.N(k.Every), k.Last().Short())
				}
				return k.Day.InWeek()
			})
			sc.HTML(`</td></tr>`)
		}
	})
	if n := len(s.Tasks) - mostTasks; n > 0 {
		sc.Say("p", "And {n} {n|more task|more tasks}, which the calendar file holds.", words.N(n))
	}
	var all care.Set
	for i := range list {
		all |= list[i].Kind.Hazards()
	}
	sc.HTML(`<div class="careful">`)
	sc.Careful(all)
	sc.HTML(`</div>`)
	sc.Fold(words.Say("How each of these is done"), func() {
		sc.Table(words.Say("How each task is done"), words.Say("Task"), words.Say("How")).Rows(func(how *block.Table) {
			var told [season.TaskKinds]bool
			for i := range s.Tasks {
				if k := &s.Tasks[i]; !told[k.Kind] {
					told[k.Kind] = true
					how.Row(k.Kind.String(), words.Sentences(append([]string{k.Note()}, care.Short(k.Kind.Hazards(), sc.S.Plan)...)...))
				}
			}
		})
	})
}

// week writes the tasks that are wanted, a line for each, in a cell. What is
// the same but for its planting stands in one line.
func (sc part) week(s *season.Season, list []season.Task, wanted func(*season.Task) bool, when func(*season.Task) string) {
	was, kind := "", season.TaskKind(-1)
	for i := range list {
		k := &list[i]
		if !wanted(k) {
			continue
		}
		if w := when(k); w != was || k.Kind != kind {
			if was != "" {
				sc.Beware(kind.Hazards())
				sc.HTML(`<br>`)
			}
			sc.Tag("strong", w).HTML(" ").Text(s.Title(sc.S.Plan, k))
			was, kind = w, k.Kind
			continue
		}
		sc.HTML("; ").Text(s.For(sc.S.Plan, k))
	}
	if was != "" {
		sc.Beware(kind.Hazards())
	}
}
