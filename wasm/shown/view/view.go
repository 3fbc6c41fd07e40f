// Package view has all jobs with their inputs and sections in their order, and has the sections drawn, each by the
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

// Told returns everything that is said about a worked-out plan, each section once. The form, the errors and the link belong to package form; what
// can wait to [Explored].
func Told(s *sheet.Sheet, link scene.Linker) []block.Fragment {
	return append(everywhere(s, link, Answered, false), drawn(s, link, Frame, Answered, false)...)
}

// Explored returns the fragments of what [sheet.Sheet.Explore] added in one
// exploration, or that it was left out.
func Explored(s *sheet.Sheet, which sheet.Exploration, link scene.Linker) []block.Fragment {
	return everywhere(s, link, by(which), s.Left[which])
}

// Everything returns the fragments of a sheet of which all was explored.
func Everything(s *sheet.Sheet, link scene.Linker) []block.Fragment {
	all := Told(s, link)
	for which := range sheet.Exploration(sheet.Explorations) {
		all = append(all, Explored(s, which, link)...)
	}
	return all
}

// everywhere draws the sections of all jobs that are worked out together, each
// once, and says in their places where they are left out.
func everywhere(s *sheet.Sheet, link scene.Linker, with When, left bool) []block.Fragment {
	var all []block.Fragment
	had := map[string]bool{}
	for i := range Jobs {
		for _, f := range drawn(s, link, Jobs[i].Sections, with, left) {
			if !had[f.ID] {
				had[f.ID] = true
				all = append(all, f)
			}
		}
	}
	return all
}

// What is said in the place of a result that takes too much work.
const leftOut words.Text = "This was left out: for this plan it takes too long to work out. Fewer plants or rows, or none that differ, show it."

// drawn draws those of some sections that are worked out together, each into the memory of
// the one before.
func drawn(s *sheet.Sheet, link scene.Linker, sections []Section, with When, left bool) []block.Fragment {
	sc := sceneOf(s, link, sections)
	var all []block.Fragment
	for i := range sections {
		if section := &sections[i]; section.With == with {
			sc.Clear()
			section.content(sc, left)
			all = append(all, block.Fragment{ID: section.ID, HTML: sc.String()})
		}
	}
	return all
}

// sceneOf is a sheet on its way to some sections.
func sceneOf(s *sheet.Sheet, link scene.Linker, sections []Section) *scene.Scene {
	sc := scene.New(s, link)
	for i := range sections {
		sc.ByRow = sc.ByRow || sections[i].ID == "rows"
	}
	return sc
}

// content writes what a section says, or that it is left out.
func (section *Section) content(sc *scene.Scene, left bool) {
	switch {
	case left:
		sc.Say("p", leftOut)
	case section.draw != nil: // else TestSectionsAreWhole names it
		start := sc.Len()
		sc.Careful(section.Hazards)
		careful := sc.Len()
		if section.draw(sc); sc.Len() == careful {
			sc.Cut(start) // where nothing is to be done, nothing can hurt
		}
	}
}
