package season_test

import (
	"slices"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/year/season"
)

// Positions in catalogue.Crops.
const (
	pepper, tomato, strawberry, bean, basil, lettuce, kale = 0, 1, 7, 8, 10, 11, 12
)

// rows is a plan without frost of one row for each crop, planted out on a day.
func rows(out day.Day, crops ...int) *plan.Plan {
	p := plan.Default()
	plan.SectionNamed("rows").Resize(p, len(crops))
	for i, crop := range crops {
		p.Rows[i].Crop, p.Rows[i].Plants = crop, 30
	}
	s := &p.Season
	s.Frost, s.Mode, s.Date, s.Seedbed = 0, plan.FromPlanting, int(out), 25
	s.Build, s.Flush, s.Treat, s.Places = 5, 30, 50, 0
	s.Start = int(out) - 200
	return p
}

// out lists a planting of a crop in rows from and to, planted out on a day.
func out(crop, from, to int, on day.Day) plan.Planting {
	return plan.Planting{Crop: crop, From: from, To: to, Mode: plan.FromPlanting + 1, Date: int(on), Times: 1, Every: 1}
}

// Every task of one row of tomatoes, by hand. They are 14 days in the plug and
// 19 in the block, are tied up a week after planting out, picked after 60 days
// and for 16 weeks; so they stand for 172 days from 1 March on. The system is
// built in five days before the seventh day before them.
func TestTasksByHand(t *testing.T) {
	p := rows(day.Of(2027, 3, 1), tomato)
	s := season.Of(p)
	on := func(m, d int) day.Day { return day.Of(2027, m, d) }
	plants := func(k season.TaskKind, at day.Day) season.Task {
		return season.Task{Kind: k, Day: at, Days: 1, Times: 1, Plants: 30}
	}
	system := func(k season.TaskKind, at day.Day, number, every, times int) season.Task {
		return season.Task{Kind: k, Day: at, Days: 1, Every: every, Times: times, Planting: -1, Number: number}
	}
	building := system(season.Building, on(2, 17), 0, 0, 1)
	building.Days = 5
	tying := plants(season.Tying, on(3, 8))
	tying.Every, tying.Times = 7, 24 // 8 March and 23 weeks make 16 August; a week on they are gone
	want := []season.Task{
		plants(season.Sowing, on(1, 27)),
		plants(season.Potting, on(2, 10)),
		building,
		system(season.Leaks, on(2, 22), 0, 0, 1),
		system(season.Flushing, on(2, 22), 0, 0, 1),
		system(season.Cups, on(2, 22), 0, 0, 1),
		plants(season.Wetting, on(2, 28)),
		plants(season.Setting, on(3, 1)),
		system(season.Strength, on(3, 1), 0, 7, 25), // 24 weeks are 168 of the 172 days
		system(season.Filter, on(3, 1), 0, 7, 25),
		tying,
		system(season.Flushing, on(3, 31), 1, 30, 5), // 30, 60 … 150 days on
		system(season.Treating, on(4, 20), 1, 50, 3), // 50, 100, 150 days on
		plants(season.Picking, on(4, 30)),
		plants(season.Clearing, on(8, 20)),
		system(season.Treating, on(8, 20), 2, 0, 1),
		system(season.Flushing, on(8, 20), 2, 0, 1),
		system(season.Storing, on(8, 21), 0, 0, 1),
	}
	for i, got := range s.Tasks {
		if i >= len(want) || got != want[i] {
			t.Fatalf("task %d is %+v on %s, want %+v", i, got, got.Day.ISO(), want[min(i, len(want)-1)])
		}
	}
	if len(s.Tasks) != len(want) {
		t.Errorf("%d tasks, want %d", len(s.Tasks), len(want))
	}
	if s.First != on(1, 27) || s.Last != on(8, 21) {
		t.Errorf("from %s to %s, want from the sowing to the storing", s.First.ISO(), s.Last.ISO())
	}
}

// What is done again and again is done before the last day, and not at all
// where there is no time for it.
func TestAgainOnlyBeforeTheLastDay(t *testing.T) {
	for _, c := range []struct{ every, times int }{{0, 0}, {57, 3}, {58, 2}, {85, 2}, {86, 1}, {171, 1}, {172, 0}, {300, 0}} {
		p := rows(day.Of(2027, 3, 1), tomato) // 172 days: two times 86 is the last
		p.Season.Flush = c.every
		times := 0
		for _, k := range season.Of(p).Tasks {
			if k.Kind == season.Flushing && k.Number == 1 {
				times += k.Times
				if k.Day != day.Of(2027, 3, 1)+day.Day(c.every) || k.Every != c.every {
					t.Errorf("every %d days: %+v", c.every, k)
				}
			}
		}
		if times != c.times {
			t.Errorf("every %d days: %d times, want %d", c.every, times, c.times)
		}
	}
}

func TestLastDayOfATask(t *testing.T) {
	k := season.Task{Day: 100, Days: 3, Every: 7, Times: 4} // 121 is the fourth time, and it takes three days
	if got := k.Last(); got != 123 {
		t.Errorf("the last day is %d, want 123", got)
	}
}

// kinds are the tasks of a planting.
func kinds(s *season.Season, planting int) (list []season.TaskKind) {
	for _, k := range s.Tasks {
		if k.Planting == planting {
			list = append(list, k.Kind)
		}
	}
	return list
}

// What a crop does not need is no task: seed for what is bought as plants, a
// block for what has none, string for what is low, a new slab in a row that was
// wetted before, a harvest that frost does not let come.
func TestOnlyWhatACropNeeds(t *testing.T) {
	s := season.Of(rows(day.Of(2027, 3, 1), strawberry, bean, pepper))
	whole := []season.TaskKind{season.Sowing, season.Potting, season.Wetting, season.Setting, season.Tying, season.Picking, season.Clearing}
	for i, want := range [][]season.TaskKind{
		{season.Wetting, season.Setting, season.Picking, season.Clearing},
		{season.Sowing, season.Wetting, season.Setting, season.Picking, season.Clearing},
		whole,
	} {
		if got := kinds(s, i); !slices.Equal(got, want) {
			t.Errorf("%d: %v, want %v", i, got, want)
		}
	}
	p := rows(day.Of(2027, 3, 1), lettuce, lettuce)
	p.Plantings = []plan.Planting{out(lettuce, 1, 1, day.Of(2027, 3, 1)), out(lettuce, 1, 1, day.Of(2027, 6, 1)), out(lettuce, 1, 2, day.Of(2027, 9, 1))}
	s = season.Of(p)
	for i, want := range []bool{true, false, true} {
		if got := slices.Contains(kinds(s, i), season.Wetting); got != want {
			t.Errorf("planting %d in rows %v: slabs wetted %t, want %t", i, s.Plantings[i].Rows, got, want)
		}
	}
	// On the day that tying or picking would begin, they are cleared.
	for crop, on := range map[int]day.Day{pepper: day.Of(2027, 9, 16), basil: day.Of(2027, 8, 24)} {
		p := plan.Default()
		p.Rows[0].Crop = crop
		p.Plantings = []plan.Planting{out(crop, 1, 1, on)}
		s := season.Of(p)
		at := slices.IndexFunc(s.Plantings, func(g season.Planting) bool { return g.Record == 0 })
		if got := kinds(s, at); slices.Contains(got, season.Picking) || slices.Contains(got, season.Tying) || !slices.Contains(got, season.Clearing) {
			t.Errorf("crop %d of %s: %v", crop, on.ISO(), got)
		}
	}
	// Planted out on 20 August, peppers are picked from 23 November on; frost comes
	// on 8 October, so they are cleared on 23 September.
	p = plan.Default()
	p.Plantings = []plan.Planting{out(pepper, 0, 0, day.Of(2027, 8, 20))}
	s = season.Of(p)
	at := slices.IndexFunc(s.Plantings, func(g season.Planting) bool { return g.Crop == pepper })
	if got := kinds(s, at); slices.Contains(got, season.Picking) || !slices.Contains(got, season.Clearing) || !slices.Contains(got, season.Tying) {
		t.Errorf("peppers of 20 August: %v", got)
	}
}

// The system is there for the first planting and as long as the last, in
// whatever order they are listed.
func TestTheSystemIsBuiltForTheFirst(t *testing.T) {
	p := rows(day.Of(2027, 3, 1), lettuce, lettuce, lettuce)
	p.Plantings = []plan.Planting{out(lettuce, 1, 1, day.Of(2027, 9, 1)), out(lettuce, 2, 2, day.Of(2027, 4, 1)), out(lettuce, 3, 3, day.Of(2027, 6, 1))}
	s := season.Of(p)
	day1 := func(k season.TaskKind) day.Day {
		return s.Tasks[slices.IndexFunc(s.Tasks, func(t season.Task) bool { return t.Kind == k })].Day
	}
	if got := day1(season.Leaks); got != day.Of(2027, 3, 25) {
		t.Errorf("filled on %s, want a week before 1 April", got.ISO())
	}
	// Lettuce is picked after 28 days, for a week.
	if got := day1(season.Storing); got != day.Of(2027, 10, 7) {
		t.Errorf("stored on %s, want the day after 6 October", got.ISO())
	}
}

// Tying begins a week after planting out and is done every week that a plant
// still stands in. Cucumbers stand for 35 days and 12 weeks: 112 days from the
// first tying are 16 weeks, and with each day more a 17th begins.
func TestTyingIsEveryWeek(t *testing.T) {
	for wait, times := range map[float64]int{34: 16, 35: 16, 36: 17, 42: 17, 43: 18} {
		p := rows(day.Of(2027, 3, 1), 2)
		own(p, 2, map[catalogue.Trait]float64{catalogue.Wait: wait})
		s := season.Of(p)
		k := s.Tasks[slices.IndexFunc(s.Tasks, func(t season.Task) bool { return t.Kind == season.Tying })]
		if k.Day != day.Of(2027, 3, 8) || k.Every != 7 || k.Times != times {
			t.Errorf("picked after %g days: tied on %s, %d times, want %d", wait, k.Day.ISO(), k.Times, times)
		}
	}
}

// Tasks of one day stand by kind, then by planting.
func TestTasksOfADayAreInOrder(t *testing.T) {
	s := season.Of(rows(day.Of(2027, 3, 1), pepper, tomato, 2, 3, 4, 5))
	for i := range s.Tasks[1:] {
		a, b := &s.Tasks[i], &s.Tasks[i+1]
		if a.Day > b.Day || a.Day == b.Day && a.Kind == b.Kind && a.Planting >= b.Planting {
			t.Errorf("%+v stands before %+v", *a, *b)
		}
		if a.Day == b.Day && a.Kind > b.Kind && a.Kind != season.Flushing && a.Kind != season.Treating {
			t.Errorf("%v stands before %v on %s", a.Kind, b.Kind, a.Day.ISO())
		}
	}
}

// The first and the last day are those of anything: plantings and tasks.
func TestFirstAndLastDay(t *testing.T) {
	for n, p := range plans(t) {
		if n%4 > 0 {
			continue
		}
		s := season.Of(p)
		var days []day.Day
		for _, g := range s.Plantings {
			days = append(days, g.Dates[season.Sow], g.Dates[season.End])
		}
		for i := range s.Tasks {
			days = append(days, s.Tasks[i].Day, s.Tasks[i].Last())
		}
		if s.First != slices.Min(days) || s.Last != slices.Max(days) {
			t.Fatalf("plan %d: from %s to %s, want %s to %s", n, s.First.ISO(), s.Last.ISO(), slices.Min(days).ISO(), slices.Max(days).ISO())
		}
	}
	// Without any task, and one that is listed first neither the first nor the last.
	p := plan.Default()
	p.Season.Mode, p.Season.Date = plan.FromPlanting, int(day.Of(2027, 12, 1))
	p.Plantings = []plan.Planting{out(pepper, 0, 0, day.Of(2027, 12, 10)), out(tomato, 0, 0, day.Of(2027, 12, 1)), out(2, 0, 0, day.Of(2027, 12, 20))}
	s := season.Of(p)
	if len(s.Tasks) > 0 || s.First != s.Plantings[1].Dates[season.Sow] || s.Last != day.Of(2027, 12, 20) {
		t.Errorf("%d tasks, from %s to %s", len(s.Tasks), s.First.ISO(), s.Last.ISO())
	}
}

func TestWords(t *testing.T) {
	p := rows(day.Of(2027, 3, 1), tomato, lettuce, tomato)
	p.Rows[1].Plants = 1
	p.Plantings = []plan.Planting{out(tomato, 1, 1, day.Of(2027, 3, 1)), out(lettuce, 2, 2, day.Of(2027, 3, 1)), out(tomato, 3, 3, day.Of(2027, 6, 1))}
	s := season.Of(p)
	for i, want := range []string{"tomato 1", "lettuce", "tomato 2"} {
		if got := s.Name(p, i); got != want {
			t.Errorf("planting %d is %q, want %q", i, got, want)
		}
	}
	for _, c := range []struct {
		task         season.Task
		title, isFor string
	}{
		{season.Task{Kind: season.Sowing, Planting: 0, Plants: 30}, "Sow: tomato 1, 30 plants", "tomato 1, 30 plants"},
		{season.Task{Kind: season.Setting, Planting: 1, Plants: 1}, "Plant out: lettuce, 1 plant", "lettuce, 1 plant"},
		{season.Task{Kind: season.Potting, Planting: 2, Plants: 2}, "Move into blocks: tomato 2, 2 plants", "tomato 2, 2 plants"},
		{season.Task{Kind: season.Clearing, Planting: 2, Plants: 2}, "Remove plants: tomato 2", "tomato 2"},
		{season.Task{Kind: season.Filter, Planting: -1}, "Look at the filter", ""},
	} {
		if title, isFor := s.Title(p, &c.task), s.For(p, &c.task); title != c.title || isFor != c.isFor {
			t.Errorf("%q and %q, want %q and %q", title, isFor, c.title, c.isFor)
		}
	}
}

// Events of plants and of the system are told apart, and known by what they are
// for.
func TestEventsByHand(t *testing.T) {
	p := rows(day.Of(2027, 3, 1), tomato, lettuce)
	c := season.Of(p).Calendar(p)
	category := map[string]string{}
	for _, e := range c.Events {
		category[e.UID] = e.Category
	}
	q := rows(day.Of(2027, 3, 1), tomato, lettuce)
	q.Name = "Another"
	for _, e := range season.Of(q).Calendar(q).Events {
		if category[e.UID] != "" {
			t.Errorf("%s stands in the calendars of two plans", e.UID)
		}
	}
	p.Name = "a" // its hash is 0xaf63dc4c8601ec8c, which is 2o0ongoiv4rrg to the base of 36
	want := map[string]string{
		"-0-0-1-0@evenrow.invalid":  "Plants", // sow tomatoes, crop 1, their first planting
		"-5-0-11-0@evenrow.invalid": "Plants", // clear lettuce, crop 11
		"-9-0-1-0@evenrow.invalid":  "System", // wet the slabs of tomatoes
		"-6-0@evenrow.invalid":      "System", // build
		"-12-2@evenrow.invalid":     "System", // flush for the last time
	}
	found := 0
	for _, e := range season.Of(p).Calendar(p).Events {
		for end, kind := range want {
			if e.UID == "2o0ongoiv4rrg"+end {
				found++
				if e.Category != kind {
					t.Errorf("%s is of %s, want %s", e.UID, e.Category, kind)
				}
			}
		}
	}
	if found != len(want) {
		t.Errorf("%d of %d events were found", found, len(want))
	}
}

// own sets a trait of a crop in a plan, in inner units.
func own(p *plan.Plan, crop int, traits map[catalogue.Trait]float64) {
	c := plan.Crop{Of: crop}
	for i := range c.Traits {
		c.Traits[i] = plan.Unset
	}
	for k, v := range traits {
		c.Traits[k] = v
	}
	p.Crops = append(p.Crops, c)
}

// Stages at their shortest: a plug stands a day longer than its seed takes, and
// what is planted out is picked the next day, and cleared the day after that;
// what is low is not tied up.
func TestShortestStages(t *testing.T) {
	p := rows(day.Of(2027, 3, 1), pepper, strawberry)
	own(p, pepper, map[catalogue.Trait]float64{catalogue.InPlug: 1, catalogue.InBlock: 0, catalogue.Wait: 0, catalogue.Picking: 0.01, catalogue.Height: 1})
	s := season.Of(p)
	after := func(g *season.Planting) (days [season.Stages]int) {
		for i, d := range g.Dates {
			days[i] = int(d - g.Dates[season.Sow])
		}
		return days
	}
	// Peppers come up in 8 days at 25 °C (GE-01). At 1 m they are tied up, when
	// they are picked, for they are gone after a week.
	if got, want := after(&s.Plantings[0]), [season.Stages]int{0, 8, 9, 9, 10, 10, 11}; got != want || !s.Plantings[0].Tied {
		t.Errorf("peppers: %v after sowing, tied %t, want %v", got, s.Plantings[0].Tied, want)
	}
	if got := kinds(s, 0); !slices.Contains(got, season.Tying) {
		t.Errorf("peppers that are gone the day after they are tied up: %v", got)
	}
	// Strawberries are bought as plants: 50 days to the first, and 22 weeks.
	if got, want := after(&s.Plantings[1]), [season.Stages]int{0, 0, 0, 0, 0, 50, 204}; got != want || s.Plantings[1].Tied || s.Plantings[1].Sprouts != season.Sure {
		t.Errorf("strawberries: %v after sowing, tied %t, want %v", got, s.Plantings[1].Tied, want)
	}
	p.Crops[0].Traits[catalogue.Height] = 0.99
	if s = season.Of(p); s.Plantings[0].Tied || s.Plantings[0].Dates[season.Train] != s.Plantings[0].Dates[season.Slab] {
		t.Error("a crop of 0.99 m is tied up")
	}
}

// Which rows a planting stands in, and what it counts from.
func TestRowsOfAPlanting(t *testing.T) {
	p := rows(day.Of(2027, 3, 1), tomato, lettuce, tomato, tomato)
	for _, c := range []struct {
		from, to int
		want     []int
	}{{0, 0, []int{0, 2, 3}}, {1, 1, []int{0}}, {1, 0, []int{0}}, {2, 3, []int{1, 2}}, {4, 9, []int{3}}, {7, 9, nil}} {
		p.Plantings = []plan.Planting{out(tomato, c.from, c.to, day.Of(2027, 5, 1))}
		s := season.Of(p)
		i := slices.IndexFunc(s.Plantings, func(g season.Planting) bool { return g.Crop == tomato })
		if g := &s.Plantings[i]; !slices.Equal(g.Rows, c.want) || g.Record != 0 || g.Plants != 30*len(c.want) {
			t.Errorf("from row %d to %d: rows %v, %d plants, record %d, want %v", c.from, c.to, g.Rows, g.Plants, g.Record, c.want)
		}
		if other := s.Plantings[1-i]; other.Record != -1 || other.Crop != lettuce || other.Dates[season.Slab] != day.Of(2027, 3, 1) {
			t.Errorf("of lettuce, which is not listed: %+v", other)
		}
	}
	// As the season, whatever day stands beside it.
	p.Plantings = []plan.Planting{{Crop: tomato, Mode: plan.AsSeason, Date: int(day.Of(2030, 1, 1)), Times: 2, Every: 10}}
	s := season.Of(p)
	for i, g := range s.Plantings[1:] {
		if got, want := g.Dates[season.Slab], day.Of(2027, 3, 1+10*i); got != want || g.Turn != i || g.Number != i {
			t.Errorf("succession %d: planted out on %s, want %s; %+v", i, got.ISO(), want.ISO(), g)
		}
	}
}

func TestTender(t *testing.T) {
	p := plan.Default()
	for least, want := range map[float64]bool{-5: false, 0: false, 0.5: true, 10: true} {
		p.Crops = nil
		own(p, pepper, map[catalogue.Trait]float64{catalogue.Least: least})
		if got := season.Tender(p, pepper); got != want {
			t.Errorf("a crop that stands %g °C is tender: %t", least, got)
		}
	}
}

// Of two that stand in a row, the one that was planted last counts.
func TestAtCountsTheLastPlanted(t *testing.T) {
	for _, dates := range [][2]day.Day{{day.Of(2027, 3, 1), day.Of(2027, 3, 20)}, {day.Of(2027, 3, 20), day.Of(2027, 3, 1)}} {
		p := rows(day.Of(2027, 3, 1), lettuce)
		p.Plantings = []plan.Planting{out(lettuce, 1, 1, dates[0]), out(kale, 1, 1, dates[1])}
		want := kale
		if dates[0] > dates[1] {
			want = lettuce
		}
		if g := season.Of(p).At(0, day.Of(2027, 3, 25)); g == nil || g.Crop != want {
			t.Errorf("lettuce of %s, kale of %s: %+v", dates[0].ISO(), dates[1].ISO(), g)
		}
	}
}
