package day_test

import (
	"fmt"
	"testing"
	"time"

	"evenrow/wasm/ground/day"
)

const fao = "FAO-56 (Allen, Pereira, Raes and Smith, 1998), annex 2, table 2.5"

// The numbers of days in the year that formulas about the sun count with.
func TestDayOfYear(t *testing.T) {
	tests := []struct {
		id               string
		year, month, dom int
		want             int
	}{ // source: fao
		{"DY-00", 2027, 7, 15, 196},
		{"DY-01", 2027, 9, 3, 246},
		{"DY-03", 2027, 4, 15, 105},
		{"DY-04", 2027, 3, 1, 60},
		{"DY-05", 2028, 3, 1, 61}, // the table: add 1 after February in leap years
	}
	for _, tt := range tests {
		if got := day.Of(tt.year, tt.month, tt.dom).OfYear(); got != tt.want {
			t.Errorf("%s: %d-%d-%d is day %d of its year, want %d (%s)", tt.id, tt.year, tt.month, tt.dom, got, tt.want, fao)
		}
	}
}

// Go's own time package counts with the same calendar, and is the reference
// here for every day of four centuries and for scattered ones beyond.
func TestEveryDayOfFourCenturies(t *testing.T) {
	for d := day.Of(1800, 1, 1); d < day.Of(2200, 1, 2); d++ {
		agrees(t, d)
	}
}

func agrees(t *testing.T, d day.Day) {
	t.Helper()
	ref := time.Unix(int64(d)*86400, 0).UTC()
	y, m, dom := d.Date()
	if y != ref.Year() || m != int(ref.Month()) || dom != ref.Day() {
		t.Fatalf("day %d is %d-%d-%d, want %s", d, y, m, dom, ref.Format(time.DateOnly))
	}
	if d.OfYear() != ref.YearDay() || (d.Weekday()+1)%7 != int(ref.Weekday()) || d.WeekdayName() != ref.Weekday().String() {
		t.Fatalf("%s is day %d of the year and a %s, want %d and %s", d.ISO(), d.OfYear(), d.WeekdayName(), ref.YearDay(), ref.Weekday())
	}
	if day.Of(y, m, dom) != d {
		t.Fatalf("%d-%d-%d is day %d, want %d", y, m, dom, day.Of(y, m, dom), d)
	}
	if day.First <= d && d <= day.Last {
		if got, want := d.ISO(), ref.Format(time.DateOnly); got != want {
			t.Fatalf("day %d is written %s, want %s", d, got, want)
		}
		if got, want := d.InWeek()+", "+day.MonthName(m)+", "+day.MonthShort(m), ref.Format("Mon 2 January, January, Jan"); got != want {
			t.Fatalf("day %d is written %s, want %s", d, got, want)
		}
		if got, want := d.Words(), ref.Format("2 January 2006"); y > 999 && got != want {
			t.Fatalf("day %d is written %s, want %s", d, got, want)
		}
		if back, ok := day.Parse(d.ISO()); !ok || back != d {
			t.Fatalf("%s is read as %d, %t, want %d", d.ISO(), back, ok, d)
		}
	}
}

func FuzzDay(f *testing.F) {
	for _, d := range []day.Day{day.First - 1, day.First, day.Last, day.Last + 1, 0, -1, 11016, -135080} {
		f.Add(int32(d), int8(13), int16(0))
	}
	f.Fuzz(func(t *testing.T, n int32, month int8, dom int16) {
		d := day.Day(n % 200_000_000) // some 500,000 years both ways
		agrees(t, d)
		y := d.Year()
		ref := time.Date(y, time.Month(month), int(dom), 0, 0, 0, 0, time.UTC)
		if got := day.Of(y, int(month), int(dom)); int64(got)*86400 != ref.Unix() {
			t.Fatalf("Of(%d, %d, %d) is %s, want %s", y, month, dom, got.ISO(), ref.Format(time.DateOnly))
		}
		if got, want := day.InMonth(y, int(month)), time.Date(y, time.Month(month)+1, 0, 0, 0, 0, 0, time.UTC).Day(); got != want {
			t.Fatalf("month %d of %d has %d days, want %d", month, y, got, want)
		}
		if got, want := day.Leap(y), time.Date(y, 12, 31, 0, 0, 0, 0, time.UTC).YearDay() == 366; got != want {
			t.Fatalf("year %d leaps: %t, want %t", y, got, want)
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"2027-05-12", "2027-02-29", "2028-02-29", "0000-01-01", "9999-12-31", "2027-13-01", "2027-00-10", "+027-05-12", "2027-5-12", "2027-05-1٢", ""} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		d, ok := day.Parse(text)
		ref, err := time.Parse(time.DateOnly, text)
		if ok != (err == nil) || ok && int64(d)*86400 != ref.Unix() {
			t.Fatalf("%q is read as %s, %t; Go reads %s, %v", text, d.ISO(), ok, ref.Format(time.DateOnly), err)
		}
	})
}

func TestNth(t *testing.T) {
	for year := 1900; year < 2101; year++ {
		for month := 1; month <= 12; month++ {
			for weekday := range 7 {
				var all []day.Day // every such weekday of the month, counted out
				for d := day.Of(year, month, 1); d < day.Of(year, month+1, 1); d++ {
					if d.Weekday() == weekday {
						all = append(all, d)
					}
				}
				for n := 1; n <= 4; n++ {
					if got := day.Nth(year, month, weekday, n); got != all[n-1] {
						t.Fatalf("%d. weekday %d of %d-%d is %s, want %s", n, weekday, year, month, got.ISO(), all[n-1].ISO())
					}
				}
				if got := day.Nth(year, month, weekday, 5); got != all[len(all)-1] {
					t.Fatalf("last weekday %d of %d-%d is %s", weekday, year, month, got.ISO())
				}
			}
		}
	}
}

func TestDaysFarAwayAreWritten(t *testing.T) {
	for _, tt := range []struct {
		d    day.Day
		want string
	}{
		{day.First - 1, "-0001-12-31"},
		{day.Last + 1, "10000-01-01"},
		{day.Of(-12345, 3, 1), "-12345-03-01"},
		{day.Of(7, 3, 1), "0007-03-01"},
	} {
		if got := tt.d.ISO(); got != tt.want {
			t.Errorf("day %d is written %s, want %s", tt.d, got, tt.want)
		}
	}
}

func ExampleDay_Words() {
	frost, _ := day.Parse("2027-05-12")
	fmt.Println(frost.Words(), "is a", frost.WeekdayName())
	fmt.Println((frost + 140).Short())
	// Output:
	// 12 May 2027 is a Wednesday
	// 29 September
}
