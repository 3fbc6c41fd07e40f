package shots

import (
	"math"
	"slices"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/dose"
)

// The drain that is wanted, by sky: low on dull days and while plants root in.
func TestWantedDrain(t *testing.T) {
	tm := &plan.Timer{DrainLow: 0.1, Drain: 0.2, DrainHot: 0.3}
	for sky, want := range []float64{0.1, 0.2, 0.3, 0.3} {
		if got := (&Bed{}).Wanted(tm, Sky(sky)); got != want {
			t.Errorf("sky %d: %g, want %g", sky, got, want)
		}
		if got := (&Bed{Young: true}).Wanted(tm, Sky(sky)); got != 0.1 {
			t.Errorf("young plants under sky %d: %g, want 0.1", sky, got)
		}
	}
}

// The part of the day in which shots begin: to later on hot days, and one
// moment in the middle where a winter's day is too short. Room is that and six
// minutes.
func TestWindowByHand(t *testing.T) {
	tm := &plan.Timer{First: 2 * hour, Last: 3 * hour, LastHot: 1 * hour}
	for _, c := range []struct {
		rise, set   float64
		sky         Sky
		first, last float64
	}{
		{6, 20, Dull, 8, 17}, {6, 20, Typical, 8, 17}, {6, 20, Hot, 8, 19}, {6, 20, Record, 8, 19},
		{10, 14, Dull, 11.5, 11.5}, // from 12 to 11
		{10, 14, Hot, 12, 13},
		{10, 15, Dull, 12, 12}, // no time, but no less either
	} {
		lit := dose.Of(c.rise*hour, c.set*hour)
		w := windowOf(tm, lit, c.sky)
		if w.first != c.first*hour || w.last != c.last*hour || w.Sunlit != lit {
			t.Errorf("%g to %g h, sky %d: from %g to %g h, want %g to %g", c.rise, c.set, c.sky, w.first/hour, w.last/hour, c.first, c.last)
		}
		if got, want := Room(tm, lit, c.sky), (c.last-c.first)*hour+360; math.Abs(got-want) > 1e-9 {
			t.Errorf("%g to %g h, sky %d: room of %g s, want %g", c.rise, c.set, c.sky, got, want)
		}
	}
}

// bed takes run seconds of water on every day, without drain, in a medium of
// which a shot may bring so many seconds' worth.
func bed(tm *plan.Timer, run, most float64) Bed {
	tm.DrainLow, tm.Drain, tm.DrainHot, tm.Shot = 0, 0, 0, 0.1
	b := Bed{Zone: 2, Plants: 1, Least: lph, Mean: lph, Easy: 1, Root: most * lph / 0.1}
	for sky := range b.Use {
		b.Use[sky] = run * lph
	}
	return b
}

func TestNeedByHand(t *testing.T) {
	tm := timer()
	for _, c := range []struct {
		name      string
		run, most float64
		wanted    int
	}{
		{"seven shots of at most 288 s", 1800, 288, 7},
		{"as few as are two minutes each", 1200, 30, 10},
		{"one of 130 s, for two would be too short", 130, 30, 1},
		{"one that is short", 100, 288, 1},
		{"six minutes at most", 3600, 9999, 10},
	} {
		s, ok := need(tm, []Bed{bed(tm, c.run, c.most)}, Typical)
		if !ok || math.Abs(s.Run-c.run) > 1e-9 || s.Wanted != c.wanted || s.Zone != 2 {
			t.Errorf("%s: %+v, %t, want %d shots", c.name, s, ok, c.wanted)
		}
	}
	// Of two that need as much, the first decides; of others, the one that needs more.
	a, b := bed(tm, 600, 288), bed(tm, 601, 288)
	for i, beds := range [][]Bed{{a, a, a}, {a, b}, {b, a}} {
		if s, ok := need(tm, beds, Typical); !ok || s.Lead != []int{0, 1, 0}[i] || len(s.Beds) != len(beds) {
			t.Errorf("beds %d: %+v, %t", i, s, ok)
		}
	}
	// Where some get no water, or next to none, nothing is set, also where they need none.
	dry := a
	dry.Least = 0
	idle := dry
	idle.Use = [Skies]float64{}
	for i, c := range []struct {
		beds []Bed
		want bool
	}{{[]Bed{a, dry}, false}, {[]Bed{a, idle}, false}, {[]Bed{idle, a}, false}, {[]Bed{bed(tm, 0.9e9, 288)}, true}, {[]Bed{bed(tm, 1.5e9, 288)}, false}, {[]Bed{bed(tm, 0, 288)}, false}} {
		if _, ok := need(tm, c.beds, Typical); ok != c.want {
			t.Errorf("beds %d are set: %t, want %t", i, ok, c.want)
		}
	}
}

// A zone that is to run for so long is set as one that needs it.
func TestFitByHand(t *testing.T) {
	tm, lit := timer(), dose.Of(6*hour, 20*hour)
	b := bed(tm, 600, 288)
	s, ok := Fit(tm, []Bed{b}, lit, Typical, 1800)
	want := Of(tm, []Bed{bed(tm, 1800, 288)}, lit, Typical).Zones[0]
	if !ok || s.Run != 1800 || s.Wanted != 7 || s.Given != 1800 || !slices.Equal(s.Shots, want.Shots) || len(s.Shots) != 7 {
		t.Errorf("%+v, %t, want %+v", s, ok, want)
	}
	if s, ok := Fit(tm, []Bed{b}, lit, Typical, 0); ok {
		t.Errorf("no time at all is set as %+v", s)
	}
	if s, ok := Fit(tm, []Bed{bed(tm, 0, 288)}, lit, Typical, 600); ok {
		t.Errorf("plants that take up nothing are set as %+v", s)
	}
}

// From two to six minutes a shot is neither short nor long, and what is noted
// stays.
func TestJudge(t *testing.T) {
	for long, want := range map[float64]Note{119: Few | Short, 120: Few, 240: Few, 360: Few, 361: Few | Long} {
		s := Setting{Notes: Few}
		if s.judge(long); s.Notes != want {
			t.Errorf("%g s: %b, want %b", long, s.Notes, want)
		}
	}
	s := Setting{}
	s.judge(100)
	s.judge(400)
	if s.Notes != Short|Long {
		t.Errorf("one of each: %b", s.Notes)
	}
}

// Ranks by how far from the middle: each once, the nearer the lower.
func TestMiddle(t *testing.T) {
	for n, want := range map[int][]int{1: {0}, 2: {0, 1}, 3: {2, 0, 1}, 4: {2, 0, 1, 3}, 5: {4, 2, 0, 1, 3}} {
		for k := range n {
			if got := middle(k, n); got != want[k] {
				t.Errorf("shot %d of %d has the rank %d, want %d", k, n, got, want[k])
			}
		}
	}
}

// Rounds of two minutes, in ticks of one: those that would overlap go later,
// back to the end where that is too late, and beyond it where there is no room.
func TestPartByHand(t *testing.T) {
	for _, c := range []struct {
		name        string
		times       []float64
		long        float64
		first, last float64
		want        []float64
	}{
		{"apart already", []float64{600, 1200, 1800}, 120, 600, 3000, []float64{600, 1200, 1800}},
		{"one after the other", []float64{600, 660, 720}, 120, 600, 3000, []float64{600, 720, 840}},
		{"up to a whole tick", []float64{600, 660, 720}, 90, 600, 3000, []float64{600, 720, 840}},
		{"rounding is no tick", []float64{600, 660, 720}, 120 + 1e-9, 600, 3000, []float64{600, 720, 840}},
		{"back from the end", []float64{2880, 2940, 3000}, 120, 600, 3000, []float64{2760, 2880, 3000}},
		{"only those at the end", []float64{600, 2940, 3000}, 120, 600, 3000, []float64{600, 2880, 3000}},
		{"an end within a tick", []float64{2880, 2940, 3060}, 120, 600, 3010, []float64{2820, 2940, 3060}},
		{"no room", []float64{2880, 2940, 3000}, 120, 2890, 3000, []float64{2880, 3000, 3120}},
		{"one", []float64{3100}, 120, 600, 3000, []float64{3000}},
		{"one too early", []float64{500}, 120, 610, 3000, []float64{600}},
		{"none", nil, 120, 600, 3000, nil},
	} {
		long := make([]float64, len(c.times))
		for i := range long {
			long[i] = c.long
		}
		times := slices.Clone(c.times)
		part(times, long, 60, window{first: c.first, last: c.last})
		if !slices.Equal(times, c.want) {
			t.Errorf("%s: %v, want %v", c.name, times, c.want)
		}
	}
}

// Start times are whole minutes, and a zone that is to have fewer shots than
// another has none in some of the rounds.
func TestListByHand(t *testing.T) {
	tm, lit := timer(), dose.Of(6*hour+7, 20*hour+11)
	a, b := bed(tm, 1800, 360), bed(tm, 720, 360) // five and two shots of six minutes
	b.Zone = 3
	d := Of(tm, []Bed{a, b}, lit, Typical)
	if len(d.Zones) != 2 || len(d.Zones[0].Shots) != 5 || len(d.Zones[1].Shots) != 2 || d.Round != 720 || d.Over != 0 {
		t.Fatalf("%+v", d)
	}
	odd := false
	for i := range d.Zones {
		for _, s := range d.Zones[i].Shots {
			if s.For != 360 || math.Mod(s.At, 60) != 0 {
				t.Errorf("zone %d: %+v", d.Zones[i].Zone, s)
			}
			odd = odd || math.Mod(s.At, 120) != 0
		}
	}
	if !odd {
		t.Errorf("all shots are at even minutes: %+v", d)
	}
	// A dial has 96 pins, and no start times to lack: 100 quarters of water go
	// into 96 shots.
	tm.Kind = plan.Dial
	d = Of(tm, []Bed{bed(tm, 100*900, 360)}, lit, Typical)
	if s := &d.Zones[0]; len(s.Shots) != 96 || s.Given != 100*900 || s.Notes&Few != 0 || d.Over == 0 {
		t.Errorf("%d pins for %g s, notes %b, over %g s", len(s.Shots), s.Given, s.Notes, d.Over)
	}
}

// On and off by hand, in a window from 8 to 18 h, or by daylight from 6 to 20 h.
func TestCycleByHand(t *testing.T) {
	tm, lit := timer(), dose.Of(6*hour, 20*hour)
	tm.Kind, tm.Window = plan.OnAndOff, 1-plan.ByLight
	tm.First, tm.Last, tm.LastHot = 2*hour, 2*hour, 2*hour
	of := func(run, most float64) (Setting, float64) {
		d := Of(tm, []Bed{bed(tm, run, most)}, lit, Typical)
		return d.Zones[0], d.Over
	}
	check := func(name string, s Setting, over float64, n int, on, off, first, wantOver float64, notes Note) {
		t.Helper()
		if len(s.Shots) != n || s.Shots[0] != (Shot{first, on}) || s.Off != off || math.Abs(over-wantOver) > 1e-9 || s.Given != on*float64(n) || s.Notes != notes {
			t.Errorf("%s: %d shots, the first %+v, %g s off, over by %g s, notes %b; want %d of %g s, %g off, over by %g, notes %b", name, len(s.Shots), s.Shots[0], s.Off, over, s.Notes, n, on, off, wantOver, notes)
		}
		for k := range s.Shots {
			if s.Shots[k] != (Shot{first + float64(k)*(on+off), on}) {
				t.Fatalf("%s: shot %d is %+v", name, k, s.Shots[k])
			}
		}
	}
	s, over := of(100, 288)
	check("one, and a rest as long as the window", s, over, 1, 100, 36000, 8*hour, 0, Short)
	tm.First -= 30
	s, over = of(100, 288)
	check("up to a whole minute", s, over, 1, 100, 36060, 8*hour-30, 0, Short)
	tm.First += 30
	// Ten hours less nothing in nine periods of 4000 s: 200 on, 63.3 minutes off.
	s, over = of(2000, 200)
	check("ten", s, over, 10, 200, 63*60, 8*hour, 0, 0)
	// 348 shots of 288 s with the least rest, of a minute, take 347 · 348 s.
	s, over = of(100_000, 288)
	check("more than fit", s, over, 348, 288, 60, 8*hour, 347*348-36000, 0)
	// As many as a day has room for of two minutes and a minute's rest.
	s, over = of(1_000_000, 288)
	check("far more", s, over, 480, 2084, 60, 8*hour, 479*2144-36000, Long)
	// A winter's day without a window has one moment, at 13 h.
	lit = dose.Of(12*hour, 14*hour)
	s, over = of(100, 288)
	check("no window", s, over, 1, 100, 0, 13*hour, 0, Short)
	// By daylight: 14 h in 11 periods, less 282 s, are 71 minutes off; twelve fit.
	lit, tm.Window = dose.Of(6*hour, 20*hour), plan.ByLight
	s, over = of(3375, 288)
	check("by daylight", s, over, 12, 282, 71*60, 6*hour, 0, 0)
}

// What plants take up between the two shots that are furthest apart, by hand, on
// a day of which half the sun shines before noon.
func TestGapsByHand(t *testing.T) {
	lit := dose.Of(6*hour, 18*hour)
	three := lit.Share(15 * hour)
	if three < 0.8 || three > 0.9 || math.Abs(lit.Share(12*hour)-0.5) > 1e-9 {
		t.Fatalf("by three %g of the sun has shone", three)
	}
	for _, c := range []struct {
		at   []float64
		want float64 // share of the day's use
	}{
		{[]float64{9}, 1},
		{[]float64{6, 12, 18}, 0.5},
		{[]float64{12, 15}, 1.5 - three}, // over the night
		{[]float64{9, 15}, 2*three - 1},
		{[]float64{9, 10, 18}, 1 - lit.Share(10*hour)},
		{[]float64{6, 15, 16}, three},
	} {
		s := Setting{Given: 1, Beds: []Fare{{Bed: &Bed{Mean: 1, Least: 1, Easy: 10}, Use: 2}}}
		for _, at := range c.at {
			s.Shots = append(s.Shots, Shot{At: at * hour})
		}
		want := 2 * c.want
		s.fare(lit)
		if got := s.Beds[0].Gap; math.Abs(got-want) > 1e-9 || s.Notes != 0 {
			t.Errorf("shots at %v: %g of a use of 2, want %g; notes %b", c.at, got, want, s.Notes)
		}
		// It is dry where that is more than the medium gives easily, and only then.
		for easy, dry := range map[float64]Note{want * 0.999: Few | Dry, want * 1.001: Few} {
			s.Notes, s.Beds[0].Bed.Easy = Few, easy
			if s.fare(lit); s.Notes != dry {
				t.Errorf("shots at %v, %g easy: notes %b, want %b", c.at, easy, s.Notes, dry)
			}
		}
	}
}
