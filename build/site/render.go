package site

import (
	"bytes"
	"cmp"
	"html/template"
	"io/fs"
	"slices"
	"strings"

	"evenrow/build/guide"
	"evenrow/build/shell"
)

// Pages of the site that are no guide.
const (
	indexPage   = "index.html"
	guidesPage  = "guides.html"
	missingPage = "404.html"
)

// render puts every page.
func (b *builder) render(frame Page, guides []*guide.Guide, cautions map[string]guide.Caution) {
	index, prose := b.template("index"), b.template("guide")
	for _, g := range guides {
		frame.Guides = append(frame.Guides, Link{Title: g.Title, Summary: g.Summary, Href: g.Name + ".html"})
	}
	frame.Nav = []Link{{Title: "Planner", Href: "./"}, {Title: "Guides", Href: guidesPage}}

	home := Index{Page: frame, Longest: b.Tool.Longest, Jobs: b.Tool.Jobs, Fragments: map[string]template.HTML{}}
	home.Title = "Every plant in the row gets the same water"
	home.Summary = "Plan drip irrigation for crops in soilless media: whether every plant gets its water, why, and what would help."
	home.Nav = here(frame.Nav, "./")
	for id, fragment := range b.Tool.Start() {
		home.Fragments[id] = template.HTML(b.fill(fragment, cautions))
	}
	for _, c := range cautions {
		home.Cautions = append(home.Cautions, Caution{c.Name, template.HTML(c.Inner())})
	}
	slices.SortFunc(home.Cautions, func(a, b Caution) int { return cmp.Compare(a.Name, b.Name) })
	b.page(indexPage, "site/templates/index.html", index, home)

	list := Guide{Page: frame}
	list.Title = "Guides"
	list.Summary = "How to choose, plan, build and check a drip system for crops in soilless media."
	list.Nav = here(frame.Nav, guidesPage)
	b.page(guidesPage, "site/templates/guide.html", prose, list)

	for i, g := range guides {
		p := Guide{Page: frame, Name: g.Name, Body: template.HTML(g.HTML), Sources: g.Sources}
		p.Title, p.Summary = g.Title, g.Summary
		for _, h := range g.Headings {
			p.Contents = append(p.Contents, Link{Title: h.Text, Href: "#" + h.ID})
		}
		if i > 0 {
			p.Before = &frame.Guides[i-1]
		}
		if i+1 < len(guides) {
			p.After = &frame.Guides[i+1]
		}
		switch name := g.Name + ".html"; name {
		case indexPage, guidesPage, missingPage:
			b.report.Add(g.File, 0, "has the name of another page of the site")
		default:
			b.page(name, g.File, prose, p)
		}
	}

	lost := Guide{Page: frame.rooted()}
	lost.Title = "There is no page at this address"
	lost.Summary = "The address is mistyped, or the page has moved."
	lost.Body = "<p>The address may be mistyped, or the page has moved. The planner and all guides are here:</p>"
	b.page(missingPage, "site/templates/guide.html", prose, lost)

	if b.Answered {
		b.shell(frame, cautions)
	}
}

// fill puts cautions into the places that the views leave for them.
func (b *builder) fill(fragment string, cautions map[string]guide.Caution) string {
	return shell.Cautions(fragment, func(name string) string {
		c, ok := cautions[name]
		if !ok {
			b.report.Add("wasm/shown/view", 0, "leaves a place for the caution "+name+", which is not in content/cautions")
		}
		return c.Inner()
	})
}

// here marks the page itself among the links.
func here(nav []Link, href string) []Link {
	nav = slices.Clone(nav)
	for i := range nav {
		nav[i].Here = nav[i].Href == href
	}
	return nav
}

// rooted is the frame with addresses from the root, for a page that is shown
// under any address.
func (p Page) rooted() Page {
	for _, address := range []*string{&p.Root, &p.Style, &p.Script, &p.Early, &p.Worker, &p.Program, &p.Offline, &p.Manifest, &p.Icon} {
		*address = "/" + strings.TrimPrefix(*address, "./")
	}
	for _, list := range []*[]Link{&p.Nav, &p.Guides} {
		*list = slices.Clone(*list)
		for i := range *list {
			link := &(*list)[i]
			link.Href = "/" + strings.TrimPrefix(link.Href, "./")
		}
	}
	return p
}

// template reads site/templates/NAME.html with the frame and all parts, which
// are the other templates. It is nil after a problem.
func (b *builder) template(name string) *template.Template {
	t := template.New(name).Option("missingkey=error")
	for _, file := range []string{"templates/base.html", "templates/" + name + ".html"} {
		if _, err := t.New(file).Parse(string(b.read(file))); err != nil {
			b.report.Add("site/"+file, 0, err.Error())
			return nil
		}
	}
	parts, _ := fs.Glob(b.Site, "templates/parts/*.html")
	for _, file := range parts {
		if _, err := t.New(file).Parse(string(b.read(file))); err != nil {
			b.report.Add("site/"+file, 0, err.Error())
			return nil
		}
	}
	return t
}

// page puts one page: the frame, given data.
func (b *builder) page(name, author string, t *template.Template, data any) {
	if body := b.execute(name, author, t, data); body != nil {
		b.put(name, body)
		b.pages = append(b.pages, page{name, author, body})
	}
}

// execute returns a page, minified; nil after a problem.
func (b *builder) execute(name, author string, t *template.Template, data any) []byte {
	if t == nil {
		return nil
	}
	var out bytes.Buffer
	if err := t.ExecuteTemplate(&out, "base", data); err != nil {
		b.report.Add(author, 0, "cannot be filled in: "+err.Error())
		return nil
	}
	return b.minified(name, author, out.Bytes())
}
