package judge

import (
	"errors"
	"regexp"
	"strings"
)

var (
	tagName   = regexp.MustCompile(`^[a-zA-Z][a-zA-Z0-9]*`)
	attribute = regexp.MustCompile(`^\s+([a-zA-Z][-a-zA-Z0-9:]*)(?:="([^"<>]*)")?`)
	entity    = regexp.MustCompile(`^&(?:#[0-9]+|#x[0-9a-fA-F]+|[a-z]+);`)
	notNumber = regexp.MustCompile(`\bNaN\b|\bInf\b|%!`)
	void      = strings.Fields("br hr input wbr")
	// known is every element that the page is made of. What was typed makes none.
	known = strings.Fields(`a b br button caption circle cite dd details div dl dt fieldset figcaption figure g h2 h3 h4 input label legend li nav ol option p path
		rect section select small span strong summary svg table tbody td text textarea th thead title tr ul`)
)

// wellFormed checks markup of ours, which is stricter than a browser asks for:
// every element is a known one and closed, in order; attributes stand between
// quotes and none is a script or a style; what is text is escaped. ids gathers
// the ids, of which a page has each once.
func wellFormed(html string, ids map[string]bool) error {
	var open []string
	rest := html
	fail := func(what string) error {
		from := max(0, len(html)-len(rest)-60)
		return errors.New(what + " in …" + html[from:min(len(html), from+160)] + "…")
	}
	for rest != "" {
		switch rest[0] {
		case '>':
			return fail("a bare >")
		case '&':
			m := entity.FindString(rest)
			if m == "" {
				return fail("a bare &")
			}
			rest = rest[len(m):]
		case '<':
			if after, closes := strings.CutPrefix(rest, "</"); closes {
				name := tagName.FindString(after)
				if len(open) == 0 || open[len(open)-1] != name || !strings.HasPrefix(after[len(name):], ">") {
					return fail("the end of " + name + " within " + strings.Join(open, " "))
				}
				open, rest = open[:len(open)-1], after[len(name)+1:]
				continue
			}
			name := tagName.FindString(rest[1:])
			if !contains(known, name) {
				return fail("no known element")
			}
			rest = rest[1+len(name):]
			seen := map[string]bool{}
			for {
				m := attribute.FindStringSubmatch(rest)
				if m == nil {
					break
				}
				for i := 0; i < len(m[2]); i++ {
					if m[2][i] == '&' && entity.FindString(m[2][i:]) == "" {
						return fail("a bare & in " + m[1])
					}
				}
				switch {
				case seen[m[1]]:
					return fail(m[1] + " twice")
				case strings.HasPrefix(m[1], "on") || m[1] == "style":
					return fail("an attribute " + m[1])
				case m[1] == "href" && strings.HasPrefix(strings.ToLower(m[2]), "javascript"):
					return fail("a script for an address")
				case m[1] == "id" && ids[m[2]]:
					return fail("a second id " + m[2])
				case m[1] == "id":
					ids[m[2]] = true
				}
				seen[m[1]] = true
				rest = rest[len(m[0]):]
			}
			switch after, closed := strings.CutPrefix(rest, "/>"); {
			case closed:
				rest = after
			case rest == "" || rest[0] != '>':
				return fail("an unfinished " + name)
			default:
				rest = rest[1:]
				if !contains(void, name) {
					open = append(open, name)
				}
			}
		default:
			n := strings.IndexAny(rest, "<>&")
			if n < 0 {
				n = len(rest)
			}
			rest = rest[n:]
		}
	}
	if len(open) > 0 {
		return fail("no end of " + strings.Join(open, " "))
	}
	return nil
}

// unreal returns what is no number in a text, with what stands around it; empty
// where all is well.
func unreal(text string) string {
	// The expression is slow, and hardly ever needed.
	if !strings.Contains(text, "NaN") && !strings.Contains(text, "Inf") && !strings.Contains(text, "%!") {
		return ""
	}
	at := notNumber.FindStringIndex(text)
	if at == nil {
		return ""
	}
	return text[max(0, at[0]-60):min(len(text), at[1]+60)]
}

func contains(list []string, s string) bool {
	for _, v := range list {
		if v == s {
			return true
		}
	}
	return false
}
