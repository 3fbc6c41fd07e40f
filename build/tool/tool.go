// Package tool is what the site takes from the calculation: the pre-rendered
// example, the worked examples and plans of the guides, and the names that
// declarations lead to.
package tool

import (
	"errors"
	"strings"

	"evenrow/build/guide"
	"evenrow/build/site"
	"evenrow/wasm/grower/care"
	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/form"
	"evenrow/wasm/shown/method"
	"evenrow/wasm/shown/page"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/view"
)

// New returns the calculation as the site's builder asks for it.
func New() site.Tool {
	return site.Tool{
		Start:   start,
		Jobs:    jobs(),
		Longest: int(plan.FieldNamed("", "name").Max),
		Guides:  guide.Tools{Formulas: method.All(), Plan: answer, Checks: checks, Assumptions: assumptions, Figures: figures()},
		Names:   names(),
		IsPlan: func(fragment string) bool {
			if to, job := strings.CutPrefix(fragment, "/"); job {
				none := form.Place{}
				return to == "all" || to == "start" || view.Known(form.PlaceOf(to), none) == form.PlaceOf(to)
			}
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

// jobs are the jobs of the page, in their order.
func jobs() []site.Job {
	var all []site.Job
	for i := range view.Jobs {
		j := &view.Jobs[i]
		job := site.Job{ID: j.ID, Title: string(j.Title), Asks: string(j.Asks), Foot: j.Foot}
		for k := range j.Groups {
			job.Groups = append(job.Groups, site.Place{ID: j.Groups[k].ID, Title: string(j.Groups[k].Title)})
		}
		for k := range j.Sections {
			if s := &j.Sections[k]; s.Title != "" && s.With == view.OnRequest {
				job.Asked = append(job.Asked, site.Place{ID: s.ID, Title: string(s.Title)})
			}
		}
		all = append(all, job)
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
	for _, c := range care.Catalogue {
		for _, at := range c.At {
			all = append(all, site.Name{From: "section " + at.Section, Caution: c.Name})
		}
	}
	for _, f := range plan.Fields() {
		all = append(all, site.Name{From: "field " + strings.TrimPrefix(f.Section+"."+f.Name, "."), Guide: f.Guide})
	}
	return all
}
