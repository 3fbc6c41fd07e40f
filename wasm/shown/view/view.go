// Package view has all sections in their order and has them drawn, each by the
// room of its job, as HTML and SVG: the same fragments for the pre-rendered
// example, the browser and print.
//
// A fragment is the content of the element that carries its ID. In every room a
// picture is drawn for two widths, so that no text in it falls below 11 px, and
// has a table that says the same; a number that is not known, or not finite, is
// printed as a dash.
package view

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
)

// Told returns everything that is said about a worked-out plan, in the order
// of the page. The form, the errors and the link belong to package form; what
// can wait to [Explored].
func Told(s *sheet.Sheet, link scene.Linker) []block.Fragment {
	return drawn(s, link, Answered, false)
}

// Explored returns the fragments of what [sheet.Sheet.Explore] added in one
// exploration, or that it was left out.
func Explored(s *sheet.Sheet, which sheet.Exploration, link scene.Linker) []block.Fragment {
	return drawn(s, link, by(which), s.Left[which])
}

// Everything returns the fragments of a sheet of which all was explored.
func Everything(s *sheet.Sheet, link scene.Linker) []block.Fragment {
	all := Told(s, link)
	for which := range sheet.Exploration(sheet.Explorations) {
		all = append(all, Explored(s, which, link)...)
	}
	return all
}

// What is said in the place of a result that takes too much work.
const leftOut words.Text = "This was left out: for this plan it takes too long to work out. Fewer plants or rows, or none that differ, show it."

// drawn draws the sections that are worked out together, each into the memory of
// the one before, or says in their places that they are left out.
func drawn(s *sheet.Sheet, link scene.Linker, with When, left bool) []block.Fragment {
	sc := scene.New(s, link)
	var all []block.Fragment
	for i := range Chapters {
		for k := range Chapters[i].Sections {
			section := &Chapters[i].Sections[k]
			if section.With != with {
				continue
			}
			sc.Clear()
			switch {
			case left:
				sc.Say("p", leftOut)
			case section.draw != nil: // else TestSectionsAreWhole names it
				section.draw(sc)
			}
			all = append(all, block.Fragment{ID: section.ID, HTML: sc.String()})
		}
	}
	return all
}
