package site

import (
	"bytes"
	stdhtml "html"
	"io"
	"strconv"
	"strings"

	"github.com/tdewolff/parse/v2"
	"github.com/tdewolff/parse/v2/html"
)

// An outline is what a finished page holds that other pages or the policy
// depend on.
type outline struct {
	ids    map[string]bool
	links  []string // of a elements
	loads  []string // everything that the browser fetches
	faults []string
}

// read collects the outline of a page. Every page has one heading of the first
// rank and one main part, no rank is skipped, no id stands twice, and nothing
// is styled or scripted inline, which the policy would refuse.
func read(body []byte) outline {
	o := outline{ids: map[string]bool{}}
	var headings []int
	mains := 0
	o.lex(body, func(tag string) {
		switch {
		case len(tag) == 2 && tag[0] == 'h' && '1' <= tag[1] && tag[1] <= '6':
			headings = append(headings, int(tag[1]-'0'))
		case tag == "main":
			mains++
		case tag == "style":
			o.faults = append(o.faults, "has a style element, which the policy refuses")
		}
	})
	first := 0
	for i, rank := range headings {
		if rank == 1 {
			first++
		}
		if i > 0 && rank > headings[i-1]+1 {
			o.faults = append(o.faults, "skips from a heading of rank "+strconv.Itoa(headings[i-1])+" to one of rank "+strconv.Itoa(rank))
		}
	}
	if first != 1 {
		o.faults = append(o.faults, "must have one h1, and has "+strconv.Itoa(first))
	}
	if mains != 1 {
		o.faults = append(o.faults, "must have one main part, and has "+strconv.Itoa(mains))
	}
	return o
}

// lex reads markup and calls element for every element.
func (o *outline) lex(body []byte, element func(tag string)) {
	lexer := html.NewLexer(parse.NewInputBytes(bytes.Clone(body)))
	tag, script, unnamed := "", false, false
	for {
		kind, data := lexer.Next()
		switch kind {
		case html.ErrorToken:
			if err := lexer.Err(); err != io.EOF {
				o.faults = append(o.faults, "cannot be read: "+err.Error())
			}
			return
		case html.StartTagToken:
			tag = string(lexer.Text())
			script, unnamed = tag == "script", tag == "img"
			element(tag)
		case html.StartTagCloseToken, html.StartTagVoidToken:
			if unnamed {
				o.faults = append(o.faults, "has a picture without the attribute alt")
			}
			unnamed = false
		case html.SVGToken:
			// A picture is one token; under another name it is read like the
			// rest of the page.
			o.lex(append([]byte("<g"), data[len("<svg"):]...), element)
		case html.TextToken:
			if script && len(bytes.TrimSpace(data)) > 0 {
				o.faults = append(o.faults, "has a script within the page, which the policy refuses")
			}
		case html.EndTagToken:
			script = false
		case html.AttributeToken:
			key := strings.ToLower(string(lexer.AttrKey()))
			value := strings.Trim(string(lexer.AttrVal()), `"'`)
			unnamed = unnamed && key != "alt"
			o.attribute(tag, key, stdhtml.UnescapeString(value))
		}
	}
}

func (o *outline) attribute(tag, key, value string) {
	switch {
	case key == "id":
		if o.ids[value] {
			o.faults = append(o.faults, "has two elements with the id "+value)
		}
		o.ids[value] = true
	case key == "href" && tag == "a":
		o.links = append(o.links, value)
	case key == "href" && tag == "link", key == "src", key == "data-worker", key == "data-program", key == "data-offline":
		o.loads = append(o.loads, value)
	case key == "style":
		o.faults = append(o.faults, "has a style attribute on "+tag+", which the policy refuses")
	case strings.HasPrefix(key, "on"):
		o.faults = append(o.faults, "has the attribute "+key+" on "+tag+", which the policy refuses")
	case key == "href" && strings.HasPrefix(value, "javascript:"):
		o.faults = append(o.faults, "has a script as an address, which the policy refuses")
	}
}
