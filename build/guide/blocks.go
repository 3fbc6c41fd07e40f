package guide

import (
	"html"
	"strings"

	"github.com/yuin/goldmark/ast"
	extast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// A made block stands where the author asked for something computed, or wraps
// what the author wrote: before, then its children, then after.
type made struct {
	ast.BaseBlock
	before, after string
}

var kindMade = ast.NewNodeKind("Made")

func (m *made) Kind() ast.NodeKind          { return kindMade }
func (m *made) Dump(source []byte, lvl int) { ast.DumpHelper(m, source, lvl, nil, nil) }

// blocks renders made blocks.
type blocks struct{}

func (blocks) RegisterFuncs(reg renderer.NodeRendererFuncRegisterer) {
	reg.Register(kindMade, func(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
		if entering {
			w.WriteString(n.(*made).before)
		} else {
			w.WriteString(n.(*made).after)
		}
		return ast.WalkContinue, nil
	})
}

// Transform replaces the blocks that this package adds to Markdown, and notes
// headings and links.
func (r *reading) Transform(doc *ast.Document, _ text.Reader, _ parser.Context) {
	var found []ast.Node // replaced only after the walk, which must not lose its way
	ast.Walk(doc, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if entering {
			found = append(found, n)
		}
		return ast.WalkContinue, nil
	})
	for _, n := range found {
		switch n := n.(type) {
		case *ast.Heading:
			r.heading(n)
		case *ast.Link:
			r.link(n)
		case *ast.AutoLink:
			r.problem(offset(n), "a link must have a text of its own")
		case *ast.Image:
			r.problem(offset(n), "pictures are drawn by the planner; use a plan block")
		case *ast.RawHTML, *ast.HTMLBlock:
			r.problem(offset(n), "markup in HTML is not accepted")
		case *ast.Blockquote:
			r.box(n)
		case *ast.FencedCodeBlock:
			r.fenced(n)
		case *ast.Paragraph:
			r.table(n)
		case *extast.TableCell:
			if n.Alignment == extast.AlignRight {
				n.SetAttributeString("class", []byte("n")) // figures, as in the page's own tables
			}
		case *extast.Table:
			// A wide table scrolls by itself, and a keyboard must reach it to
			// scroll it.
			wrap(n, `<div class="scroll" role="region" tabindex="0" aria-label="`+html.EscapeString("Table: "+columns(n, r.body))+`">`, "</div>\n")
		}
	}
}

// offset is where a node begins in the body: its own text, or that of its
// nearest relative that has some.
func offset(n ast.Node) int {
	for m := n; m != nil; m = m.FirstChild() {
		if t, ok := m.(*ast.Text); ok {
			return t.Segment.Start
		}
		if t, ok := m.(*ast.RawHTML); ok && t.Segments.Len() > 0 {
			return t.Segments.At(0).Start
		}
		if m.Type() == ast.TypeBlock && m.Lines() != nil && m.Lines().Len() > 0 {
			return m.Lines().At(0).Start
		}
	}
	if p := n.Parent(); p != nil && p.Type() == ast.TypeBlock && p.Lines() != nil && p.Lines().Len() > 0 {
		return p.Lines().At(0).Start
	}
	return 0
}

func (r *reading) heading(n *ast.Heading) {
	if n.Level == 1 {
		r.problem(offset(n), "the title stands in the head of the file; headings begin with two signs")
	}
	for m := n.PreviousSibling(); ; m = m.PreviousSibling() {
		above := 1
		if m != nil {
			h, ok := m.(*ast.Heading)
			if !ok {
				continue
			}
			above = h.Level
		}
		if n.Level > above+1 {
			r.problem(offset(n), "the heading skips a rank")
		}
		break
	}
	if r.guide == nil {
		return
	}
	if n.Level == 2 {
		value, _ := n.AttributeString("id")
		id, _ := value.([]byte)
		r.guide.Headings = append(r.guide.Headings, Heading{string(id), plain(n, r.body)})
	}
}

// plain is the text of a node without its markup.
func plain(n ast.Node, source []byte) string {
	var b strings.Builder
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		switch c := c.(type) {
		case *ast.Text:
			b.Write(c.Value(source))
		case *ast.String:
			b.Write(c.Value)
		default:
			b.WriteString(plain(c, source))
		}
	}
	return b.String()
}

// columns is the names of a table's columns.
func columns(n *extast.Table, source []byte) string {
	var names []string
	for c := n.FirstChild().FirstChild(); c != nil; c = c.NextSibling() {
		names = append(names, plain(c, source))
	}
	return strings.Join(names, ", ")
}

// link notes a link. An author may name the file that a guide is written in,
// which works where the source is read; the page has the ending .html.
func (r *reading) link(n *ast.Link) {
	target, anchor, _ := strings.Cut(string(n.Destination), "#")
	if base, ok := strings.CutSuffix(target, ".md"); ok {
		target = base + ".html"
		if anchor != "" {
			target += "#" + anchor
		}
		n.Destination = []byte(target)
	}
	if r.guide != nil {
		r.guide.Links = append(r.guide.Links, Link{string(n.Destination), r.at(offset(n))})
	}
}

// box turns a quotation that begins with [!NOTE] or [!CAUTION] into a box.
func (r *reading) box(n *ast.Blockquote) {
	p, ok := n.FirstChild().(*ast.Paragraph)
	if !ok {
		return
	}
	segment := p.Lines().At(0)
	mark, name, ok := strings.Cut(strings.TrimSpace(string(segment.Value(r.body))), "]")
	if !ok || !strings.HasPrefix(mark, "[!") {
		return
	}
	mark += "]"
	name = strings.TrimSpace(name)
	dropLine(p, segment.Stop)
	if p.FirstChild() == nil {
		n.RemoveChild(n, p)
	}
	var before string
	switch mark {
	case "[!NOTE]":
		before = `<div class="note" role="note">` + "\n" + `<p class="note__title">` + html.EscapeString(orElse(name, "Note")) + "</p>\n"
		if n.FirstChild() == nil {
			r.problem(segment.Start, "the note says nothing")
		}
	case "[!CAUTION]":
		c, known := r.cautions[name]
		switch {
		case name == "":
			r.problem(segment.Start, "[!CAUTION] must be followed by the name of a caution")
		case !known:
			r.problem(segment.Start, "there is no caution "+name+" in content/cautions")
		}
		before = `<div class="caution" role="note">` + "\n" + c.Inner()
	default:
		r.problem(segment.Start, "there is no box "+mark+"; there are [!NOTE] and [!CAUTION]")
	}
	m := &made{before: before, after: "</div>\n"}
	for n.FirstChild() != nil {
		m.AppendChild(m, n.FirstChild())
	}
	n.Parent().ReplaceChild(n.Parent(), n, m)
}

// Inner is what stands in the caution's box: hazard, text, and what it rests on.
func (c Caution) Inner() string {
	says := standings[c.Standing]
	if strings.HasPrefix(c.Source, says) {
		says = c.Source
	} else {
		says += ": " + c.Source
	}
	return `<p class="caution__title">` + html.EscapeString(c.Title) + "</p>\n" + c.HTML +
		`<p class="caution__source">` + html.EscapeString(says) + "</p>\n"
}

// dropLine takes what stands before the offset out of a paragraph.
func dropLine(p *ast.Paragraph, stop int) {
	for c := p.FirstChild(); c != nil; {
		next := c.NextSibling()
		if offset(c) < stop {
			p.RemoveChild(p, c)
		}
		c = next
	}
}

// fenced replaces a block between fences that is named worked or plan.
func (r *reading) fenced(n *ast.FencedCodeBlock) {
	lines, start := r.lines(n.Lines())
	switch kind := string(n.Language(r.body)); kind {
	case "worked":
		replace(n, r.worked(lines, start))
	case "plan":
		replace(n, r.plan(lines, start))
	case "", "text":
		// shown as it stands
	default:
		r.problem(start, "there is no block "+kind+"; there are worked and plan")
	}
}

// table replaces a paragraph that is nothing but the name of a table.
func (r *reading) table(n *ast.Paragraph) {
	lines, start := r.lines(n.Lines())
	name, ok := strings.CutPrefix(strings.Join(lines, " "), "{{")
	if !ok {
		return
	}
	switch name {
	case "formulas}}":
		replace(n, formulaTable(r.tools.Formulas))
	case "checks}}":
		r.made(n, start, "check values", r.tools.Checks)
	case "assumptions}}":
		r.made(n, start, "assumptions", r.tools.Assumptions)
	default:
		r.problem(start, "there is no table {{"+name+"; there are {{formulas}}, {{assumptions}} and {{checks}}")
	}
}

// made replaces a paragraph by a table that is made elsewhere.
func (r *reading) made(n *ast.Paragraph, start int, what string, table func() string) {
	if table == nil {
		r.problem(start, "there are no "+what+" to show")
		return
	}
	replace(n, table())
}

func replace(n ast.Node, html string) {
	n.Parent().ReplaceChild(n.Parent(), n, &made{before: html})
}

func wrap(n ast.Node, before, after string) {
	m := &made{before: before, after: after}
	n.Parent().ReplaceChild(n.Parent(), n, m)
	m.AppendChild(m, n)
}

func orElse(s, other string) string {
	if s == "" {
		return other
	}
	return s
}
