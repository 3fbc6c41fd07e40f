package day_test

import (
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/words"
)

// Dates as people write them; the order of day and month with strokes is that
// of the plan's units (common practice, no source).
func TestRead(t *testing.T) {
	near := day.Of(2027, 7, 1)
	for _, c := range []struct {
		text string
		us   bool
		want string // "" for none
	}{
		{"2027-07-15", false, "2027-07-15"}, {"2027-07-15", true, "2027-07-15"}, {"2027-7-15", true, "2027-07-15"}, {"2027/07/15", true, "2027-07-15"}, {"2027.7.15", false, "2027-07-15"},
		{"15.7.", false, "2027-07-15"}, {"15.7.", true, "2027-07-15"}, {"15.07", false, "2027-07-15"}, {"15. 7. 2028", false, "2028-07-15"}, {"15.7.28", true, "2028-07-15"},
		{"15/7/2027", false, "2027-07-15"}, {"15/7/2027", true, "2027-07-15"}, {"7/15/2027", true, "2027-07-15"}, {"7/15/27", false, "2027-07-15"},
		{"5/7", false, "2027-07-05"}, {"5/7", true, "2027-05-07"}, {"5/7/2026", true, "2026-05-07"}, {"5-7-2026", false, "2026-07-05"}, {"5.7.2026", true, "2026-07-05"},
		{"15 July", false, "2027-07-15"}, {"15 July", true, "2027-07-15"}, {"Jul 15", false, "2027-07-15"}, {"july 15, 2026", true, "2026-07-15"}, {"15th July 2027", false, "2027-07-15"},
		{"Sat 15 May", false, "2027-05-15"}, {"Sept 1st", false, "2027-09-01"}, {" 3 Mar 27 ", false, "2027-03-03"}, {"2027 July 15", false, "2027-07-15"}, {"1 May.", true, "2027-05-01"},
		{"1 January", false, "2027-01-01"}, {"29 Feb", false, "2028-02-29"}, {"30 Nov", false, "2027-11-30"},
		{"", false, ""}, {"yesterday", false, ""}, {"15", false, ""}, {"31.6.", false, ""}, {"29.2.2027", false, ""}, {"15 J", false, ""}, {"15 Jux", false, ""}, {"13/13", false, ""}, {"0.7.", false, ""},
		{"15.7.2", false, ""}, {"15.7.202", false, ""}, {"1 2 3 4", false, ""}, {"15 July Aug", false, ""}, {"15 July 3 4", false, ""}, {"July", false, ""}, {"15 juillet", false, ""}, {"15<7", false, ""}, {"15000 July", false, ""},
	} {
		d, ok := day.Read(c.text, c.us, near)
		if ok != (c.want != "") || ok && d.ISO() != c.want {
			t.Errorf("%q, month first %t: %s, %t, want %q", c.text, c.us, d.ISO(), ok, c.want)
		}
	}
	// The year is the nearest.
	if d, _ := day.Read("2 Jan", false, day.Of(2027, 12, 20)); d != day.Of(2028, 1, 2) {
		t.Errorf("2 January is read as %s", d.ISO())
	}
}

// In another language dates are written and read as it does, and English ones
// are read still.
func TestAnotherLanguage(t *testing.T) {
	l, problem := words.Read("counts: one many\n\nMarch\nMärz\n\nMar\nMrz\n\n{day} March\n{day}. März\n\nTue {date}\nDi., {date}\n")
	if problem != "" {
		t.Fatal(problem)
	}
	words.Use(l)
	defer words.Use(nil)
	d := day.Of(2027, 3, 2)
	if got := d.Words() + "; " + d.InWeek() + "; " + day.MonthName(3) + "; " + day.MonthShort(3); got != "2. März 2027; Di., 2. März; März; Mrz" {
		t.Error(got)
	}
	for _, text := range []string{"2. März 2027", "2 mär 2027", "2 March 2027", "Mar 2 2027"} {
		if got, ok := day.Read(text, false, 0); !ok || got != d {
			t.Errorf("%q is read as %s, %t", text, got.ISO(), ok)
		}
	}
}

// What the calendar writes is read back, in both orders.
func FuzzRead(f *testing.F) {
	f.Add(int32(21000), "15.7.")
	f.Fuzz(func(t *testing.T, n int32, text string) {
		day.Read(text, true, 0)
		d := day.Of(2027, 1, 1) + day.Day(n%30000)
		if d < day.Of(1000, 1, 1) {
			return
		}
		for _, us := range []bool{false, true} {
			for _, s := range []string{d.ISO(), d.Words(), d.WeekdayName() + " " + d.Words()} {
				if got, ok := day.Read(s, us, 0); !ok || got != d {
					t.Fatalf("%q is read as %s, %t", s, got.ISO(), ok)
				}
			}
			if got, ok := day.Read(d.Short(), us, d+100); !ok || got != d {
				t.Fatalf("%q near %s is read as %s", d.Short(), (d + 100).ISO(), got.ISO())
			}
		}
	})
}
