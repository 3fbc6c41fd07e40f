package emitter

import (
	"math"
	"testing"
)

const lph = 1.0 / 3.6e6

func TestOpen(t *testing.T) {
	pc := Emitter{Kind: Compensating, Flow: 2 * lph, Nominal: 10, Lowest: 10, Highest: 40, Exponent: 0.05}
	flat := Emitter{Kind: Compensating, Flow: 2 * lph, Nominal: 10, Lowest: 10, Highest: 40}
	orifice := Emitter{Kind: NonCompensating, Flow: 4 * lph, Nominal: 10, Exponent: 0.5}
	level := Emitter{Kind: NonCompensating, Flow: 4 * lph, Nominal: 10}
	laminar := Emitter{Kind: NonCompensating, Flow: 4 * lph, Nominal: 10, Exponent: 1}
	tests := []struct {
		name    string
		e       *Emitter
		h, want float64 // m, L/h
	}{
		{"nominal at the lowest head", &pc, 10, 2},
		{"a quarter of it gives half the flow", &pc, 2.5, 1},
		{"nearly level above", &pc, 20, 2 * math.Pow(2, 0.05)},
		{"level above", &flat, 33, 2},
		{"an orifice at its nominal head", &orifice, 10, 4},
		{"an orifice at four times that", &orifice, 40, 8},
		{"laminar at a tenth", &laminar, 1, 0.4},
		{"straight line under 1 %", &orifice, 0.05, 4 * 0.1 * 0.5},
		{"straight line under 1 % also where the flow is level", &level, 0.05, 4 * 0.5},
		{"no head, no flow", &orifice, 0, 0},
		{"no flow back", &orifice, -3, 0},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			q, _ := tt.e.Open(tt.h)
			if math.Abs(q/lph-tt.want) > 1e-12 {
				t.Errorf("at %g m: got %.15g L/h, want %.15g", tt.h, q/lph, tt.want)
			}
		})
	}
}

// At the ends of its pieces a law has the slope of the piece above: x q/h from
// 1 % of the reference head up, and none at no head.
func TestSlopesAtTheEnds(t *testing.T) {
	pc := Emitter{Kind: Compensating, Flow: 2 * lph, Nominal: 10, Lowest: 10, Exponent: 0.05}
	orifice := Emitter{Kind: NonCompensating, Flow: 4 * lph, Nominal: 10, Exponent: 0.5}
	tests := []struct {
		name    string
		e       *Emitter
		h, want float64 // m, L/h per m
	}{
		{"the lowest head", &pc, 10, 0.05 * 2 / 10},
		{"1 % of the nominal head", &orifice, 0.1, 0.5 * 0.4 / 0.1},
		{"no head", &orifice, 0, 0},
		{"less than none", &orifice, -1, 0},
	}
	for _, tt := range tests {
		if _, slope := tt.e.Open(tt.h); math.Abs(slope/lph-tt.want) > 1e-12 {
			t.Errorf("%s: slope %.15g L/h per m, want %.15g", tt.name, slope/lph, tt.want)
		}
	}
}

// within returns v where it lies from lo to hi, else a number between them
// that depends on v, evenly by ratio, so that no try of the fuzzer is wasted.
func within(v, lo, hi float64) float64 {
	if v >= lo && v <= hi {
		return v
	}
	_, part := math.Modf(math.Abs(v))
	if !(part >= 0 && part < 1) {
		part = 0
	}
	return lo * math.Pow(hi/lo, part)
}

func FuzzOpen(f *testing.F) {
	f.Add(uint8(0), 2.0, 10.0, 0.05, 9.999999)
	f.Add(uint8(0), 2.0, 10.0, 0.0, 30.0)
	f.Add(uint8(1), 4.0, 10.0, 0.5, 0.1) // where the straight line ends
	f.Add(uint8(1), 4.0, 10.0, 1.0, 1e-9)
	f.Add(uint8(1), 4.0, 10.0, 0.73, 25.0)
	f.Fuzz(func(t *testing.T, kind uint8, flow, ref, x, h float64) {
		flow, ref = within(flow, 0.01, 100), within(ref, 0.01, 100)
		if x != 0 {
			x = within(x, 0.001, 1)
		}
		if h > 0 {
			h = within(h, 1e-12, 500)
		} else {
			h = -within(-h, 1e-12, 500)
		}
		e := Emitter{Kind: Kind(kind % 2), Flow: flow * lph, Nominal: ref, Lowest: ref, Exponent: x}
		q, slope := e.Open(h)
		if !(q >= 0 && slope >= 0) || math.IsInf(q, 0) || math.IsInf(slope, 0) {
			t.Fatalf("%+v at %g m: flow %g, slope %g", e, h, q, slope)
		}
		step := 1e-6 * math.Max(math.Abs(h), 1e-3)
		low, s0 := e.Open(h - step)
		high, s1 := e.Open(h + step)
		// Powers of both sides may differ in the last digits.
		if !(low <= q*(1+1e-14) && q <= high*(1+1e-14)) {
			t.Errorf("%+v near %g m: flows %g, %g, %g do not rise", e, h, low, q, high)
		}
		if high-low > 2.02*step*max(s0, slope, s1)+1e-13*q {
			t.Errorf("%+v jumps near %g m: from %g to %g", e, h, low, high)
		}
		for _, kink := range []float64{0, nearZero * ref, ref} {
			if math.Abs(h-kink) <= 2*step {
				return
			}
		}
		if want := (high - low) / (2 * step); math.Abs(slope-want) > 1e-6*math.Max(slope, want)+1e-8*flow*lph/step*1e-6 {
			t.Errorf("%+v at %g m: slope %g, by differences %g", e, h, slope, want)
		}
	})
}

func TestStays(t *testing.T) {
	pc := Emitter{Kind: Compensating, Opens: 7, Closes: 3}
	open := Emitter{Kind: NonCompensating}
	tests := []struct {
		name string
		e    *Emitter
		h    float64
		was  bool
		want bool
	}{
		{"shut stays shut just under its opening head", &pc, 6.999, false, false},
		{"shut opens at its opening head", &pc, 7, false, true},
		{"open stays open between", &pc, 5, true, true},
		{"open stays open at its closing head", &pc, 3, true, true},
		{"open shuts below it", &pc, 2.999, true, false},
		{"non-compensating never shuts", &open, -1, false, true},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := tt.e.Stays(tt.h, tt.was); got != tt.want {
				t.Errorf("at %g m, open %t: got %t", tt.h, tt.was, got)
			}
		})
	}
}

func TestState(t *testing.T) {
	e := Emitter{Lowest: 10, Highest: 40}
	for h, want := range map[float64]State{9.99: Below, 10: In, 25: In, 40: In, 40.01: Above} {
		if got := e.State(h); got != want {
			t.Errorf("at %g m: got %d, want %d", h, got, want)
		}
	}
}

func TestExponentAndCoefficientReturnTheCurve(t *testing.T) {
	for _, x := range []float64{0, 0.05, 0.49, 1} {
		q := func(h float64) float64 { return 3 * lph * math.Pow(h, x) }
		if got := ExponentFrom(q(6), 6, q(20), 20); math.Abs(got-x) > 1e-14 {
			t.Errorf("exponent %.16g, want %g", got, x)
		}
		if got := Coefficient(q(6), 6, x); math.Abs(got/lph-3) > 1e-14*3 {
			t.Errorf("coefficient %.16g L/h, want 3", got/lph)
		}
	}
	if got := ExponentFrom(1, 5, 2, 5); got != 0 {
		t.Errorf("readings at one head give the exponent %g, want 0", got)
	}
}

func BenchmarkOpen(b *testing.B) {
	e := Emitter{Kind: Compensating, Flow: 2 * lph, Lowest: 10, Exponent: 0.05}
	b.ReportAllocs()
	sum := 0.0
	for i := range b.N {
		q, s := e.Open(float64(i % 30))
		sum += q + s
	}
	if sum < 0 {
		b.Fatal(sum)
	}
}
