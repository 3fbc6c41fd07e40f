package guide

import (
	"html"
	"slices"
	"strings"

	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/unit"
)

// pairs reads the lines "key: value" or "key = value" of a block. Each of need
// must be there; when only is set, no other key may be.
func (r *reading) pairs(block string, lines []string, start int, only bool, need ...string) (values map[string]string, ok bool) {
	values = map[string]string{}
	ok = true
	offset := start
	fail := func(text string) {
		ok = false
		r.problem(offset, text)
	}
	for _, line := range lines {
		if i := strings.IndexAny(line, ":="); i > 0 {
			key := strings.TrimSpace(line[:i])
			switch _, twice := values[key]; {
			case twice:
				fail(key + " stands here twice")
			case only && !slices.Contains(need, key):
				fail("a " + block + " block has no " + key + "; it has " + strings.Join(need, " and "))
			}
			values[key] = strings.TrimSpace(line[i+1:])
		} else if line != "" {
			fail(`must be "key: value"`)
		}
		// The line's own length is enough to land on the next one: only its
		// number is printed.
		if end := strings.IndexByte(string(r.body[min(offset, len(r.body)):]), '\n'); end >= 0 {
			offset += end + 1
		}
	}
	offset = start
	for _, key := range need {
		if values[key] == "" {
			fail("the " + block + " block lacks " + key)
		}
	}
	return values, ok
}

// worked computes a formula from the inputs of a block:
//
//	formula: emitter-flow
//	head: 10 m
//
// A line "title:" names the example.
func (r *reading) worked(lines []string, start int) string {
	values, ok := r.pairs("worked", lines, start, false, "formula")
	if !ok {
		return ""
	}
	name, title := values["formula"], values["title"]
	delete(values, "formula")
	delete(values, "title")
	i := slices.IndexFunc(r.tools.Formulas, func(f *formula.Formula) bool { return f.Name == name })
	if i < 0 {
		r.problem(start, "there is no formula "+name)
		return ""
	}
	w, err := r.tools.Formulas[i].Read(values, unit.Metric)
	if err != nil {
		for _, line := range strings.Split(err.Error(), "\n") {
			r.problem(start, line)
		}
		return ""
	}
	f := w.Formula
	var b strings.Builder
	b.WriteString("<figure class=\"working\">\n<figcaption>" + html.EscapeString(orElse(title, f.Title)) + "</figcaption>\n")
	open(&b, f)
	us := append(w.Lines(unit.US), w.Answer(unit.US))
	for i, line := range append(w.Lines(unit.Metric), w.Answer(unit.Metric)) {
		quantity(&b, line.Letter, both(line.Value, us[i].Value), line.Meaning)
	}
	end(&b, f)
	b.WriteString("</figure>\n")
	return b.String()
}

// open, quantity and end write a formula as the page's own workings do.
func open(b *strings.Builder, f *formula.Formula) {
	b.WriteString(`<p class="working__text">` + html.EscapeString(f.Text) + "</p>\n<dl>\n")
}

func quantity(b *strings.Builder, letter, value, meaning string) {
	b.WriteString("<div><dt>" + html.EscapeString(letter) + "</dt><dd>" + html.EscapeString(value) + "</dd><dd>" + html.EscapeString(meaning) + "</dd></div>\n")
}

func end(b *strings.Builder, f *formula.Formula) {
	b.WriteString("</dl>\n<cite>Source: " + html.EscapeString(f.Source.String()) + "</cite>\n")
}

// both is a value in both systems of units, once where they agree.
func both(metric, us string) string {
	if metric == us {
		return metric
	}
	return metric + " (" + us + ")"
}

// plan answers an example plan:
//
//	example: millrace
//	show: answer
func (r *reading) plan(lines []string, start int) string {
	values, ok := r.pairs("plan", lines, start, true, "example", "show")
	if !ok {
		return ""
	}
	fragment, err := r.tools.Plan(values["example"], values["show"])
	if err != nil {
		r.problem(start, err.Error())
		return ""
	}
	return `<div class="example">` + fragment + "</div>\n"
}

// formulaTable lists every formula with its symbols, limits and source.
func formulaTable(formulas []*formula.Formula) string {
	var b strings.Builder
	for _, f := range formulas {
		b.WriteString(`<section class="working" id="formula-` + html.EscapeString(f.Name) + "\">\n<h3>" + html.EscapeString(f.Title) + "</h3>\n")
		open(&b, f)
		r := &f.Result
		quantity(&b, r.Letter, orElse(unit.Of(r.Kind, unit.Metric).Symbol, r.Unit), r.Meaning)
		for i := range f.In {
			s := &f.In[i]
			quantity(&b, s.Letter, s.Range(unit.Metric), s.Meaning)
		}
		end(&b, f)
		if f.Note != "" {
			b.WriteString("<p>" + html.EscapeString(sentence(f.Note)) + "</p>\n")
		}
		b.WriteString("</section>\n")
	}
	return b.String()
}

// sentence gives a text its capital and its stop.
func sentence(s string) string {
	if s == "" {
		return s
	}
	if s[0] >= 'a' && s[0] <= 'z' {
		s = string(s[0]-'a'+'A') + s[1:]
	}
	if !strings.HasSuffix(s, ".") {
		s += "."
	}
	return s
}
