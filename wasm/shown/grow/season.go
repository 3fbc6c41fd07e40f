// Package grow shows the season: when to do what, and what the plants take up.
package grow

import (
	"strconv"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
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
		sc.Tag("p", "There is nothing to sow yet.")
		return
	}
	sc.Tag("p", sc.seasonWords(s))
	grave := s.Grave()
	sc.conflicts(s, s.Conflicts[:grave])
	if grave < len(s.Conflicts) {
		sc.Tag("p", "Worth knowing:")
		sc.conflicts(s, s.Conflicts[grave:])
	}
	words := "Dots: in the plug. Dashes: in the block. Thin line: growing in its row. Thick line: harvest. Vertical dashes: frost. In the lowest line, the system: B build, T fill and test, F flush, D drain and store."
	if len(s.Plantings) > mostBars {
		words += " The first " + strconv.Itoa(mostBars) + " of " + strconv.Itoa(len(s.Plantings)) + " plantings are drawn; the table has all."
	}
	sc.Picture(words, func(class block.Markup, width float64) {
		sc.calendar(class, width, s)
	})
	sc.SameAsTable(func() {
		t := sc.Table("Dates of every planting", "Planting", "Sow", "Seedlings up", "Into blocks", "Plant out", "First harvest", "Remove plants")
		for i := range s.Plantings {
			g := &s.Plantings[i]
			d := func(stage season.Stage, has bool) string {
				if !has {
					return "–"
				}
				return g.Dates[stage].Words()
			}
			raised, blocked := g.Dates[season.Sow] < g.Dates[season.Slab], g.Dates[season.Block] < g.Dates[season.Slab]
			t.Explained(unit.Capital(s.Name(sc.S.Plan, i)), wording.Rows(g.Rows)+", "+wording.Count(g.Plants, "plant", "plants"),
				d(season.Sow, raised), d(season.Emerge, raised), d(season.Block, blocked), d(season.Slab, true), d(season.Harvest, !g.Killed), d(season.End, g.Grows()))
		}
		t.End()
		sc.Tag("p", "Stages are common practice and a start only: the plant is a better guide than the calendar. Frost dates are averages; ask how late the frost comes in one year of ten.")
	})
}

// seasonWords is the season in a few sentences.
func (sc part) seasonWords(s *season.Season) string {
	words := "It fits together."
	if n := s.Grave(); n == 1 {
		words = "One thing does not fit."
	} else if n > 1 {
		words = strconv.Itoa(n) + " things do not fit."
	}
	sown, out, picked, end := -1, -1, -1, day.Day(0)
	for i := range s.Plantings {
		g := &s.Plantings[i]
		if !g.Grows() {
			continue
		}
		first := func(at *int, stage season.Stage) {
			if *at < 0 || g.Dates[stage] < s.Plantings[*at].Dates[stage] {
				*at = i
			}
		}
		if g.Dates[season.Sow] < g.Dates[season.Slab] {
			first(&sown, season.Sow)
		}
		first(&out, season.Slab)
		if !g.Killed {
			first(&picked, season.Harvest)
		}
		end = max(end, g.Dates[season.End])
	}
	at := func(i int, stage season.Stage) string { return s.Plantings[i].Dates[stage].Words() }
	name := func(i int) string { return s.Name(sc.S.Plan, i) }
	if sown >= 0 {
		words += " Sow the first seed, " + name(sown) + ", on " + at(sown, season.Sow) + "."
	}
	if out >= 0 {
		words += " Have the system built and tested a week before " + at(out, season.Slab) + ", when the first plants go out."
		if picked >= 0 {
			words += " The first harvest is " + name(picked) + ", about " + at(picked, season.Harvest) + "."
		}
		words += " The last plants are removed on " + end.Words() + "."
	}
	return words
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
			sc.Tag("li", "And "+strconv.Itoa(len(list)-most)+" more of this kind.")
			break
		}
		sc.Tag("li", sc.conflict(s, &list[i]))
	}
	sc.HTML(`</ul>`)
}

func (sc part) conflict(s *season.Season, c *season.Conflict) string {
	p := sc.S.Plan
	name, out, picked, end := "", day.Day(0), day.Day(0), day.Day(0)
	crop := 0
	if c.Planting >= 0 {
		g := &s.Plantings[c.Planting]
		name, crop = unit.Capital(s.Name(p, c.Planting)), g.Crop
		out, picked, end = g.Dates[season.Slab], g.Dates[season.Harvest], g.Dates[season.End]
	}
	seedbed := sc.Amount(unit.Temperature, p.Season.Seedbed)
	days := func(n day.Day) string { return wording.Count(max(int(n), 1), "day", "days") }
	switch c.Kind {
	case season.NoRow:
		return name + " stands in no row: none has this crop, or there are fewer rows. Choose its rows, or remove the planting."
	case season.DeadSeed:
		return name + ": seed does not come up at " + seedbed + ". Keep the seedbed at " + sc.Amount(unit.Temperature, p.Trait(crop, catalogue.SeedLow)) + " to " + sc.Amount(unit.Temperature, p.Trait(crop, catalogue.SeedHigh)) + ". The dates here count as if it did."
	case season.FrostOut:
		words := name + " would be planted out on "
		if out == c.Until {
			words += "the day of the last frost, "
		} else {
			words += out.Words() + ", and the last frost comes " + days(c.Until-out) + " later, on "
		}
		return words + c.Until.Words() + ". Frost kills it: no tasks and no water are counted for it. Plant it out after that, or heat."
	case season.FrostKill:
		words := name + ": the frost of " + c.Until.Words() + " kills it before the first harvest, which would be on " + picked.Words() + "."
		if picked < c.Until {
			words = name + ": the first harvest would be on " + picked.Words() + ", less than two weeks before the frost of " + c.Until.Words() + ", when the system is drained already."
		}
		// So much sooner, and sooner than that it would go out before the last frost.
		frost, _, _ := season.Frosts(p, out)
		sooner, room := picked-season.Cleared(c.Until)+1, out-frost-1
		if sooner > room {
			words += " The time without frost is " + days(sooner-room) + " too short for it: heat, or choose a quicker crop."
		} else {
			words += " Sow it "
			if sooner < room {
				words += strconv.Itoa(int(sooner)) + " to "
			}
			words += days(room) + " earlier, or heat."
		}
		return words + " Tasks and water end on " + end.Words() + "."
	case season.TwoInRow:
		return "Row " + strconv.Itoa(c.Row+1) + " is not free for " + s.Name(p, c.Planting) + " on " + out.Words() + ": " + s.Name(p, c.Other) + " stands there until " + c.Until.Words() + ". Move one of them by " + days(c.Until-out) + ", or choose another row."
	case season.NotReady:
		return "The system is not ready: it is built and tested by " + c.Until.Words() + ", and the first plants go out on " + out.Words() + ". Begin " + days(c.Until-out) + " earlier, or plant out later."
	case season.NoPlace:
		return "From " + c.Until.Words() + " on, " + strconv.Itoa(c.Count) + " blocks stand at the same time, and you have places for " + strconv.Itoa(p.Season.Places) + ". Make room for " + strconv.Itoa(c.Count-p.Season.Places) + " more, or sow some later."
	case season.Freezing:
		return "The system stays full on " + days(day.Day(c.Count)) + " on which there may be frost, from " + c.Until.Words() + " on, because plants need it: a pump, a filter or a pipe that freezes bursts. Heat, have the plants out of their rows two weeks before the first frost, or drain pump, filter and pipes on every evening for which frost is forecast, and fill them again when it has thawed."
	case season.LateStore:
		return "The last plants leave their rows only " + days(day.Day(c.Count)) + " before the first frost, " + c.Until.Words() + ", which may come earlier: drain pump, filter and pipes on every evening for which frost is forecast."
	case season.EarlyOpen:
		return name + " goes out in the open " + days(day.Day(c.Count)) + " after the last frost, when a late one is not rare. Have a cover ready, or wait a week."
	case season.Guessed:
		return name + ": days until seedlings are up were not tested at " + seedbed + ". The dates take those at the nearest tested temperature."
	case season.Untold:
		return name + ": none of its numbers are yours, so dates and water are those of a large fruiting crop. Type what its seed packet says under Crops of your own."
	}
	return name + ": it ends after " + wording.Count(int(end-picked)/7, "week", "weeks") + " of harvest, so that the system is drained two weeks before the frost of " + c.Until.Words() + ". In warmth it would go on for " + wording.Count((c.Count+3)/7, "week", "weeks") + " more."
}
