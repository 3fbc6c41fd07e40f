// Package block has what a page is built of: escaped text, tables, pictures and
// what opens on request. It knows units, and nothing of a plan.
package block

import (
	"math"
	"strconv"
	"strings"

	"evenrow/wasm/shown/wording"
)

// Markup is text that is safe to stand in a page as it is. Only constants
// become markup: a string that was typed, or computed, does not compile here
// without a conversion, and this package has none.
type Markup string

// A Writer builds HTML and SVG. Whatever is not [Markup] goes through
// [Writer.Text] or [Writer.Attr], which escape it.
type Writer struct {
	wording.Units
	b []byte
}

// HTML writes markup as it stands.
func (w *Writer) HTML(m Markup) *Writer {
	w.b = append(w.b, m...)
	return w
}

// Whole writes what another writer has written. The ids in it are left out, because the
// page has them already.
func (w *Writer) Whole(written string) *Writer {
	const id = ` id="`
	for {
		before, after, found := strings.Cut(written, id)
		w.b = append(w.b, before...)
		if !found {
			return w
		}
		_, written, _ = strings.Cut(after, `"`)
	}
}

// Text writes s so that it stands on the page as typed, in an element or
// between the quotes of an attribute.
func (w *Writer) Text(s string) *Writer {
	plain := 0 // from here on nothing needed an escape
	for i := 0; i < len(s); i++ {
		c := s[i]
		if c > '>' || c == ' ' {
			continue // nearly all of a text
		}
		escape := ""
		switch c {
		case '<':
			escape = "&lt;"
		case '>':
			escape = "&gt;"
		case '&':
			escape = "&amp;"
		case '"':
			escape = "&#34;"
		case '\'':
			escape = "&#39;"
		default:
			if c >= ' ' || c == '\n' || c == '\t' {
				continue
			}
			escape = "\uFFFD"
		}
		w.b = append(append(w.b, s[plain:i]...), escape...)
		plain = i + 1
	}
	w.b = append(w.b, s[plain:]...)
	return w
}

// Attr writes an attribute with a space before it.
func (w *Writer) Attr(name Markup, value string) *Writer {
	w.b = append(w.b, ' ')
	return w.HTML(name).HTML(`="`).Text(value).HTML(`"`)
}

// Tag writes an element that holds s.
func (w *Writer) Tag(name Markup, s string) *Writer {
	return w.HTML("<").HTML(name).HTML(">").Text(s).HTML("</").HTML(name).HTML(">")
}

// At writes a coordinate of a picture, to a tenth of a pixel. What is not
// finite becomes 0, so that no picture is refused as a whole.
func (w *Writer) At(v float64) *Writer {
	w.b = appendTenths(w.b, v)
	return w
}

// Num writes a whole number.
func (w *Writer) Num(n int) *Writer {
	w.b = strconv.AppendInt(w.b, int64(n), 10)
	return w
}

// Len is how many bytes are written.
func (w *Writer) Len() int { return len(w.b) }

// Cut takes back all but the first n bytes.
func (w *Writer) Cut(n int) { w.b = w.b[:n] }

// Clear makes room for another fragment.
func (w *Writer) Clear() { w.b = w.b[:0] }

func (w *Writer) String() string { return string(w.b) }

// appendTenths appends v, rounded to tenths, in the fewest characters.
func appendTenths(b []byte, v float64) []byte {
	t := math.Round(v * 10)
	if !(math.Abs(t) < 1e9) {
		t = 0
	}
	n := int(t)
	if n < 0 {
		b = append(b, '-')
		n = -n
	}
	whole, tenth := n/10, n%10
	// Most of what is drawn lies within a picture of some hundred pixels.
	switch {
	case whole >= 1000:
		b = strconv.AppendInt(b, int64(whole), 10)
	case whole >= 100:
		b = append(b, byte('0'+whole/100), byte('0'+whole/10%10), byte('0'+whole%10))
	case whole >= 10:
		b = append(b, byte('0'+whole/10), byte('0'+whole%10))
	default:
		b = append(b, byte('0'+whole))
	}
	if tenth != 0 {
		b = append(b, '.', byte('0'+tenth))
	}
	return b
}
