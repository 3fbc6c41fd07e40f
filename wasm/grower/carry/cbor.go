package carry

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Major types of CBOR (RFC 8949, section 3.1).
const (
	unsigned = iota
	negative
	byteString
	textString
	array
	mapping
	tag
	simple
)

// decimalTag marks a decimal fraction, an array of an exponent of ten and a
// mantissa (RFC 8949, section 3.4.4).
const decimalTag = 4

// doubleInfo marks a float64 among the simple values.
const doubleInfo = 27

// writeHead appends a major type with its argument, in the shortest form.
func writeHead(b []byte, major byte, n uint64) []byte {
	size := 0
	switch {
	case n < 24:
		return append(b, major<<5|byte(n))
	case n <= math.MaxUint8:
		b, size = append(b, major<<5|24), 1
	case n <= math.MaxUint16:
		b, size = append(b, major<<5|25), 2
	case n <= math.MaxUint32:
		b, size = append(b, major<<5|26), 4
	default:
		b, size = append(b, major<<5|27), 8
	}
	for size--; size >= 0; size-- {
		b = append(b, byte(n>>(8*size)))
	}
	return b
}

func writeInt(b []byte, n int64) []byte {
	if n < 0 {
		return writeHead(b, negative, uint64(-1-n))
	}
	return writeHead(b, unsigned, uint64(n))
}

func writeText(b []byte, s string) []byte {
	return append(writeHead(b, textString, uint64(len(s))), s...)
}

func writeDouble(b []byte, v float64) []byte {
	b = append(b, simple<<5|doubleInfo)
	n := math.Float64bits(v)
	for shift := 56; shift >= 0; shift -= 8 {
		b = append(b, byte(n>>shift))
	}
	return b
}

// writeDecimal appends a number in plain decimal writing, such as "-13.60": a
// whole number as an integer, another as a decimal fraction. It reports false,
// and appends nothing, when the digits are too many.
func writeDecimal(b []byte, s string) ([]byte, bool) {
	whole, part, _ := strings.Cut(s, ".")
	n, err := strconv.ParseInt(whole+part, 10, 64)
	if err != nil {
		return b, false
	}
	if part == "" {
		return writeInt(b, n), true
	}
	b = writeHead(b, tag, decimalTag)
	b = writeHead(b, array, 2)
	b = writeInt(b, -int64(len(part)))
	return writeInt(b, n), true
}

// A reader takes CBOR apart. After the first thing that it did not expect it
// is bad, and whatever it returns is zero.
type reader struct {
	data []byte
	bad  bool
}

// head reads a major type with its argument. For simple values it returns the
// low five bits, and reads nothing after them.
func (r *reader) head() (major byte, n uint64) {
	c := r.take(1)
	if r.bad {
		return 0, 0
	}
	major, info := c[0]>>5, c[0]&31
	if major == simple || info < 24 {
		return major, uint64(info)
	}
	if info > 27 { // indefinite lengths, which are never written
		r.bad = true
		return 0, 0
	}
	for _, c := range r.take(1 << (info - 24)) {
		n = n<<8 | uint64(c)
	}
	return major, n
}

// take returns the next n bytes, or nil.
func (r *reader) take(n uint64) []byte {
	if r.bad || n > uint64(len(r.data)) {
		r.bad = true
		return nil
	}
	b := r.data[:n]
	r.data = r.data[n:]
	return b
}

// expect reads the head of the wanted major type. The argument of a container
// is held to the bytes that are left, so that nothing is ever set aside for
// records that are not there.
func (r *reader) expect(want byte) uint64 {
	major, n := r.head()
	if major != want || n > uint64(len(r.data)) {
		r.bad = true
		return 0
	}
	return n
}

func (r *reader) text() string {
	b := r.take(r.expect(textString))
	if !utf8.Valid(b) {
		r.bad = true
	}
	return string(b)
}

// integer reads a whole number that an int64 holds.
func (r *reader) integer() int64 {
	major, n := r.head()
	return r.signed(major, n)
}

func (r *reader) signed(major byte, n uint64) int64 {
	if major > negative || n > math.MaxInt64 {
		r.bad = true
		return 0
	}
	if major == negative {
		return -1 - int64(n)
	}
	return int64(n)
}

// A real is a number as it was written: a decimal, or a float64.
type real struct {
	decimal string // empty for a float64
	double  float64
}

func (r *reader) real() real {
	major, n := r.head()
	switch {
	case major == simple && n == doubleInfo:
		var bits uint64
		for _, c := range r.take(8) {
			bits = bits<<8 | uint64(c)
		}
		return real{double: math.Float64frombits(bits)}
	case major == tag && n == decimalTag:
		if r.expect(array) != 2 {
			r.bad = true
		}
		exponent, mantissa := r.integer(), r.integer()
		if exponent < -40 || exponent > 20 {
			r.bad = true
		}
		return real{decimal: strconv.FormatInt(mantissa, 10) + "e" + strconv.FormatInt(exponent, 10)}
	}
	return real{decimal: strconv.FormatInt(r.signed(major, n), 10)}
}
