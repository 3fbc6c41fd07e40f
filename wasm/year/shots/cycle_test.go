package shots

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenrow/wasm/grower/plan"
)

// plainly is [enough], second by second.
func plainly(run, off, window float64) (on float64, n int) {
	count := func() int { return 1 + int(window/(on+off)) }
	on = 1
	on = math.Ceil(run/float64(count()) - 1e-9)
	for n = count(); on*float64(n) < run-1e-6; n = count() {
		on++
	}
	return on, n
}

// The seconds on are those that are found by trying one after another.
func TestEnoughIsTheLeastThatSuffices(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	for range 200_000 {
		window := math.Round(r.Float64()*1e4) * float64(r.IntN(2)*r.IntN(2)+1) / float64(1+r.IntN(3))
		off := float64(60 * r.IntN(1+r.IntN(40)))
		run := math.Pow(10, 4.5*r.Float64()-0.5)
		if r.IntN(2) == 0 {
			run = math.Ceil(run) // sums that come out
		}
		on, n := enough(run, off, window)
		if wantOn, wantN := plainly(run, off, window); on != wantOn || n != wantN {
			t.Fatalf("for %g s, %g off, in %g: %d times %g s, want %d times %g", run, off, window, n, on, wantN, wantOn)
		}
	}
}

// However much is wanted, the seconds on suffice, and no fewer do: of those that
// leave as many shots it is the most seconds that give most.
func TestEnoughOfAnyMagnitude(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2))
	for range 2000 {
		window, off := 8.64e4*r.Float64(), float64(60*(1+r.IntN(100)))
		run := math.Pow(10, 9*r.Float64())
		on, n := enough(run, off, window)
		count := func(on float64) int { return 1 + int(window/(on+off)) }
		if n != count(on) || on*float64(n) < run-1e-6 || on != math.Trunc(on) {
			t.Fatalf("%d times %g s for %g s", n, on, run)
		}
		for k := n; k <= count(1); k++ {
			fewer := on - 1
			if k > 1 {
				fewer = min(fewer, math.Floor(window/float64(k-1)-off))
			}
			if fewer >= 1 && count(fewer) == k && fewer*float64(k) >= run-1e-6 {
				t.Fatalf("%g s suffice %d times as well as %g s %d times for %g s", fewer, k, on, n, run)
			}
		}
	}
}

// Where plants get next to nothing, a day's water takes more hours than the day
// has. It is said that it does not fit, and no more shots are listed than a day
// holds, whatever tells the timer when to stop.
func TestNoMoreIsListedThanADayHolds(t *testing.T) {
	for _, window := range []int{plan.ByLight, 1 - plan.ByLight} {
		for _, least := range []float64{1e-3, 1e-6, 1e-9, 1e-12} {
			tm := timer()
			tm.Kind, tm.Window = plan.OnAndOff, window
			b := randomBed(rand.New(rand.NewPCG(4, 3)), 1)
			b.Least, b.Mean = least*lph, least*lph
			d := Of(tm, []Bed{b}, randomLit(rand.New(rand.NewPCG(4, 4))), Hot)
			if b.Use[Hot]/b.Least > forever {
				if len(d.Zones) > 0 {
					t.Errorf("%g L/h: %d zones are set", least, len(d.Zones))
				}
				continue
			}
			s := &d.Zones[0]
			if !(d.Over > 0) || len(s.Shots) > mostCycles || s.Given < s.Run-1e-3 || math.IsInf(s.Given, 0) {
				t.Errorf("%g L/h: %g s of %g given in %d shots, %g s too late", least, s.Given, s.Run, len(s.Shots), d.Over)
			}
		}
	}
}
