package shots

import (
	"math"
	"slices"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/dose"
	"evenrow/wasm/year/season"
)

// What is gravest of a day is said, and nothing of a zone that runs less than
// another.
func TestWhatATimerCannotDoOnADay(t *testing.T) {
	for _, c := range []struct {
		name  string
		timer int
		over  float64
		notes Note
		want  LimitKind
		none  bool
	}{
		{"all is well", plan.StartTimes, 0, 0, 0, true},
		{"it only gives short shots", plan.StartTimes, 0, Short, 0, true},
		{"a late round before all else", plan.StartTimes, 60, Dry | Few | Long, LateRound, false},
		{"no room between first and last", plan.OnAndOff, 60, Dry | Few | Long, NoRoom, false},
		{"gaps before long shots", plan.StartTimes, 0, Dry | Few | Long, Gaps, false},
		{"few start times", plan.StartTimes, 0, Few | Long, FewStarts, false},
		{"coarse steps", plan.StartTimes, 0, Long, LongByStep, false},
		{"a short day", plan.OnAndOff, 0, Long, LongByDay, false},
		{"a dial's shots are long in any case", plan.Dial, 0, Long, 0, true},
	} {
		tm := timer()
		tm.Kind = c.timer
		bed := func(gap, easy float64) Fare { return Fare{Bed: &Bed{Easy: easy}, Gap: gap} }
		d := Day{Sky: Hot, Over: c.over, Round: 7, Zones: []Setting{
			{Run: 1, Notes: Dry | Few | Long | Short, Beds: []Fare{bed(9, 1)}},
			{Run: 2, Notes: c.notes, Beds: []Fare{bed(3, 4), bed(2, 1), bed(5, 5)}},
		}}
		got, ok := d.limit(tm)
		if ok == c.none || ok && (got.Kind != c.want || got.Sky != Hot || got.Set != &d.Zones[1] || got.Over != c.over || got.Round != 7) {
			t.Errorf("%s: %+v, %t", c.name, got, ok)
		}
		// 2 of 1 is more than 3 of 4 and 5 of 5.
		if c.want == Gaps && !c.none && got.Dryest != &d.Zones[1].Beds[1] {
			t.Errorf("%s: %+v lacks water first", c.name, got.Dryest)
		}
	}
}

// The list of a whole card, in its order: valves, pins, the day, young plants,
// light.
func TestWhatATimerCannotDo(t *testing.T) {
	card := func(hot, typical, young Note) *Card {
		set := func(n Note) Day {
			return Day{Zones: []Setting{{Run: 1, Notes: n, Beds: []Fare{{Bed: &Bed{Mean: 2 * lph, Root: 10 * litre, Easy: litre}}}}}}
		}
		c := &Card{Peak: 1, Lines: make([]Line, 2)}
		c.Lines[0].Sets[Typical] = set(young)
		c.Lines[1].Sets[Typical], c.Lines[1].Sets[Hot] = set(typical), set(hot)
		c.Lines[1].Sets[Typical].Sky, c.Lines[1].Sets[Hot].Sky = Typical, Hot
		return c
	}
	for _, c := range []struct {
		name         string
		change       func(tm *plan.Timer)
		zones        int
		hot, typical Note
		young        Note
		want         []LimitKind
		sky          Sky
	}{
		{"nothing", func(tm *plan.Timer) { tm.Channels = 3 }, 3, 0, 0, 0, nil, 0},
		{"one valve too few", func(tm *plan.Timer) { tm.Channels = 2 }, 3, 0, 0, 0, []LimitKind{FewValves}, 0},
		{"zones of a timer that goes on and off", func(tm *plan.Timer) { tm.Kind, tm.Window, tm.Channels = plan.OnAndOff, plan.ByLight, 9 }, 2, Long, 0, 0, []LimitKind{OneValve, LongByDay, LightHours}, Hot},
		{"a dial", func(tm *plan.Timer) { tm.Kind = plan.Dial }, 1, Long, Long, Short, []LimitKind{Pins, ShortShots}, 0},
		{"hours of light of a timer with start times", func(tm *plan.Timer) { tm.Window = plan.ByLight }, 1, 0, 0, 0, nil, 0},
		{"hours of a clock of one that goes on and off", func(tm *plan.Timer) { tm.Kind = plan.OnAndOff }, 1, 0, 0, 0, nil, 0},
		{"a hot day before a typical one", func(*plan.Timer) {}, 1, Few, Dry, 0, []LimitKind{FewStarts}, Hot},
		{"a typical day", func(*plan.Timer) {}, 1, 0, Dry, Short, []LimitKind{Gaps, ShortShots}, Typical},
	} {
		tm := timer()
		tm.Window = plan.ByClock
		c.change(tm)
		var got []LimitKind
		for _, l := range card(c.hot, c.typical, c.young).limits(tm, c.zones) {
			got = append(got, l.Kind)
			if l.Set != nil && l.Sky != c.sky {
				t.Errorf("%s: of day %d, want %d", c.name, l.Sky, c.sky)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// By hand: 2 L/h is half a litre in a quarter of an hour, 9.4 % of a third of a
// slab of 16 L, and 5 % of 10 L; a medium takes in 6 %.
func TestWhatAPinBrings(t *testing.T) {
	for root, taken := range map[float64]bool{16.0 / 3 * litre: false, 10 * litre: true} {
		b := &Bed{Mean: 2 * lph, Root: root}
		got := pin(&Setting{Lead: 1, Beds: []Fare{{}, {Bed: b}}})
		if got.Kind != Pins || math.Abs(got.Dose-0.5*litre) > 1e-12 || math.Abs(got.Share-0.5*litre/root) > 1e-9 || got.Taken != taken {
			t.Errorf("%g L of medium: %+v", root/litre, got)
		}
	}
}

// A fifth is to drain. Of beds that share a valve the one that drains most more
// than a quarter is named, where it stands beside the one that decides.
func TestWhoSharesAValve(t *testing.T) {
	p := plan.Default()
	tomato, pepper, basil, later := &Bed{Rows: []int{0}}, &Bed{Rows: []int{1, 2}}, &Bed{Rows: []int{3}}, &Bed{Rows: []int{0}}
	line := func(beds ...Fare) Line {
		l := Line{}
		l.Sets[Typical].Zones = []Setting{{Beds: beds}}
		return l
	}
	c := &Card{Lines: []Line{
		line(Fare{Bed: tomato, Drain: 0.2}, Fare{Bed: pepper, Drain: 0.25}),
		line(Fare{Bed: tomato, Drain: 0.2}, Fare{Bed: pepper, Drain: 0.3}, Fare{Bed: basil, Drain: 0.4}),
		line(Fare{Bed: tomato, Drain: 0.2}, Fare{Bed: later, Drain: 0.9}), // after the tomato, in its row
	}}
	s := c.sharing(p)
	if s == nil || s.Line != &c.Lines[1] || s.Lead != tomato || s.Other != basil || s.Drain != 0.4 || s.Valves != 3 || s.Cure != OwnZone {
		t.Errorf("%+v", s)
	}
	if p.Header.Layout = plan.OneLine; c.sharing(p).Cure != NeedsHeader {
		t.Error("rows of one line are to have a valve each")
	}
	p.Header.Layout = plan.HeaderAndRows
	many := line(Fare{Bed: tomato, Drain: 0.2})
	for r := range plan.MaxZones {
		many.Sets[Typical].Zones[0].Beds = append(many.Sets[Typical].Zones[0].Beds, Fare{Bed: &Bed{Rows: []int{r + 1}}, Drain: 0.5})
	}
	if s := (&Card{Lines: []Line{many}}).sharing(p); s.Valves != plan.MaxZones+1 || s.Cure != GroupAlike {
		t.Errorf("%d valves, cure %d", s.Valves, s.Cure)
	}
	c.Lines = append(c.Lines[:1], c.Lines[2]) // a quarter is not more than a quarter
	if s := c.sharing(p); s != nil {
		t.Errorf("%+v", s)
	}
}

// Row 4 is planted forty days after the others, so it is watered with nothing in
// it from the card's first day to then; row 1, whose plants go thirty days before
// the others', from then on.
func TestEmptyRows(t *testing.T) {
	p := plan.Default()
	y := year(p)
	var late, gone day.Day
	for i := range y.Season.Plantings {
		g := &y.Season.Plantings[i]
		if g.In(3) {
			for k := range g.Dates {
				g.Dates[k] += 40
			}
			late = g.Dates[season.Slab]
		}
		if g.In(0) {
			g.Dates[season.End] -= 30
			gone = g.Dates[season.End]
		}
	}
	c := y.Card()
	var rows []int
	for _, e := range c.Empty {
		rows = append(rows, e.Rows...)
		switch {
		case slices.Equal(e.Rows, []int{3}):
			if e.From != c.Lines[0].From || e.To != late {
				t.Errorf("row 4 is empty from %s to %s, want %s to %s", e.From.ISO(), e.To.ISO(), c.Lines[0].From.ISO(), late.ISO())
			}
		case slices.Contains(e.Rows, 0):
			if e.From < gone || e.From > gone+14 || e.To != 0 { // a line that holds the last day of its plants still waters them
				t.Errorf("row 1 is empty from %s to %d, cleared on %s", e.From.ISO(), e.To, gone.ISO())
			}
		}
	}
	if !slices.Contains(rows, 0) || !slices.Contains(rows, 3) {
		t.Errorf("rows %v are empty", rows)
	}
}

// Plants that lie along a row share a metre of medium, others have a piece each.
func TestOtherMedia(t *testing.T) {
	p := plan.Default()
	y := year(p)
	c := y.Card()
	perMetre := max(1, int(p.Trait(y.Season.Plantings[c.First.Planting].Crop, catalogue.PerSlab)))
	if len(c.Others) != len(catalogue.Media) || perMetre < 2 {
		t.Fatalf("%d media, %d plants a metre", len(c.Others), perMetre)
	}
	for i, o := range c.Others {
		n := 1
		if i <= plan.GrowBag {
			n = perMetre
		}
		root := catalogue.Media[i].Volume / float64(n)
		easy := root * catalogue.Media[i].Easy
		if o.Medium != i || o.PerPiece != n || math.Abs(o.Bed.Root-root) > 1e-12 || math.Abs(o.Bed.Easy-easy) > 1e-12 || o.Bed.Use != c.First.Use {
			t.Errorf("medium %d: %+v", i, o)
		}
	}
}

// By hand: with 12 h of light and 6 L and 3 L a day, ten and twenty plants take
// up 120 L a day, and about noon an hour's share of it.
func TestHourOfAllPlants(t *testing.T) {
	l := Line{Lit: dose.Of(6*hour, 18*hour), Beds: []Bed{{Plants: 10, Use: [Skies]float64{Hot: 6 * litre}}, {Plants: 20, Use: [Skies]float64{Hot: 3 * litre}}}}
	if got, want := l.Hour(Hot), 120*litre*l.Lit.Peak()*hour; math.Abs(got-want) > 1e-12 || l.Hour(Dull) != 0 {
		t.Errorf("%g L, want %g", got/litre, want/litre)
	}
}

// Young plants are listed once each, those with the least water first.
func TestYoungPlants(t *testing.T) {
	bed := func(planting int, easy float64, young bool) Bed {
		return Bed{Zone: 1, Planting: planting, Easy: easy * litre, Young: young, Use: [Skies]float64{Hot: litre}}
	}
	lit := dose.Of(6*hour, 20*hour)
	c := &Card{Lines: []Line{
		{Lit: lit, Beds: []Bed{bed(0, 0.5, true), bed(1, 0.1, false)}},
		{Lit: lit, Beds: []Bed{bed(0, 0.2, true), bed(2, 0.3, true)}}, // the first has been seen
	}}
	list := c.young()
	if others := (&Card{Lines: []Line{{Lit: lit, Beds: []Bed{bed(2, 0.3, true), bed(0, 0.5, true)}}}}).young(); len(others) != 2 || others[0].Bed.Planting != 2 {
		t.Errorf("those that come first have least: %+v", others)
	}
	if len(list) != 2 || list[0].Bed != &c.Lines[1].Beds[1] || list[1].Bed != &c.Lines[0].Beds[0] || list[0].Line != &c.Lines[1] {
		t.Errorf("%+v", list)
	}
}

func TestLengthsOfShots(t *testing.T) {
	s := Setting{Shots: []Shot{{For: 240}, {For: 300}, {For: 300}, {For: 240}, {For: 300}}}
	if many, few, long, short := s.Lengths(); many != 3 || few != 2 || long != 300 || short != 240 {
		t.Error(many, few, long, short)
	}
	if many, few, long, _ := (&Setting{Shots: s.Shots[1:3]}).Lengths(); many != 2 || few != 0 || long != 300 {
		t.Error(many, few, long)
	}
}
