package drain

import (
	"encoding/csv"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"evenrow/wasm/ground/day"
)

var nan = math.NaN()

// noted is an entry of which neither weather nor timer is told.
func noted(d int, out, ec, ph, feed float64) Entry {
	return Entry{Day: day.Day(d), Out: out, EC: ec, PH: ph, Feed: feed, Shots: nan, Long: nan}
}

// always is the same share on every day, and a timer that is not changed.
func always(wanted float64) func(*Entry) (float64, float64) {
	return func(*Entry) (float64, float64) { return wanted, 3300 }
}

func TestAdvice(t *testing.T) {
	tests := []struct {
		name    string
		log     []Entry
		wanted  float64
		change  float64
		reasons Reason
	}{
		// Derived: 1 - d over 1 - LF.
		{"as it should be", []Entry{noted(0, 0.20, 2.5, 6, 2), noted(1, 0.22, 2.5, 6, 2)}, 0.2, 0, 0},
		{"a little more", []Entry{noted(0, 0.12, nan, nan, nan), noted(1, 0.12, nan, nan, nan)}, 0.2, 0.88/0.8 - 1, TooLittle | NoEC},
		{"much more, one day at a time", []Entry{noted(0, 0.02, 2.5, nan, 2), noted(1, 0.0, 2.5, nan, 2)}, 0.3, Most, TooLittle | Held},
		{"no drain", []Entry{noted(0, 0, 2.5, nan, 2), noted(1, 0, 2.5, nan, 2)}, 0.1, Most, TooLittle | Nothing},
		{"less", []Entry{noted(0, 0.28, 2.4, nan, 2), noted(1, 0.28, 2.4, nan, 2)}, 0.2, 0.72/0.8 - 1, TooMuch},
		{"one day", []Entry{noted(0, 0.5, 2.4, nan, 2)}, 0.2, -Most, TooMuch | Held | Single},
		{"salt builds up although enough drains", []Entry{noted(0, 0.2, 4, nan, 2), noted(1, 0.2, 4, nan, 2)}, 0.2, 0.8/0.7 - 1, TooLittle | SaltUp},
		{"salt is high", []Entry{noted(0, 0.2, 3.2, nan, 2), noted(1, 0.2, 3.2, nan, 2)}, 0.2, 0, SaltHigh},
		{"drain weaker than feed", []Entry{noted(0, 0.45, 1.8, nan, 2), noted(1, 0.45, 1.8, nan, 2)}, 0.4, 0, Weak},
		{"sour", []Entry{noted(0, 0.2, 2.5, 4.5, 2), noted(1, 0.2, 2.5, 4.8, 2)}, 0.2, 0, TooSour},
		{"sweet", []Entry{noted(0, 0.2, 2.5, 7.5, 2), noted(1, 0.2, 2.5, nan, 2)}, 0.2, 0, TooSweet},
		{"old days do not count", []Entry{noted(0, 0.9, 9, nan, 2), noted(1, 0.2, 2.5, nan, 2), noted(2, 0.2, 2.5, nan, 2), noted(3, 0.2, 2.5, nan, 2)}, 0.2, 0, 0},
	}
	for _, tt := range tests {
		a := Advise(tt.log, always(tt.wanted))
		if math.Abs(a.Change-tt.change) > 1e-12 || a.Reasons != tt.reasons {
			t.Errorf("%s: %+v, want a change of %g for %b", tt.name, a, tt.change, tt.reasons)
		}
	}
	if a := Advise([]Entry{noted(0, nan, 3, 6, 2)}, always(0.2)); a.Days != 0 || a.Change != 0 {
		t.Errorf("without a drain: %+v", a)
	}
}

// Days of one weather are looked at together, and what the timer was set to on
// each of them counts.
func TestAdviceKnowsTheWeatherAndTheTimer(t *testing.T) {
	on := func(sky Sky, out, shots float64) Entry {
		return Entry{Out: out, EC: nan, PH: nan, Feed: nan, Sky: sky, Shots: shots, Long: 300}
	}
	of := func(e *Entry) (float64, float64) {
		return [...]float64{Untold: 0.2, Dull: 0.1, Typical: 0.2, Hot: 0.3}[e.Sky], e.Shots * e.Long
	}
	a := Advise([]Entry{on(Hot, 0.3, 15), on(Typical, 0.05, 11), on(Hot, 0.3, 15)}, of)
	if a.Days != 2 || a.Change != 0 || a.Last.Sky != Hot || a.Run != 4500 || a.Wanted != 0.3 {
		t.Errorf("two hot days: %+v", a)
	}
	if a = Advise([]Entry{on(Untold, 0.2, 11), on(Hot, 0.3, 15), on(Typical, 0.2, 11)}, of); a.Days != 2 || a.Change != 0 || a.Run != 3300 {
		t.Errorf("a day of no weather counts as typical: %+v", a)
	}
	// Derived: the plants took up 0.8 of 10 shots and then 0.9 of 12: 9.4 in the
	// mean, which is 0.8 of 11.75, 2 % less than 12.
	if a = Advise([]Entry{on(Typical, 0.2, 10), on(Typical, 0.1, 12)}, of); a.Change != 0 || a.Reasons != NoEC {
		t.Errorf("two settings: %+v", a)
	}
	if a = Advise([]Entry{on(Typical, 0.2, 10), on(Typical, 0.2, 14)}, of); math.Abs(a.Change-(12.0/14-1)) > 1e-12 {
		t.Errorf("two other settings: %+v", a)
	}
}

// Followed day by day, the advice leads to the drain that is wanted and stays
// there, whatever the plants use and however far off it began.
func TestAdviceLeadsThere(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 300 {
		// Where less than Close is wanted, no drain is right, and says nothing.
		use, given, wanted := 0.5+2*r.Float64(), 0.3+5*r.Float64(), 0.06+0.4*r.Float64()
		var log []Entry
		for d := range 60 {
			log = append(log, noted(d, max(0, 1-use/given), nan, nan, nan))
			a := Advise(log[max(0, len(log)-1):], always(wanted)) // as the last day says
			if math.Abs(a.Change) > Most {
				t.Fatalf("%+v", a)
			}
			given *= 1 + a.Change
		}
		if out := 1 - use/given; math.Abs(out-wanted) > Close+1e-9 {
			t.Fatalf("drain %g, want %g", out, wanted)
		}
	}
}

func form(rows ...string) func(string) string {
	m := map[string]string{}
	names := []string{DayName, "out", "ec", "ph", "feed", "shots", "minutes", SkyName}
	for i, r := range rows {
		for k, v := range strings.Split(r, "|") {
			m[Path(i+1, names[k])] = v
		}
	}
	return func(path string) string { return m[path] }
}

func TestRead(t *testing.T) {
	get := form("2027-06-03|20 %|2,6|6.1|2.0", "||||", "2.6.|15|x||25|11|5 min|hot", "yesterday|96|3||2", "|18|||")
	log, slips := Read(get, false, day.Of(2027, 7, 1))
	if len(log) != 3 || Rows(get) != 5 {
		t.Fatalf("%d entries, %d rows: %+v", len(log), Rows(get), log)
	}
	want := []Entry{
		{Day: day.Of(2027, 6, 2), Out: 0.15, EC: nan, PH: nan, Feed: nan, Shots: 11, Long: 300, Sky: Hot, Row: 3},
		{Day: day.Of(2027, 6, 3), Out: 0.20, EC: 2.6, PH: 6.1, Feed: 2.0, Shots: nan, Long: nan, Row: 1},
		{Day: day.Of(2027, 6, 3), Out: 0.18, EC: nan, PH: nan, Feed: nan, Shots: nan, Long: nan, Row: 5},
	}
	same := func(a, b float64) bool { return a == b || a != a && b != b }
	for i, e := range log {
		if w := want[i]; e.Day != w.Day || !same(e.Out, w.Out) || !same(e.EC, w.EC) || !same(e.PH, w.PH) || !same(e.Feed, w.Feed) || !same(e.Shots, w.Shots) || !same(e.Long, w.Long) || e.Sky != w.Sky || e.Row != w.Row {
			t.Errorf("entry %d is %+v, want %+v", i, e, w)
		}
	}
	var at []string
	for _, s := range slips {
		at = append(at, strings.TrimSuffix(s.Problem.Of(s.Path), "."))
	}
	if got, want := strings.Join(at, "; "), "log.3.ec must be a number, such as 12.5; log.3.feed must be from 0 to 20; log.4.day must be a date that exists, such as 15 July or 2027-07-15; log.4.out must be from 0 to 95"; got != want {
		t.Errorf("slips: %s\nwant %s", got, want)
	}
}

func TestCSVReadsBack(t *testing.T) {
	get := form("2027-06-03|20|2.6|6.1|2.0", `a "b", c|=1+1||-3|`)
	rows, err := csv.NewReader(strings.NewReader(CSV(get))).ReadAll()
	if err != nil || len(rows) != 3 {
		t.Fatalf("%v: %q", err, CSV(get))
	}
	if rows[0][1] != "Drain (%)" || rows[1][2] != "2.6" || rows[2][0] != `a "b", c` || rows[2][1] != "'=1+1" || rows[2][3] != "'-3" {
		t.Errorf("%q", rows)
	}
}

// Whatever is typed, reading does not fail and gives finite numbers or none.
func FuzzRead(f *testing.F) {
	f.Add("2027-06-03", "20", "2.6", "6", "2")
	f.Add("x", "1e999", "NaN", "-inf", "0x10")
	f.Fuzz(func(t *testing.T, a, b, c, d, e string) {
		m := map[string]string{Path(1, DayName): a, Path(1, "out"): b, Path(2, "ec"): c, Path(2, "out"): d, Path(MaxRows, "feed"): e}
		get := func(path string) string { return m[path] }
		log, slips := Read(get, false, 0)
		if len(log) > MaxRows || len(slips) > 5 {
			t.Fatal(len(log), len(slips))
		}
		for _, e := range log {
			for i := range Columns {
				v := *Columns[i].at(&e)
				if math.IsInf(v, 0) || v < Columns[i].low || v > Columns[i].high {
					t.Fatalf("%s is %g", Columns[i].Name, v)
				}
			}
		}
		if a := Advise(log, always(0.2)); math.IsNaN(a.Change) || math.Abs(a.Change) > Most {
			t.Fatalf("%+v", a)
		}
		if _, err := csv.NewReader(strings.NewReader(CSV(get))).ReadAll(); err != nil {
			t.Fatalf("%v: %s", err, strconv.Quote(CSV(get)))
		}
	})
}
