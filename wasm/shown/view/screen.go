package view

import (
	"slices"
	"strings"

	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/care"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
)

// A Screen is a job with a plan on it: it knows which explorations are done.
type Screen struct {
	*Job
	Sheet *sheet.Sheet
	Link  scene.Linker
	Done  [sheet.Explorations]bool
	Open  string // ids of the long sections that are open, with spaces between
	Bare  bool   // draws no long section that is not open
	Brief bool   // has only what takes no longer than the answer, and nothing that a script keeps

	Graded map[string]sheet.Verdict // of sections by ID, as they were last told: for [Screen.Order], which takes one that is not worked out yet to be so
}

// ready reports whether a section can be drawn.
func (s *Screen) ready(section *Section) bool {
	with := s.with(section)
	return with == Answered || with > 0 && s.Done[with-1]
}

// with is what works a section out on this screen: the answer, where an exploration
// would have nothing to look for.
func (s *Screen) with(section *Section) When {
	if section.With > 0 && s.Sheet.Idle(sheet.Exploration(section.With-1)) {
		return Answered
	}
	return section.With
}

// Around returns the fragments of the page's frame.
func (s *Screen) Around() []block.Fragment {
	return drawn(s.Sheet, s.Link, Frame, Answered, false)
}

// Whole is the job's screen as one fragment: all its places, those filled that
// are worked out. What is not yet has an empty place.
func (s *Screen) Whole() block.Fragment {
	sc := sceneOf(s.Sheet, s.Link, s.Sections)
	sc.Still = s.Brief
	all := s.inOrder(false)
	at := s.cautionsAt(all)
	for i, part := range all {
		if i == at {
			s.cautioned(sc)
		}
		first := &part[0]
		sc.HTML(`<section class="part`)
		if first.Card {
			sc.HTML(` card`)
		}
		if first.Screen {
			sc.HTML(` part--screen`)
		}
		sc.HTML(`"`)
		if first.Title != "" {
			sc.Attr("aria-labelledby", "h-"+first.ID)
		} else {
			sc.Attr("aria-label", words.Say(s.Asks))
		}
		sc.HTML(`>`)
		for i := range part {
			s.place(sc, &part[i])
		}
		sc.HTML(`</section>`)
	}
	if at == len(all) {
		s.cautioned(sc)
	}
	return block.Fragment{ID: "job", HTML: sc.String()}
}

// cautioned writes the part of the cautions, which is for paper.
func (s *Screen) cautioned(sc *scene.Scene) {
	sc.HTML(`<section class="part cautions" aria-labelledby="h-cautions"><h2 id="h-cautions">`).Text(words.Say("Cautions")).HTML(`</h2><div id="cautions">`)
	s.cautions(sc)
	sc.HTML(`</div></section>`)
}

// cautionsAt is how many parts stand before the cautions: all, or those that are printed
// before what hangs on the wall and has a sheet for itself. A job without inputs has none.
func (s *Screen) cautionsAt(all [][]Section) int {
	if len(s.Groups) == 0 {
		return -1
	}
	printed := false
	for i, part := range all {
		if part[0].Card && printed {
			return i
		}
		printed = printed || !part[0].Screen
	}
	return len(all)
}

// parts are the job's sections, each with those that stand below its heading; without
// those that have a place of their own in the page's frame, or none.
func (s *Screen) parts() (all [][]Section) {
	for i := 0; i < len(s.Sections); {
		from := i
		for i++; i < len(s.Sections) && s.Sections[i].Title == "" && s.Sections[i].With != OnRequest; {
			i++
		}
		if first := &s.Sections[from]; first.With != OnRequest && (!s.Brief || first.Prompt()) {
			all = append(all, s.Sections[from:i])
		}
	}
	return all
}

// inOrder are the parts as they stand below each other: of those that can be folded the
// gravest first, and else as the job lists them. kept says whether one that is not
// worked out yet keeps its place.
func (s *Screen) inOrder(kept bool) [][]Section {
	all := s.parts()
	var at []int // where one that can be folded stands
	var graded [sheet.Verdicts][][]Section
	for i, part := range all {
		if !part[0].Open {
			is := s.grade(&part[0])
			if kept && !s.ready(&part[0]) {
				is = s.Graded[part[0].ID]
			}
			at, graded[is] = append(at, i), append(graded[is], part)
		}
	}
	for is := len(graded) - 1; is >= 0; is-- {
		for _, part := range graded[is] {
			all[at[0]], at = part, at[1:]
		}
	}
	return all
}

// Order is the order of the parts, by the ID of the first section of each, and that of the
// cautions.
func (s *Screen) Order() (ids []string) {
	all := s.inOrder(true)
	for _, part := range all {
		ids = append(ids, part[0].ID)
	}
	if at := s.cautionsAt(all); at >= 0 {
		ids = slices.Insert(ids, at, "cautions")
	}
	return ids
}

// grade says how grave what a section says is: Yes where there is nothing to do, or
// nothing is known yet.
func (s *Screen) grade(section *Section) sheet.Verdict {
	if section.line == nil || !s.ready(section) {
		return sheet.Yes
	}
	is := sheet.Yes
	if section.With < 0 || !s.Sheet.Left[section.With-1] {
		_, is = section.line(scene.New(s.Sheet, s.Link))
	}
	if s.Graded != nil {
		s.Graded[section.ID] = is
	}
	return is
}

// place writes the element of a section.
func (s *Screen) place(sc *scene.Scene, section *Section) {
	sc.HTML(`<div`).Attr("id", section.ID)
	if section.ID == "answer" {
		sc.HTML(` class="answer"`)
	}
	sc.HTML(`>`)
	if s.ready(section) {
		s.fill(sc, section)
	}
	sc.HTML(`</div>`)
}

// fill writes a section with its heading: folded to a line, unless it is what the
// job is for, or something is to be done.
func (s *Screen) fill(sc *scene.Scene, section *Section) {
	left := section.With > 0 && s.Sheet.Left[section.With-1]
	if section.Title == "" {
		section.content(sc, left)
		return
	}
	start := sc.Len()
	if section.Open && !(section.folds != nil && section.folds(s.Sheet)) {
		sc.HTML(`<h2 tabindex="-1"`).Attr("id", "h-"+section.ID).HTML(`>`).Text(words.Say(section.Title)).HTML(`</h2>`)
		headed := sc.Len()
		if section.content(sc, left); sc.Len() == headed {
			sc.Cut(start) // of what nothing is said, there is no heading
		}
		return
	}
	said, is := "", sheet.Yes
	if section.line != nil && !left {
		said, is = section.line(sc)
	}
	sc.HTML(`<details class="fold"`).Attr("id", "d-"+section.ID)
	bare := section.Long && s.Bare && !strings.Contains(" "+s.Open+" ", " "+section.ID+" ")
	if bare {
		sc.Attr("data-long", section.ID)
	}
	switch {
	case section.Long && s.Bare && !bare:
		sc.Attr("data-drawn", section.ID).HTML(` open`)
	case is != sheet.Yes && !section.Long:
		sc.HTML(` open data-open`) // and shut again once there is nothing to do
	}
	sc.HTML(`><summary><h2 tabindex="-1"`).Attr("id", "h-"+section.ID).HTML(`>`).Text(words.Say(section.Title)).HTML(`</h2> <span class="fold__is">`).
		Text(said).HTML(`</span></summary>`)
	if !bare {
		section.content(sc, left)
	}
	sc.HTML(`</details>`)
}

// Answered returns the fragments of the job's sections that come with the answer.
func (s *Screen) Answered() []block.Fragment {
	all := s.filled(Answered)
	if len(s.Groups) > 0 {
		sc := scene.Bare(s.Sheet, s.Sheet.Plan.Units)
		s.cautions(sc)
		all = append(all, block.Fragment{ID: "cautions", HTML: sc.String()})
	}
	return all
}

// Explored returns those that an exploration has worked out.
// What the answer rests on is said with the answer, and so that is drawn again.
func (s *Screen) Explored(which sheet.Exploration) []block.Fragment {
	all := s.filled(by(which))
	if which == sheet.Turning {
		all = append(append(all, s.Around()...), s.Answered()...)
	}
	return all
}

func (s *Screen) filled(with When) []block.Fragment {
	sc := sceneOf(s.Sheet, s.Link, s.Sections)
	var all []block.Fragment
	for i := range s.Sections {
		if section := &s.Sections[i]; s.with(section) == with {
			sc.Clear()
			s.fill(sc, section)
			all = append(all, block.Fragment{ID: section.ID, HTML: sc.String()})
		}
	}
	return all
}

// Owed returns the IDs of the sections that an exploration from one on works out, and
// the first of these that there is, counted from 1; 0 where there is none.
func (s *Screen) Owed(from sheet.Exploration) (ids []string, next int) {
	if by(sheet.Turning) >= by(from) {
		next = int(by(sheet.Turning))
	}
	for i := range s.Sections {
		section := &s.Sections[i]
		if with := s.with(section); with >= by(from) {
			ids = append(ids, section.ID)
			if next == 0 || int(with) < next {
				next = int(with)
			}
		}
	}
	return ids, next
}

// cautions leaves places for every caution of the job, once, for paper: the form is
// not printed.
func (s *Screen) cautions(sc *scene.Scene) {
	had := ""
	for g := range s.Groups {
		for _, name := range s.Groups[g].Sections {
			for _, c := range care.Catalogue {
				if mark := c.Name + " "; c.In(name) && c.Applies(s.Sheet.Plan) && !strings.Contains(had, mark) {
					had += mark
					sc.Caution(c.Name)
				}
			}
		}
	}
}
