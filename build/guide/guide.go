// Package guide turns the guides and cautions that authors write in Markdown
// into HTML.
//
// Beyond plain Markdown an author has, each in a block of its own:
//
//	> [!NOTE]                 a note
//	> [!CAUTION] electricity  the caution in content/cautions/electricity.md
//	```worked                 a formula with its inputs, computed
//	```plan                   an example plan, answered
//	{{formulas}}              the table of all formulas
//	{{assumptions}}           the table of all assumptions
//	{{checks}}                the table of all check values
//
// and anywhere in the text
//
//	{{figure NAME}}           a figure that the calculation gives for an example
//
// Markup in HTML is refused, so that every page keeps to the site's own style
// and its policy.
package guide

import (
	"bytes"
	"io/fs"
	"maps"
	"path"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"evenrow/build/problem"
	"evenrow/wasm/ground/formula"
)

// A Guide is one page, rendered.
type Guide struct {
	Name    string // of the file without its ending, such as "pump-curve"
	File    string // such as "content/guides/pump-curve.md"
	Title   string
	Summary string
	Order   int
	Sources []string
	Hazards []string // that what it tells to do has, by their names in wasm/grower/care; each has its caution in the guide

	HTML     string
	Headings []Heading // of the second rank
	Links    []Link
}

// A Heading is a heading of a guide, with the name that links use.
type Heading struct{ ID, Text string }

// A Link is a link in a guide, as it stands in the page.
type Link struct {
	Target string
	Line   int
}

// A Caution is a warning that stands beside whatever it concerns.
type Caution struct {
	Name     string // of the file without its ending, such as "electricity"
	Title    string // the hazard
	Standing string // what it rests on: a key of standings
	Source   string
	HTML     string // the text, in paragraphs
}

// standings are what a caution may rest on, and how its box says so.
var standings = map[string]string{
	"code":     "Code or standard",
	"advice":   "Published advice",
	"practice": "Common practice",
}

// Tools is what the blocks of a guide are computed with.
type Tools struct {
	Formulas []*formula.Formula

	// Plan returns the fragment named show of the answer to an example plan.
	Plan func(example, show string) (html string, err error)

	// Checks is the table of check values as HTML, and Assumptions that of what
	// no formula shows; nil when there is none.
	Checks, Assumptions func() string

	// Figures are what an author has computed amid the text, by name.
	Figures map[string]string
}

// Cautions reads content/cautions, by name.
func Cautions(content fs.FS, report *problem.List) map[string]Caution {
	cautions := map[string]Caution{}
	for name, file := range markdown(content, "cautions", report) {
		f := readFront(file.name, file.content, []string{"title", "standing", "source"}, nil, report)
		r := reading{file: file.name, first: f.first, report: report}
		r.render(f.body)
		if strings.TrimSpace(r.html) == "" {
			report.Add(file.name, f.first, "the caution says nothing")
		}
		standing := f.value["standing"]
		if standings[standing] == "" && standing != "" {
			report.Add(file.name, f.line["standing"], "standing must be one of "+strings.Join(slices.Sorted(maps.Keys(standings)), ", "))
		}
		cautions[name] = Caution{Name: name, Title: f.value["title"], Standing: standing, Source: f.value["source"], HTML: r.html}
	}
	return cautions
}

// Read reads content/guides and returns them in their order.
func Read(content fs.FS, cautions map[string]Caution, tools Tools, report *problem.List) []*Guide {
	var guides []*Guide
	for name, file := range markdown(content, "guides", report) {
		f := readFront(file.name, file.content, []string{"title", "summary", "order", optional}, []string{"sources"}, report)
		order, err := strconv.Atoi(f.value["order"])
		if err != nil && f.value["order"] != "" {
			report.Add(file.name, f.line["order"], "order must be a whole number")
		}
		g := &Guide{
			Name: name, File: file.name, Title: f.value["title"], Summary: f.value["summary"],
			Order: order, Sources: f.list["sources"],
			Hazards: strings.FieldsFunc(f.value[optional], func(r rune) bool { return r == ',' }),
		}
		r := reading{file: file.name, first: f.first, report: report, cautions: cautions, tools: tools, guide: g}
		r.render(f.body)
		g.HTML = r.html
		guides = append(guides, g)
	}
	slices.SortFunc(guides, func(a, b *Guide) int { return a.Order - b.Order })
	for i := 1; i < len(guides); i++ {
		if guides[i].Order == guides[i-1].Order {
			report.Add(guides[i].File, 0, "has the same order as "+guides[i-1].File)
		}
	}
	return guides
}

// A document is one file of Markdown.
type document struct {
	name    string
	content []byte
}

// markdown returns the files of one folder of content, by name.
func markdown(content fs.FS, folder string, report *problem.List) map[string]document {
	files := map[string]document{}
	names, err := fs.Glob(content, folder+"/*.md")
	if err != nil || len(names) == 0 {
		report.Add("content/"+folder, 0, "holds no files that end in .md")
	}
	for _, name := range names {
		b, err := fs.ReadFile(content, name)
		if err != nil {
			report.Add("content/"+name, 0, "cannot be read: "+err.Error())
			continue
		}
		files[strings.TrimSuffix(path.Base(name), ".md")] = document{"content/" + name, b}
	}
	return files
}

// A reading is one file on its way to HTML.
type reading struct {
	file     string
	first    int // line of the file on which the body begins
	report   *problem.List
	cautions map[string]Caution
	tools    Tools
	guide    *Guide // nil while a caution is read, which has no blocks of its own

	body []byte
	html string
}

// render turns the body into HTML and reports what is wrong in it.
func (r *reading) render(body []byte) {
	r.body = body
	body = r.figures(body)
	r.body = body
	md := goldmark.New(
		goldmark.WithExtensions(extension.NewTable(extension.WithTableCellAlignMethod(extension.TableCellAlignNone))),
		goldmark.WithParserOptions(
			parser.WithAutoHeadingID(),
			parser.WithHeadingAttribute(),
			parser.WithASTTransformers(util.Prioritized(r, 100)),
		),
		goldmark.WithRendererOptions(renderer.WithNodeRenderers(util.Prioritized(blocks{}, 100))),
	)
	var out bytes.Buffer
	if err := md.Convert(body, &out, parser.WithContext(parser.NewContext())); err != nil {
		r.report.Add(r.file, 0, "cannot be rendered: "+err.Error())
	}
	r.html = out.String()
}

var figure = regexp.MustCompile(`\{\{figure ([^}\n]*)\}\}`)

// figures puts figures in their places. Lines stay as many as they were.
func (r *reading) figures(body []byte) []byte {
	var out []byte
	last := 0
	for _, m := range figure.FindAllSubmatchIndex(body, -1) {
		name := string(body[m[2]:m[3]])
		text, ok := r.tools.Figures[name]
		if !ok {
			r.problem(m[0], "there is no figure "+name+"; there are "+strings.Join(slices.Sorted(maps.Keys(r.tools.Figures)), ", "))
		}
		out = append(append(out, body[last:m[0]]...), text...)
		last = m[1]
	}
	return append(out, body[last:]...)
}

// at is the line of the file that holds the byte at offset of the body.
func (r *reading) at(offset int) int {
	offset = min(max(offset, 0), len(r.body))
	return r.first + bytes.Count(r.body[:offset], []byte("\n"))
}

// problem reports what is wrong at an offset of the body.
func (r *reading) problem(offset int, text string) { r.report.Add(r.file, r.at(offset), text) }

// lines is a block's text with the line of the file on which it begins.
func (r *reading) lines(s *text.Segments) (lines []string, start int) {
	for i := range s.Len() {
		segment := s.At(i)
		lines = append(lines, strings.TrimSpace(string(segment.Value(r.body))))
	}
	if s.Len() > 0 {
		start = s.At(0).Start
	}
	return lines, start
}
