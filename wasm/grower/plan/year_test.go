package plan

import (
	"math/rand/v2"
	"testing"

	"evenrow/wasm/ground/day"
)

// season is a draft with its dates, as they are typed.
func season(mode, date, last, first string) Draft {
	d := DraftOf(Default())
	d.Set("season.mode", mode)
	d.Set("season.date", date)
	d.Set("season.last-frost", last)
	d.Set("season.first-frost", first)
	return d
}

// All dates move by as many years as that which the season is counted from. South
// of the equator a season begins in one year and ends in the next.
func TestSeasonMoves(t *testing.T) {
	for _, c := range []struct {
		what                    string
		d                       Draft
		to                      string
		date, last, first, year string
	}{
		{"a year on", season("frost", "2027-05-15", "2027-05-12", "2027-10-08"), "2028", "2028-05-15", "2028-05-12", "2028-10-08", "2028-03-01"},
		{"back", season("frost", "2027-05-15", "2027-05-12", "2027-10-08"), "2024", "2024-05-15", "2024-05-12", "2024-10-08", "2024-03-01"},
		{"over new year", season("frost", "2027-10-15", "2027-10-01", "2028-05-20"), "2029", "2029-10-15", "2029-10-01", "2030-05-20", "2029-03-01"},
		{"by its date", season("planting", "2026-11-15", "2027-05-12", "2027-10-08"), "2027", "2027-11-15", "2028-05-12", "2028-10-08", "2028-03-01"},
		{"from a leap day", season("frost", "2028-02-29", "2028-02-29", "2028-10-08"), "2029", "2029-02-28", "2029-02-28", "2029-10-08", "2028-03-01"},
		{"a year of frost and a leap day", season("frost", "2027-05-15", "2027-02-28", "2028-02-28"), "2028", "2028-05-15", "2028-02-28", "2029-02-27", "2028-03-01"},
		{"where it is", season("frost", "2027-05-15", "2027-05-12", "2027-10-08"), "2027", "2027-05-15", "2027-05-12", "2027-10-08", "2027-03-01"},
		{"too late", season("frost", "2027-05-15", "2027-05-12", "2027-10-08"), "2200", "2027-05-15", "2027-05-12", "2027-10-08", "2027-03-01"},
		{"the frost after it too late", season("frost", "2027-05-15", "2027-10-12", "2028-05-08"), "2199", "2027-05-15", "2027-10-12", "2028-05-08", "2027-03-01"},
		{"no year", season("frost", "2027-05-15", "2027-05-12", "2027-10-08"), "next", "2027-05-15", "2027-05-12", "2027-10-08", "2027-03-01"},
		{"no date to count from", season("frost", "2027-05-15", "soon", "2027-10-08"), "2028", "2027-05-15", "soon", "2027-10-08", "2027-03-01"},
		{"another date that is none", season("frost", "2027-05-15", "2027-05-12", "late"), "2028", "2028-05-15", "2028-05-12", "late", "2028-03-01"},
	} {
		was := c.d.Get("season.last-frost")
		c.d.Set(ActionName, SeasonTo+c.to)
		focus := c.d.Apply()
		for path, want := range map[string]string{"season.date": c.date, "season.last-frost": c.last, "season.first-frost": c.first} {
			if got := c.d.Get(path); got != want {
				t.Errorf("%s: %s is %s, want %s", c.what, path, got, want)
			}
		}
		if moved := was != c.last; moved && focus != "season" || c.d.Has(ActionName) {
			t.Errorf("%s: focus %q", c.what, focus)
		}
		if c.what != "from a leap day" && c.d.Get("season.start") != c.year {
			t.Errorf("%s: built from %s, want %s", c.what, c.d.Get("season.start"), c.year)
		}
	}
}

// A plan without errors has none once its season is in another year, and what is
// no date of the season stays. There and back is the same but for leap days.
func TestSeasonMovesWhole(t *testing.T) {
	r := rand.New(rand.NewPCG(41, 42))
	moved, leaps := 0, 0
	for range 3000 {
		p := Default()
		s := &p.Season
		s.Mode = r.IntN(4)
		s.Date = int(day.Of(2020+r.IntN(20), 1, 1)) + r.IntN(366)
		s.LastFrost = s.Date + r.IntN(200) - 100
		s.FirstFrost = s.LastFrost + 1 + r.IntN(365)
		s.Start = s.Date - r.IntN(300)
		for range r.IntN(4) {
			p.Plantings = append(p.Plantings, Planting{Mode: FromSowing + 1 + r.IntN(3), Date: p.anchor() + r.IntN(2*apart+1) - apart, Times: 1, Every: 7})
		}
		if len(p.Check()) > 0 {
			continue
		}
		d := DraftOf(p)
		years := r.IntN(9) - 4
		d.Set(ActionName, SeasonTo+day.Of(p.SeasonYear()+years, 1, 1).ISO()[:4])
		d.Apply()
		q, errs := d.Read()
		if len(errs) > 0 {
			t.Fatalf("%+v %+v\nmoved by %d: %v", p.Season, p.Plantings, years, errs)
		}
		if q.SeasonYear() != p.SeasonYear()+years {
			t.Fatalf("the season of %d moved by %d is of %d", p.SeasonYear(), years, q.SeasonYear())
		}
		moved++
		back := q.SeasonMoved(-years)
		for i, at := range [][2]int{{back.Season.Date, s.Date}, {back.Season.LastFrost, s.LastFrost}, {back.Season.FirstFrost, s.FirstFrost}, {back.Season.Start, s.Start}} {
			if at[0] == at[1] {
				continue
			}
			// 29 February is the 28th now, and a frost that came 365 days after the
			// other may come a day earlier.
			if leaps++; at[0] < at[1]-1 || at[0] > at[1] {
				t.Fatalf("date %d: %s there and back is %s", i, day.Day(at[1]).ISO(), day.Day(at[0]).ISO())
			}
		}
	}
	if moved < 1500 || leaps > moved/20 {
		t.Errorf("%d moved, %d dates not the same there and back", moved, leaps)
	}
}
