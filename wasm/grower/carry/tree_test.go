package carry

import (
	"encoding/json"
	"strings"
	"testing"
)

// Texts by the grammar of RFC 8259, each also read by the standard library.
func TestJSONGrammar(t *testing.T) {
	deep := func(n int) string { return strings.Repeat("[", n) + strings.Repeat("]", n) }
	for text, want := range map[string]bool{
		`{}`: true, `[]`: true, `{"a":1}`: true, ` { "a" : 1 , "b" : [ 1 , 2 ] } `: true, "\t[\r\n1 ]\n": true,
		`{"a":1,}`: false, `[1,]`: false, `[,1]`: false, `{"a" 1}`: false, `{a:1}`: false, `{"a":}`: false, `[1 2]`: false, `[1`: false, `{`: false, `[}`: false,
		`1 2`: false, ``: false, ` `: false, `]`: false, `"a`: false, `{"a":1`: false, `[1]]`: false,
		`true`: true, `false`: true, `null`: true, `[true,false,null]`: true, `tru`: false, `nul`: false, `truefalse`: false, `True`: false, `nil`: false, `:`: false,
		`0`: true, `-0`: true, `9`: true, `10`: true, `-12.5`: true, `1e5`: true, `1E5`: true, `1e+5`: true, `1E-05`: true, `0.5e10`: true, `99`: true, `0e0`: true,
		`01`: false, `-`: false, `+1`: false, `.5`: false, `1.`: false, `1e`: false, `1e+`: false, `1F5`: false, `1e,5`: false, `-a`: false, `1:`: false, `1/`: false, `0x1`: false, `--1`: false,
		`""`: true, `"a b"`: true, `"\"\\\/\b\f\n\r\t"`: true, `"\x"`: false, `"\"`: false, `"\`: false, "\"a\nb\"": false, "\"\x1f\"": false, "\"\x7f\"": true, "\" \"": true, "\"\x00\"": false,
		`"\u0041"`: true, `"\u00e9"`: true, `"\uFFFF"`: true, `"\u004"`: false, `"\u00g0"`: false, `"\u"`: false, `"\u12`: false, `"\u1234`: false,
		`"é"`: true, `"😀"`: true,
		deep(8): true,
	} {
		if lib := json.Valid([]byte(text)); lib != want {
			t.Fatalf("the table is wrong about %q", text)
		}
		if p := (parser{data: []byte(text)}); true {
			if p.document(); p.bad == want {
				t.Errorf("%q: bad %t", text, p.bad)
			}
		}
	}
	// Stricter than the library: text that is none, halves of pairs, and what
	// nests deeper than a plan.
	for _, text := range []string{deep(9), "\"\xff\"", "\"\xc3\"", `"\ud800"`, `"\udbff"`, `"\udc00"`, `"\udfff"`, `"\ud800\ud800"`, `"\ud800\ue000"`, `"\ud800\udbff"`, `"\udc00\udc00"`,
		`"\ud800\n0000"`, `"\ud83d/ude00"`, `"\ud83d"`, `"\ud83d\u"`, `"\ud83d\ude0"`, `"\ud83d\"`, `"\ud83d\ude0g"`} {
		p := parser{data: []byte(text)}
		if p.document(); !p.bad {
			t.Errorf("%q is taken", text)
		}
	}
}

// Strings as the standard library reads them.
func TestJSONStrings(t *testing.T) {
	for _, text := range []string{
		`""`, `"abc"`, `"\"\\\/\b\f\n\r\t"`, `"\u0041\u00e9\u20AC\uFFFD"`, `"\ud7ff\ue000"`, `"\uD800\uDC00"`, `"\ud83d\ude00"`, `"\udbff\udfff"`, `"\ud800\udfff\udbff\udc00 after"`, `"é😀"`,
	} {
		var want string
		if err := json.Unmarshal([]byte(text), &want); err != nil {
			t.Fatal(err)
		}
		p := parser{data: []byte(text)}
		if n := p.document(); n.text != want || p.bad || n.kind != 's' {
			t.Errorf("%s is %q, bad %t, want %q", text, n.text, p.bad, want)
		}
	}
}

// Numbers keep the digits that they were written in, and words their kind.
func TestJSONValues(t *testing.T) {
	p := parser{data: []byte(`{"a": -0.50e+07, "b": [true, null, "x"], "a": {}}`)}
	n := p.document()
	if p.bad || n.kind != 'o' || len(n.list) != 3 || n.list[0].text != "-0.50e+07" || n.list[0].kind != 'n' || n.get("a") != &n.list[0] || n.get("c") != nil {
		t.Fatalf("%+v", n)
	}
	if b := n.get("b"); b.kind != 'a' || len(b.list) != 3 || b.list[0].kind != 'c' || b.list[0].text != "true" || b.list[1].text != "null" || b.list[2].kind != 's' {
		t.Errorf("%+v", b)
	}
}

// A problem is on the line where reading stopped.
func TestJSONLines(t *testing.T) {
	for text, want := range map[string]int{"": 1, "x": 1, "[\n1,\n}": 3, "[\n\n": 3, "{\n\"a\": \"b\nc\"}": 2, "\"a\nb\"": 1, "[\n]\n\n x": 4} {
		p := parser{data: []byte(text)}
		if p.document(); !p.bad || p.line() != want {
			t.Errorf("%q: bad %t on line %d, want %d", text, p.bad, p.line(), want)
		}
	}
}

// What a string holds is written so that any reader has it back, and nothing
// that ends lines, or hides, stands in a file as it is.
func TestQuotedStrings(t *testing.T) {
	for s, want := range map[string]string{
		"a":      `"a"`,
		`"\`:     `"\"\\"`,
		"\x00":   `"\u0000"`,
		"\n\t":   `"\u000a\u0009"`,
		"\x1f":   `"\u001f"`,
		" ~":     `" ~"`,
		"\x7f":   `"\u007f"`,
		"\u0080": "\"\u0080\"",
		"\u2027": "\"\u2027\"",
		"\u2028": `"\u2028"`,
		"\u2029": `"\u2029"`,
		"\u202a": "\"\u202a\"",
		"é😀":     `"é😀"`,
		"\xff":   "\"\ufffd\"",
	} {
		got := string(appendQuoted(nil, s))
		if got != want {
			t.Errorf("%q is written %s, want %s", s, got, want)
		}
		var back string
		if err := json.Unmarshal([]byte(got), &back); err != nil || back != strings.ToValidUTF8(s, "\ufffd") {
			t.Errorf("%s is read as %q, %v", got, back, err)
		}
	}
}
