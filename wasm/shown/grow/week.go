package grow

import (
	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/care"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/year/season"
)

// Week says what is to be done in the week from the day of the sheet on.
func Week(the *scene.Scene) {
	sc := part{the}
	if sc.OutOfSeason(sc.S.Today()) {
		return
	}
	s, on := sc.S.Season, sc.S.Now.Day
	now, late := s.Week(on)
	next := s.Next(on)
	coming := words.Say("Nothing comes after that.")
	if next != nil {
		coming = words.Say("Next: {task}, on {date}.", s.Title(sc.S.Plan, next.Task), next.On.Words())
	}
	if len(now) == 0 {
		sc.Tag("p", words.Sentences(words.Say("Today is {date}. Nothing has to be done this week.", on.Words()), coming))
	} else {
		sc.Say("p", "Today is {date}. From today to {last}:", on.Words(), (on + 6).Short())
		sc.due(s, now)
		sc.Tag("p", coming)
	}
	if len(late) > 0 {
		sc.Say("p", "Of the last seven days, if it is not done yet:")
		sc.due(s, late)
	}
}

// due lists tasks with their days, and what can hurt in them.
func (sc part) due(s *season.Season, list []season.Due) {
	var all care.Set
	sc.HTML(`<ul>`)
	for i := range list {
		d := &list[i]
		when := d.On.InWeek()
		if end := d.On + day.Day(d.Days-1); d.Days > 1 {
			when = words.Say("{first} to {last}", d.On.InWeek(), end.Short())
		}
		sc.HTML(`<li>`).Tag("strong", when).HTML(" ").Text(s.Title(sc.S.Plan, d.Task))
		sc.Beware(d.Kind.Hazards())
		sc.HTML(`</li>`)
		all |= d.Kind.Hazards()
	}
	sc.HTML(`</ul>`)
	sc.Careful(all)
}
