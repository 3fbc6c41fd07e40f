package plan

import (
	"reflect"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/trade/catalogue"
)

// A list that may be empty can be begun, and emptied again.
func TestListsThatMayBeEmpty(t *testing.T) {
	for _, section := range []string{"planting", "crop"} {
		d := DraftOf(Default())
		name := section + "s"
		act := func(action, want string) *Plan {
			t.Helper()
			d.Set(ActionName, action)
			if got := d.Apply(); got != want {
				t.Errorf("%s leads to %q, want %q", action, got, want)
			}
			d = ParseDraft(d.Encode())
			p, errs := d.Read()
			if len(errs) > 0 {
				t.Fatalf("after %s: %v", action, errs)
			}
			return p
		}
		act("remove-"+section+".1", "") // there is none
		act("add-"+section, name+".1")
		act("copy-"+section+".1", name+".2")
		if p := act("remove-"+section+".1", name+".1"); SectionNamed(name).Len(p) != 1 {
			t.Errorf("%s: %d are left, want 1", name, SectionNamed(name).Len(p))
		}
		if p := act("remove-"+section+".1", name+".0"); SectionNamed(name).Len(p) != 0 || !reflect.DeepEqual(p, Default()) {
			t.Errorf("%s: %d are left, want the default plan", name, SectionNamed(name).Len(p))
		}
	}
}

func TestDatesAreTyped(t *testing.T) {
	f := FieldNamed("season", "last-frost")
	for typed, want := range map[string]string{
		"2027-05-02": "", " 2028-02-29 ": "",
		"": "is missing", "  ": "is missing",
		"2027-02-29": "must be a date that exists, as year-month-day, such as 2027-05-12",
		"12 May":     "must be a date that exists, as year-month-day, such as 2027-05-12",
		"1999-12-31": "must be from 2000-01-01 to 2199-12-31",
	} {
		p := Default()
		problem := f.Read(p, 0, typed)
		if problem == nil {
			problem = f.rangeProblem(p, 0)
		}
		if said(problem) != want {
			t.Errorf("%q: %q, want %q", typed, said(problem), want)
		}
	}
	p := Default()
	p.Season.FirstFrost = p.Season.LastFrost
	if got := texts(p.Check()); !reflect.DeepEqual(got, []string{"season.first-frost: Season: first frost must be after the last frost and within a year of it, from 2027-05-13 to 2028-05-11"}) {
		t.Errorf("%q", got)
	}
	p = Default()
	p.Season.Frost = 0
	p.Season.FirstFrost = 0 // does not apply, is kept, and is not checked
	p.Plantings = []Planting{{Mode: FromFrost + 1, Times: 1, Every: 1, Date: p.Season.Date}}
	if got := texts(p.Check()); !reflect.DeepEqual(got, []string{
		"season.mode: Season: how dates are found must be another: the place has no frost",
		"plantings.1.mode: Planting 1: how dates are found must be another: the place has no frost"}) {
		t.Errorf("%q", got)
	}
}

// A number of a crop that is left empty is that of the table, in both systems,
// and what is typed is the grower's.
func TestNumbersOfCrops(t *testing.T) {
	for sys := range unit.System(unit.Systems) {
		p := Default()
		p.Units = sys
		SectionNamed("crops").Resize(p, 2)
		SectionNamed("crops").SetDefaults(p, 0)
		SectionNamed("crops").SetDefaults(p, 1)
		p.Crops[0].Of, p.Crops[1].Of = 1, 1
		if got := p.Trait(1, catalogue.Grown); got != catalogue.Crops[1].Of(catalogue.Grown) {
			t.Errorf("%g m³, want the table's", got)
		}
		d := DraftOf(p)
		for _, f := range SectionNamed("crops").Fields() {
			if f.Empty && d.Get(Path(f, 0)) != "" {
				t.Errorf("%s: typed %q, want nothing", Path(f, 0), d.Get(Path(f, 0)))
			}
		}
		d.Set("crops.1.grown", "0.9 gal")
		d.Set("crops.2.grown", "1")
		d.Set("crops.2.least", "-20 °C")
		d.Set("crops.2.name", "paste tomato")
		q, errs := d.Read()
		if len(errs) > 0 {
			t.Fatal(errs)
		}
		if got := q.Trait(1, catalogue.Grown); got != unit.Of(unit.Volume, unit.US).ToInner(0.9) {
			t.Errorf("the first record says 0.9 gal, got %g m³", got)
		}
		if got := q.Trait(1, catalogue.Least); got != -20 || q.CropName(1) != "paste tomato" || q.CropName(0) != "sweet pepper" {
			t.Errorf("least %g, names %q and %q", got, q.CropName(1), q.CropName(0))
		}
		if _, has := q.Edited(1, catalogue.Most); has {
			t.Error("nothing was typed for the most")
		}
		if days, how := q.Emergence(catalogue.FirstOwn, 3); days != 8 || how != catalogue.Tested {
			t.Errorf("a crop of the grower's own comes up in %g days", days)
		}
	}
}

// A plan is of one season: plantings that lie centuries apart took half a minute
// to work out, day by day.
func TestPlantingsOfOneSeason(t *testing.T) {
	const (
		far   = "must be within two years of the season's date, from 2025-05-12 to 2029-05-11"
		early = "must be another: the last frost is more than two years from the season's date"
	)
	date := func(year int) int { return isoDay(year, 5, 12) }
	for _, tt := range []struct {
		mode, season int // of the season, and its date
		own, planted int // of the planting
		problem      string
	}{
		{FromFrost, date(2027), FromSowing + 1, date(2029) - 1, ""},
		{FromFrost, date(2027), FromSowing + 1, date(2029), far},
		{FromFrost, date(2027), FromSowing + 1, date(2025), ""},
		{FromFrost, date(2027), FromSowing + 1, date(2025) - 1, far},
		{FromFrost, date(2199), FromSowing + 1, date(2027), ""}, // the season's own date does not apply
		{FromSowing, date(2027), FromHarvest + 1, date(2199), far},
		{FromSowing, date(2027), AsSeason, date(2199), ""}, // nor does this one
		{FromSowing, date(2025), FromFrost + 1, date(2199), ""},
		{FromSowing, date(2024), FromFrost + 1, date(2027), early},
	} {
		p := Default()
		p.Season.Mode, p.Season.Date, p.Season.LastFrost = tt.mode, tt.season, date(2027)
		s := SectionNamed("plantings")
		s.Resize(p, 1)
		s.SetDefaults(p, 0)
		p.Plantings[0].Mode, p.Plantings[0].Date = tt.own, tt.planted
		got := ""
		for _, e := range p.Check() {
			_, problem, _ := strings.Cut(e.Text, " must ")
			got += clause("", "must "+problem)
		}
		if got != tt.problem {
			t.Errorf("%+v: %q", tt, got)
		}
	}
}
