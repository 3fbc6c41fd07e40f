// Package tool is what the site takes from the calculation: the pre-rendered
// example, the worked examples and plans of the guides, and the names that
// declarations lead to.
package tool

import (
	"errors"
	"strings"

	"evenrow/build/guide"
	"evenrow/build/site"
	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/method"
	"evenrow/wasm/shown/page"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/view"
)

// New returns the calculation as the site's builder asks for it.
func New() site.Tool {
	return site.Tool{
		Start:    start,
		Chapters: chapters(),
		Guides:   guide.Tools{Formulas: method.All(), Plan: answer, Checks: checks, Assumptions: assumptions, Figures: figures()},
		Names:    names(),
		IsPlan: func(fragment string) bool {
			_, err := carry.ReadLink(fragment)
			return err == nil
		},
	}
}

// start is the page as it is first seen.
func start() map[string]string {
	fragments := map[string]string{}
	for _, f := range page.Start().Fragments {
		fragments[f.ID] = f.HTML
	}
	return fragments
}

// chapters are the sections of the page, those together that have one heading.
func chapters() []site.Chapter {
	var all []site.Chapter
	for _, c := range view.Chapters {
		if c.Title == "" {
			continue // its sections have their places in the template
		}
		shown := site.Chapter{Title: string(c.Title)}
		for _, s := range c.Sections {
			if s.Title == "" {
				last := &shown.Parts[len(shown.Parts)-1]
				last.Places = append(last.Places, s.ID)
				continue
			}
			shown.Parts = append(shown.Parts, site.Part{
				ID: s.ID, Title: string(s.Title), Places: []string{s.ID}, Card: s.Card, Screen: s.Screen, Script: !s.Prompt(),
			})
		}
		all = append(all, shown)
	}
	return all
}

// answer is one fragment of what is told about an example plan. Its links lead
// to the tool's own page.
func answer(example, show string) (string, error) {
	var keys []string
	for _, e := range plan.Examples() {
		if e.Key != example {
			keys = append(keys, e.Key)
			continue
		}
		var ids []string
		for _, f := range view.Everything(sheet.Work(e.Plan), func(p *plan.Plan) string { return "index.html#" + carry.Link(p) }) {
			if f.ID == show {
				return f.HTML, nil
			}
			ids = append(ids, f.ID)
		}
		return "", errors.New("an answer has no " + show + "; it has " + strings.Join(ids, ", "))
	}
	return "", errors.New("there is no example " + example + "; there are " + strings.Join(keys, ", "))
}

// names is every guide and caution that a section or a field leads to.
func names() []site.Name {
	var all []site.Name
	for _, s := range plan.Sections() {
		all = append(all, site.Name{From: "section " + s.Name, Guide: s.Guide})
	}
	for _, c := range plan.Cautions() {
		all = append(all, site.Name{From: "section " + c.Section, Caution: c.Name})
	}
	for _, f := range plan.Fields() {
		all = append(all, site.Name{From: "field " + strings.TrimPrefix(f.Section+"."+f.Name, "."), Guide: f.Guide})
	}
	return all
}
