package scene

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/year/season"
)

// OutOfSeason says when the season begins, or has ended, with what moves it to
// another year, and whether that is all there is to say on the day of the sheet.
func (sc *Scene) OutOfSeason(t sheet.Today) bool {
	s := sc.S.Season
	switch t.Stand {
	case season.Running:
		return false
	case season.NotBegun:
		sc.Say("p", "Today is {date}. The season begins on {first}: {task}.", sc.S.Now.Day.Words(), s.First.Words(), s.Title(sc.S.Plan, &s.Tasks[0]))
	case season.Over:
		sc.Say("p", "Today is {date}. The season ended on {last}.", sc.S.Now.Day.Words(), s.Last.Words())
	case season.Nowhere:
		if sc.S.Now.Known() {
			sc.Say("p", "There is nothing to do yet.")
		} else {
			sc.Say("p", "This page does not know what day it is.")
		}
	}
	if t.Years != 0 {
		sc.moves(t.Years)
	}
	return true
}

// moves is a button that moves the season by some years.
func (sc *Scene) moves(years int) {
	from, to := sc.S.Season.MovedYears(years)
	name := words.Say("Move the season to {year}", words.N(from))
	if from != to {
		name = words.Say("Move the season to {year} and {next}", words.N(from), words.N(to))
	}
	sc.HTML(`<p><button class="button" form="plan"`).Attr("name", plan.ActionName).Attr("value", plan.SeasonTo+words.N(sc.S.Plan.SeasonYear()+years)).HTML(`>`).Text(name).HTML(`</button></p>`)
}
