package tool

import (
	"html"
	"strings"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/method"
)

// assumptions is the table of what the calculation goes by and no formula
// shows: each number or rule, where it is used, and its standing.
func assumptions() string {
	var b strings.Builder
	b.WriteString(`<div class="scroll" role="region" tabindex="0" aria-label="Assumptions">` + "<table>\n<thead>\n<tr>\n")
	for _, column := range []string{"What", "Value", "Where it is used", "Source and standing"} {
		b.WriteString(`<th scope="col">` + column + "</th>\n")
	}
	b.WriteString("</tr>\n</thead>\n")
	for _, g := range method.Assumptions() {
		b.WriteString(`<tbody><tr class="group"><th scope="rowgroup" colspan="4">` + html.EscapeString(g.Title) + "</th></tr>\n")
		for i := range g.All {
			a := &g.All[i]
			value := a.Text(unit.Metric)
			if us := a.Text(unit.US); us != value {
				value += " (" + us + ")"
			}
			if a.Rule != "" && value != "" {
				value += ". "
			}
			b.WriteString("<tr>\n" + `<th scope="row">` + html.EscapeString(a.Title) + "</th>\n")
			for _, text := range []string{value + a.Rule, a.Used, upper(a.Source.String()) + "."} {
				b.WriteString("<td>" + html.EscapeString(text) + "</td>\n")
			}
			b.WriteString("</tr>\n")
		}
		b.WriteString("</tbody>\n")
	}
	b.WriteString("</table></div>\n")
	return b.String()
}
