package plan

import (
	"strings"

	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/ground/words"
)

// MaxForm is how many bytes of form data a host takes. The largest plan takes
// some 82 kB.
const MaxForm = 96 << 10

// MaxTyped is how many bytes may be typed into one field, or pasted.
const MaxTyped = 4 << 10

// tooLong says what is wrong with a text by its length alone.
func tooLong(typed string) *words.Remark {
	if len(typed) <= MaxTyped {
		return nil
	}
	return words.About("{field} must be at most {most} kB, not {n} kB.", words.N(MaxTyped>>10), kilobytes(typed))
}

// kilobytes is the length of a text, rounded up.
func kilobytes(s string) string { return words.N((len(s) + 1<<10 - 1) >> 10) }

// ParseDraft reads form data, in the application/x-www-form-urlencoded format
// of the URL standard. Of a name that comes twice the last counts.
func ParseDraft(form string) Draft {
	d := Draft{values: map[string]string{}}
	for form != "" {
		var pair string
		pair, form, _ = strings.Cut(form, "&")
		if name, value, _ := strings.Cut(pair, "="); name != "" {
			d.values[unescape(name)] = unescape(value)
		}
	}
	d.unfold()
	return d
}

// Encode returns the draft as form data: fields in the order of the page, then
// everything else by name.
func (d Draft) Encode() string { return d.encode(func(string) bool { return true }) }

// encode is [Draft.Encode] of the names that are wanted.
func (d Draft) encode(wanted func(name string) bool) string {
	var b strings.Builder
	written := make(map[string]bool, len(d.values))
	write := func(name string) {
		value, has := d.values[name]
		if !has || written[name] || !wanted(name) {
			return
		}
		written[name] = true
		if b.Len() > 0 {
			b.WriteByte('&')
		}
		escape(&b, name)
		b.WriteByte('=')
		escape(&b, value)
	}
	d.each(func(f *Field, i int) { write(Path(f, i)) })
	var rest []string
	for name := range d.values {
		if !written[name] {
			rest = append(rest, name)
		}
	}
	numeric.Sort(len(rest), func(i, j int) bool { return rest[i] < rest[j] }, func(i, j int) { rest[i], rest[j] = rest[j], rest[i] })
	for _, name := range rest {
		write(name)
	}
	return b.String()
}

func unescape(s string) string {
	if !strings.ContainsAny(s, "+%") {
		return s
	}
	b := make([]byte, 0, len(s))
	for i := 0; i < len(s); i++ {
		c := s[i]
		if c == '+' {
			c = ' '
		} else if c == '%' && i+2 < len(s) {
			// A percent sign that starts no escape stands for itself.
			if hi, lo := hexDigit(s[i+1]), hexDigit(s[i+2]); hi >= 0 && lo >= 0 {
				c = byte(hi<<4 | lo)
				i += 2
			}
		}
		b = append(b, c)
	}
	return string(b)
}

func hexDigit(c byte) int {
	return strings.IndexByte("0123456789abcdef", c|0x20)
}

func escape(b *strings.Builder, s string) {
	const hex = "0123456789ABCDEF"
	for i := 0; i < len(s); i++ {
		switch c := s[i]; {
		case c >= '0' && c <= '9' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || strings.IndexByte("*-._", c) >= 0:
			b.WriteByte(c)
		case c == ' ':
			b.WriteByte('+')
		default:
			b.WriteByte('%')
			b.WriteByte(hex[c>>4])
			b.WriteByte(hex[c&15])
		}
	}
}
