package tool

import (
	"html"
	"math"
	"strconv"
	"strings"

	"evenrow/wasm/shown/method/check"
)

// checks is the table of check values: what a source states, what the program
// computes, and how far they may differ.
func checks() string {
	var b strings.Builder
	cell := func(tag, text string) { b.WriteString("<" + tag + ">" + html.EscapeString(text) + "</td>\n") }
	b.WriteString(`<div class="scroll" role="region" tabindex="0" aria-label="Check values">` + "<table>\n<thead>\n<tr>\n")
	for _, column := range []string{"Value", "Given", "Stated", "Computed", "May differ by", "Source"} {
		b.WriteString(`<th scope="col">` + column + "</th>\n")
	}
	b.WriteString("</tr>\n</thead>\n")
	topic := ""
	for _, r := range check.Rows {
		if r.Topic != topic {
			if topic != "" {
				b.WriteString("</tbody>\n")
			}
			topic = r.Topic
			b.WriteString(`<tbody><tr class="group"><th scope="rowgroup" colspan="6">` + html.EscapeString(upper(topic)) + "</th></tr>\n")
		}
		var stated, computed, differ []string
		for i := range r.Parts {
			p := &r.Parts[i]
			got, err := p.Got()
			if err != nil {
				computed = append(computed, err.Error())
			} else {
				computed = append(computed, digits(got, p.Tol))
			}
			stated = append(stated, strings.TrimSpace(strconv.FormatFloat(p.Want, 'g', 10, 64)+" "+p.Unit))
			differ = append(differ, strconv.FormatFloat(p.Tol, 'g', 2, 64))
		}
		b.WriteString("<tr>\n" + `<th scope="row">` + html.EscapeString(upper(r.Quantity)) + "</th>\n")
		cell("td", r.Given)
		cell(`td class="n"`, strings.Join(stated, "; "))
		cell(`td class="n"`, strings.Join(computed, "; "))
		cell(`td class="n"`, strings.Join(differ, "; "))
		from := r.Source.String() + "."
		if r.Note != "" {
			from += " " + r.Note
		}
		cell("td", r.ID+": "+from)
		b.WriteString("</tr>\n")
	}
	if topic != "" {
		b.WriteString("</tbody>\n")
	}
	b.WriteString("</table></div>\n")
	return b.String()
}

// digits writes what was computed to one digit more than the difference that
// is let pass; all digits where none is.
func digits(v, tolerance float64) string {
	if tolerance <= 0 {
		return strconv.FormatFloat(v, 'g', 10, 64)
	}
	decimals := max(0, 1-int(math.Floor(math.Log10(tolerance))))
	return strconv.FormatFloat(v, 'f', decimals, 64)
}

// upper gives a text its capital.
func upper(s string) string {
	if s != "" && s[0] >= 'a' && s[0] <= 'z' {
		return string(s[0]-'a'+'A') + s[1:]
	}
	return s
}
