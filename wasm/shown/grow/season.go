// Package grow shows the season: when to do what, and what the plants take up.
package grow

import (
	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/year/season"
)

// mostBars is how many plantings the picture of the season shows, and mostTasks
// how many tasks the page lists: more is in the calendar's file.
const (
	mostBars  = 40
	mostTasks = 300
)

// Season says when things happen and what does not fit.
func Season(the *scene.Scene) {
	sc := part{the}
	s := sc.S.Season
	if s == nil || len(s.Plantings) == 0 {
		sc.Say("p", "There is nothing to sow yet.")
		return
	}
	sc.Tag("p", sc.seasonWords(s))
	grave := s.Grave()
	sc.conflicts(s, s.Conflicts[:grave])
	if grave < len(s.Conflicts) {
		sc.Say("p", "Worth knowing:")
		sc.conflicts(s, s.Conflicts[grave:])
	}
	caption := words.Say("Dots: in the plug. Dashes: in the block. Thin line: growing in its row. Thick line: harvest. Vertical dashes: frost. In the lowest line, the system: B build, T fill and test, F flush, D drain and store.")
	if n := len(s.Plantings); n > mostBars {
		caption = words.Sentences(caption, words.Say("The first {drawn} of {n} plantings are drawn; the table has all.", words.N(mostBars), words.N(n)))
	}
	sc.Picture(caption, func(class block.Markup, width float64) {
		sc.calendar(class, width, s)
	})
	sc.SameAsTable(func() {
		sc.Table(words.Say("Dates of every planting"), words.Say("Planting"), words.Say("Sow"), words.Say("Seedlings up"),
			words.Say("Into blocks"), words.Say("Plant out"), words.Say("First harvest"), words.Say("Remove plants")).Rows(func(t *block.Table) {
			for i := range s.Plantings {
				g := &s.Plantings[i]
				d := func(stage season.Stage, has bool) string {
					if !has {
						return "–"
					}
					return g.Dates[stage].Words()
				}
				raised, blocked := g.Dates[season.Sow] < g.Dates[season.Slab], g.Dates[season.Block] < g.Dates[season.Slab]
				t.Explained(s.NameBegin(sc.S.Plan, i), words.Say("{rows}, {n} {n|plant|plants}", wording.Rows(g.Rows), words.N(g.Plants)),
					d(season.Sow, raised), d(season.Emerge, raised), d(season.Block, blocked), d(season.Slab, true), d(season.Harvest, !g.Killed), d(season.End, g.Grows()))
			}
		})
		sc.Say("p", "Stages are common practice and a start only: the plant is a better guide than the calendar. Frost dates are averages; ask how late the frost comes in one year of ten.")
	})
}

// seasonWords is the season in a few sentences.
func (sc part) seasonWords(s *season.Season) string {
	said := words.Say("It fits together.")
	if n := s.Grave(); n == 1 {
		said = words.Say("One thing does not fit.")
	} else if n > 1 {
		said = words.Say("{n} {n|thing does|things do} not fit.", words.N(n))
	}
	c := s.Course()
	at := func(i int, stage season.Stage) string { return s.Plantings[i].Dates[stage].Words() }
	name := func(i int) string { return s.Name(sc.S.Plan, i) }
	if c.Sown >= 0 {
		said = words.Sentences(said, words.Say("Sow the first seed, {planting}, on {date}.", name(c.Sown), at(c.Sown, season.Sow)))
	}
	if c.Out >= 0 {
		said = words.Sentences(said, words.Say("Have the system built and tested a week before {date}, when the first plants go out.", at(c.Out, season.Slab)))
		if c.Picked >= 0 {
			said = words.Sentences(said, words.Say("The first harvest is {planting}, about {date}.", name(c.Picked), at(c.Picked, season.Harvest)))
		}
		said = words.Sentences(said, words.Say("The last plants are removed on {date}.", c.End.Words()))
	}
	return said
}

// conflicts lists what does not fit, and what to do.
func (sc part) conflicts(s *season.Season, list []season.Conflict) {
	if len(list) == 0 {
		return
	}
	sc.HTML(`<ul>`)
	const most = 12
	for i := range list {
		if i == most {
			sc.Say("li", "And {n} more of this kind.", words.N(len(list)-most))
			break
		}
		sc.Tag("li", clashes[list[i].Kind](clash{sc, &list[i], s}))
	}
	sc.HTML(`</ul>`)
}

// A clash is what does not fit, of a plan and its season: of one planting, or of
// them all.
type clash struct {
	part
	*season.Conflict
	year *season.Season
}

// planting is the one that it concerns, and its name at the beginning of a
// sentence.
func (c clash) planting() (g *season.Planting, name string) {
	return &c.year.Plantings[c.Planting], c.year.NameBegin(c.S.Plan, c.Planting)
}

func (c clash) begin() string { _, name := c.planting(); return name }

// clashes say what does not fit, and what to do: a row for each kind.
var clashes [season.ConflictKinds]func(c clash) string = [...]func(c clash) string{
	season.NoRow: func(c clash) string {
		return words.Say("{planting} stands in no row: none has this crop, or there are fewer rows. Choose its rows, or remove the planting.", c.begin())
	},
	season.DeadSeed: func(c clash) string {
		g, name := c.planting()
		p := c.S.Plan
		return words.Say("{planting}: seed does not come up at {seedbed}. Keep the seedbed at {low} to {high}. The dates here count as if it did.",
			name, c.seedbed(), c.Amount(unit.Temperature, p.Trait(g.Crop, catalogue.SeedLow)), c.Amount(unit.Temperature, p.Trait(g.Crop, catalogue.SeedHigh)))
	},
	season.FrostOut: func(c clash) string {
		g, name := c.planting()
		out, until := g.Dates[season.Slab], c.Until.Words()
		if out == c.Until {
			return words.Say("{planting} would be planted out on the day of the last frost, {frost}. Frost kills it: no tasks and no water are counted for it. Plant it out after that, or heat.", name, until)
		}
		return words.Say("{planting} would be planted out on {date}, and the last frost comes {n} {n|day|days} later, on {frost}. Frost kills it: no tasks and no water are counted for it. Plant it out after that, or heat.",
			name, out.Words(), days(c.Until-out), until)
	},
	season.FrostKill: func(c clash) string {
		g, name := c.planting()
		l := c.year.Loss(c.S.Plan, c.Conflict)
		return words.Sentences(killed(&l, name, g.Dates[season.Harvest], c.Until), sooner(&l), words.Say("Tasks and water end on {date}.", g.Dates[season.End].Words()))
	},
	season.TwoInRow: func(c clash) string {
		g, _ := c.planting()
		p, out := c.S.Plan, g.Dates[season.Slab]
		return words.Say("Row {row} is not free for {planting} on {date}: {other} stands there until {end}. Move one of them by {n} {n|day|days}, or choose another row.",
			words.N(c.Row+1), c.year.Name(p, c.Planting), out.Words(), c.year.Name(p, c.Other), c.Until.Words(), days(c.Until-out))
	},
	season.NotReady: func(c clash) string {
		g, _ := c.planting()
		out := g.Dates[season.Slab]
		return words.Say("The system is not ready: it is built and tested by {ready}, and the first plants go out on {date}. Begin {n} {n|day|days} earlier, or plant out later.",
			c.Until.Words(), out.Words(), days(c.Until-out))
	},
	season.NoPlace: func(c clash) string {
		places := c.S.Plan.Season.Places
		return words.Say("From {date} on, {n} blocks stand at the same time, and you have places for {places}. Make room for {more} more, or sow some later.",
			c.Until.Words(), words.N(c.Count), words.N(places), words.N(c.Count-places))
	},
	season.Freezing: func(c clash) string {
		return words.Say("The system stays full on {n} {n|day|days} on which there may be frost, from {date} on, because plants need it: a pump, a filter or a pipe that freezes bursts. Heat, have the plants out of their rows two weeks before the first frost, or drain pump, filter and pipes on every evening for which frost is forecast, and fill them again when it has thawed.",
			days(day.Day(c.Count)), c.Until.Words())
	},
	season.EarlyOpen: func(c clash) string {
		return words.Say("{planting} goes out in the open {n} {n|day|days} after the last frost, when a late one is not rare. Have a cover ready, or wait a week.", c.begin(), days(day.Day(c.Count)))
	},
	season.Guessed: func(c clash) string {
		return words.Say("{planting}: days until seedlings are up were not tested at {seedbed}. The dates take those at the nearest tested temperature.", c.begin(), c.seedbed())
	},
	season.Ended: func(c clash) string {
		g, name := c.planting()
		return words.Say("{planting}: it ends after {n} {n|week|weeks} of harvest, so that the system is drained two weeks before the frost of {frost}. In warmth it would go on for {more} {more|week|weeks} more.",
			name, words.N(int(g.Dates[season.End]-g.Dates[season.Harvest])/7), c.Until.Words(), words.N((c.Count+3)/7))
	},
	season.LateStore: func(c clash) string {
		return words.Say("The last plants leave their rows only {n} {n|day|days} before the first frost, {date}, which may come earlier: drain pump, filter and pipes on every evening for which frost is forecast.",
			days(day.Day(c.Count)), c.Until.Words())
	},
	season.Untold: func(c clash) string {
		return words.Say("{planting}: none of its numbers are yours, so dates and water are those of a large fruiting crop. Type what its seed packet says under Crops of your own.", c.begin())
	},
}

// days is how many days that do not fit are, at least one.
func days(n day.Day) string { return words.N(max(int(n), 1)) }

func (sc part) seedbed() string {
	return sc.Amount(unit.Temperature, sc.S.Plan.Season.Seedbed)
}

// killed says that a planting is not harvested because of a frost.
func killed(l *season.Loss, name string, picked, frost day.Day) string {
	if l.Drained {
		return words.Say("{planting}: the first harvest would be on {date}, less than two weeks before the frost of {frost}, when the system is drained already.", name, picked.Words(), frost.Words())
	}
	return words.Say("{planting}: the frost of {frost} kills it before the first harvest, which would be on {date}.", name, frost.Words(), picked.Words())
}

// sooner says by how much sooner a planting that frost kills has to be sown.
func sooner(l *season.Loss) string {
	switch {
	case l.Short > 0:
		return words.Say("The time without frost is {n} {n|day|days} too short for it: heat, or choose a quicker crop.", words.N(l.Short))
	case l.Least < l.Most:
		return words.Say("Sow it {least} to {n} {n|day|days} earlier, or heat.", words.N(l.Least), words.N(l.Most))
	}
	return words.Say("Sow it {n} {n|day|days} earlier, or heat.", words.N(l.Most))
}
