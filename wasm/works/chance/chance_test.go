package chance

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/evenness"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// of draws a plan after its water.
func of(t testing.TB, p *plan.Plan, blocked float64) []Zone {
	t.Helper()
	if errs := p.Check(); len(errs) > 0 {
		t.Fatal(errs[0])
	}
	l := layout.New(p)
	var flows []*network.Solution
	for _, z := range l.Zones {
		sol, err := network.Solve(l.Zone(z))
		if err != nil {
			t.Fatal(err)
		}
		flows = append(flows, sol)
	}
	return Of(l, flows, blocked)
}

// level is a plan without any difference of head worth naming, so that only
// manufacture varies: one row of n plants in wide tubing, emitters that keep
// their flow whatever the head.
func level(n, perPlant int, cv float64) *plan.Plan {
	p := plan.Default()
	p.Rows = p.Rows[:1]
	r := &p.Rows[0]
	r.Plants, r.PerPlant, r.Tube, r.Bore = n, perPlant, 0, 0.1
	e := &p.Emitters[0]
	e.Kind, e.Exponent, e.CV, e.Flow = plan.Compensating, 0, cv, 1/3.6e6
	return p
}

// The textbook normal distribution: the mean of the lowest quarter lies 1.2711
// standard deviations below the mean, the mean distance from the mean is
// √(2/π) of one. A plant x of n is short when x - 0.9 m, m the mean of its draw,
// is below 0: its mean is 0.1 and its variance s² (1 - 0.99/n).
//
// The tolerance is four standard errors of the draws and, for the measures from
// a draw's own mean and quarter, 1.5 s/n for what n plants differ from
// infinitely many. That none is short is reckoned as if plants were
// independent; the mean that they share changes it by less than 0.01.
func TestNormalDistribution(t *testing.T) {
	const n = 400
	for _, perPlant := range []int{1, 2, 4} {
		for _, cv := range []float64{0.03, 0.07, 0.15} {
			z := of(t, level(n, perPlant, cv), 0)[0]
			s := cv / math.Sqrt(float64(perPlant))
			draws := float64(z.Draws)
			tol := 4*s/math.Sqrt(draws*n) + 1.5*s/n
			if want := 1 - 1.2711*s; math.Abs(z.EU-want) > 2*tol {
				t.Errorf("%d of %g: EU %.5f, want %.5f", perPlant, cv, z.EU, want)
			}
			if want := 1 - s*math.Sqrt(2/math.Pi); math.Abs(z.CU-want) > tol {
				t.Errorf("%d of %g: CU %.5f, want %.5f", perPlant, cv, z.CU, want)
			}
			if math.Abs(z.CV-s) > tol {
				t.Errorf("%d of %g: CV %.5f, want %.5f", perPlant, cv, z.CV, s)
			}
			short := math.Erfc(0.1/s/math.Sqrt(2*(1-0.99/n))) / 2
			if tol := 4*math.Sqrt(max(short, 1e-9)/(draws*n)) + 1/(draws*n); math.Abs(z.Short-short) > tol {
				t.Errorf("%d of %g: short %.6f, want %.6f", perPlant, cv, z.Short, short)
			}
			if want := math.Pow(1-short, n); math.Abs(z.None-want) > 4*math.Sqrt(want*(1-want)/draws)+0.01 {
				t.Errorf("%d of %g: none short in %.4f of draws, want %.4f", perPlant, cv, z.None, want)
			}
			if math.Abs(z.Design-(1-1.27*s)) > 1e-3 {
				t.Errorf("%d of %g: EU by formula %.5f", perPlant, cv, z.Design)
			}
			t.Logf("%d of %g: EU %.5f CU %.5f short %.5f none %.4f off %.2g", perPlant, cv, z.EU, z.CU, z.Short, z.None, z.Off)
		}
	}
}

// With emitters that all give the same, whether a plant is short follows from
// the binomial distribution alone: of two emitters one or both are blocked.
func TestBlockedIsBinomial(t *testing.T) {
	for _, b := range []float64{0.01, 0.05, 0.2} {
		z := of(t, level(100, 2, 0), b)[0]
		want := 1 - (1-b)*(1-b)
		if tol := 4 * math.Sqrt(want/float64(z.Draws*100)); math.Abs(z.Short-want) > tol {
			t.Errorf("%g blocked: %.5f short, want %.5f", b, z.Short, want)
		}
	}
}

func TestMoreBlockedIsNeverBetter(t *testing.T) {
	for _, p := range plan.Examples() {
		before := -1.0
		for _, b := range []float64{0, 0.01, 0.03, 0.1, 0.3} {
			zones := of(t, p.Plan, b)
			for _, z := range zones[:min(1, len(zones))] {
				if noise := 4 * math.Sqrt(max(z.Short, 1e-6)/float64(z.Draws*z.Plants)); z.Short < before-noise {
					t.Errorf("%s: %g blocked: short %g after %g", p.Plan.Name, b, z.Short, before)
				}
				before = z.Short
			}
		}
	}
}

func TestThresholdIsAShare(t *testing.T) {
	for _, s := range []float64{0, 1e-9, 0.25, 0.5, 0.9} {
		if got := float64(threshold(s)) / (1 << 63) / 2; math.Abs(got-s) > 1e-15 {
			t.Errorf("%g: %g", s, got)
		}
	}
	if threshold(1) != math.MaxUint64 {
		t.Error("not all")
	}
}

func TestLowIsThatOfEvenness(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for n := 1; n < 60; n++ {
		v := make([]float64, n)
		for i := range v {
			v[i] = float64(r.IntN(20))
		}
		want := evenness.Low(v)
		if got := low(v); math.Abs(got-want) > 1e-12 {
			t.Errorf("of %d: %g, want %g", n, got, want)
		}
	}
}

// sound checks what holds of any plan.
func sound(t *testing.T, zones []Zone) {
	t.Helper()
	for _, z := range zones {
		sum := 0
		for _, c := range z.Counts {
			sum += c
		}
		if sum != z.Draws*z.Plants {
			t.Errorf("%d of %d plants counted", sum, z.Draws*z.Plants)
		}
		for _, v := range []float64{z.Short, z.None, z.EU, z.Often, z.Design} {
			if !(v >= 0 && v <= 1+1e-9) {
				t.Errorf("%+v", z)
			}
		}
		if !(z.CU <= 1+1e-9 && z.CV >= 0 && z.Off >= 0 && z.Off < math.Inf(1)) || z.Often < z.Short-1e-9 {
			t.Errorf("%+v", z)
		}
	}
}

func TestExamplesAndRandomPlans(t *testing.T) {
	for _, p := range plan.Examples() {
		zones := of(t, p.Plan, p.Plan.Chance.Blocked)
		sound(t, zones)
		for _, z := range zones {
			t.Logf("%s zone %d: %d draws EU %.4f (formula %.4f) CU %.4f short %.2g none %.3f off %.2g of %d", p.Plan.Name, z.Number, z.Draws, z.EU, z.Design, z.CU, z.Short, z.None, z.Off, z.Solved)
			if z.Off > 0.01 {
				t.Errorf("%s: first order is off by %g", p.Plan.Name, z.Off)
			}
		}
	}
	worst := 0.0
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 17))
		p := plan.Default()
		p.Supply.Kind, p.Supply.Regulator = []int{plan.PumpTwo, plan.GravityTank, plan.Mains}[r.IntN(3)], 0
		p.Supply.ShutOff, p.Supply.MaxFlow = 3+30*r.Float64(), (5+40*r.Float64())/6e4
		p.Runs[0].Rise = -10 * r.Float64()
		p.Header.Layout = r.IntN(3)
		for i := range p.Rows {
			p.Rows[i].Plants, p.Rows[i].PerPlant, p.Rows[i].Zone = 1+r.IntN(30), 1+r.IntN(3), 1+r.IntN(2)
		}
		e := &p.Emitters[0]
		if r.IntN(2) == 0 {
			e.Kind, e.Nominal, e.Exponent = plan.NonCompensating, 1e5, 0.3+0.7*r.Float64()
		}
		e.CV = 0.15 * r.Float64()
		if len(p.Check()) > 0 {
			continue
		}
		zones := of(t, p, 0.1*r.Float64())
		sound(t, zones)
		for _, z := range zones {
			worst = max(worst, z.Off)
		}
	}
	t.Logf("first order is off by %g at most", worst)
}

// BenchmarkDraws draws 400 emitters 10,000 times.
func BenchmarkDraws(b *testing.B) {
	p := plan.Default()
	for i := range p.Rows {
		p.Rows[i].Plants, p.Rows[i].PerPlant = 100, 1
	}
	for b.Loop() {
		if z := of(b, p, 0.01); z[0].Draws != Draws || z[0].Emitters != 400 {
			b.Fatalf("%+v", z)
		}
	}
}
