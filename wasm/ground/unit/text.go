package unit

import (
	"math"
	"strconv"
	"strings"

	"evenrow/wasm/ground/words"
)

// Figure returns v, in the inner unit, as a number for reading: rounded to
// what the trade reads off, to one place more where nothing else would be left,
// without the unit, never "-0". It is "none" when v
// is not finite, which no result should be.
func Figure(kind Kind, sys System, v float64) string {
	u := units[kind][sys]
	x := u.FromInner(v)
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return words.Say("none")
	}
	var s string
	if u.places < 0 {
		// Significant digits, written out: 0.00001234 and 123400.
		s = strconv.FormatFloat(x, 'e', -u.places-1, 64)
		r, _ := strconv.ParseFloat(s, 64)
		s = strconv.FormatFloat(r, 'f', -1, 64)
	} else {
		s = strconv.FormatFloat(x, 'f', u.places, 64)
		if zero(s) { // a loss of 0.02 m is little, not none
			if fine := strconv.FormatFloat(x, 'f', u.places+1, 64); !zero(fine) {
				s = fine
			}
		}
	}
	if u.trim {
		s = trimZeros(s)
	}
	return unsigned(s)
}

// Text returns v as [Figure] does, with its unit: "32.2 m".
func Text(kind Kind, sys System, v float64) string {
	s := Figure(kind, sys, v)
	if u := units[kind][sys]; u.Symbol != "" {
		s += " " + u.Symbol
	}
	return s
}

// Exact returns v as a number for input boxes: the shortest decimal that
// differs from it by less than a part in 10⁹, which has at most ten
// significant digits. A short number that was changed to the other system and
// back therefore reads as it did.
func Exact(kind Kind, sys System, v float64) string {
	x := units[kind][sys].FromInner(v)
	for digits := 1; ; digits++ {
		s := strconv.FormatFloat(x, 'e', digits-1, 64)
		r, _ := strconv.ParseFloat(s, 64)
		// Nine digits must come closer than a short number that went
		// through ten, so that the way back lands on the short one.
		near := 1e-9
		if digits == 9 {
			near = 2e-10
		}
		if math.Abs(r-x) <= near*math.Abs(x) || digits == 10 {
			return decimal(r)
		}
	}
}

// Box returns v as a text for input boxes that reads as exactly v: the number
// of [Shortest], or one with the unit inside behind it where there is none. Of
// kinds whose unit inside is typed nowhere, which are shares, slopes and hours,
// it is then the number next to it.
func Box(kind Kind, sys System, v float64) string {
	if s, ok := Shortest(kind, sys, v); ok {
		return s
	}
	if symbol := strings.TrimPrefix(inner[kind], "1"); symbol != "" {
		s := strconv.FormatFloat(v, 'g', -1, 64) + " " + symbol
		if w, problem := ParseQuantity(s, kind); problem == nil && w == v {
			return s
		}
	}
	return decimal(units[kind][sys].FromInner(v))
}

// Tidy returns v as a number for input boxes whose number was typed in the
// other system: the shortest decimal that differs from it by less than five
// parts in 10⁵, which no tape or gauge would show. A number of up to four
// digits that was changed to the other system and back reads as it did.
func Tidy(kind Kind, sys System, v float64) string {
	x := units[kind][sys].FromInner(v)
	for digits := 1; ; digits++ {
		r, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'e', digits-1, 64), 64)
		if math.Abs(r-x) < TidyShare*math.Abs(x) || digits == 10 {
			return decimal(r)
		}
	}
}

// TidyShare is how far a number that [Tidy] wrote is from the value it was
// written for, at most, as a share of it.
const TidyShare = 5e-5

// Shortest returns the shortest decimal that [ParseNumber] and ToInner turn
// into exactly v, and false when there is none, because the float64 values in
// the shown unit lie further apart than those inside.
func Shortest(kind Kind, sys System, v float64) (string, bool) {
	u := units[kind][sys]
	x := u.FromInner(v)
	for digits := 1; digits <= 16; digits++ {
		r, err := strconv.ParseFloat(strconv.FormatFloat(x, 'e', digits-1, 64), 64)
		if err == nil && u.ToInner(r) == v {
			return decimal(r), true
		}
	}
	// The way there has roundings of its own: the number may be the next one.
	for _, r := range [...]float64{x, math.Nextafter(x, math.Inf(1)), math.Nextafter(x, math.Inf(-1))} {
		if u.ToInner(r) == v {
			return decimal(r), true
		}
	}
	return "", false
}

// decimal writes x out in the fewest digits that read as x, and with an
// exponent where it would not fit into [MaxNumber] otherwise.
func decimal(x float64) string {
	s := strconv.FormatFloat(x, 'f', -1, 64)
	if len(s) > MaxNumber {
		s = strconv.FormatFloat(x, 'e', -1, 64)
	}
	return unsigned(s)
}

func trimZeros(s string) string {
	if strings.IndexByte(s, '.') < 0 {
		return s
	}
	return strings.TrimRight(strings.TrimRight(s, "0"), ".")
}

// unsigned drops the sign of a zero.
func unsigned(s string) string {
	if strings.HasPrefix(s, "-") && zero(s) {
		return s[1:]
	}
	return s
}

// zero reports whether a written number is nothing but zeros.
func zero(s string) bool { return strings.Trim(s, "-0.") == "" }
