package unit

import (
	"math"
	"math/big"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"evenrow/wasm/ground/words"
)

// said is what a problem says of "It", without the name and the stop.
func said(problem *words.Remark) string {
	if problem == nil {
		return ""
	}
	return strings.TrimSuffix(strings.TrimPrefix(problem.Of("It"), "It "), ".")
}

func TestParseNumber(t *testing.T) {
	for _, c := range []struct {
		text string
		want float64
	}{
		{"12.5", 12.5},
		{" 12.5\t", 12.5},
		{"\u00a012.5\u00a0", 12.5}, // no-break spaces, as copied from the page
		{"12,5", 12.5},
		{"0,333", 0.333},
		{"12,3456", 12.3456},
		{"1234,567", 1234.567},
		{"1.000", 1},
		{".5", 0.5},
		{"5.", 5},
		{"-1.6", -1.6},
		{"−1.6", -1.6}, // the page's own minus sign
		{"+3", 3},
		{"1e3", 1000},
		{"1.5E-2", 0.015},
		{"1e-999", 0},
		{"-0", 0},
	} {
		got, problem := ParseNumber(c.text)
		if problem != nil || got != c.want || math.Signbit(got) != math.Signbit(c.want) {
			t.Errorf("%q reads as %g, %q; want %g", c.text, got, said(problem), c.want)
		}
	}
}

func TestParseNumberRefuses(t *testing.T) {
	const noNumber = "must be a number, such as 12.5"
	const marks = "must be written without marks between thousands, such as 1000.5"
	for _, c := range []struct{ text, want string }{
		{"", "is missing"},
		{"  ", "is missing"},
		{"ten", noNumber},
		{"12 m", noNumber},
		{"1 000", noNumber},
		{"--1", noNumber},
		{"+-1", noNumber},
		{"1-2", noNumber},
		{".", noNumber},
		{"e5", noNumber},
		{"1e", noNumber},
		{"1e+", noNumber},
		{"1e5.5", noNumber},
		{"1e5e5", noNumber},
		{"0x10", noNumber},
		{"1_000", noNumber},
		{"inf", noNumber},
		{"Infinity", noNumber},
		{"NaN", noNumber},
		{"1'000", noNumber},
		{"1,000.5", marks},
		{"1.000,5", marks},
		{"1,000,000", marks},
		{"1.000.000", marks},
		{"1,000", "may mean 1000 or 1.000: write one of these"},
		{"-13,600", "may mean 13600 or 13.600: write one of these"},
		{"1e999", "must be a smaller number"},
		{strings.Repeat("1", 41), "must be a number of at most 40 characters"},
	} {
		if got, problem := ParseNumber(c.text); said(problem) != c.want || got != 0 {
			t.Errorf("%q reads as %g, %q; want %q", c.text, got, said(problem), c.want)
		}
	}
}

// What is counted may have marks between thousands, but for the point, which is in doubt.
func TestParseCount(t *testing.T) {
	for _, c := range []struct {
		text string
		want float64
		said string
	}{
		{"12", 12, ""}, {"1,000", 1000, ""}, {" 12,345,678 ", 12345678, ""}, {"1e3", 1000, ""},
		{"1.000", 0, "may mean 1000 or 1: write one of these"}, {"12.345", 0, "may mean 12345 or 12: write one of these"},
		{"1,00", 1, ""}, {"12.5", 12.5, ""}, {"0,500", 0.5, ""}, {"1,0000", 1, ""}, {"1,000.5", 0, said(noMarks)}, {"", 0, said(Missing)}, {",000", 0, ""},
	} {
		got, problem := ParseCount(c.text)
		if got != c.want || said(problem) != c.said {
			t.Errorf("%q reads as %g, %q; want %g, %q", c.text, got, said(problem), c.want, c.said)
		}
	}
}

func TestParseQuantity(t *testing.T) {
	for _, c := range []struct {
		text string
		kind Kind
		want float64
	}{
		{"2 L/h", EmitterFlow, 2 / 3.6e6},
		{"2L/h", EmitterFlow, 2 / 3.6e6},
		{"2 l/h", EmitterFlow, 2 / 3.6e6},
		{"0.5 gph", EmitterFlow, Of(EmitterFlow, US).ToInner(0.5)},
		{"13.6 mm", Bore, 0.0136},
		{"13,6 mm", Bore, 0.0136},
		{"0.520 in", Bore, 0.520 * 254 / 10000},
		{"1.36 cm", Bore, 1.36 / 100},
		{"15 psi", Pressure, Of(Pressure, US).ToInner(15)},
		{"1.03 bar", Pressure, 103000},
		{"50 kPa", Pressure, 50000},
		{"50 Pa", Pressure, 50},
		{"-1.6 m", Head, -1.6},
		{"−1.6 m", Head, -1.6},
		{"10 ft", Head, 3.048},
		{"1e-3 m3/s", Flow, 1e-3},
		{"1e-3 m³/s", Flow, 1e-3},
		{"20 L/min", Flow, 20.0 / 60000},
		{"10 gpm", Flow, Of(Flow, US).ToInner(10)},
		{"20 °C", Temperature, 20},
		{"68 F", Temperature, 20},
		{"90 %", Share, 0.9},
		{"90%", Share, 0.9},
		{"130 µm", Opening, 130e-6},
		{"130 um", Opening, 130e-6},
		{"130 \u00b5m", Opening, 130e-6}, // the sign for micro
		{"130 \u03bcm", Opening, 130e-6}, // the Greek letter
		{"130 µM", Opening, 130e-6},
		{"130 UM", Opening, 130e-6},
		{"68 °f", Temperature, 20},
		{"1E-3 M³/S", Flow, 1e-3},
		{"15 PSI", Pressure, Of(Pressure, US).ToInner(15)},
		{"0.13 mm", Opening, 0.13 / 1000},
		{"1 hp", Power, 745.69987158227022},
		{"1/2 hp", Power, 745.69987158227022 / 2},
		{"2⅝ in", Bore, 2.625 * 254 / 10000},
		{"3/4\"", Bore, 0.75 * 254 / 10000}, // as tubing is marked
		{"3/4″", Bore, 0.75 * 254 / 10000},
		{"1 1/2 \"", Bore, 1.5 * 254 / 10000},
		{"10'", Length, 3.048},
		{"10 ′", Head, 3.048},
		{"16 mm", Bore, 0.016},
		{"3,5 m", Length, 3.5},
		{"370 W", Power, 370},
		{"370 watts", Power, 370},
		{"0,37 kw", Power, 370},
		{"½ hp", Power, 745.69987158227022 / 2},
		{"0,5 HP", Power, 745.69987158227022 / 2},
		{"12 gal/min", Flow, 12 * 3.785411784e-3 / 60},
		{"12 gallons/min", Flow, 12 * 3.785411784e-3 / 60},
		{"12 gph", EmitterFlow, 12 * 3.785411784e-3 / 3600},
		{"0,8 m3/h", Flow, 0.8 / 3600},
		{"800 litres/h", Flow, 800 / 3.6e6},
		{"800 L/h", EmitterFlow, 800 / 3.6e6},
		{"20 liters/min", Flow, 20.0 / 6e4},
		{"0.3 MPa", Pressure, 3e5},
		{"300 kpa", Pressure, 3e5},
		{"300 hPa", Pressure, 3e4},
		{"3 bar", Pressure, 3e5},
		{"1.2 m³", Volume, 1.2},
		{"100 gallons", Volume, 0.3785411784},
		{"400 litres", Volume, 0.4},
		{"90 sec", Duration, 90},
		{"2 hr", Duration, 7200},
		{"3 min", Duration, 180},
		{"1.0034 mm2/s", Viscosity, 1.0034 / 1e6},
		{"998.2 kg/m3", Density, 998.2},
		{"0.0136", Bore, 0.0136},
		{"40", Count, 40},
		{"1.5e5", None, 1.5e5},
	} {
		got, problem := ParseQuantity(c.text, c.kind)
		// A factor of two steps may be a last digit off the constant.
		if problem != nil || math.Abs(got-c.want) > 4e-16*math.Abs(c.want) {
			t.Errorf("%q of kind %d reads as %g, %q; want %g", c.text, c.kind, got, said(problem), c.want)
		}
	}
	for _, c := range []struct {
		text string
		kind Kind
		want string
	}{
		{"", Head, "is missing"},
		{"L/h", EmitterFlow, "must be a number, such as 12.5"},
		{"2 bar", Head, `must be in m or ft, not in "bar"`},
		{"20 £C", Temperature, `must be in °C or °F, not in "£C"`},
		{"2 m", Share, `must be in %, not in "m"`},
		{"2 m", Count, "must be a number without a unit"},
		{"1,000 mm", Bore, "may mean 1000 or 1.000: write one of these"},
		{"2 000 L", Volume, "must be written without marks between thousands, such as 1000.5"},
		{"1e308 kPa", Pressure, "must be a smaller number"},
		{"5'6\"", Length, `must be in m or ft, not in "'6""`},
		{"800 L/h", Head, `must be in m or ft, not in "L/h"`},
		{"½", Pressure, "must be a number, such as 12.5"},
		{"0x10 mm", Bore, `must be in mm or in, not in "x10 mm"`},
	} {
		if got, problem := ParseQuantity(c.text, c.kind); said(problem) != c.want {
			t.Errorf("%q of kind %d reads as %g, %q; want %q", c.text, c.kind, got, said(problem), c.want)
		}
	}
}

// strconv is the outside judge: what we accept it reads alike, save commas and
// the page's minus sign.
func FuzzParseNumber(f *testing.F) {
	for _, s := range []string{"12.5", "1,000", "1e5", "−3", "0x1p-2", "1_0", "inf", "\xff", "1e400", ",5"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		x, problem := ParseNumber(s)
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("%q reads as %g", s, x)
		}
		if problem != nil {
			if x != 0 {
				t.Fatalf("%q reads as %g with a problem", s, x)
			}
			return
		}
		plain := strings.NewReplacer(",", ".", "−", "-").Replace(strings.TrimSpace(s))
		if want, err := strconv.ParseFloat(plain, 64); err != nil || want != x {
			t.Fatalf("%q reads as %g, want %g, %v", s, x, want, err)
		}
	})
}

func FuzzParseQuantity(f *testing.F) {
	f.Add("2 L/h", uint8(EmitterFlow))
	f.Add("1e", uint8(Head))
	f.Add("−e−", uint8(Head))
	f.Add("1e300", uint8(Pressure)) // too large for the other system
	f.Add("1e300", uint8(Density))
	f.Add("1e-319 L/h", uint8(EmitterFlow))
	f.Add("1E100", uint8(Length)) // more feet than may be typed
	f.Add("3/4\"", uint8(Bore))
	f.Add("½ hp", uint8(Power))
	f.Add("0,8 m³/h", uint8(Flow))
	f.Fuzz(func(t *testing.T, s string, k uint8) {
		v, problem := ParseQuantity(s, Kind(k)%kinds)
		if problem == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
			t.Fatalf("%q reads as %g", s, v)
		}
		// What is printed for typing reads back.
		if problem == nil {
			kind := Kind(k) % kinds
			text := Exact(kind, US, v) + " " + Of(kind, US).Symbol
			if len(text) > MaxNumber || math.Abs(Of(kind, US).FromInner(v)) > large {
				return
			}
			if w, problem := ParseQuantity(text, kind); problem != nil || math.Abs(w-v) > 1e-8*math.Max(math.Abs(v), 1e-6) && kind != Temperature {
				t.Fatalf("%q is %g, printed %q, which reads as %g, %q", s, v, text, w, said(problem))
			}
		}
	})
}

// math/big is the outside judge of fractions: whole and part as exact ratios.
func FuzzParseIn(f *testing.F) {
	for _, s := range []string{"1/2", "1 1/2", "1-1/2", "½", "−1½", "1⁄3", "1/0", "1//2", "/", "1 /2 ", "½½", "1.5/2", "- 1/2", "99999999999999999999/3", "1/2/3"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		x, problem := ParseIn(s, Power)
		if math.IsNaN(x) || math.IsInf(x, 0) || problem != nil && x != 0 {
			t.Fatalf("%q reads as %g, %q", s, x, said(problem))
		}
		if y, other := ParseNumber(s); other == nil && (problem != nil || x != y) {
			t.Fatalf("%q is the number %g, and reads as %g, %q", s, y, x, said(problem))
		} else if other != nil && problem == nil {
			// What is taken beyond a number is a sign, a whole number and a ratio.
			m := ratio.FindStringSubmatch(spell.Replace(strings.TrimSpace(s)))
			if m == nil {
				t.Fatalf("%q reads as %g", s, x)
			}
			whole := func(digits string) *big.Int {
				n, _ := new(big.Int).SetString("0"+digits, 10)
				return n
			}
			if whole(m[4]).Sign() == 0 {
				t.Fatalf("%q reads as %g", s, x)
			}
			want := new(big.Rat).SetFrac(whole(m[3]), whole(m[4]))
			want.Add(want, new(big.Rat).SetInt(whole(m[2])))
			if m[1] == "-" {
				want.Neg(want)
			}
			if w, _ := want.Float64(); math.Abs(w-x) > 4e-16*math.Abs(w) {
				t.Fatalf("%q reads as %g, want %g", s, x, w)
			}
		}
		if y, other := ParseIn(s, Slope); other == nil && strings.Contains(s, "/") {
			t.Fatalf("%q is a slope of %g", s, y)
		}
	})
}

var (
	ratio = regexp.MustCompile(`^(-?)[\s\v\p{Z}\x{85}]*(?:([0-9]+)[\s\v\p{Z}\x{85}]*[ -][\s\v\p{Z}\x{85}]*)?([0-9]+)[\s\v\p{Z}\x{85}]*/[\s\v\p{Z}\x{85}]*([0-9]+)$`)
	spell = strings.NewReplacer("−", "-", "½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅓", " 1/3", "⅔", " 2/3", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "⁄", "/")
)

// Every unit that may be typed goes the way there and back: a number in it, and
// what it is in the unit inside, read as the same amount.
func TestEveryUnitThatMayBeTypedGoesThereAndBack(t *testing.T) {
	read := func(x float64, name string, kind Kind) float64 {
		t.Helper()
		v, problem := ParseQuantity(strconv.FormatFloat(x, 'g', -1, 64)+" "+name, kind)
		if problem != nil {
			t.Errorf("%g %s of kind %d: %q", x, name, kind, said(problem))
		}
		return v
	}
	seen := map[Kind]map[string]bool{}
	for _, sp := range spellings {
		for _, kind := range sp.kinds {
			if seen[kind] == nil {
				seen[kind] = map[string]bool{}
			}
			zero := read(0, strings.Fields(sp.names)[0], kind)
			for _, name := range strings.Fields(sp.names) {
				if low := strings.ToLower(name); seen[kind][low] && low != "μm" {
					t.Errorf("%s of kind %d stands twice", name, kind)
				} else {
					seen[kind][low] = true
				}
				one, two := read(1, name, kind), read(2, name, kind)
				if !(one > zero) || math.Abs(two-zero-2*(one-zero)) > 1e-12*math.Abs(two) {
					t.Errorf("%s of kind %d: 0, 1 and 2 are %g, %g and %g", name, kind, zero, one, two)
				}
				if in := Inner(kind); in != "" && in != "1" {
					if v := read(two, in, kind); math.Abs(v-two) > 1e-12*math.Abs(two) {
						t.Errorf("2 %s are %g %s, which reads as %g", name, two, in, v)
					}
				}
			}
		}
	}
}

// What a hint shows as an example is taken in every field of its kind.
func TestExamplesOfUnitsAreTaken(t *testing.T) {
	told := 0
	for kind := range kinds {
		_, list, ok := strings.Cut(MayBeTyped(kind), ": ")
		if !ok {
			continue
		}
		for _, text := range strings.Split(strings.TrimSuffix(list, "."), ", ") {
			told++
			if v, problem := ParseQuantity(text, kind); problem != nil || !(v > 0) {
				t.Errorf("%q of kind %d is %g, %q", text, kind, v, said(problem))
			}
		}
	}
	if told < 10 {
		t.Errorf("%d examples", told)
	}
}
