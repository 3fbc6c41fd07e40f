package season_test

import (
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/year/season"
)

// The season of one row of tomatoes runs from 27 January to 21 August 2027: see
// TestTasksByHand.
func TestStandAndTurn(t *testing.T) {
	s := season.Of(rows(day.Of(2027, 3, 1), tomato))
	for _, c := range []struct {
		on    day.Day
		stand season.Stand
		years int
	}{
		{day.Of(2027, 1, 26), season.NotBegun, 0}, {day.Of(2027, 1, 27), season.Running, 0}, {day.Of(2027, 8, 21), season.Running, 0}, {day.Of(2027, 8, 22), season.Over, 1},
		{day.Of(2028, 8, 21), season.Over, 1}, {day.Of(2028, 8, 22), season.Over, 2}, {day.Of(2034, 1, 1), season.Over, 7},
		{day.Of(2026, 8, 22), season.NotBegun, 0}, {day.Of(2026, 8, 21), season.NotBegun, -1}, {day.Of(2024, 5, 1), season.NotBegun, -3},
		{0, season.Nowhere, 0}, {-5, season.Nowhere, 0},
	} {
		if stand, years := s.Stand(c.on), s.Turn(c.on); stand != c.stand || years != c.years {
			t.Errorf("on %s: %d, %d years; want %d, %d", c.on.ISO(), stand, years, c.stand, c.years)
		}
	}
	none := &season.Season{}
	if none.Stand(day.Of(2027, 5, 1)) != season.Nowhere || none.Turn(day.Of(2027, 5, 1)) != 0 {
		t.Error("a season without tasks stands somewhere")
	}
	// Moved as it should be, it runs on that day or is the next one.
	for on := day.Of(2020, 1, 1); on < day.Of(2036, 1, 1); on += 11 {
		n := s.Turn(on)
		if s.Last.Years(n) < on || s.Last.Years(n-1) >= on {
			t.Errorf("on %s: moved by %d years it ends on %s", on.ISO(), n, s.Last.Years(n).ISO())
		}
	}
	if from, to := s.MovedYears(2); from != 2029 || to != 2029 {
		t.Errorf("moved by two years from %d to %d", from, to)
	}
}

// The week of 1 March: the plants go out, the first weekly tasks come. The slabs
// were wet the day before, and leaks, ends and cups looked at on 22 February. Built
// is until 21 February, which is eight days ago.
func TestWeekByHand(t *testing.T) {
	s := season.Of(rows(day.Of(2027, 3, 1), tomato))
	for _, c := range []struct {
		on        day.Day
		now, late []season.TaskKind
		next      season.TaskKind
		nextOn    day.Day
	}{
		{day.Of(2027, 3, 1), []season.TaskKind{season.Setting, season.Strength, season.Filter}, []season.TaskKind{season.Leaks, season.Flushing, season.Cups, season.Wetting}, season.Strength, day.Of(2027, 3, 8)},
		{day.Of(2027, 2, 20), []season.TaskKind{season.Building, season.Leaks, season.Flushing, season.Cups}, nil, season.Wetting, day.Of(2027, 2, 28)},
		{day.Of(2027, 2, 3), nil, []season.TaskKind{season.Sowing}, season.Potting, day.Of(2027, 2, 10)},
		{day.Of(2027, 8, 21), []season.TaskKind{season.Storing}, []season.TaskKind{season.Clearing, season.Treating, season.Flushing}, 0, 0},
		{day.Of(2027, 8, 29), nil, nil, 0, 0},
	} {
		now, late := s.Week(c.on)
		for i, list := range [...]struct {
			got  []season.Due
			want []season.TaskKind
		}{{now, c.now}, {late, c.late}} {
			same := len(list.got) == len(list.want)
			for k := range list.got {
				same = same && list.got[k].Kind == list.want[k]
			}
			if !same {
				t.Errorf("on %s, list %d: %+v, want %v", c.on.ISO(), i, list.got, list.want)
			}
		}
		switch next := s.Next(c.on); {
		case c.nextOn == 0 && next != nil:
			t.Errorf("on %s: next %+v, want none", c.on.ISO(), next)
		case c.nextOn != 0 && (next == nil || next.On != c.nextOn || next.Kind != c.next):
			t.Errorf("on %s: next %+v, want %d on %s", c.on.ISO(), next, c.next, c.nextOn.ISO())
		}
	}
	// Every time of every task stands in the week of its day, and in no week before.
	for i := range s.Tasks {
		k := &s.Tasks[i]
		for n := range k.Times {
			at := k.Day + day.Day(n*k.Every)
			has := func(on day.Day) bool {
				now, _ := s.Week(on)
				for _, d := range now {
					if d.Task == k && d.On == at {
						return true
					}
				}
				return false
			}
			if !has(at) || !has(at-6) || has(at-7) || has(at+day.Day(k.Days)) {
				t.Fatalf("%+v on %s", k, at.ISO())
			}
		}
	}
}
