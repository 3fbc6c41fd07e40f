// Package view turns a worked-out plan into the HTML and SVG of the page: the
// same fragments for the pre-rendered example, the browser and print.
//
// A fragment is the content of the element that carries its ID. Every picture
// is drawn for two widths, so that no text in it falls below 11 px, and has a
// table that says the same. Nothing here computes water: a number that is not
// known, or not finite, is printed as a dash.
package view

import (
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
)

// A Fragment is the content of one place on the page.
type Fragment struct {
	ID   string // of the element whose content it is
	HTML string
}

// A Linker returns the address of a plan within the page, beginning with "#".
type Linker func(*plan.Plan) string

// Told returns everything that is said about a worked-out plan, in the order
// of the page. The form, the errors and the link belong to others: [Ask],
// [Errors] and [Share]; what can wait to [Explored].
func Told(s *sheet.Sheet, link Linker) []Fragment {
	sc := newScene(s)
	return []Fragment{
		sc.part("answer", func(sc *scene) { sc.answer(link) }),
		sc.part("always", (*scene).always),
		sc.part("pressure", (*scene).pressure),
		sc.part("budget", (*scene).budget),
		sc.part("rows", (*scene).rows),
		sc.part("along", (*scene).along),
		sc.part("pump", (*scene).pump),
		sc.part("evenness", (*scene).evenness),
		sc.part("speeds", (*scene).speeds),
		sc.part("surge", (*scene).surge),
		sc.part("findings", (*scene).findings),
		sc.part("parts", (*scene).parts),
		sc.part("cautions", (*scene).cautions),
	}
}

// Explored returns the fragments of what [sheet.Sheet.Explore] added in one
// exploration, or that it was left out.
func Explored(s *sheet.Sheet, which sheet.Exploration, link Linker) []Fragment {
	sc := newScene(s)
	sc.left = s.Left[which]
	switch which {
	case sheet.Season:
		return []Fragment{
			sc.part("season", (*scene).season),
			sc.part("crops", (*scene).crops),
			sc.part("weather", (*scene).weather),
			sc.part("tasks", (*scene).tasks),
			sc.part("shots", (*scene).shots),
			sc.part("timer", (*scene).timer),
			sc.part("tank", (*scene).tank),
			sc.part("outage", (*scene).outage),
		}
	case sheet.Looping:
		return []Fragment{
			sc.part("zones", func(sc *scene) { sc.zones(link) }),
			sc.part("ring", func(sc *scene) { sc.ring(link) }),
		}
	case sheet.Starting:
		return []Fragment{
			sc.part("starting", (*scene).starting),
			sc.part("stopping", (*scene).stopping),
		}
	case sheet.Flushing:
		return []Fragment{sc.part("flush", (*scene).flush)}
	case sheet.Searching:
		return []Fragment{sc.part("designs", func(sc *scene) { sc.designs(link) })}
	case sheet.Faulting:
		return []Fragment{sc.part("faults", (*scene).faults)}
	case sheet.Chancing:
		return []Fragment{sc.part("chance", (*scene).chance)}
	case sheet.Carrying:
		return []Fragment{sc.part("headroom", (*scene).headroom)}
	}
	return nil
}

// Everything returns the fragments of a sheet of which all was explored.
func Everything(s *sheet.Sheet, link Linker) []Fragment {
	all := Told(s, link)
	for which := range sheet.Exploration(sheet.Explorations) {
		all = append(all, Explored(s, which, link)...)
	}
	return all
}

// What is said in the place of a result that takes too much work.
const leftOut = "This was left out: for this plan it takes too long to work out. Fewer plants or rows, or none that differ, show it."

// part draws one fragment, into the memory of the one before.
func (sc *scene) part(id string, draw func(*scene)) Fragment {
	sc.b = sc.b[:0]
	if sc.left {
		sc.tag("p", leftOut)
	} else {
		draw(sc)
	}
	return Fragment{id, sc.String()}
}

// Title is the title of the page with a plan: its name, or a plain word.
func Title(p *plan.Plan) string {
	if p.Name == "" {
		return "A plan"
	}
	return p.Name
}

// Announce is the answer as it is read aloud once after a change.
func Announce(s *sheet.Sheet) string {
	sc := newScene(s)
	word, rest := sc.verdict()
	return word + ". " + rest
}
