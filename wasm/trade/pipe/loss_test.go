package pipe

import (
	"math"
	"testing"

	"evenrow/wasm/ground/source"
)

const (
	mm  = 1e-3
	lph = 1.0 / 3.6e6
	nu  = 1.0034e-6
)

var facts = source.Ref{Work: "formula of the row", Standing: source.Derived}

func TestFigures(t *testing.T) {
	tests := []struct {
		name      string
		got       float64
		want, tol float64 // as printed, half of the last digit
		from      source.Ref
	}{
		{"fitting of 0.7 of the bore", Insert(7, 10), 2.0, 0.05, facts},
		{"fitting of half the bore", Insert(5, 10), 14.2, 0.05, facts},
		{"large barb, 13.6 mm", BarbLength(LargeBarb, 13.6*mm), 0.189, 0.0005, watters},
		{"standard barb, 13.6 mm", BarbLength(StandardBarb, 13.6*mm), 0.144, 0.0005, watters},
		{"small barb, 13.6 mm", BarbLength(SmallBarb, 13.6*mm), 0.104, 0.0005, watters},
		{"large barb, 16 mm", BarbLength(LargeBarb, 16*mm), 0.140, 0.0005, watters},
		{"standard barb, 16 mm", BarbLength(StandardBarb, 16*mm), 0.106, 0.0005, watters},
		{"small barb, 16 mm", BarbLength(SmallBarb, 16*mm), 0.076, 0.0005, watters},
		{"flushing 13.6 mm at 0.3 m/s, L/h", FlowAt(0.3, 13.6*mm) / lph, 157, 0.5, facts},
		{"flushing 16 mm at 0.3 m/s, L/h", FlowAt(0.3, 16*mm) / lph, 217, 0.5, facts},
		{"flushing 4 mm at 0.3 m/s, L/h", FlowAt(0.3, 4*mm) / lph, 13.6, 0.05, facts},
		{"contraction to 0.3 of the area", Contraction(0.3), 0.308, 0.0005, facts},
		{"contraction to 0.7 of the area", Contraction(0.7), 0.105, 0.0005, facts},
		{"jet behind a contraction to a twentieth, halfway from 0.617 to 0.624", Narrowing(0.05), 0.6205, 1e-15, facts},
		{"no jet is wider than its pipe", Narrowing(1.5), 1, 0, facts},
		{"no contraction", Contraction(1), 0, 0, facts},
		{"no expansion", Expansion(2, 2), 0, 0, facts},
	}
	for _, tt := range tests {
		if !(math.Abs(tt.got-tt.want) <= tt.tol) {
			t.Errorf("%s: got %.5g, want %g ± %g from %s", tt.name, tt.got, tt.want, tt.tol, tt.from)
		}
	}
}

func FuzzHeadRisesWithFlow(f *testing.F) {
	f.Add(1e-6, 1.001, 13.6*mm, 7e-6)
	f.Add(2.1e-5, 1.0001, 13.6*mm, 0.0) // from laminar into the line
	f.Add(4.27e-5, 1.01, 13.6*mm, 6e-4) // from the line into turbulent
	f.Add(1e-3, 2.0, 25*mm, 1e-4)
	f.Fuzz(func(t *testing.T, q, more, d, eps float64) {
		q, more, d = within(q, 1e-9, 1), within(more, 1+1e-9, 1e3), within(d, 1e-3, 1)
		if eps != 0 {
			eps = within(eps, 1e-9*d, 0.05*d)
		}
		low, high := Head(q, 10, d, eps, nu), Head(q*more, 10, d, eps, nu)
		if !(low > 0 && high > low) {
			t.Errorf("in %g m of bore, ε %g m, %g m³/s loses %g m and %g m³/s loses %g m", d, eps, q, low, q*more, high)
		}
		if back := Head(-q, 10, d, eps, nu); back != -low {
			t.Errorf("running back, %g m³/s loses %g m, want %g", q, back, -low)
		}
	})
}

func TestNoFlowLosesNothing(t *testing.T) {
	if h := Head(0, 10, 13.6*mm, 0, nu); h != 0 {
		t.Errorf("Head at no flow is %g", h)
	}
}

func TestLaminarHeadIsPoiseuilles(t *testing.T) {
	// h = 128 ν L Q/(π g D⁴)
	q, l, d := 1e-5, 7.0, 13.6*mm
	want := 128 * nu * l * q / (math.Pi * 9.80665 * d * d * d * d)
	if got := Head(q, l, d, 1e-5, nu); math.Abs(got-want) > 1e-14*want {
		t.Errorf("laminar loss %.16g m, want %.16g", got, want)
	}
}

func TestLossesOfFittingsFallAsTheBoreWidens(t *testing.T) {
	for d := 0.1; d < 0.999; d += 0.01 {
		if !(Insert(d, 1) > Insert(d+0.001, 1)) || !(Contraction(d) > Contraction(d+0.001)) || !(Expansion(d, 1) > Expansion(d+0.001, 1)) {
			t.Errorf("near %g of the bore a wider one loses more", d)
		}
	}
}

func TestAllHeadIsTheSumOfItsParts(t *testing.T) {
	f, l, d, k, q := 0.03, 12.0, 20*mm, 4.5, 5e-4
	v := Velocity(q, d)
	want := FrictionHead(f, l, d, v) + LocalHead(k, v)
	if got := AllHead(f, l, d, k, q); math.Abs(got-want) > 1e-14 {
		t.Errorf("got %g m, want %g", got, want)
	}
}

func TestSlowSurge(t *testing.T) {
	// 2L/a is 0.1 s.
	for _, tt := range []struct{ closing, share float64 }{{0.01, 1}, {0.1, 1}, {0.2, 0.5}, {1, 0.1}} {
		want := tt.share * Surge(1000, 200, 1)
		if got := SlowSurge(1000, 200, 1, 10, tt.closing); math.Abs(got-want) > 1e-9 {
			t.Errorf("closing in %g s: got %g Pa, want %g", tt.closing, got, want)
		}
	}
}
