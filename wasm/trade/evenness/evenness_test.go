package evenness

import (
	"math"
	"testing"
)

const lph = 1.0 / 3.6e6

func close(a, b float64) bool { return math.Abs(a-b) <= 1e-12*math.Max(1, math.Abs(b)) }

func TestOf(t *testing.T) {
	// Ten flows, 1 to 10 L/h: the lowest quarter is 1, 2 and half of 3.
	var flows []float64
	for i := 10; i >= 1; i-- {
		flows = append(flows, float64(i)*lph)
	}
	e := Of(flows, 4, 0.06)
	low := (1 + 2 + 1.5) / 2.5
	want := Evenness{
		N: 10, Mean: 5.5 * lph, Low: low * lph,
		CV: math.Sqrt(82.5/9) / 5.5, DU: low / 5.5, CU: 1 - 25/55.0,
		Us: 1 - math.Sqrt(82.5/9)/5.5, EU: (1 - 1.27*0.06/2) / 5.5,
	}
	if e.N != want.N || !close(e.Mean/lph, 5.5) || !close(e.Low/lph, low) || !close(e.CV, want.CV) ||
		!close(e.DU, want.DU) || !close(e.CU, want.CU) || !close(e.Us, want.Us) || !close(e.EU, want.EU) {
		t.Errorf("got  %+v\nwant %+v", e, want)
	}
	if flows[0] < flows[9] {
		t.Error("the flows were put in another order")
	}
}

func TestOfTheSame(t *testing.T) {
	for _, n := range []int{1, 2, 3, 40} {
		flows := make([]float64, n)
		for i := range flows {
			flows[i] = 2 * lph
		}
		e := Of(flows, 1, 0)
		if !close(e.DU, 1) || !close(e.CU, 1) || !close(e.Us, 1) || !close(e.EU, 1) || e.CV > 1e-12 {
			t.Errorf("%d equal flows: %+v", n, e)
		}
	}
}

func TestOfNone(t *testing.T) {
	if e := Of(nil, 1, 0.05); e != (Evenness{}) {
		t.Errorf("no flows: %+v", e)
	}
	if e := Of([]float64{0, 0, 0}, 1, 0.05); e != (Evenness{N: 3}) {
		t.Errorf("no water: %+v", e)
	}
}

func TestOneDryPlantSpoilsTheDesign(t *testing.T) {
	if e := Of([]float64{2, 2, 2, 0}, 1, 0.05); e.EU != 0 || e.DU != 0 || !(e.CU > 0.4 && e.CU < 0.6) {
		t.Errorf("got %+v", e)
	}
}

// The measures of many evenly spread quantiles of a normal distribution must
// agree with its closed forms.
func TestNormalDistribution(t *testing.T) {
	const n, cv = 40000, 0.1
	v := make([]float64, n)
	for i := range v {
		v[i] = 1 + cv*math.Sqrt2*math.Erfinv(2*(float64(i)+0.5)/n-1)
	}
	if got, want := CU(v), NormalCU(cv); math.Abs(got-want) > 1e-5 {
		t.Errorf("CU %g, want %g", got, want)
	}
	if got, want := Low(v), 1-NormalLow(0.25)*cv; math.Abs(got-want) > 1e-5 {
		t.Errorf("low quarter %g, want %g", got, want)
	}
	if got := CV(v); math.Abs(got-cv) > 1e-4 {
		t.Errorf("CV %g, want %g", got, cv)
	}
}

func TestDesignNeverFallsBelowNothing(t *testing.T) {
	if got := Design(0.9, 1, 0.9); got != 0 {
		t.Errorf("with hopeless emitters EU is %g, want 0", got)
	}
}

func TestTotalCV(t *testing.T) {
	if got := TotalCV(0.03, 0.5, 0.08); !close(got, 0.05) {
		t.Errorf("got %g, want 0.05", got)
	}
}

func FuzzOf(f *testing.F) {
	f.Add(1.0, 2.0, 3.0, 4.0, 5.0, 0.05)
	f.Add(0.0, 0.0, 0.0, 0.0, 1e-9, 0.0)
	f.Fuzz(func(t *testing.T, a, b, c, d, e, cv float64) {
		flows := []float64{a, b, c, d, e}
		for _, q := range flows {
			if !(q >= 0 && q < 1e6) {
				return
			}
		}
		if !(cv >= 0 && cv <= 1) {
			return
		}
		g := Of(flows, 2, cv)
		for _, v := range []float64{g.Mean, g.Low, g.CV, g.DU, g.CU, g.Us, g.EU} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("of %v: %+v", flows, g)
			}
		}
		if g.Low > g.Mean*(1+1e-12) || g.DU > 1+1e-12 || g.CU > 1+1e-12 || g.EU > g.DU*(1+1e-9)+1e-12 {
			t.Errorf("of %v: %+v", flows, g)
		}
	})
}
