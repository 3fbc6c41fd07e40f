package sheet

import (
	"math"
	"testing"

	"evenrow/build/hostile"
)

// What a far header gains, by hand: heads in m, rows in plants.
func TestGain(t *testing.T) {
	is := func(margin float64, v Verdict, longer int, bounded bool) Looped {
		return Looped{Zone: ZoneResult{Margin: margin}, Verdict: v, Longer: longer, Bounded: bounded, Sought: true}
	}
	unsought := is(1, Yes, 9, false)
	unsought.Sought = false
	for _, tt := range []struct {
		what          string
		without, with Looped
		want          Gain
	}{
		{"the same", is(1, Yes, 4, false), is(1, Yes, 4, false), Gain{WorthNothing, 0, 0, true, -1}},
		// 2.0 m and 2.0 m, as they are shown.
		{"4 cm more", is(1.98, Yes, 4, false), is(2.02, Yes, 5, false), Gain{WorthNothing, 0.04, 1, true, -1}},
		{"4 cm less", is(2.02, Yes, 4, false), is(1.98, Yes, 4, false), Gain{WorthNothing, -0.04, 0, true, -1}},
		{"6 cm more", is(1.96, Nearly, 4, false), is(2.02, Yes, 10, false), Gain{WorthMore, 0.06, 6, true, Tied}},
		{"6 cm less", is(2.02, Yes, 4, false), is(1.96, Nearly, -1, false), Gain{WorthLess, -0.06, -5, true, Untied}},
		{"from short to spare, and neither is Yes", is(-0.5, Nearly, -2, false), is(0.5, Nearly, 3, false), Gain{WorthMore, 1, 5, true, -1}},
		{"no water, and some", is(-3, No, -5, false), is(-1, Nearly, -3, false), Gain{WorthMore, 2, 2, true, -1}},
		{"rows with it are longer yet", is(1, Yes, 4, false), is(2, Yes, 9, true), Gain{WorthMore, 1, 0, false, -1}},
		{"rows without it are at least as many shorter", is(1, Yes, 4, true), is(2, Yes, 9, false), Gain{WorthMore, 1, 5, true, -1}},
		{"rows without it are longer yet", is(1, Yes, 9, true), is(2, Yes, 4, false), Gain{WorthMore, 1, 0, false, -1}},
		{"neither was looked for to its end", is(1, Yes, 9, true), is(2, Yes, 9, true), Gain{WorthMore, 1, 0, false, -1}},
		{"rows were not looked for without it", unsought, is(2, Yes, 12, false), Gain{WorthMore, 1, 0, false, -1}},
		{"rows were not looked for with it", is(2, Yes, 12, false), unsought, Gain{WorthLess, -1, 0, false, -1}},
	} {
		for now := range 2 { // whichever of the two the plan is
			got := (&Loop{Now: now, Side: [2]Looped{Untied: tt.without, Tied: tt.with}}).Gain()
			// Differences of numbers about 2 are off by some of their last bits.
			if math.Abs(got.Head-tt.want.Head) > 1e-15 {
				t.Errorf("%s: %g m more, want %g", tt.what, got.Head, tt.want.Head)
			}
			if got.Head = tt.want.Head; got != tt.want {
				t.Errorf("%s: %+v, want %+v", tt.what, got, tt.want)
			}
		}
	}
}

// Seen from the plan with the far header and from that without, it gains the same.
func TestGainFromEitherSide(t *testing.T) {
	told := map[Worth]int{}
	for n := range 60 {
		p := hostile.Ordinary(hostile.Numbered(15, n))
		if p.Supply.Sought() { // each side alone would be given a pump of its own
			p = Answer(p).Layout.Plan
		}
		l := zonedAndLooped(p).Loop
		if l == nil {
			continue
		}
		back := zonedAndLooped(l.Plan).Loop
		if back == nil {
			t.Errorf("plan %d is not compared from the other side", n)
			continue
		}
		a, b := l.Gain(), back.Gain()
		told[a.Worth]++
		// Both are the same two plans, solved from the same start.
		if a != b {
			t.Errorf("plan %d gains %+v, and from the other side %+v", n, a, b)
		}
	}
	if t.Log(told); told[WorthNothing] == 0 || told[WorthMore] == 0 {
		t.Errorf("gains of one kind only: %v", told)
	}
}
