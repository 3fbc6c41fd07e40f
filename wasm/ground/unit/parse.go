package unit

import (
	"math"
	"strconv"
	"strings"

	"evenrow/wasm/ground/words"
)

// MaxNumber is how many bytes a typed number may have.
const MaxNumber = 40

// What is wrong with a typed number, about the name of what was asked for.
var (
	Missing  = words.About("{field} is missing.")
	NoNumber = words.About("{field} must be a number, such as 12.5.")
	Smaller  = words.About("{field} must be a smaller number.")
	noMarks  = words.About("{field} must be written without marks between thousands, such as 1000.5.")
)

// large is more than any quantity of the trade in any unit, so that what is read
// stays a number in every other unit too.
const large = 1e100

// ParseNumber returns the number that was typed, or says what is wrong with it,
// about the name of what was asked for. A decimal point and a
// decimal comma are both accepted, and so is an exponent. Marks between
// thousands are refused, because "1,000" may be one or a thousand.
func ParseNumber(text string) (x float64, problem *words.Remark) {
	s := strings.TrimSpace(text)
	if s == "" {
		return 0, Missing
	}
	if len(s) > MaxNumber {
		return 0, words.About("{field} must be a number of at most {n} characters.", words.N(MaxNumber))
	}
	// The page shows a true minus sign, which a reader may copy.
	s = strings.Replace(s, "−", "-", 1)

	mantissa, exponent, hasExponent := s, "", false
	if i := strings.IndexAny(s, "eE"); i >= 0 {
		mantissa, exponent, hasExponent = s[:i], s[i+1:], true
	}
	body := strings.TrimLeft(mantissa, "+-")
	if len(mantissa)-len(body) > 1 || !onlyDigits(body, ".,") || !hasDigit(body) ||
		hasExponent && (!onlyDigits(unsign(exponent), "") || !hasDigit(exponent)) {
		return 0, NoNumber
	}
	points, commas := strings.Count(body, "."), strings.Count(body, ",")
	if points+commas > 1 {
		return 0, noMarks
	}
	if commas == 1 {
		whole, part, _ := strings.Cut(body, ",")
		if len(part) == 3 && len(whole) >= 1 && len(whole) <= 3 && whole[0] != '0' && !hasExponent {
			return 0, words.About("{field} may mean {one} or {other}: write one of these.", whole+part, whole+"."+part)
		}
	}
	x, err := strconv.ParseFloat(strings.Replace(s, ",", ".", 1), 64)
	if err != nil || math.Abs(x) > large {
		return 0, Smaller
	}
	return x + 0, nil // which makes a negative zero a plain one
}

// ParseCount is [ParseNumber] of what is counted, which has no decimals: "1,000" can
// only be a thousand there. "1.000" stays in doubt, because a point ends a whole number
// for some.
func ParseCount(text string) (x float64, problem *words.Remark) {
	s := strings.TrimSpace(text)
	if whole := thousands(s, ","); whole != "" {
		s = whole
	} else if whole := thousands(s, "."); whole != "" {
		return 0, words.About("{field} may mean {one} or {other}: write one of these.", whole, s[:strings.IndexByte(s, '.')])
	}
	return ParseNumber(s)
}

// thousands returns a number without the marks between its thousands; empty where it
// has none, or not every three digits.
func thousands(s, mark string) string {
	groups := strings.Split(s, mark)
	for i, g := range groups {
		if !onlyDigits(g, "") || i > 0 && len(g) != 3 || i == 0 && (g == "" || len(g) > 3 || g[0] == '0') {
			return ""
		}
	}
	if len(groups) == 1 {
		return ""
	}
	return strings.Join(groups, "")
}

func unsign(s string) string {
	if s != "" && (s[0] == '+' || s[0] == '-') {
		return s[1:]
	}
	return s
}

// onlyDigits reports whether s holds nothing but digits and the bytes of also.
func onlyDigits(s, also string) bool {
	for i := 0; i < len(s); i++ {
		if (s[i] < '0' || s[i] > '9') && strings.IndexByte(also, s[i]) < 0 {
			return false
		}
	}
	return true
}

func hasDigit(s string) bool { return strings.ContainsAny(s, "0123456789") }

// ParseIn is [ParseNumber] for a number of a kind: where labels print fractions,
// on motors, tubing and emitters, one is accepted too, such as "1 1/2" or "½".
// Elsewhere it is not, because 1/100 as a slope is 1 % to some and 0.01 % to others.
func ParseIn(text string, kind Kind) (x float64, problem *words.Remark) {
	s := strings.TrimSpace(text)
	if !strings.ContainsAny(s, "/"+fractionMarks) || !takesFractions(kind) || len(s) > MaxNumber {
		return ParseNumber(text)
	}
	for _, f := range fractionNames {
		s = strings.Replace(s, f.mark, f.name, 1)
	}
	sign := 1.0
	if rest, minus := strings.CutPrefix(strings.Replace(s, "−", "-", 1), "-"); minus {
		sign, s = -1, rest
	}
	before, below, _ := strings.Cut(s, "/")
	before = strings.TrimSpace(before)
	whole, above := "0", before
	i := strings.LastIndexAny(before, " -") // "1-1/2" is written too
	if i >= 0 {
		whole, above = before[:i], before[i+1:]
	}
	w, n, d := digits(whole), digits(above), digits(below)
	// After a whole number stands a part of one: "1 000/2" is not 1.
	if x = sign * (w + n/d); !(d > 0) || i >= 0 && !(0 < n && n < d) || math.IsNaN(x) || math.IsInf(x, 0) {
		return 0, NoNumber
	}
	return x + 0, nil
}

// The fractions that are one character, and the slash that divides like any other.
const fractionMarks = "½¼¾⅓⅔⅛⅜⅝⅞⁄"

var fractionNames = [...]struct{ mark, name string }{
	{"½", " 1/2"}, {"¼", " 1/4"}, {"¾", " 3/4"}, {"⅓", " 1/3"}, {"⅔", " 2/3"},
	{"⅛", " 1/8"}, {"⅜", " 3/8"}, {"⅝", " 5/8"}, {"⅞", " 7/8"}, {"⁄", "/"},
}

// takesFractions says whether a number of a kind may be a fraction.
func takesFractions(kind Kind) bool {
	return kind == Power || kind == Length || kind == Bore || kind == Head || kind == EmitterFlow || kind == Flow
}

// digits returns a whole number written in digits alone, or NaN.
func digits(s string) float64 {
	s = strings.TrimSpace(s)
	if s == "" || !onlyDigits(s, "") {
		return math.NaN()
	}
	x, _ := strconv.ParseFloat(s, 64)
	return x
}

// A spelling is a unit that may be typed beside those of the two systems.
type spelling struct {
	kinds    []Kind
	names    string // separated by spaces
	num, den float64
	zero     float64
}

var (
	lengths = []Kind{Length, Bore, Head, Opening}
	flows   = []Kind{EmitterFlow, Flow}

	spellings = []spelling{
		{lengths, "m metre metres", 1, 1, 0},
		{lengths, "cm", 1, 100, 0},
		{lengths, "mm", 1, 1000, 0},
		{lengths, "µm μm um", 1, 1e6, 0},
		{lengths, "ft foot feet ' ′", 3048, 10000, 0},
		{lengths, "in inch inches \" ″", 254, 10000, 0},
		{flows, "m³/s m3/s", 1, 1, 0},
		{flows, "m³/h m3/h m³/hr m3/hr m³/hour m3/hour", 1, 3600, 0},
		{flows, "L/h L/hr L/hour lph litres/h liters/h", 1, 3.6e6, 0},
		{flows, "L/min L/minute lpm litres/min liters/min", 1, 6e4, 0},
		{flows, "L/s", 1, 1000, 0},
		{flows, "gal/min gpm gallons/min", gallon, 6e13, 0},
		{flows, "gal/h gal/hr gal/hour gph gallons/h", gallon, 3.6e15, 0},
		{[]Kind{Pressure}, "Pa", 1, 1, 0},
		{[]Kind{Pressure}, "kPa", 1000, 1, 0},
		{[]Kind{Pressure}, "MPa", 1e6, 1, 0},
		{[]Kind{Pressure}, "mbar hPa", 100, 1, 0},
		{[]Kind{Volume}, "m³ m3", 1, 1, 0},
		{[]Kind{Volume}, "litre litres liter liters", 1, 1000, 0},
		{[]Kind{Volume}, "gallon gallons", gallon, 1e12, 0},
		{[]Kind{Power}, "kW", 1000, 1, 0},
		{[]Kind{Power}, "watt watts", 1, 1, 0},
		{[]Kind{Duration}, "s sec", 1, 1, 0},
		{[]Kind{Duration}, "minute minutes", 60, 1, 0},
		{[]Kind{Duration}, "h hr", 3600, 1, 0},
		{[]Kind{Temperature}, "C", 1, 1, 0},
		{[]Kind{Temperature}, "F", 5, 9, 32},
		{[]Kind{Viscosity}, "m²/s m2/s", 1, 1, 0},
		{[]Kind{Viscosity}, "mm2/s cSt", 1, 1e6, 0},
		{[]Kind{Density}, "kg/m3", 1, 1, 0},
		{[]Kind{Density}, "lb/ft3", 453592370000, 28316846592, 0},
	}
)

// alike reports whether two names of units differ in nothing but the case of
// A to Z. [strings.EqualFold] brings tables of every alphabet into the
// download; the two letters that are written for micro are in spellings.
func alike(a, b string) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range len(a) {
		if lower(a[i]) != lower(b[i]) {
			return false
		}
	}
	return true
}

func lower(c byte) byte {
	if c >= 'A' && c <= 'Z' {
		c += 'a' - 'A'
	}
	return c
}

// ParseQuantity returns the inner value of a number with its unit, such as
// "2 L/h", "13.6 mm" or "15 psi", of the given kind. A number alone is in the
// inner unit. The problem says what is wrong, about the name of what was asked for.
func ParseQuantity(text string, kind Kind) (v float64, problem *words.Remark) {
	s := strings.TrimSpace(text)
	n := fractionLen(s) // one that is not taken here is no unit either
	if n == 0 {
		n = len(s) // so that what stands there is called no number, not missing
	}
	x, problem := ParseIn(s[:n], kind)
	if problem != nil {
		return 0, problem
	}
	name := strings.TrimSpace(s[n:])
	if name == "" {
		return x, nil
	}
	for sys := range System(Systems) {
		if u := units[kind][sys]; u.Symbol != "" && alike(u.Symbol, name) {
			return u.ToInner(x), nil
		}
	}
	for _, sp := range spellings {
		for _, k := range sp.kinds {
			if k != kind {
				continue
			}
			for _, w := range strings.Fields(sp.names) {
				if alike(w, name) {
					return (x - sp.zero) * sp.num / sp.den, nil
				}
			}
		}
	}
	if hasDigit(name[:1]) { // "2 000 L"
		return 0, noMarks
	}
	a, b := units[kind][Metric].Symbol, units[kind][US].Symbol
	switch {
	case a == "":
		return 0, words.About("{field} must be a number without a unit.")
	case a != b:
		return 0, words.About(`{field} must be in {unit} or {other}, not in "{typed}".`, a, b, name)
	}
	return 0, words.About(`{field} must be in {unit}, not in "{typed}".`, a, name)
}

// MayBeTyped says in a sentence that a unit may be typed after a number of a
// kind, for those that labels give in many units; elsewhere it is empty.
func MayBeTyped(kind Kind) string {
	switch kind {
	case Power:
		return words.Say("A unit may be typed after it: 1/2 hp, 0.37 kW.")
	case Flow:
		return words.Say("A unit may be typed after it: 800 L/h, 200 gal/h, 1.2 m³/h.")
	case EmitterFlow:
		return words.Say("A unit may be typed after it: 1/2 gal/h, 2 L/h.")
	case Length, Head:
		return words.Say("A unit may be typed after it: 3.5 m, 10 ft.")
	case Bore:
		return words.Say("A unit may be typed after it: 16 mm, 1/2 in.")
	case Pressure:
		return words.Say("A unit may be typed after it: 3 bar, 300 kPa, 40 psi.")
	case Volume:
		return words.Say("A unit may be typed after it: 400 L, 100 gal, 1.2 m³.")
	}
	return ""
}

// numberLen returns the length of the number that s starts with. A letter e
// belongs to it only before an exponent.
func numberLen(s string) int {
	i := 0
	for i < len(s) {
		c := s[i]
		switch {
		case c >= '0' && c <= '9' || c == '.' || c == ',' || c == '+' || c == '-':
			i++
		case (c == 'e' || c == 'E') && i+1 < len(s) && hasDigit(unsign(s[i+1:])[:min(1, len(unsign(s[i+1:])))]):
			i += 2
		case strings.HasPrefix(s[i:], "−"):
			i += len("−")
		default:
			return i
		}
	}
	return i
}

// fractionLen is [numberLen] for what may be a fraction. The stroke of "2.5 /m"
// belongs to the unit.
func fractionLen(s string) int {
	m := strings.TrimLeft(s, "0123456789.,+-−/ \u00a0"+fractionMarks)
	f := strings.TrimRight(s[:len(s)-len(m)], " \u00a0")
	if strings.ContainsAny(f, "/"+fractionMarks) && (m == "" || f[len(f)-1] != '/') {
		return len(f)
	}
	return numberLen(s)
}
