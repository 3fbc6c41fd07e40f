package drain

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/dose"
	"evenrow/wasm/year/shots"
)

const minute, hour = 60.0, 3600.0 // s

// A timer with twelve start times and steps of a minute, on days from 6 to 20
// o'clock, and its card of two lines: each from 7:30 to 18:30, on a hot day to
// 19:00. The second needs twice as much as the first.
func carded() Timer {
	p := plan.Default().Timer
	p.Kind, p.Programmes, p.Step, p.Shot = plan.StartTimes, 12, 60, 0.04
	p.First, p.Last, p.LastHot = 1.5*hour, 1.5*hour, 1*hour
	p.DrainLow, p.Drain, p.DrainHot = 0.1, 0.2, 0.3
	line := func(from day.Day, times float64) shots.Line {
		// 3.6 L/h a plant, and so much medium that shots may be six minutes long.
		bed := shots.Bed{Zone: 1, Rows: []int{0}, Plants: 10, Root: 0.01, Easy: 0.003, Least: 1e-6, Mean: 1e-6, Use: [shots.Skies]float64{1e-3, 1e-3, 1e-3, 1e-3}}
		l := shots.Line{From: from, Days: 14, Lit: dose.Of(6*hour, 20*hour), Beds: []shots.Bed{bed}}
		for sky, long := range [...]float64{shots.Dull: 150 * times, shots.Typical: 300 * times, shots.Hot: 450 * times, shots.Record: 450 * times} {
			set := shots.Setting{Zone: 1, Run: 6*long - 10, Given: 6 * long, Shots: make([]shots.Shot, 6)} // up to the next step
			l.Sets[sky] = shots.Day{Sky: shots.Sky(sky), Zones: []shots.Setting{set}}
		}
		return l
	}
	july := day.Of(2027, 7, 1)
	return Timer{&p, &shots.Card{Lines: []shots.Line{line(july, 1), line(july+14, 2)}}, &plan.Default().Sky}
}

// What to set next, by hand: of what drained and what should, and of what the
// timer can do.
func TestNext(t *testing.T) {
	on := func(date, out, n, long float64, sky Sky) Entry {
		return Entry{Day: day.Day(date), Out: out, EC: nan, PH: nan, Feed: nan, Sky: sky, Shots: n, Long: long}
	}
	second := float64(day.Of(2031, 7, 20)) // whatever the year of the card
	none := func(t *Timer) { t.Card = nil }
	for _, tt := range []struct {
		what   string
		change func(t *Timer)
		e      Entry
		step   Step
		share  float64
		given  float64 // s, SetTo
		shots  int
		asCard bool
	}{
		{"as it should be", nil, on(0, 0.2, 6, 5*minute, Typical), Leave, 0, 0, 0, false},
		{"within what a jug shows", nil, on(0, 0.24, 6, 5*minute, Typical), Leave, 0, 0, 0, false},
		// 0.72 over 0.8 of 30 min are 27, in five shots of six minutes and less.
		{"a tenth less", nil, on(0, 0.28, 6, 5*minute, Typical), SetTo, -0.1, 27 * minute, 5, false},
		{"of the card, where nothing is noted", nil, on(0, 0.28, nan, nan, Typical), SetTo, -0.1, 27 * minute, 5, false},
		{"shots as on the card, and their length noted", nil, on(0, 0.28, nan, 10*minute, Typical), SetTo, -0.1, 54 * minute, 9, false},
		// 0.5 over 0.8 would be less by more than may be in a day: 25.5 min, and 26 can be set.
		{"much less", nil, on(0, 0.5, 6, 5*minute, Typical), SetTo, 26/30.0 - 1, 26 * minute, 5, false},
		// 15 % more than 30 min are 34.5.
		{"much more", nil, on(0, 0.05, 6, 5*minute, Typical), SetTo, 35/30.0 - 1, 35 * minute, 6, false},
		{"more, but less than the card", nil, on(0, 0.05, 4, 5*minute, Typical), SetTo, 0.5, 30 * minute, 5, true},
		{"more, in the fortnight of greater need", nil, on(second, 0.05, 6, 5*minute, Typical), SetTo, 1, 60 * minute, 10, true},
		// A hot day's 30 % and 45 min; 51.75.
		{"more on a hot day", nil, on(0, 0.1, 6, 7.5*minute, Hot), SetTo, 52/45.0 - 1, 52 * minute, 9, false},
		{"right on a dull day", nil, on(0, 0.1, 6, 2.5*minute, Dull), Leave, 0, 0, 0, false},
		{"right where all plants root in", func(t *Timer) { t.Card.Lines[0].Beds[0].Young = true }, on(0, 0.1, 6, 5*minute, Typical), Leave, 0, 0, 0, false},
		{"too little where one bed of two does not", func(t *Timer) {
			b := t.Card.Lines[0].Beds[0]
			b.Young = true
			t.Card.Lines[0].Beds = append(t.Card.Lines[0].Beds, b)
		}, on(0, 0.1, 6, 5*minute, Typical), SetTo, 34/30.0 - 1, 34 * minute, 6, false}, // 0.9 over 0.8 of 30 min are 33.75
		{"a tenth less, without a card", none, on(0, 0.28, 6, 5*minute, Typical), ByShare, -0.1, 0, 0, false},
		{"much more, without a card", none, on(0, 0.05, nan, nan, Typical), ByShare, 0.15, 0, 0, false},
		{"right, without a card", none, on(0, 0.2, nan, nan, Typical), Leave, 0, 0, 0, false},
		{"on a day that the card does not have", nil, on(float64(day.Of(2027, 3, 1)), 0.28, 6, 5*minute, Typical), ByShare, -0.1, 0, 0, false},
		{"more shots than a day holds, of the card's length", nil, on(0, 0.28, 999, nan, Typical), ByShare, -0.1, 0, 0, false},
		// The day has room for the 660 min from the first shot to the last, and six for that one.
		{"more than fits", nil, on(0, 0.05, 12, 58*minute, Typical), NoRoom, 0, 0, 0, false},
		{"less, and still more than fits", nil, on(0, 0.255, 12, 60*minute, Typical), SetTo, 666/720.0 - 1, 666 * minute, 12, false},
		// 671 min; a hot day has room for 696, and 0.78 over 0.7 of 600 are 668.6.
		{"a little more than fits", nil, on(0, 0.12, 12, 610*minute/12, Typical), NoRoom, 0, 0, 0, false},
		{"as much on a hot day", nil, on(0, 0.22, 12, 50*minute, Hot), SetTo, 669/600.0 - 1, 669 * minute, 12, false},
		{"in steps of half an hour", func(t *Timer) { t.Step = 1800 }, on(0, 0.28, 1, 30*minute, Typical), TooFine, 0, 0, 0, false},
		{"of plants that take up nothing", func(t *Timer) { t.Card.Lines[0].Beds[0].Use = [shots.Skies]float64{} }, on(0, 0.28, 6, 5*minute, Typical), TooFine, 0, 0, 0, false},
	} {
		timer := carded()
		if tt.change != nil {
			tt.change(&timer)
		}
		a := Advise([]Entry{tt.e}, timer.Noted)
		n := timer.Next(&a)
		// Quotients of doubles, some by way of 1 + x: 1e-12 is far less than is shown.
		if n.Step != tt.step || math.Abs(n.Share-tt.share) > 1e-12 || math.Abs(n.Set.Given-tt.given) > 1e-9 || len(n.Set.Shots) != tt.shots || n.AsCard != tt.asCard {
			t.Errorf("%s: step %d, %g more, %g s in %d shots, as the card %v; want %d, %g, %g in %d, %v", tt.what,
				n.Step, n.Share, n.Set.Given, len(n.Set.Shots), n.AsCard, tt.step, tt.share, tt.given, tt.shots, tt.asCard)
		}
	}
}

// Days of which no weather is noted count as typical, and may have been hot: 30 %
// should drain then, and 5 % more are not seen.
func TestRightIfHot(t *testing.T) {
	timer := carded()
	for _, tt := range []struct {
		sky  Sky
		out  float64
		want bool
	}{
		{Untold, 0.2, false}, {Untold, 0.24, false}, {Untold, 0.26, true}, {Untold, 0.349, true}, {Untold, 0.36, false}, {Untold, 0.1, false},
		{Typical, 0.3, false}, {Hot, 0.4, false},
	} {
		a := Advise([]Entry{{Out: tt.out, EC: nan, PH: nan, Feed: nan, Sky: tt.sky, Shots: nan, Long: nan}}, timer.Noted)
		if got := timer.RightIfHot(&a); got != tt.want {
			t.Errorf("%g on a day of weather %d: %v", tt.out, tt.sky, got)
		}
	}
}

// Whatever was noted, and whatever the timer's step: what is set is what the
// advice comes to, rounded up to the next step, and never less than the card has
// where too little drained, nor more than before where too much did.
func TestNextIsWhatTheAdviceComesTo(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 12))
	set := 0
	for range 3000 {
		timer := carded()
		timer.Step = []int{1, 10, 60, 90, 300}[r.IntN(5)]
		timer.Programmes = 1 + r.IntN(24)
		e := Entry{Out: 0.6 * r.Float64(), EC: nan, PH: nan, Feed: nan, Sky: Sky(r.IntN(4)), Shots: float64(1 + r.IntN(20)), Long: 60 + 600*r.Float64()}
		a := Advise([]Entry{e}, timer.Noted)
		n := timer.Next(&a)
		if n.Step != SetTo {
			if n.Step == Leave && math.Abs(a.Change) > 0.005 {
				t.Fatalf("left, and the advice is %+v", a)
			}
			continue
		}
		set++
		was, step := e.Shots*e.Long, float64(timer.Step)
		target := was * (1 + a.Change)
		card := [...]float64{Untold: 1800, Dull: 900, Typical: 1800, Hot: 2700}[e.Sky]
		if a.Change > 0 && target <= card {
			target = card - 10 // what the plants need then; the card has been rounded up
		}
		// A step is not added for the last bits of a quotient.
		if want := math.Ceil(target/step-1e-9) * step; math.Abs(n.Set.Given-want) > 1e-6 {
			t.Fatalf("%+v after %g s in steps of %g: %g s, want %g", a, was, step, n.Set.Given, want)
		}
		if math.Abs(n.Set.Given-was*(1+n.Share)) > 1e-6 || len(n.Set.Shots) > timer.Programmes {
			t.Fatalf("%g s after %g are told as %g more, in %d shots", n.Set.Given, was, n.Share, len(n.Set.Shots))
		}
		if a.Change > 0 && n.Set.Given < card-10 || a.Change < 0 && n.Set.Given >= was {
			t.Fatalf("%g s after %g for %+v", n.Set.Given, was, a)
		}
	}
	if set < 1500 {
		t.Errorf("only %d of 3000 were set", set)
	}
}

// The rest of the card, by hand: what was given should have been so much more or
// less. The card needs 29 min 50 s on a typical day of the first line, and gives
// 30 min.
func TestRewrite(t *testing.T) {
	date := day.Of(2031, 7, 6) // whatever the year of the card
	on := func(out, n, long, ec float64) []Entry {
		return []Entry{{Day: date, Out: out, EC: ec, PH: nan, Feed: 2, Sky: Typical, Shots: n, Long: long}}
	}
	const needs, gives = 6*300 - 10.0, 1800.0
	for _, tt := range []struct {
		what  string
		log   []Entry
		times float64 // 0 where it stays
	}{
		{"as it should be, as the card has it", on(0.2, 6, 5*minute, nan), 0},
		{"of the card, where nothing is noted", on(0.2, nan, nan, nan), 0},
		{"as it should be with less", on(0.2, 5, 5*minute, nan), 1500 / gives},
		{"too much drained: 0.72 over 0.8", on(0.28, 6, 5*minute, nan), 0.9 * gives / needs},
		{"too little, from the card", on(0.1, 6, 5*minute, nan), 0.9 / 0.8 * gives / needs},
		{"too little, from less than the card", on(0.1, 3, 5*minute, nan), 0},
		{"salt washes out for some days, and not for good", on(0.2, 6, 5*minute, 4), 0},
		{"no more than 15 % at once", on(0.5, 6, 5*minute, nan), 0.85 * gives / needs},
	} {
		timer := carded()
		a := Advise(tt.log, timer.Noted)
		r, ok := timer.Rewrite(&a)
		if ok != (tt.times != 0) || ok && (math.Abs(r.Times-tt.times) > 1e-9 || r.From != day.Of(2027, 7, 7)) {
			t.Errorf("%s: %g times from %s, %t; want %g", tt.what, r.Times, r.From.ISO(), ok, tt.times)
		}
		if !ok {
			continue
		}
		if n := len(r.Card.Lines); n != 2 || r.Card.Lines[0].Days != 8 || r.Card.Lines[1].From != day.Of(2027, 7, 15) {
			t.Errorf("%s: %+v", tt.what, r.Card.Lines)
		}
		use := r.Card.Lines[1].Beds[0].Use[shots.Typical]
		if set := r.Card.Lines[1].Sets[shots.Typical].Zones[0]; math.Abs(use-tt.times*1e-3) > 1e-15 || set.Given < use/0.8/1e-6-1e-6 {
			t.Errorf("%s: %g m³ taken up, given %g s", tt.what, use, set.Given)
		}
	}
	timer := carded()
	log := on(0.28, 6, 5*minute, nan)
	log[0].Day = 0
	a := Advise(log, timer.Noted)
	if r, ok := timer.Rewrite(&a); ok {
		t.Errorf("without a date: %+v", r)
	}
	timer.Card = nil
	log[0].Day = date
	a = Advise(log, timer.Noted)
	if r, ok := timer.Rewrite(&a); ok {
		t.Errorf("without a card: %+v", r)
	}
}
