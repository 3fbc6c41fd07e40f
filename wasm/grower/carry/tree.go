package carry

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// A node is one JSON value (RFC 8259), in the few kinds that a plan needs.
type node struct {
	kind byte   // 'o' object, 'a' array, 's' string, 'n' number, 'c' true, false or null
	text string // of a string; of a number as it was written
	keys []string
	list []node // values of an object or an array
}

// maxDepth is how deep values may nest; a plan nests three deep.
const maxDepth = 8

// A parser reads JSON. After the first thing that does not belong it is bad.
type parser struct {
	data  []byte
	at    int
	bad   bool
	depth int
}

// line is the number of the line that the parser stands on, from 1.
func (p *parser) line() int {
	return 1 + strings.Count(string(p.data[:min(p.at, len(p.data))]), "\n")
}

// space goes on to what follows; a bad parser stays where it is, for its line.
func (p *parser) space() {
	for !p.bad && p.at < len(p.data) && strings.IndexByte(" \t\r\n", p.data[p.at]) >= 0 {
		p.at++
	}
}

// peek returns the next byte, 0 at the end.
func (p *parser) peek() byte {
	if p.at < len(p.data) {
		return p.data[p.at]
	}
	return 0
}

// next consumes c and reports whether it was there.
func (p *parser) next(c byte) bool {
	p.space()
	if p.peek() != c || p.at >= len(p.data) {
		return false
	}
	p.at++
	return true
}

func (p *parser) want(c byte) {
	if !p.bad && !p.next(c) {
		p.bad = true
	}
}

// document reads one value and nothing after it.
func (p *parser) document() node {
	n := p.value()
	p.space()
	if p.at < len(p.data) {
		p.bad = true
	}
	return n
}

func (p *parser) value() node {
	p.space()
	if p.bad {
		return node{}
	}
	if p.depth++; p.depth > maxDepth {
		p.bad = true
	}
	defer func() { p.depth-- }()
	switch c := p.peek(); {
	case c == '{':
		return p.container('o', '{', '}')
	case c == '[':
		return p.container('a', '[', ']')
	case c == '"':
		return node{kind: 's', text: p.str()}
	case c == '-' || c >= '0' && c <= '9':
		return node{kind: 'n', text: p.number()}
	}
	for _, word := range [...]string{"true", "false", "null"} {
		if strings.HasPrefix(string(p.data[p.at:min(p.at+5, len(p.data))]), word) {
			p.at += len(word)
			return node{kind: 'c', text: word}
		}
	}
	p.bad = true
	return node{}
}

func (p *parser) container(kind, open, end byte) node {
	n := node{kind: kind}
	p.want(open)
	if p.next(end) {
		return n
	}
	for !p.bad {
		if kind == 'o' {
			p.space()
			n.keys = append(n.keys, p.str())
			p.want(':')
		}
		n.list = append(n.list, p.value())
		if !p.next(',') {
			p.want(end)
			break
		}
	}
	return n
}

// number reads a number in JSON's own grammar.
func (p *parser) number() string {
	start := p.at
	if p.peek() == '-' {
		p.at++
	}
	if p.peek() == '0' {
		p.at++
	} else {
		p.digits()
	}
	if p.peek() == '.' {
		p.at++
		p.digits()
	}
	if c := p.peek(); c == 'e' || c == 'E' {
		p.at++
		if c := p.peek(); c == '+' || c == '-' {
			p.at++
		}
		p.digits()
	}
	return string(p.data[start:p.at])
}

// digits consumes at least one digit.
func (p *parser) digits() {
	start := p.at
	for c := p.peek(); c >= '0' && c <= '9'; c = p.peek() {
		p.at++
	}
	if p.at == start {
		p.bad = true
	}
}

func (p *parser) str() string {
	p.want('"')
	var b []byte
	for !p.bad {
		c := p.peek()
		if c < ' ' {
			p.bad = true
			break
		}
		p.at++
		if c == '"' {
			break
		}
		if c != '\\' {
			b = append(b, c)
			continue
		}
		c = p.peek()
		p.at++
		if c == 'u' {
			r := p.hex4()
			if r >= 0xd800 && r < 0xe000 { // half of a pair
				escaped := strings.HasPrefix(string(p.data[min(p.at, len(p.data)):min(p.at+2, len(p.data))]), `\u`)
				p.at += 2
				low := p.hex4()
				if !escaped || r >= 0xdc00 || low < 0xdc00 || low >= 0xe000 {
					p.bad = true
				}
				r = 0x10000 + (r-0xd800)<<10 + low - 0xdc00
			}
			b = utf8.AppendRune(b, r)
			continue
		}
		i := strings.IndexByte(`"\/bfnrt`, c)
		if i < 0 {
			p.bad = true
			break
		}
		b = append(b, "\"\\/\b\f\n\r\t"[i])
	}
	if !utf8.Valid(b) {
		p.bad = true
	}
	return string(b)
}

func (p *parser) hex4() rune {
	if p.at+4 > len(p.data) {
		p.bad = true
		return 0
	}
	n, err := strconv.ParseUint(string(p.data[p.at:p.at+4]), 16, 16)
	if err != nil {
		p.bad = true
	}
	p.at += 4
	return rune(n)
}

// appendQuoted appends s as a JSON string.
func appendQuoted(b []byte, s string) []byte {
	const hex = "0123456789abcdef"
	b = append(b, '"')
	for _, r := range s { // which writes bytes that are no text as U+FFFD
		switch {
		case r == '"' || r == '\\':
			b = append(b, '\\', byte(r))
		case r < ' ' || r == 0x7f || r == 0x2028 || r == 0x2029:
			b = append(b, '\\', 'u', hex[r>>12&15], hex[r>>8&15], hex[r>>4&15], hex[r&15])
		default:
			b = utf8.AppendRune(b, r)
		}
	}
	return append(b, '"')
}
