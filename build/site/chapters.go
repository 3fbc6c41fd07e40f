package site

// A Chapter is a group of parts of the page about a plan.
type Chapter struct {
	Title string
	Parts []Part
}

// A Part is one section of that page, or two below one heading. Its title stands
// here alone: over the section, and in the list of what is on the page.
type Part struct {
	ID, Title string
	Places    []string // ids of the elements that hold its fragments
	Card      bool     // hangs on the wall: on paper a page of its own, with the link below
	Screen    bool     // is not printed
	Script    bool     // takes longer than the answer, or keeps something: only where a script asks for it
}

// chapters returns the parts of the page, all of them or those of a page without
// scripts.
func (b *builder) chapters(script bool) []Chapter {
	var all []Chapter
	for _, c := range b.Tool.Chapters {
		shown := Chapter{Title: c.Title}
		for _, p := range c.Parts {
			if script || !p.Script {
				shown.Parts = append(shown.Parts, p)
			}
		}
		all = append(all, shown)
	}
	return all
}
