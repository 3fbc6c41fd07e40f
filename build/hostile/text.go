package hostile

import (
	"encoding/base64"
	"regexp"
	"strings"

	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
)

// An Input is a kind of text that comes from outside.
type Input int

const (
	Links Input = iota
	Files
	Forms
	Inputs = iota
)

// Text returns a text of a kind that was made from that of a plan: with something
// changed, lost, doubled or put in.
func Text(s *Source, p *plan.Plan, kind Input) string {
	switch kind {
	case Links:
		link := carry.Link(p)
		if s.oneIn(2) {
			return changed(s, link, []byte(base64URL))
		}
		data, _ := base64.RawURLEncoding.DecodeString(link[1:])
		return link[:1] + base64.RawURLEncoding.EncodeToString([]byte(changed(s, string(data), nil)))
	case Files:
		file := string(carry.JSON(p))
		for range 1 + s.below(3) {
			at := jsonValue.FindAllStringIndex(file, -1)
			if len(at) > 0 && !s.oneIn(4) {
				k := at[s.below(len(at))]
				file = file[:k[0]] + values[s.below(len(values))] + file[k[1]:]
			} else {
				file = changed(s, file, nil)
			}
		}
		return file
	}
	d := plan.DraftOf(p)
	fields := plan.Fields()
	for range s.below(6) {
		f := fields[s.below(len(fields))]
		d.Set(plan.Path(f, s.below(4)), typed[s.below(len(typed))])
	}
	for range s.below(3) {
		k := asked[s.below(len(asked))]
		d.Set(k[0], k[1])
	}
	form := d.Encode()
	if s.oneIn(8) {
		form = changed(s, form, nil)
	}
	return form
}

const base64URL = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"

var (
	jsonValue = regexp.MustCompile(`: ("[^"]*"|[-0-9.e]+)`)

	// values stand in a file where another one stood.
	values = [...]string{
		`: 1e300`, `: -1e300`, `: 1e-320`, `: ""`, `: null`, `: true`, `: {}`, `: []`, `: [[[[[[[[[[[[1]]]]]]]]]]]]`, `: "SI 1e308"`, `: "SI NaN"`, `: "SI -0"`,
		`: 0`, `: -0`, `: 1`, `: "<script>"`, `: "\ud800"`, `: 00`, `: 1.`, `: "own"`, `: 4000`, `: 99999999999999999999`, ``, `: "a", "a": "b"`,
	}
	// typed are what stands in a box.
	typed = [...]string{
		"", " ", "0", "-0", "1", "1e9", "-1", "1e300", "1e-300", "NaN", "Inf", "0x10", "1/2", "½", "1/0", "1,5", "1,000", "1 000", "2 L/h", "15 psi", "5 ft",
		"1e99 bar", "<b>x</b>", "\x00", "\xff\xfe", "2027-02-29", "2027-05-12", "0000-01-01", "own", "pump-points", "gravity", "us", "metric", strings.Repeat("9", 41), strings.Repeat("x", 2000),
		"12345678901234567", "٣", "−3", "+ 5", "5e", "4000", "60", "0.1",
	}
	// asked are what a form asks for besides.
	asked = [...][2]string{
		{"action", "add-row"}, {"action", "remove-row.1"}, {"action", "row-up.2"}, {"action", "copy-row.60"}, {"action", "add-emitter"}, {"action", "remove-emitter.1"},
		{"action", "add-point"}, {"action", "fill-months"}, {"action", "set-clock"}, {"action", "remove-run.99999999999999999999"}, {"action", "row-down.-1"}, {"action", "<b>"},
		{"months-table", strings.Repeat("21,5\t10,25\n", 12)}, {"months-table", strings.Repeat("1e300 -1e300\n", 12)}, {"months-table", "\x00;\t"},
		{"clock", "2027-01-01 60\n2027-03-28 120\n2027-10-31 60"}, {"clock", "0000-01-01 60\n0000-01-02 0\n0000-10-01 60"}, {"clock", "9999-12-31 1e9"},
		{"units-was", "us"}, {"units-was", "metric"}, {"units-was", "x"}, {"emitters.1.kind-was", "plain"}, {"emitters.999.kind-was", "compensating"},
		{"rows.999.plants", "3"}, {"rows.61.plants", "3"}, {"rows.-1.plants", "3"}, {"rows.1.plants.x", "3"}, {"good", "1zz"}, {"good", "#"}, {"", "x"},
	}
)

// changed returns a text with up to four changes. Letters come from set, or are
// any bytes when it is empty.
func changed(s *Source, text string, set []byte) string {
	b := []byte(text)
	letter := func() byte {
		if c := s.next(); len(set) == 0 {
			return c
		} else {
			return set[int(c)%len(set)]
		}
	}
	for range 1 + s.below(4) {
		if len(b) == 0 {
			return string(append(b, letter()))
		}
		i, j := s.below(len(b)), s.below(len(b))
		i, j = min(i, j), max(i, j)
		j = min(j, i+1+s.below(40))
		switch s.below(7) {
		case 0, 1:
			b[i] = letter()
		case 2:
			b = append(b[:i], b[j:]...)
		case 3:
			b = append(b[:i:i], append([]byte{letter(), letter()}, b[i:]...)...)
		case 4:
			b = append(b[:j:j], b[i:]...) // a piece twice
		case 5:
			b = b[:i]
		default:
			b[i] ^= 1 << s.below(8)
		}
	}
	return string(b)
}
