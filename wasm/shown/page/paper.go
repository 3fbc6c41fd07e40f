package page

import (
	"strings"

	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/form"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/view"
)

// PrintName is the name in form data of the jobs that are to be printed, with spaces
// between.
const PrintName = "print"

// Paper returns a set of jobs for paper, one behind another, each beginning on a sheet of its
// own. With something to put right there is none.
func (s *Session) Paper(typed string) Reply {
	return saved(typed, func(p *plan.Plan) Reply {
		w := &block.Writer{}
		for _, id := range strings.Fields(plan.ParseDraft(typed).Get(PrintName)) {
			if view.JobNamed(id) == nil {
				continue
			}
			screen := s.screen(nil, form.Place{Job: id})
			screen.Sheet, screen.Bare = s.work(p), true
			for which := range sheet.Exploration(sheet.Explorations) {
				if screen.Needs(which) {
					screen.Sheet, screen.Done[which] = s.work(p, which), true
				}
			}
			w.HTML(`<section class="paper__job"><h1>`).Text(words.Say(screen.Title)).HTML(`</h1>`).Whole(screen.Whole().HTML).HTML(`</section>`)
		}
		r := Reply{}
		r.add("paper", w.String())
		return r
	})
}
