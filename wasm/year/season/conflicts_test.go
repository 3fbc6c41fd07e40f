package season_test

import (
	"slices"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/year/season"
)

// All that does not fit, in its order, by hand.
func TestAllConflictsOfAPlan(t *testing.T) {
	on := func(m, d int) day.Day { return day.Of(2027, m, d) }
	for _, c := range []struct {
		name string
		plan func() *plan.Plan
		want []season.Conflict
	}{
		{"nothing", func() *plan.Plan { return rows(on(3, 1), lettuce) }, nil},
		// The default's peppers, tomatoes and cucumbers end with the frost of 8
		// October: cleared on 23 September, 104 and 41 days early. Tomatoes
		// would stand 60 days and 16 weeks from 15 May, to 3 November; cucumbers 35
		// and 84, to 11 September.
		{"the default", plan.Default, []season.Conflict{
			{Kind: season.Ended, Planting: 0, Count: 104, Until: on(10, 8)},
			{Kind: season.Ended, Planting: 1, Count: 41, Until: on(10, 8)},
		}},
		// In the open, the same, planted out three days after the last frost.
		{"in the open", func() *plan.Plan {
			p := plan.Default()
			p.Season.Shelter = plan.OpenAir
			return p
		}, []season.Conflict{
			{Kind: season.EarlyOpen, Planting: 0, Count: 3}, {Kind: season.EarlyOpen, Planting: 1, Count: 3}, {Kind: season.EarlyOpen, Planting: 2, Count: 3},
			{Kind: season.Ended, Planting: 0, Count: 104, Until: on(10, 8)},
			{Kind: season.Ended, Planting: 1, Count: 41, Until: on(10, 8)},
		}},
		// Three in the one row at once: each is told of once, with the first that
		// stands there.
		{"three in a row", func() *plan.Plan {
			p := rows(on(3, 1), lettuce)
			p.Plantings = []plan.Planting{out(lettuce, 1, 1, on(3, 1)), out(kale, 1, 1, on(3, 10)), out(lettuce, 1, 1, on(3, 20))}
			return p
		}, []season.Conflict{
			{Kind: season.TwoInRow, Planting: 1, Other: 0, Until: on(4, 5)},
			{Kind: season.TwoInRow, Planting: 2, Other: 0, Until: on(4, 5)},
		}},
		{"on the same day", func() *plan.Plan {
			p := rows(on(3, 1), lettuce, lettuce)
			p.Plantings = []plan.Planting{out(kale, 2, 2, on(3, 1)), out(lettuce, 1, 2, on(3, 1))}
			return p
		}, []season.Conflict{{Kind: season.TwoInRow, Planting: 1, Other: 0, Row: 1, Until: day.Of(2027, 3, 1) + 38 + 84}}},
		// Lettuce stands for 28 days and a week: the next may be planted as the one before is cleared.
		{"one after the other", func() *plan.Plan {
			p := rows(on(3, 1), lettuce)
			p.Plantings = []plan.Planting{out(lettuce, 1, 1, on(4, 5)), out(lettuce, 1, 1, on(3, 1))}
			return p
		}, nil},
		// What stands in no row has no other trouble, and the system need not be
		// ready for it; the first that does stand in one says that it is not.
		{"a late start", func() *plan.Plan {
			p := rows(on(3, 1), lettuce, lettuce)
			p.Season.Start, p.Season.Build = int(on(3, 1)), 5
			p.Plantings = []plan.Planting{out(lettuce, 1, 1, on(3, 12)), out(lettuce, 2, 2, on(3, 12)), out(pepper, 9, 9, on(3, 1))}
			p.Season.Seedbed = 40 // where nobody tested peppers
			return p
		}, []season.Conflict{
			{Kind: season.NoRow, Planting: 2},
			{Kind: season.DeadSeed, Planting: 0}, {Kind: season.DeadSeed, Planting: 1},
			{Kind: season.NotReady, Planting: 0, Until: on(3, 13)},
		}},
		{"one place", func() *plan.Plan {
			p := rows(on(3, 1), tomato)
			p.Rows[0].Plants, p.Season.Places = 2, 1
			return p
		}, []season.Conflict{{Kind: season.NoPlace, Planting: -1, Count: 2, Until: on(2, 10)}}},
	} {
		p := c.plan()
		if got := season.Of(p).Conflicts; !slices.Equal(got, c.want) {
			t.Errorf("%s:\n got %+v\nwant %+v", c.name, got, c.want)
		}
	}
}

// Notes are not grave, and all before them are.
func TestGraveAreThoseBeforeNotes(t *testing.T) {
	s := season.Season{Conflicts: []season.Conflict{{Kind: season.TwoInRow}, {Kind: season.Freezing}, {Kind: season.EarlyOpen}, {Kind: season.Ended}}}
	if got := s.Grave(); got != 2 {
		t.Errorf("%d are grave, want 2", got)
	}
	if s.Conflicts = s.Conflicts[2:]; s.Grave() != 0 {
		t.Errorf("of two notes %d are grave", s.Grave())
	}
}

// What frost does to what is planted out on or about its days: the last frost is
// on 12 May, the first on 8 October, and the rows are to be clear on 23 September.
func TestFrostDayByDay(t *testing.T) {
	for _, c := range []struct {
		crop    int
		on, end string
		open    bool
		want    []season.Conflict
	}{
		{basil, "2027-05-12", "2027-05-12", true, []season.Conflict{{Kind: season.FrostOut, Until: day.Of(2027, 5, 12)}}},
		{basil, "2027-05-13", "2027-08-21", true, []season.Conflict{{Kind: season.EarlyOpen, Count: 1}}}, // 30 days and 10 weeks
		{basil, "2027-05-13", "2027-08-21", false, nil},
		{basil, "2027-05-18", "2027-08-26", true, []season.Conflict{{Kind: season.EarlyOpen, Count: 6}}},
		{basil, "2027-05-19", "2027-08-27", true, nil},
		{basil, "2027-06-15", "2027-09-23", true, nil}, // ends as it has to
		{basil, "2027-06-16", "2027-09-23", true, []season.Conflict{{Kind: season.Ended, Count: 1, Until: day.Of(2027, 10, 8)}}},
		{pepper, "2027-05-18", "2027-09-23", true, []season.Conflict{{Kind: season.EarlyOpen, Count: 6}, {Kind: season.Ended, Count: 107, Until: day.Of(2027, 10, 8)}}},
		{pepper, "2027-05-18", "2027-09-23", false, []season.Conflict{{Kind: season.Ended, Count: 107, Until: day.Of(2027, 10, 8)}}},
		{pepper, "2027-05-19", "2027-09-23", true, []season.Conflict{{Kind: season.Ended, Count: 108, Until: day.Of(2027, 10, 8)}}},
		{basil, "2027-09-22", "2027-09-23", true, []season.Conflict{{Kind: season.FrostKill, Until: day.Of(2027, 10, 8)}}},
		{basil, "2027-09-23", "2027-10-08", true, []season.Conflict{{Kind: season.FrostKill, Until: day.Of(2027, 10, 8)}}},
		{basil, "2027-10-07", "2027-10-08", true, []season.Conflict{{Kind: season.FrostKill, Until: day.Of(2027, 10, 8)}}},
		{basil, "2027-10-08", "2027-10-08", true, []season.Conflict{{Kind: season.FrostOut, Until: day.Of(2028, 5, 12)}}},
	} {
		p := plan.Default()
		plan.SectionNamed("rows").Resize(p, 1)
		p.Rows[0].Crop = c.crop
		on, _ := day.Parse(c.on)
		p.Season.Mode, p.Season.Date, p.Season.Start, p.Season.Places = plan.FromPlanting, int(on), int(on)-300, 0
		if c.open {
			p.Season.Shelter = plan.OpenAir
		}
		s := season.Of(p)
		var got []season.Conflict
		for _, f := range s.Conflicts {
			if f.Planting == 0 {
				got = append(got, f)
			}
		}
		if end := s.Plantings[0].Dates[season.End].ISO(); end != c.end || !slices.Equal(got, c.want) {
			t.Errorf("crop %d, planted out on %s, in the open %t: to %s, %+v; want to %s, %+v", c.crop, c.on, c.open, end, got, c.end, c.want)
		}
	}
}

// Days of frost on which hardy plants need the system, from the first planting
// out to the day after the last clearing, by hand. Kale stands for 38 days and
// 12 weeks.
func TestDaysOfFrost(t *testing.T) {
	for _, c := range []struct {
		name      string
		plantings []plan.Planting
		want      []season.Conflict
	}{
		{"on the day of the last frost", []plan.Planting{out(kale, 1, 1, day.Of(2027, 5, 12))}, []season.Conflict{{Count: 1, Until: day.Of(2027, 5, 12)}}},
		{"on the day after it", []plan.Planting{out(kale, 1, 1, day.Of(2027, 5, 13))}, nil}, // to 12 September
		{"two days before it", []plan.Planting{out(kale, 1, 1, day.Of(2027, 5, 10))}, []season.Conflict{{Count: 3, Until: day.Of(2027, 5, 10)}}},
		// From 1 September to 1 January, and the system a day longer: 24 + 30 + 31 + 1
		// days from 8 October on. The year after, the same; and the system stays full
		// between: 24 + 30 + 31 + 31 + 29 + 31 + 30 + 12 days to 12 May 2028.
		{"two years", []plan.Planting{out(kale, 1, 1, day.Of(2028, 9, 1)), out(kale, 1, 1, day.Of(2027, 9, 1))}, []season.Conflict{{Count: 218 + 86, Until: day.Of(2027, 10, 8)}}},
		// Lettuce stands for five weeks. Cleared on 7 October, the system is stored
		// on the first day of frost; on the 6th, before.
		{"stored on the day of frost", []plan.Planting{out(lettuce, 1, 1, day.Of(2027, 9, 2))}, []season.Conflict{{Count: 1, Until: day.Of(2027, 10, 8), Kind: season.LateStore}}},
		{"stored in it", []plan.Planting{out(lettuce, 1, 1, day.Of(2027, 9, 3))}, []season.Conflict{{Count: 1, Until: day.Of(2027, 10, 8)}}},
		{"two weeks before", []plan.Planting{out(lettuce, 1, 1, day.Of(2027, 8, 19))}, nil}, // cleared on 23 September
		{"a day less", []plan.Planting{out(lettuce, 1, 1, day.Of(2027, 8, 20))}, []season.Conflict{{Count: 14, Until: day.Of(2027, 10, 8), Kind: season.LateStore}}},
	} {
		p := plan.Default()
		plan.SectionNamed("rows").Resize(p, 1)
		p.Rows[0].Crop, p.Season.Start = kale, int(day.Of(2026, 1, 1))
		if c.plantings[0].Crop != kale {
			p.Rows[0].Crop = lettuce
		}
		p.Plantings = c.plantings
		var got []season.Conflict
		for _, f := range season.Of(p).Conflicts {
			if f.Kind == season.Freezing || f.Kind == season.LateStore {
				got = append(got, f)
			}
		}
		for i := range c.want {
			c.want[i].Planting = -1
			if c.want[i].Kind == 0 {
				c.want[i].Kind = season.Freezing
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %+v, want %+v", c.name, got, c.want)
		}
	}
}

// Blocks stand from the day they are filled to the day before planting out, 19
// days for tomatoes. The most at once counts on the first day that it is so.
func TestPlacesForBlocks(t *testing.T) {
	on := func(m, d int) day.Day { return day.Of(2027, m, d) }
	for _, c := range []struct {
		name      string
		plantings []plan.Planting
		most      int
		first     day.Day
	}{
		{"one after the other", []plan.Planting{out(tomato, 1, 1, on(5, 1)), out(tomato, 2, 2, on(3, 1))}, 30, on(2, 10)},
		{"the same in the other order", []plan.Planting{out(tomato, 1, 1, on(3, 1)), out(tomato, 2, 2, on(5, 1))}, 30, on(2, 10)},
		{"as the others go out", []plan.Planting{out(tomato, 1, 1, on(3, 1)), out(tomato, 2, 2, on(3, 20))}, 30, on(2, 10)},
		{"a day before", []plan.Planting{out(tomato, 1, 1, on(3, 1)), out(tomato, 2, 2, on(3, 19))}, 60, on(2, 28)},
		{"more later", []plan.Planting{out(tomato, 1, 1, on(3, 1)), out(tomato, 2, 3, on(6, 1))}, 60, on(5, 13)},
		{"fewer later", []plan.Planting{out(tomato, 2, 3, on(3, 1)), out(tomato, 1, 1, on(6, 1))}, 60, on(2, 10)},
		{"no block", []plan.Planting{out(lettuce, 1, 1, on(3, 1))}, 0, 0},
	} {
		p := rows(on(3, 1), tomato, tomato, tomato)
		if c.plantings[0].Crop == lettuce {
			p = rows(on(3, 1), lettuce)
		}
		p.Plantings = c.plantings
		if s := season.Of(p); s.MostPlace != c.most || s.MostOn != c.first {
			t.Errorf("%s: %d from %s on, want %d from %s on", c.name, s.MostPlace, s.MostOn.ISO(), c.most, c.first.ISO())
		}
	}
}

// Where the place has no frost there are no dates of it.
func TestNoFrosts(t *testing.T) {
	p := rows(day.Of(2027, 3, 1), lettuce)
	if last, first, ok := season.Frosts(p, day.Of(2027, 3, 1)); last != 0 || first != 0 || ok {
		t.Errorf("%d, %d, %t", last, first, ok)
	}
}

// What does not fit stands by kind, then by planting.
func TestConflictsAreInOrder(t *testing.T) {
	for n, p := range plans(t) {
		c := season.Of(p).Conflicts
		for i := range max(0, len(c)-1) {
			if a, b := c[i], c[i+1]; a.Kind > b.Kind || a.Kind == b.Kind && a.Planting >= b.Planting {
				t.Fatalf("plan %d: %+v stands before %+v", n, a, b)
			}
		}
	}
}
