package season_test

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/year/ical"
	"evenrow/wasm/year/season"
)

// random returns a plan with every way to date plantings.
func random(r *rand.Rand) *plan.Plan {
	p := plan.Default()
	plan.SectionNamed("rows").Resize(p, 1+r.IntN(plan.MaxRows))
	crops := len(catalogue.Crops)
	for i := range p.Rows {
		p.Rows[i].Crop = r.IntN(crops)
		p.Rows[i].Plants = 3 + r.IntN(30)
	}
	s := &p.Season
	year := 2000 + r.IntN(199)
	s.LastFrost = int(day.Of(year, 1+r.IntN(12), 1+r.IntN(31)))
	s.FirstFrost = s.LastFrost + 1 + r.IntN(365)
	s.Frost = r.IntN(4) / 3 // mostly yes, below
	s.Frost = 1 - s.Frost
	s.Mode = r.IntN(4)
	if s.Frost == 0 {
		s.Mode = 1 + r.IntN(3)
	}
	s.Date = s.LastFrost + r.IntN(365)
	s.After = r.IntN(241) - 120
	s.Shelter = r.IntN(3)
	s.Seedbed = 1 + 44*r.Float64()
	s.Places = r.IntN(3) * r.IntN(200)
	s.Start = s.LastFrost - r.IntN(300)
	s.Build = 1 + r.IntN(200)
	s.Flush, s.Treat = r.IntN(366), r.IntN(366)*r.IntN(2)
	plan.SectionNamed("plantings").Resize(p, r.IntN(plan.MaxPlantings+1))
	for i := range p.Plantings {
		g := plan.Planting{Crop: r.IntN(crops), From: r.IntN(plan.MaxRows + 1), Mode: r.IntN(5), Date: s.LastFrost + r.IntN(700) - 200, Times: 1 + r.IntN(plan.MaxTimes), Every: 1 + r.IntN(100)}
		if r.IntN(2) == 0 && g.From > 0 {
			g.To = g.From + r.IntN(plan.MaxRows+1-g.From)
		}
		if s.Frost == 0 && g.Mode == plan.FromFrost+1 {
			g.Mode = plan.AsSeason
		}
		p.Plantings[i] = g
	}
	plan.SectionNamed("crops").Resize(p, r.IntN(4))
	for i := range p.Crops {
		plan.SectionNamed("crops").SetDefaults(p, i)
		p.Crops[i].Of = r.IntN(crops)
		p.Crops[i].Traits[catalogue.InPlug] = float64(r.IntN(60))
		p.Crops[i].Traits[catalogue.Picking] = 20 * r.Float64()
		if p.Crops[i].Traits[catalogue.Picking] < 0.1 {
			p.Crops[i].Traits[catalogue.Picking] = 0.1
		}
	}
	return p
}

// plans are all examples and many random plans, all of which the form takes.
func plans(t *testing.T) []*plan.Plan {
	t.Helper()
	var list []*plan.Plan
	for _, x := range plan.Examples() {
		list = append(list, x.Plan)
	}
	for seed := range uint64(120) {
		list = append(list, random(rand.New(rand.NewPCG(seed, 10))))
	}
	kept := list[:0]
	for _, p := range list {
		if errs := p.Check(); len(errs) > 0 {
			if len(errs) > 1 || errs[0].Path != "season.first-frost" && !strings.Contains(errs[0].Path, "date") && !strings.Contains(errs[0].Path, "frost") && errs[0].Path != "season.start" {
				t.Fatalf("a random plan is refused: %v", errs)
			}
			continue // beyond the last year of the form
		}
		kept = append(kept, p)
	}
	if len(kept) < 80 {
		t.Fatalf("only %d of the random plans are taken", len(kept))
	}
	return kept
}

// What must hold of every calendar.
func TestCalendarsHangTogether(t *testing.T) {
	for n, p := range plans(t) {
		s := season.Of(p)
		inRows := map[int]bool{}
		for i := range s.Plantings {
			g := &s.Plantings[i]
			for k := 1; k < season.Stages; k++ {
				if g.Dates[k] < g.Dates[k-1] && k != int(season.Train) && k != int(season.Harvest) && !g.Killed {
					t.Fatalf("plan %d: stage %d of %s is before the one before: %v", n, k, s.Name(p, i), g.Dates)
				}
			}
			if g.Dates[season.Train] < g.Dates[season.Slab] || g.Dates[season.Harvest] <= g.Dates[season.Slab] || g.Dates[season.End] < g.Dates[season.Slab] ||
				g.Killed != (g.Dates[season.End] <= g.Dates[season.Harvest]) {
				t.Fatalf("plan %d: %s in its row: %v", n, s.Name(p, i), g.Dates)
			}
			plants := 0
			for _, r := range g.Rows {
				plants += p.Rows[r].Plants
				inRows[r] = true
			}
			if plants != g.Plants {
				t.Fatalf("plan %d: %d plants, want %d", n, g.Plants, plants)
			}
			// No tender crop stands in a frost, nor in the two weeks before it but
			// where it is planted out in these.
			if last, first, ok := season.Frosts(p, g.Dates[season.Slab]); ok && p.Season.Shelter != plan.Heated && season.Tender(p, g.Crop) && g.Dates[season.Slab] > last {
				end := g.Dates[season.End]
				if out := g.Dates[season.Slab]; out < first && end > first || out < first-15 && end > first-15 {
					t.Fatalf("plan %d: %s is out from %s to %s, the first frost is on %s", n, s.Name(p, i), out.ISO(), end.ISO(), first.ISO())
				}
			} else if g.Cut > 0 && !g.Killed {
				t.Fatalf("plan %d: nothing cuts %s", n, s.Name(p, i))
			}
		}
		if len(p.Plantings) == 0 && len(inRows) != len(p.Rows) {
			t.Fatalf("plan %d: %d rows are planted, want all %d", n, len(inRows), len(p.Rows))
		}
		last := s.First
		for i := range s.Tasks {
			k := &s.Tasks[i]
			if k.Day < last || k.Last() > s.Last || k.Days < 1 || k.Times < 1 || k.Times > 1 && k.Every < 1 || s.Title(p, k) == "" || k.Note() == "" {
				t.Fatalf("plan %d: task %+v after %s", n, *k, last.ISO())
			}
			last = k.Day
		}
		for i, c := range s.Conflicts {
			if i > 0 && c.Kind < s.Conflicts[i-1].Kind {
				t.Fatalf("plan %d: conflicts are not in order", n)
			}
		}
	}
}

// Counting forwards from the sowing that counting back gave leads to the same
// dates, whatever the calendar does between: leap days, New Year, the southern
// half.
func TestForwardsAndBackAgain(t *testing.T) {
	for n, p := range plans(t) {
		s := season.Of(p)
		for i := range s.Plantings {
			if i%7 > 0 {
				continue
			}
			g := &s.Plantings[i]
			for mode, stage := range map[int]season.Stage{plan.FromSowing: season.Sow, plan.FromPlanting: season.Slab, plan.FromHarvest: season.Harvest} {
				q := p.Clone()
				q.Plantings = []plan.Planting{{Crop: g.Crop, Mode: mode + 1, Date: int(g.Dates[stage]), Times: 1, Every: 1}}
				again := season.Of(q)
				k := slices.IndexFunc(again.Plantings, func(h season.Planting) bool { return h.Record == 0 })
				if got := again.Plantings[k].Dates; got != g.Dates {
					t.Fatalf("plan %d, %s from stage %d: %v, want %v", n, s.Name(p, i), stage, got, g.Dates)
				}
			}
		}
	}
}

// A planting that counts back from the frost is planted out so many days after
// it, and successions follow each other at their interval.
func TestDates(t *testing.T) {
	p := plan.Default()
	date := func(i int, stage season.Stage) string { return season.Of(p).Plantings[i].Dates[stage].ISO() }
	want := func(i int, stage season.Stage, iso string) {
		t.Helper()
		if got := date(i, stage); got != iso {
			t.Errorf("stage %d of planting %d is on %s, want %s", stage, i, got, iso)
		}
	}
	// Derived: 12 May and 3 days; 41 days from seed to slab at 25 °C, 16 in the
	// plug and 25 in the block; pepper comes up in 8 days (GE-01).
	want(0, season.Slab, "2027-05-15")
	want(0, season.Block, "2027-04-20")
	want(0, season.Sow, "2027-04-04")
	want(0, season.Emerge, "2027-04-12")
	want(0, season.End, "2027-09-23") // clear, so that the system is drained on the next day, two weeks before the frost
	p.Season.Seedbed = 20             // 13 days instead of 8 (GE-01)
	want(0, season.Sow, "2027-03-30")
	want(0, season.Emerge, "2027-04-12")
	want(0, season.Slab, "2027-05-15")
	p.Season.Seedbed = 25

	p.Plantings = []plan.Planting{{Crop: 2, Mode: plan.FromSowing + 1, Date: int(day.Of(2028, 2, 20)), Times: 2, Every: 10}}
	want(2, season.Emerge, "2028-02-24") // cucumber at 25 °C: 4 days (Harrington and Minges, 1954)
	want(2, season.Block, "2028-03-01")  // 10 days on, over 29 February
	want(3, season.Sow, "2028-03-01")

	// Over New Year, in the southern half.
	p.Plantings = nil
	p.Season.LastFrost, p.Season.FirstFrost, p.Season.After = int(day.Of(2027, 10, 5)), int(day.Of(2028, 5, 2)), 1
	want(0, season.Slab, "2027-10-06")
	want(0, season.Harvest, "2028-01-09")
	want(1, season.End, "2028-03-26")
	p.Season.After = 0
	want(1, season.End, "2027-10-05")
	if n := season.Of(p).Grave(); n != 3 { // all three are planted out on the very day of the frost
		t.Errorf("%d conflicts, want three times the frost of that day: %+v", n, season.Of(p).Conflicts)
	}
}

func TestFrosts(t *testing.T) {
	p := plan.Default()
	for _, c := range []struct{ last, first, on, wantLast, wantFirst string }{
		{"2027-05-12", "2027-10-08", "2027-07-01", "2027-05-12", "2027-10-08"},
		{"2027-05-12", "2027-10-08", "2027-05-12", "2027-05-12", "2027-10-08"},
		{"2027-05-12", "2027-10-08", "2027-05-11", "2026-05-12", "2026-10-08"},
		{"2027-05-12", "2027-10-08", "2031-01-01", "2030-05-12", "2030-10-08"},
		{"2027-10-05", "2028-05-02", "2027-12-31", "2027-10-05", "2028-05-02"},
		{"2027-10-05", "2028-05-02", "2028-01-01", "2027-10-05", "2028-05-02"},
		{"2027-10-05", "2028-05-02", "2026-01-01", "2025-10-05", "2026-05-02"},
		{"2028-02-29", "2028-11-20", "2029-02-28", "2029-02-28", "2029-11-20"},
		{"2028-02-29", "2028-11-20", "2032-02-28", "2031-02-28", "2031-11-20"},
	} {
		read := func(s string) int {
			d, ok := day.Parse(s)
			if !ok {
				t.Fatal(s)
			}
			return int(d)
		}
		p.Season.LastFrost, p.Season.FirstFrost = read(c.last), read(c.first)
		last, first, ok := season.Frosts(p, day.Day(read(c.on)))
		if !ok || last.ISO() != c.wantLast || first.ISO() != c.wantFirst {
			t.Errorf("frosts %s and %s, on %s: %s and %s, want %s and %s", c.last, c.first, c.on, last.ISO(), first.ISO(), c.wantLast, c.wantFirst)
		}
	}
}

func TestConflicts(t *testing.T) {
	planting := func(crop, from int, out day.Day) plan.Planting {
		return plan.Planting{Crop: crop, From: from, Mode: plan.FromPlanting + 1, Date: int(out), Times: 1, Every: 21}
	}
	may := day.Of(2027, 5, 20)
	for _, c := range []struct {
		name   string
		change func(p *plan.Plan)
		want   season.Conflict
	}{
		{"pepper seed does not come up at 10 °C (GE-01)", func(p *plan.Plan) { p.Season.Seedbed = 10 }, season.Conflict{Kind: season.DeadSeed}},
		{"nobody tested 40 °C", func(p *plan.Plan) { p.Season.Seedbed = 40 }, season.Conflict{Kind: season.Guessed}},
		{"a row that is not there", func(p *plan.Plan) { p.Plantings = append(p.Plantings, planting(11, 9, may)) }, season.Conflict{Kind: season.NoRow, Planting: 3}},
		{"before the last frost", func(p *plan.Plan) { p.Season.After = -3 }, season.Conflict{Kind: season.FrostOut, Until: day.Of(2027, 5, 12)}},
		{"on the day of the last frost", func(p *plan.Plan) { p.Season.After = 0 }, season.Conflict{Kind: season.FrostOut, Until: day.Of(2027, 5, 12)}},
		{"after the first frost", func(p *plan.Plan) { p.Plantings = append(p.Plantings, planting(0, 0, day.Of(2027, 11, 1))) }, season.Conflict{Kind: season.FrostOut, Planting: 2, Until: day.Of(2028, 5, 12)}},
		{"too late to be picked", func(p *plan.Plan) { p.Plantings = append(p.Plantings, planting(0, 0, day.Of(2027, 8, 1))) }, season.Conflict{Kind: season.FrostKill, Planting: 2, Until: day.Of(2027, 10, 8)}},
		{"lettuce among the cucumbers", func(p *plan.Plan) { p.Plantings = append(p.Plantings, planting(11, 4, may)) },
			season.Conflict{Kind: season.TwoInRow, Planting: 3, Other: 2, Row: 3, Until: day.Of(2027, 9, 11)}},
		{"a late start", func(p *plan.Plan) { p.Season.Start = int(day.Of(2027, 4, 25)) }, season.Conflict{Kind: season.NotReady, Until: day.Of(2027, 5, 16)}},
		{"few places", func(p *plan.Plan) { p.Season.Places = 119 }, season.Conflict{Kind: season.NoPlace, Planting: -1, Count: 120, Until: day.Of(2027, 5, 2)}},
		{"in the open", func(p *plan.Plan) { p.Season.Shelter = plan.OpenAir }, season.Conflict{Kind: season.EarlyOpen, Count: 3}},
		{"an own crop of which nothing is told", func(p *plan.Plan) { p.Rows[0].Crop = catalogue.FirstOwn }, season.Conflict{Kind: season.Untold}},
		{"the frost ends peppers", func(p *plan.Plan) {}, season.Conflict{Kind: season.Ended, Count: 104, Until: day.Of(2027, 10, 8)}},
		// Derived: kale is picked for 12 weeks from 38 days after planting out, so
		// from 8 October to the day after its last, 1 January, there are 86 days.
		{"kale in the open", func(p *plan.Plan) {
			p.Season.Shelter = plan.OpenAir
			p.Plantings = append(p.Plantings, planting(12, 4, day.Of(2027, 9, 1)))
		}, season.Conflict{Kind: season.Freezing, Planting: -1, Count: 86, Until: day.Of(2027, 10, 8)}},
		{"lettuce in April", func(p *plan.Plan) { p.Plantings = append(p.Plantings, planting(11, 4, day.Of(2027, 4, 9))) },
			season.Conflict{Kind: season.Freezing, Planting: -1, Count: 34, Until: day.Of(2027, 4, 9)}},
		{"lettuce until shortly before the frost", func(p *plan.Plan) { p.Plantings = append(p.Plantings, planting(11, 4, day.Of(2027, 9, 1))) },
			season.Conflict{Kind: season.LateStore, Planting: -1, Count: 2, Until: day.Of(2027, 10, 8)}},
	} {
		p := plan.Default()
		c.change(p)
		if errs := p.Check(); len(errs) > 0 {
			t.Fatalf("%s: %v", c.name, errs[0])
		}
		if got := season.Of(p).Conflicts; !slices.Contains(got, c.want) {
			t.Errorf("%s: %+v, want %+v among them", c.name, got, c.want)
		}
	}
	// What is well is not complained of.
	for name, change := range map[string]func(p *plan.Plan){
		"the default": func(p *plan.Plan) {},
		"heated": func(p *plan.Plan) {
			p.Season.After, p.Season.Shelter, p.Season.Start = -60, plan.Heated, p.Season.Start-60
		},
		"no frost": func(p *plan.Plan) {
			p.Season.Frost, p.Season.Mode, p.Season.Date = 0, plan.FromHarvest, int(day.Of(2027, 12, 24))
		},
		"just enough places": func(p *plan.Plan) { p.Season.Places = 120 },
		"just in time":       func(p *plan.Plan) { p.Season.Start = int(day.Of(2027, 4, 24)) },
		"lettuce in time": func(p *plan.Plan) {
			p.Rows[3].Crop = 11
			p.Plantings = append(p.Plantings, planting(11, 4, day.Of(2027, 8, 24)))
		},
		"kale in a heated house": func(p *plan.Plan) {
			p.Season.Shelter = plan.Heated
			p.Plantings = append(p.Plantings, planting(12, 4, day.Of(2027, 10, 20)))
		},
	} {
		p := plan.Default()
		change(p)
		if s := season.Of(p); s.Grave() > 0 {
			t.Errorf("%s: %+v", name, s.Conflicts[:s.Grave()])
		}
	}
}

// The row is looked up as the other parts of the year do it.
func TestAt(t *testing.T) {
	p := plan.Default()
	s := season.Of(p)
	for _, c := range []struct {
		row  int
		d    day.Day
		crop int // -1 none
	}{{0, day.Of(2027, 5, 14), -1}, {0, day.Of(2027, 5, 15), 0}, {1, day.Of(2027, 9, 22), 0}, {1, day.Of(2027, 9, 23), -1}, {3, day.Of(2027, 7, 1), 2}, {3, day.Of(2027, 9, 11), -1}, {4, day.Of(2027, 7, 1), -1}} {
		g := s.At(c.row, c.d)
		if g == nil && c.crop >= 0 || g != nil && g.Crop != c.crop {
			t.Errorf("row %d on %s: %+v, want crop %d", c.row+1, c.d.ISO(), g, c.crop)
		}
	}
}

// The events of a calendar are known apart, and by the same names when every
// date has moved.
func TestCalendarFile(t *testing.T) {
	for n, p := range plans(t) {
		s := season.Of(p)
		c := s.Calendar(p)
		seen := map[string]bool{}
		for _, e := range c.Events {
			if seen[e.UID] || e.UID == "" || e.Summary == "" {
				t.Fatalf("plan %d: %q stands twice", n, e.UID)
			}
			seen[e.UID] = true
		}
		if file := ical.Write(c); file != ical.Write(season.Of(p).Calendar(p)) {
			t.Fatalf("plan %d: two files of one plan differ", n)
		}
	}
	p := plan.Default()
	before := season.Of(p).Calendar(p)
	p.Season.LastFrost -= 9
	p.Season.Edition = 1
	after := season.Of(p).Calendar(p)
	if len(before.Events) != len(after.Events) || after.Edition != 1 {
		t.Fatalf("%d events, then %d, edition %d", len(before.Events), len(after.Events), after.Edition)
	}
	moved := 0
	for _, a := range before.Events {
		k := slices.IndexFunc(after.Events, func(b ical.Event) bool { return a.UID == b.UID })
		if k < 0 {
			t.Errorf("%s is gone", a.UID)
		} else if after.Events[k].First == a.First-9 {
			moved++
		}
	}
	if moved < 20 {
		t.Errorf("%d events moved with the frost", moved)
	}
}

// The largest calendar: every list full.
func BenchmarkLargest(b *testing.B) {
	p := random(rand.New(rand.NewPCG(1, 1)))
	plan.SectionNamed("rows").Resize(p, plan.MaxRows)
	plan.SectionNamed("plantings").Resize(p, plan.MaxPlantings)
	for i := range p.Plantings {
		p.Plantings[i] = plan.Planting{Crop: i % 15, From: 1, To: plan.MaxRows, Times: plan.MaxTimes, Every: 30}
	}
	for b.Loop() {
		season.Of(p)
	}
}

// On the day of the test the ends run clear before cups are caught.
func TestEndsAreFlushedBeforeCupsAreCaught(t *testing.T) {
	s := season.Of(plan.Default())
	at := func(k season.TaskKind) int {
		return slices.IndexFunc(s.Tasks, func(t season.Task) bool { return t.Kind == k })
	}
	if leaks, flush, cups := at(season.Leaks), at(season.Flushing), at(season.Cups); leaks < 0 || flush < leaks || cups < flush || s.Tasks[flush].Day != s.Tasks[cups].Day {
		t.Errorf("leaks are task %d, flushing %d, cups %d", leaks, flush, cups)
	}
}

// The system is drained two weeks before the typed first frost, or it is said
// that it is not, and only then; and what the lines are treated with is flushed out before that.
func TestTheSystemIsDrainedBeforeTheFrost(t *testing.T) {
	stored := 0
	for n, p := range plans(t) {
		s := season.Of(p)
		flushed, treated := -1, -1
		for i := range s.Tasks {
			switch k := &s.Tasks[i]; {
			case k.Kind == season.Flushing && k.Number == 2:
				flushed = i
			case k.Kind == season.Treating:
				treated = max(treated, i)
			case k.Kind == season.Storing:
				if flushed < treated || s.Tasks[flushed].Day < s.Tasks[treated].Last() {
					t.Fatalf("plan %d: treated by task %d, flushed by %d", n, treated, flushed)
				}
				// Day by day: frost while the system is full, or within two
				// weeks after it is drained.
				from, near := k.Day, false
				for j := range s.Plantings {
					if g := &s.Plantings[j]; len(g.Rows) > 0 && g.Dates[season.End] > g.Dates[season.Slab] {
						from = min(from, g.Dates[season.Slab])
					}
				}
				for d := from; d < k.Day+14; d++ {
					last, first, ok := season.Frosts(p, d)
					near = near || ok && p.Season.Shelter != plan.Heated && (d == last || d >= first)
				}
				said := slices.ContainsFunc(s.Conflicts, func(c season.Conflict) bool {
					return c.Kind == season.Freezing || c.Kind == season.LateStore
				})
				if !near {
					stored++
				}
				if near != said {
					t.Fatalf("plan %d: full from %s, drained on %s, frost meanwhile or soon after: %t, said: %t; %+v", n, from.ISO(), k.Day.ISO(), near, said, s.Conflicts)
				}
			}
		}
	}
	if stored < 10 {
		t.Errorf("only %d systems are drained in time", stored)
	}
	s := season.Of(plan.Default())
	if k := &s.Tasks[len(s.Tasks)-1]; k.Kind != season.Storing || k.Day != day.Of(2027, 9, 24) {
		t.Errorf("the last task is %d on %s, want to store it on 24 September", k.Kind, k.Day.ISO())
	}
}

// What is planted out in the time of frost has no tasks and no water, and does
// not fill the system.
func TestNothingIsDoneForWhatFrostKillsAtOnce(t *testing.T) {
	p := plan.Default()
	p.Season.After = -40 // the last frost is that of 12 May
	s := season.Of(p)
	if len(s.Tasks) > 0 {
		t.Errorf("%d tasks, the first %+v", len(s.Tasks), s.Tasks[0])
	}
	for _, c := range s.Conflicts {
		if c.Kind != season.FrostOut {
			t.Errorf("%+v", c)
		}
	}
	for i := range s.Plantings {
		if g := &s.Plantings[i]; g.Dates[season.End] != g.Dates[season.Slab] || !g.Killed {
			t.Errorf("%+v", *g)
		}
	}
	p.Rows[3].Crop = 12 // kale stands it
	s = season.Of(p)
	for _, k := range s.Tasks {
		if k.Planting >= 0 && s.Plantings[k.Planting].Crop != 12 {
			t.Errorf("a task for what is killed: %+v", k)
		}
	}
}
