package site

import (
	"html/template"

	"evenrow/build/guide"
	"evenrow/build/policy"
	"evenrow/build/shell"
)

// shell makes the frames of the plan pages. They are no files of the site, and
// hold marks where a page holds content.
func (b *builder) shell(frame Page, cautions map[string]guide.Caution) {
	frame.Script, frame.Early, frame.Worker, frame.Program, frame.Sum, frame.Offline = "", "", "", "", "", ""
	frame.Policy = policy.PlanMeta
	frame.Title, frame.Summary = shell.Mark(shell.Title), shell.Mark(shell.Summary)

	plan := Index{Page: frame, Jobs: b.Tool.Jobs, Fragments: map[string]template.HTML{}}
	for id := range b.Tool.Start() {
		plan.Fragments[id] = template.HTML(shell.Mark(id))
	}
	const file = "site/templates/plan.html"
	page := b.execute("plan.html", file, b.template("plan"), plan)
	for _, fault := range read(page).faults {
		b.report.Add(file, 0, fault)
	}
	refusal := Guide{Page: frame, Body: template.HTML(shell.Mark(shell.Body))}
	s := &shell.Shell{
		Plan:     string(page),
		Refusal:  string(b.execute("refusal.html", "site/templates/guide.html", b.template("guide"), refusal)),
		Cautions: map[string]string{},
	}
	for name, c := range cautions {
		s.Cautions[name] = c.Inner()
	}
	b.bundle.Shell = s
}
