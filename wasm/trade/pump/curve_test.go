package pump

import (
	"math"
	"testing"
)

const lpm = 1.0 / 6e4

// surface is the pump of the example plan.
var surface = []Point{{0, 34}, {20 * lpm, 29}, {40 * lpm, 19}, {50 * lpm, 12}}

// must fails the test on the error of a constructor.
func must(t *testing.T) func(Curve, error) Curve {
	return func(c Curve, err error) Curve {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
}

// falls checks that a curve falls at every flow from far back to far beyond
// its end, with a slope that agrees with differences.
func falls(t *testing.T, name string, c Curve) {
	t.Helper()
	last := c.LastFlow()
	before := math.Inf(1)
	for i := -500; i <= 2000; i++ {
		q := last * (float64(i) + 0.37) / 500
		h, slope := c.Head(q)
		if !(h < before) || !(slope < 0) || math.IsInf(slope, 0) {
			t.Fatalf("%s: at %g of the last flow the head goes from %.15g to %.15g, slope %g", name, q/last, before, h, slope)
		}
		before = h
		if loss, ls := c.Loss(q); loss != -h || ls != -slope {
			t.Fatalf("%s: Loss(%g) = %g, %g, want the opposite of %g, %g", name, q, loss, ls, h, slope)
		}
		e := last * 1e-6
		lo, s0 := c.Head(q - e)
		hi, s1 := c.Head(q + e)
		if math.Abs(s0-s1) > 0.01*math.Abs(slope) {
			continue // a kink lies between
		}
		if want := (hi - lo) / (2 * e); math.Abs(slope-want) > 1e-4*math.Abs(slope)+1e-7*before/last {
			t.Fatalf("%s: at %g of the last flow the slope is %g, by differences %g", name, q/last, slope, want)
		}
	}
}

func TestCurvesFall(t *testing.T) {
	byPoints := must(t)(ByPoints(surface))
	byTwo := must(t)(ByTwo(6.5, 90*lpm))
	tap := must(t)(Tap(35, 18*lpm))
	falls(t, "by points", byPoints)
	falls(t, "by two points", must(t)(ByPoints([]Point{{0, 10}, {lpm, 0}})))
	falls(t, "a flat start", must(t)(ByPoints([]Point{{0, 20}, {10 * lpm, 19.999}, {20 * lpm, 1}})))
	falls(t, "by two figures", byTwo)
	falls(t, "tap", tap)
	falls(t, "regulated tap", Regulated(tap, 10))
	falls(t, "regulated pump", Regulated(byPoints, 25))
	falls(t, "a regulator set above the pump", Regulated(byTwo, 99))
}

func TestByPointsPassesThroughItsPoints(t *testing.T) {
	c := must(t)(ByPoints(surface))
	for _, p := range surface {
		if h, _ := c.Head(p.Flow); math.Abs(h-p.Head) > 1e-12 {
			t.Errorf("at %g L/min: %.15g m, want %g", p.Flow/lpm, h, p.Head)
		}
	}
	if got := c.LastFlow(); got != 50*lpm {
		t.Errorf("last flow %g L/min, want 50", got/lpm)
	}
	// Beyond the last point it goes on straight.
	end, slope := c.Head(50 * lpm)
	if h, s := c.Head(70 * lpm); s != slope || math.Abs(h-(end+20*lpm*slope)) > 1e-12 {
		t.Errorf("at 70 L/min: %g m, slope %g, want %g, %g", h, s, end+20*lpm*slope, slope)
	}
}

func TestByPointsSaysWhatIsWrong(t *testing.T) {
	tests := []struct {
		name   string
		points []Point
		want   string
	}{
		{"one point", surface[:1], "a pump curve needs at least two points"},
		{"no shut-off head", surface[1:], "point 1 of the pump curve: the flow must be 0, where the pump is shut off"},
		{"flow stands still", []Point{{0, 9}, {1, 8}, {1, 7}}, "point 3 of the pump curve: the flow must be more than at the point before"},
		{"no flow twice", []Point{{0, 9}, {0, 8}}, "point 2 of the pump curve: the flow must be more than at the point before"},
		{"head stands still", []Point{{0, 9}, {1, 9}}, "point 2 of the pump curve: the head must be less than at the point before"},
		{"head under 0", []Point{{0, 9}, {1, -1}}, "point 2 of the pump curve: the head must not be below 0"},
		{"no number", []Point{{0, math.NaN()}, {1, 1}}, "point 1 of the pump curve: flow and head must be numbers"},
		{"no end", []Point{{0, 9}, {math.Inf(1), 1}}, "point 2 of the pump curve: flow and head must be numbers"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			c, err := ByPoints(tt.points)
			if c != nil || err == nil || err.Error() != tt.want {
				t.Errorf("ByPoints(%v) = %v, %v\nwant %s", tt.points, c, err, tt.want)
			}
		})
	}
}

func TestTwoFiguresSayWhatIsWrong(t *testing.T) {
	tests := []struct {
		make func(a, b float64) (Curve, error)
		a, b float64
		want string
	}{
		{ByTwo, 0, 1, "the shut-off head must be more than 0"},
		{ByTwo, math.NaN(), 1, "the shut-off head must be more than 0"},
		{ByTwo, 6, 0, "the greatest flow must be more than 0"},
		{ByTwo, 6, -1, "the greatest flow must be more than 0"},
		{ByTwo, 6, math.Inf(1), "the greatest flow must be more than 0"},
		{Tap, 0, 1, "the tap's static head must be more than 0"},
		{Tap, -1, 1, "the tap's static head must be more than 0"},
		{Tap, 30, 0, "the tap's flow must be more than 0"},
	}
	for _, tt := range tests {
		if c, err := tt.make(tt.a, tt.b); c != nil || err == nil || err.Error() != tt.want {
			t.Errorf("of %g and %g: %v, %v, want %s", tt.a, tt.b, c, err, tt.want)
		}
	}
}

func TestSmallFiguresAreRight(t *testing.T) {
	for _, c := range []Curve{must(t)(ByTwo(0.5, 0.5)), must(t)(Tap(0.5, 0.5)), must(t)(ByPoints([]Point{{0, 0.5}, {1e-6, 0}}))} {
		if h, _ := c.Head(0); h != 0.5 {
			t.Errorf("at no flow: %g m, want 0.5", h)
		}
	}
}

// Below 1/1000 of the greatest flow the parabola is the straight line from its
// top to its point there: 20 m fall by a millionth over 1/1000 of 2 m³/s.
func TestByTwoIsStraightAtFirst(t *testing.T) {
	c := must(t)(ByTwo(20, 2))
	const want = -20 * 1e-6 / 2e-3
	for _, q := range []float64{0, 0.5e-3, 1.9e-3} {
		if h, slope := c.Head(q); math.Abs(slope-want) > 1e-15 || math.Abs(h-(20+want*q)) > 1e-13 {
			t.Errorf("at %g m³/s: %.15g m, slope %g, want %.15g, %g", q, h, slope, 20+want*q, want)
		}
	}
	// From there on it has the parabola's slope, 2 · 1/1000 · 20/2.
	if _, slope := c.Head(2e-3); math.Abs(slope+0.02) > 1e-15 {
		t.Errorf("at a thousandth of the flow the slope is %g, want -0.02", slope)
	}
}

func TestByTwo(t *testing.T) {
	c := must(t)(ByTwo(20, 2))
	for q, want := range map[float64]float64{0: 20, 1: 15, 2: 0, 4: -60} {
		if h, _ := c.Head(q); math.Abs(h-want) > 1e-12 {
			t.Errorf("at %g: %g m, want %g", q, h, want)
		}
	}
}

// Steep is only what runs back: at no flow each curve has the slope of what
// lies ahead.
func TestSlopeAtNoFlowIsThatAhead(t *testing.T) {
	for name, c := range map[string]Curve{"points": must(t)(ByPoints(surface)), "tap": must(t)(Tap(35, 18*lpm))} {
		_, at := c.Head(0)
		_, ahead := c.Head(1e-9 * c.LastFlow())
		if math.Abs(at-ahead) > 1e-6*math.Abs(ahead) {
			t.Errorf("%s: the slope is %g at no flow and %g ahead", name, at, ahead)
		}
	}
}

func TestWaterThatRunsBackMeetsASteepCurve(t *testing.T) {
	tap := must(t)(Tap(35, 18*lpm))
	for name, c := range map[string]Curve{
		"points": must(t)(ByPoints(surface)), "tap": tap, "regulator": Regulated(tap, 10),
	} {
		first, _ := c.Head(0)
		if h, _ := c.Head(-0.1 * c.LastFlow()); math.Abs(h-2*first) > 1e-9*first {
			t.Errorf("%s: with a tenth of the last flow running back the head is %g m, want twice %g", name, h, first)
		}
	}
}

// A curve that falls steeply at first is as steep for water that runs back.
func TestBackflowIsNoFlatterThanTheCurve(t *testing.T) {
	c := must(t)(ByPoints([]Point{{0, 100}, {0.001, 10}, {1, 0}}))
	_, at := c.Head(0)
	if at > -backflow*100 {
		t.Fatalf("the curve starts with a slope of %g, which is none of the steep ones", at)
	}
	if h, slope := c.Head(-0.001); slope != at || h <= 100 {
		t.Errorf("running back: %g m with a slope of %g, want that at no flow, %g", h, slope, at)
	}
}

func TestRegulated(t *testing.T) {
	tap := must(t)(Tap(35, 20*lpm))
	c := Regulated(tap, 10)
	if h, _ := c.Head(0); h != 10 {
		t.Errorf("with no flow the regulator gives %g m, want its setting of 10", h)
	}
	if h, _ := c.Head(10 * lpm); math.Abs(h-10) > 1e-3 {
		t.Errorf("at half the tap's flow the regulator gives %g m, want 10 less its droop", h)
	}
	// The droop is 1e-4 of the setting at the last flow of the curve before it.
	strong := Regulated(must(t)(ByPoints([]Point{{0, 90}, {30 * lpm, 80}})), 20)
	if h, slope := strong.Head(30 * lpm); math.Abs(h-19.998) > 1e-12 || math.Abs(slope+0.002/(30*lpm)) > 1e-12 {
		t.Errorf("at the last flow the regulator gives %.15g m, slope %g, want 19.998, %g", h, slope, -0.002/(30*lpm))
	}
	if _, slope := strong.Head(0); math.Abs(slope+0.002/(30*lpm)) > 1e-12 {
		t.Errorf("at no flow the regulator's slope is %g: that of water running back", slope)
	}
	want, _ := tap.Head(19 * lpm)
	if h, _ := c.Head(19 * lpm); h != want {
		t.Errorf("where the tap gives less than the setting: %g m, want the tap's %g", h, want)
	}
	if c.LastFlow() != tap.LastFlow() {
		t.Error("the regulator changed the last flow")
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

func FuzzByPoints(f *testing.F) {
	f.Add(34.0, 20.0, 29.0, 40.0, 19.0)
	f.Add(20.0, 10.0, 19.999, 20.0, 1.0)
	f.Add(20.0, 1e-3, 1.0, 50.0, 0.0)
	f.Fuzz(func(t *testing.T, h0, q1, h1, q2, h2 float64) {
		q1, h2 = within(q1, 1e-3, 1e3), within(h2, 1e-3, 1e3)-1e-3
		// The rest are steps on from these when they are out of order.
		if !(q2 > q1) {
			q2 = q1 + within(q2, 1e-3, 1e3)
		}
		if !(h1 > h2) {
			h1 = h2 + within(h1, 1e-3, 1e3)
		}
		if !(h0 > h1) {
			h0 = h1 + within(h0, 1e-3, 1e3)
		}
		if !(q2-q1 > 1e-3 && q2 < 1e6 && h1-h2 > 1e-3 && h0-h1 > 1e-3 && h0 < 1e6) {
			return
		}
		p := []Point{{0, h0}, {q1 * lpm, h1}, {q2 * lpm, h2}}
		c, err := ByPoints(p)
		if err != nil {
			t.Fatal(err)
		}
		for _, pt := range p {
			if h, _ := c.Head(pt.Flow); math.Abs(h-pt.Head) > 1e-11*h0 {
				t.Fatalf("the curve of %v is %.15g at %g", p, h, pt.Flow)
			}
		}
		before := math.Inf(1)
		for i := -20; i < 300; i++ {
			h, slope := c.Head(q2 * lpm * (float64(i) + 0.5) / 100)
			if !(h < before && slope < 0) {
				t.Fatalf("the curve of %v does not fall at %d %%: %g after %g, slope %g", p, i, h, before, slope)
			}
			before = h
		}
	})
}
