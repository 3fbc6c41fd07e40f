package unit

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"evenrow/wasm/ground/source"
)

var (
	sp811     = source.Ref{Work: "NIST SP 811 (2008)", At: "App. B.8 and B.9"}
	sp811Mem  = source.Ref{Work: "NIST SP 811 (2008)", At: "App. B.8 and B.9", Standing: source.Memory}
	merkley   = source.Ref{Work: "Merkley & Allen, Utah State Univ. lecture notes (2004)", At: "constants"}
	exactness = source.Ref{At: "follows from the definition", Standing: source.Derived}
)

func TestConversion(t *testing.T) {
	const sevenDigits = 5e-7
	for _, c := range []struct {
		name  string
		kind  Kind
		sys   System
		shown float64
		want  float64 // inner unit
		tol   float64 // relative; 0 for exact
		from  source.Ref
	}{
		{"HY-105", Pressure, US, 1, 6894.757, sevenDigits, sp811},
		{"HY-106", Flow, US, 1, 6.309020e-5, sevenDigits, sp811},
		{"HY-106 in litres", Flow, US, 1, 3.785412 / 60000, sevenDigits, sp811},
		{"HY-107", EmitterFlow, US, 1, 3.785412 / 3.6e6, sevenDigits, sp811Mem},
		{"HY-109", Pressure, Metric, 1, 1e5, 0, sp811},
		{"HY-111", Bore, US, 1, 0.0254, 0, sp811Mem},
		{"HY-112", Flow, US, 1, 227.1247 / 3.6e6, sevenDigits, sp811Mem},
		{"a bore in millimetres", Bore, Metric, 13.6, 0.0136, 0, exactness},
		{"foot", Length, US, 1, 0.3048, 0, exactness},
		{"foot of head", Head, US, 10, 3.048, 0, exactness},
		{"foot a second", Speed, US, 5, 1.524, 0, exactness},
		{"gallon", Volume, US, 1, 3.785411784e-3, 1e-15, exactness},
		{"litre", Volume, Metric, 400, 0.4, 0, exactness},
		{"litre an hour", EmitterFlow, Metric, 3600, 1e-3, 0, exactness},
		{"litre a minute", Flow, Metric, 60, 1e-3, 0, exactness},
		{"horsepower", Power, US, 1, 745.6998715822702, 1e-15, exactness},
		{"freezing", Temperature, US, 32, 0, 0, exactness},
		{"body heat", Temperature, US, 98.6, 37, 1e-14, exactness},
		{"where the scales meet", Temperature, US, -40, -40, 0, exactness},
		{"opening", Opening, US, 130, 130e-6, 0, exactness},
		{"share", Share, Metric, 90, 0.9, 0, exactness},
		{"slope", Slope, US, 2, 0.02, 0, exactness},
		{"minute", Duration, Metric, 1.5, 90, 0, exactness},
		{"viscosity", Viscosity, Metric, 1.0034, 1.0034e-6, 1e-15, exactness},
		{"UN-01 in US units", Radiation, US, 1, 1055.056 / 0.09290304, sevenDigits, sp811Mem},
		{"UN-01", Radiation, Metric, 1, 1e6, 0, exactness},
		{"hour", Hours, Metric, 1.75, 6300, 0, exactness},
		{"mile an hour", Wind, US, 1, 0.44704, 1e-15, sp811Mem},
		{"square foot", Area, US, 1, 0.09290304, 0, sp811Mem},
		{"millimetre of rain", Evaporation, Metric, 5, 0.005, 0, exactness},
		{"inch of rain", Evaporation, US, 1, 0.0254, 0, exactness},
		{"kilopascal", Vapour, Metric, 2.3, 2300, 1e-15, exactness},
		{"litre for a plant", PlantWater, Metric, 1.6, 1.6e-3, 0, exactness},
		{"gallon for a plant", PlantWater, US, 1, 3.785411784e-3, 1e-15, exactness},
		{"millilitre", Dose, Metric, 150, 150e-6, 0, exactness},
		{"fluid ounce", Dose, US, 1, 29.5735295625e-6, 1e-15, sp811Mem},
		{"density", Density, US, 62.4, 62.4 * 0.45359237 / 0.028316846592, 1e-15, exactness},
	} {
		got := Of(c.kind, c.sys).ToInner(c.shown)
		if math.Abs(got-c.want) > c.tol*math.Abs(c.want) {
			t.Errorf("%s: %g %s = %.17g inside, want %.17g within %g (%s)", c.name, c.shown, Of(c.kind, c.sys).Symbol, got, c.want, c.tol, c.from)
		}
		if back := Of(c.kind, c.sys).FromInner(got); math.Abs(back-c.shown) > 1e-14*math.Abs(c.shown) {
			t.Errorf("%s: back from inside it is %.17g, want %g", c.name, back, c.shown)
		}
	}
}

// HY-113: feet of water to a psi, at 62.4 lb/ft³.
func TestFeetOfWaterPerPsi(t *testing.T) {
	density := Of(Density, US).ToInner(62.4)
	head := Of(Pressure, US).ToInner(1) / (density * 9.80665)
	if got := Of(Head, US).FromInner(head); math.Abs(got-2.308) > 0.001 {
		t.Errorf("1 psi is %g ft of water, want 2.308 within 0.001 (%s)", got, merkley)
	}
}

func TestEveryUnitIsComplete(t *testing.T) {
	for k := None; k < kinds; k++ {
		for sys := range System(Systems) {
			u := Of(k, sys)
			if u.num == 0 || u.den == 0 {
				t.Errorf("kind %d, system %d has no factor", k, sys)
			}
			if (u.Symbol == "") != (u.Words == "") || (u.Symbol == "") != (k == None || k == Count || k == Money) {
				t.Errorf("kind %d, system %d: symbol %q, words %q", k, sys, u.Symbol, u.Words)
			}
		}
	}
}

func TestReading(t *testing.T) {
	for _, c := range []struct {
		kind Kind
		sys  System
		v    float64
		want string
	}{
		{Head, Metric, 32.24, "32.2 m"},
		{Head, Metric, -0.04, "-0.04 m"},
		{Head, Metric, -0.004, "0.0 m"},
		{Head, Metric, 0, "0.0 m"},
		{Head, Metric, -0.06, "-0.1 m"},
		{Head, US, 10, "32.8 ft"},
		{Length, Metric, 10, "10 m"},
		{Length, Metric, 1.1, "1.1 m"},
		{Length, Metric, 0.333, "0.33 m"},
		{Length, US, 3.048, "10 ft"},
		{Bore, Metric, 0.0136, "13.6 mm"},
		{Bore, US, 0.0136, "0.535 in"},
		{Pressure, Metric, 103000, "1.03 bar"},
		{Pressure, US, 103000, "14.9 psi"},
		{EmitterFlow, Metric, 2 / 3.6e6, "2.0 L/h"},
		{EmitterFlow, US, 2 / 3.6e6, "0.53 gal/h"},
		{Flow, Metric, 4.0 / 60000, "4.00 L/min"},
		{Flow, US, 4.0 / 60000, "1.06 gal/min"},
		{Speed, Metric, 1.504, "1.50 m/s"},
		{Temperature, Metric, 20, "20 °C"},
		{Temperature, US, 20, "68 °F"},
		{Volume, Metric, 0.4, "400 L"},
		{Volume, US, 0.4, "105.7 gal"},
		{Share, Metric, 0.9, "90 %"},
		{Share, US, 0.9338, "93.4 %"},
		{Opening, Metric, 130e-6, "130 µm"},
		{Power, Metric, 750.4, "750 W"},
		{Power, US, 750, "1.01 hp"},
		{Duration, Metric, 90, "1.5 min"},
		{Slope, Metric, 0.02, "2 %"},
		{Count, Metric, 120, "120"},
		{None, Metric, 0.5, "0.5"},
		{None, Metric, 123456, "123500"},
		{None, Metric, 0.0000123456, "0.00001235"},
		{None, Metric, math.Copysign(0, -1), "0"},
		{Viscosity, Metric, 1.0034e-6, "1.003 mm²/s"},
		{Density, Metric, 998.207, "998.2 kg/m³"},
		{Density, US, 998.207, "62.32 lb/ft³"},
		{Head, Metric, math.NaN(), "none m"},
	} {
		if got := Text(c.kind, c.sys, c.v); got != c.want {
			t.Errorf("kind %d, system %d, %g reads %q, want %q", c.kind, c.sys, c.v, got, c.want)
		}
	}
}

// What was typed in one system, with up to four digits, comes back from the
// other as it was.
func TestTidyThereAndBack(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	for range 20000 {
		kind := Kind(1 + r.IntN(int(kinds)-1))
		typed := strconv.FormatFloat(math.Trunc(1+9998*r.Float64())/math.Pow(10, float64(r.IntN(4))), 'f', -1, 64)
		x, _ := strconv.ParseFloat(typed, 64)
		if Of(kind, Metric) == Of(kind, US) || kind == Temperature {
			continue // nothing to change, or not in proportion
		}
		other := Tidy(kind, US, Of(kind, Metric).ToInner(x))
		y, _ := strconv.ParseFloat(other, 64)
		if back := Tidy(kind, Metric, Of(kind, US).ToInner(y)); back != typed {
			t.Fatalf("%s of kind %d became %s, and then %s", typed, kind, other, back)
		}
	}
	if got := Tidy(Length, US, 12); got != "39.37" {
		t.Errorf("12 m is %q ft", got)
	}
}

func TestExactIsForTyping(t *testing.T) {
	for _, c := range []struct {
		kind Kind
		sys  System
		v    float64
		want string
	}{
		{Bore, Metric, 0.0136, "13.6"},
		{Bore, US, 0.0136, "0.5354330709"},
		{Length, US, 10, "32.80839895"},
		{Pressure, Metric, Of(Pressure, Metric).ToInner(0.07), "0.07"},
		{Head, Metric, -1.6, "-1.6"},
		{Head, Metric, 0, "0"},
		{Opening, Metric, 130e-6, "130"},
		{None, Metric, 1e-7, "0.0000001"},
	} {
		if got := Exact(c.kind, c.sys, c.v); got != c.want {
			t.Errorf("kind %d, system %d, %g is typed %q, want %q", c.kind, c.sys, c.v, got, c.want)
		}
	}
}

// A number of up to six digits that is changed to the other system and back
// reads as it did.
func FuzzSwitchingUnitsAndBack(f *testing.F) {
	f.Add(uint32(136), int8(-1), uint8(Bore))
	f.Add(uint32(333), int8(-3), uint8(Length))
	f.Add(uint32(999999), int8(-6), uint8(Temperature))
	f.Fuzz(func(t *testing.T, mantissa uint32, exponent int8, k uint8) {
		kind := Kind(k) % kinds
		exponent %= 7
		if kind == Temperature {
			// Near the zeros of its two scales digits cancel.
			mantissa, exponent = 1000+mantissa%99000, -3
		}
		x, _ := strconv.ParseFloat(strconv.Itoa(int(mantissa%1000000))+"e"+strconv.Itoa(int(exponent)), 64)
		typed := strconv.FormatFloat(x, 'f', -1, 64)
		other := Exact(kind, US, Of(kind, Metric).ToInner(x))
		y, problem := ParseNumber(other)
		if problem != nil {
			t.Fatalf("%q in US units %s", other, said(problem))
		}
		if back := Exact(kind, Metric, Of(kind, US).ToInner(y)); back != typed {
			t.Errorf("kind %d: %s became %s and came back as %s", kind, typed, other, back)
		}
	})
}

func FuzzShortest(f *testing.F) {
	f.Add(0.0136, uint8(Bore))
	f.Add(7000.000000000001, uint8(Pressure))
	f.Fuzz(func(t *testing.T, v float64, k uint8) {
		kind, sys := Kind(k/2)%kinds, System(k%2)
		s, ok := Shortest(kind, sys, v)
		if !ok {
			return
		}
		x, err := strconv.ParseFloat(s, 64)
		if err != nil || Of(kind, sys).ToInner(x) != v {
			t.Errorf("kind %d: %g became %q, which reads as %g", kind, v, s, Of(kind, sys).ToInner(x))
		}
	})
}
