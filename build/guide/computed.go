package guide

import (
	"html"
	"slices"
	"strings"

	"evenrow/wasm/formula"
	"evenrow/wasm/unit"
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
	b.WriteString("<figure class=\"worked\">\n<figcaption class=\"worked__title\">" + html.EscapeString(orElse(title, f.Title)) + "</figcaption>\n")
	b.WriteString(`<p class="worked__formula">` + html.EscapeString(f.Text) + "</p>\n")
	b.WriteString("<dl class=\"worked__values\">\n")
	us := w.Lines(unit.US)
	for i, line := range w.Lines(unit.Metric) {
		quantity(&b, "", line, us[i])
	}
	quantity(&b, ` class="worked__result"`, w.Answer(unit.Metric), w.Answer(unit.US))
	b.WriteString("</dl>\n")
	b.WriteString(`<p class="worked__source">` + html.EscapeString(sentence(f.Source.String())) + "</p>\n</figure>\n")
	return b.String()
}

// quantity writes one line of a worked example, in both systems of units where
// they differ.
func quantity(b *strings.Builder, attr string, metric, us formula.Line) {
	b.WriteString("<div" + attr + "><dt><i>" + html.EscapeString(metric.Letter) + "</i> " + html.EscapeString(metric.Meaning) + "</dt><dd>")
	b.WriteString(html.EscapeString(both(metric.Value, us.Value)) + "</dd></div>\n")
}

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
		b.WriteString(`<section class="formula" id="formula-` + html.EscapeString(f.Name) + "\">\n<h3>" + html.EscapeString(f.Title) + "</h3>\n")
		b.WriteString(`<p class="worked__formula">` + html.EscapeString(f.Text) + "</p>\n<dl class=\"worked__values\">\n")
		r := &f.Result
		b.WriteString("<div><dt><i>" + html.EscapeString(r.Letter) + "</i> " + html.EscapeString(r.Meaning) + "</dt><dd>" +
			html.EscapeString(orElse(unit.Of(r.Kind, unit.Metric).Symbol, r.Unit)) + "</dd></div>\n")
		for i := range f.In {
			s := &f.In[i]
			b.WriteString("<div><dt><i>" + html.EscapeString(s.Letter) + "</i> " + html.EscapeString(s.Meaning) + "</dt><dd>" +
				html.EscapeString(s.Range(unit.Metric)) + "</dd></div>\n")
		}
		b.WriteString("</dl>\n")
		if f.Note != "" {
			b.WriteString("<p>" + html.EscapeString(sentence(f.Note)) + "</p>\n")
		}
		b.WriteString(`<p class="worked__source">` + html.EscapeString(sentence(f.Source.String())) + "</p>\n</section>\n")
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
