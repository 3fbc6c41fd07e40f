package edge

import (
	"html"
	"net/http"
	"strconv"
	"strings"

	"evenrow/wasm/shown/answer"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/view"
)

// Colours of the picture: those of the site's style by day, because a picture
// that is shown elsewhere has no style sheet.
const (
	paper = "#faf8f2"
	sheer = "#ffffff"
	ink   = "#16262b"
	edges = "#6b7b7e"
	water = "#0a5468"
	alarm = "#8f2018"
)

// look is how each class of the plan view is drawn, as attributes: a style
// element would be refused by our own policy.
var look = map[string]string{
	"place":            attr("fill", sheer, "stroke", edges),
	"line line--lead":  attr("fill", "none", "stroke", water, "stroke-width", "5"),
	"line line--head":  attr("fill", "none", "stroke", water, "stroke-width", "3"),
	"line line--row":   attr("fill", "none", "stroke", water, "stroke-width", "2.5"),
	"source":           attr("fill", paper, "stroke", ink, "stroke-width", "2"),
	"scale":            attr("fill", "none", "stroke", ink),
	"drop":             attr("fill", water, "stroke", water, "stroke-width", ".75"),
	"drop drop--empty": attr("fill", sheer, "stroke", ink, "stroke-width", "1.25"),
	"bar":              attr("fill", "none", "stroke", ink, "stroke-width", "2"),
	"ring":             attr("fill", "none", "stroke", alarm, "stroke-width", "2.5"),
	"strip":            attr("fill", "none"),
}

func attr(pairs ...string) string {
	s := ""
	for i := 0; i < len(pairs); i += 2 {
		s += " " + pairs[i] + `="` + pairs[i+1] + `"`
	}
	return s
}

// head is the room above the rows, in px, for what the plan is called and the
// answer.
const head = 64

// picture is the plan view of a plan as a picture by itself, with its answer.
func picture(q *question, a *asked) reply {
	s := q.sheet(a.plan)
	rows := ""
	for _, f := range view.Told(s, address) {
		if f.ID == "map" {
			rows = wide(f.HTML)
		}
	}
	width, height := number(rows, "width"), number(rows, "height")
	if rows == "" {
		width, height = 760, head
	}
	answer := answer.Announce(s)
	var b strings.Builder
	w, h := strconv.FormatFloat(width, 'f', -1, 64), strconv.FormatFloat(height+head, 'f', -1, 64)
	b.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" width="` + w + `" height="` + h + `" viewBox="0 0 ` + w + ` ` + h +
		`" role="img" font-family="system-ui, sans-serif" font-size="12" font-weight="500" stroke-linejoin="round" stroke-linecap="round"` +
		` fill="` + ink + `"><title>` + html.EscapeString(scene.Title(s.Plan)) + `</title><desc>` + html.EscapeString(answer) + `</desc>` +
		`<path` + attr("fill", paper) + ` d="M0 0h` + w + `v` + h + `H0Z"/>` +
		`<text x="22" y="28" font-size="18" font-weight="600">` + html.EscapeString(short(scene.Title(s.Plan), 60)) + `</text>` +
		`<text x="22" y="50" font-size="15">` + html.EscapeString(short(answer, 96)) + `</text>`)
	if _, inner, found := strings.Cut(rows, ">"); found {
		b.WriteString(`<g transform="translate(0 ` + strconv.Itoa(head) + `)">` + drawn(strings.TrimSuffix(inner, "</svg>")) + "</g>")
	}
	b.WriteString("</svg>\n")
	return reply{status: http.StatusOK, kind: pictureKind, body: b.String()}
}

// wide is the wide drawing among those of a fragment, or nothing.
func wide(fragment string) string {
	at := strings.Index(fragment, `<svg class="picture wide"`)
	if at < 0 {
		return ""
	}
	drawing, _, _ := strings.Cut(fragment[at:], "</svg>")
	return drawing + "</svg>"
}

// number is a numeric attribute of the first element.
func number(element, name string) float64 {
	_, rest, _ := strings.Cut(element, " "+name+`="`)
	text, _, _ := strings.Cut(rest, `"`)
	v, _ := strconv.ParseFloat(text, 64)
	return v
}

// drawn turns the classes of a drawing into attributes, and its links, which
// lead to places of the page, into groups.
func drawn(svg string) string {
	var b strings.Builder
	for {
		before, rest, found := strings.Cut(svg, ` class="`)
		b.WriteString(before)
		if !found {
			break
		}
		class, after, _ := strings.Cut(rest, `"`)
		b.WriteString(look[class])
		svg = after
	}
	svg = b.String()
	b.Reset()
	for {
		before, rest, found := strings.Cut(svg, `<a href="`)
		b.WriteString(before)
		if !found {
			break
		}
		_, after, _ := strings.Cut(rest, `"`)
		b.WriteString("<g")
		svg = after
	}
	return strings.ReplaceAll(b.String(), "</a>", "</g>")
}

// short is a text of at most n characters.
func short(s string, n int) string {
	r := []rune(s)
	if len(r) <= n {
		return s
	}
	return strings.TrimRight(string(r[:n-1]), " ,.") + "…"
}
