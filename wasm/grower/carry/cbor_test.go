package carry

import (
	"encoding/hex"
	"math"
	"testing"
)

// Test vectors of RFC 4648, section 10, without padding, and two with the
// characters that only base64url has: 0xfb 0xff is - _ 8.
func TestBase64ByItsStandard(t *testing.T) {
	for _, c := range []struct{ plain, coded string }{
		{"", ""}, {"f", "Zg"}, {"fo", "Zm8"}, {"foo", "Zm9v"}, {"foob", "Zm9vYg"}, {"fooba", "Zm9vYmE"}, {"foobar", "Zm9vYmFy"},
		{"\xfb\xff", "-_8"}, {"\x00\x10\x83\x10\x51\x87", "ABCDEFGH"}, {"\x65\x9a\x69", "ZZpp"}, {"\xcf\xdf\x3d", "z989"},
	} {
		if got := string(toBase64(nil, []byte(c.plain))); got != c.coded {
			t.Errorf("%q is coded %q, want %q", c.plain, got, c.coded)
		}
		if got, ok := fromBase64(c.coded); !ok || string(got) != c.plain {
			t.Errorf("%q is %q, %t, want %q", c.coded, got, ok, c.plain)
		}
	}
}

// What no encoder writes is refused: characters beside the alphabet, one that
// stands alone, and bits that belong to no byte.
func TestBase64Refuses(t *testing.T) {
	for _, s := range []string{
		"Zg==", "Zm9v\n", " Zm9v", "Zm+v", "Zm/v", "Zm@v", "Zm[v", "Zm`v", "Zm{v", "Zm:v", "Zm.v", "Zm\x80v", "\xff\xff",
		"Z", "A", "Zm9vY", "Zm9vA", // a character alone has no whole byte, whatever its bits
		"Zh", "Zm9", "Zm8B", // "Zm8B" is whole, see below
	} {
		if got, ok := fromBase64(s); ok && s != "Zm8B" {
			t.Errorf("%q is taken for %q", s, got)
		}
	}
	if got, ok := fromBase64("Zm8B"); !ok || string(got) != "fo\x01" {
		t.Errorf("Zm8B is %q, %t", got, ok)
	}
}

func unhex(t *testing.T, s string) []byte {
	t.Helper()
	b, err := hex.DecodeString(s)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// Whole numbers of RFC 8949, appendix A, and those at the ends of each length.
func TestIntegersByTheStandard(t *testing.T) {
	for _, c := range []struct {
		n     int64
		coded string
	}{
		{0, "00"}, {1, "01"}, {10, "0a"}, {23, "17"}, {24, "1818"}, {25, "1819"}, {100, "1864"}, {1000, "1903e8"}, {1000000, "1a000f4240"},
		{1000000000000, "1b000000e8d4a51000"}, {-1, "20"}, {-10, "29"}, {-100, "3863"}, {-1000, "3903e7"},
		{255, "18ff"}, {256, "190100"}, {65535, "19ffff"}, {65536, "1a00010000"}, {4294967295, "1affffffff"}, {4294967296, "1b0000000100000000"},
		{math.MaxInt64, "1b7fffffffffffffff"}, {math.MinInt64, "3b7fffffffffffffff"},
	} {
		if got := hex.EncodeToString(writeInt(nil, c.n)); got != c.coded {
			t.Errorf("%d is coded %s, want %s", c.n, got, c.coded)
		}
		r := reader{data: unhex(t, c.coded)}
		if got := r.integer(); got != c.n || r.bad || len(r.data) > 0 {
			t.Errorf("%s is %d, bad %t, want %d", c.coded, got, r.bad, c.n)
		}
	}
}

// Numbers of RFC 8949: appendix A, and 273.15 of section 3.4.4.
func TestNumbersByTheStandard(t *testing.T) {
	if got := hex.EncodeToString(writeDouble(nil, 1.1)); got != "fb3ff199999999999a" {
		t.Errorf("1.1 as a double is %s", got)
	}
	for _, c := range []struct {
		coded, decimal string
		double         float64
	}{
		{"fb3ff199999999999a", "", 1.1}, {"fbc010666666666666", "", -4.1},
		{"c48221196ab3", "27315e-2", 0}, {"c4820020", "-1e0", 0},
		{"c482142a", "-11e20", 0}, {"c482382701", "1e-40", 0}, // as far as an exponent may go
		{"186f", "111", 0},
	} {
		r := reader{data: unhex(t, c.coded)}
		if got := r.real(); got != (real{c.decimal, c.double}) || r.bad || len(r.data) > 0 {
			t.Errorf("%s is %+v, bad %t, want %s or %g", c.coded, got, r.bad, c.decimal, c.double)
		}
	}
	if got, ok := writeDecimal(nil, "273.15"); !ok || hex.EncodeToString(got) != "c48221196ab3" {
		t.Errorf("273.15 is %x, %t", got, ok)
	}
	if got, ok := writeDecimal([]byte{7}, "99999999999999999999.5"); ok || len(got) != 1 || got[0] != 7 {
		t.Errorf("of too many digits there is %x, %t, want what stood there before", got, ok)
	}
}

// What does not belong makes the reader bad, and what it returns is nothing.
func TestReaderIsBad(t *testing.T) {
	integer := func(r *reader) any { return r.integer() }
	number := func(r *reader) any { return r.real() }
	text := func(r *reader) any { return len(r.text()) }
	list := func(r *reader) any { return r.expect(array) }
	for _, c := range []struct {
		name, coded string
		read        func(r *reader) any
		any         bool // what is returned says nothing
	}{
		{"nothing", "", integer, false},
		{"an argument that is missing", "18", integer, false},
		{"an argument of two bytes of which one is missing", "1901", integer, false},
		{"reserved lengths", "1c00000000000000000000000000000000", integer, false},
		{"an indefinite length", "9fff", list, false},
		{"more than an int64 holds", "1b8000000000000000", integer, false},
		{"less than an int64 holds", "3b8000000000000000", integer, false},
		{"text for a whole number", "6161", integer, false},
		{"a list for a whole number", "80", integer, false},
		{"a whole number for a list", "01", list, false},
		{"a list of more than is there", "820a", list, false},
		{"text that is no text", "61ff", text, true},
		{"text that is cut off", "6261", text, false},
		{"a double of seven bytes", "fb3ff19999999999", number, true},
		{"a tenth power below -40", "c482382801", number, true},
		{"a tenth power above 20", "c4821501", number, true},
		{"a fraction of three", "c483210101", number, true},
		{"a fraction of a list with one", "c48121", number, true},
		{"another tag", "c1182a", number, true},
		{"a half", "f93c00", number, true},
	} {
		r := reader{data: unhex(t, c.coded)}
		got := c.read(&r)
		if !r.bad || !c.any && got != any(int64(0)) && got != any(uint64(0)) && got != any(0) {
			t.Errorf("%s: %s is %v, bad %t", c.name, c.coded, got, r.bad)
		}
		// Once bad, it stays so, and takes nothing more.
		r.data = []byte{1, 2, 3}
		if major, n := r.head(); major != 0 || n != 0 || !r.bad || r.take(1) != nil {
			t.Errorf("%s: after it %d, %d is read", c.name, major, n)
		}
	}
}
