package drain

import (
	"encoding/csv"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"evenrow/wasm/day"
)

var nan = math.NaN()

func TestAdvice(t *testing.T) {
	tests := []struct {
		name    string
		log     []Entry
		wanted  float64
		change  float64
		reasons Reason
	}{
		// Derived: 1 - d over 1 - LF.
		{"as it should be", []Entry{{0, 0.20, 2.5, 6, 2}, {1, 0.22, 2.5, 6, 2}}, 0.2, 0, 0},
		{"a little more", []Entry{{0, 0.12, nan, nan, nan}, {1, 0.12, nan, nan, nan}}, 0.2, 0.88/0.8 - 1, TooLittle | NoEC},
		{"much more, one day at a time", []Entry{{0, 0.02, 2.5, nan, 2}, {1, 0.0, 2.5, nan, 2}}, 0.3, Most, TooLittle | Held},
		{"no drain", []Entry{{0, 0, 2.5, nan, 2}, {1, 0, 2.5, nan, 2}}, 0.1, Most, TooLittle | Nothing},
		{"less", []Entry{{0, 0.28, 2.4, nan, 2}, {1, 0.28, 2.4, nan, 2}}, 0.2, 0.72/0.8 - 1, TooMuch},
		{"one day", []Entry{{0, 0.5, 2.4, nan, 2}}, 0.2, -Most, TooMuch | Held | Single},
		{"salt builds up although enough drains", []Entry{{0, 0.2, 4, nan, 2}, {1, 0.2, 4, nan, 2}}, 0.2, 0.8/0.7 - 1, TooLittle | SaltUp},
		{"salt is high", []Entry{{0, 0.2, 3.2, nan, 2}, {1, 0.2, 3.2, nan, 2}}, 0.2, 0, SaltHigh},
		{"drain weaker than feed", []Entry{{0, 0.45, 1.8, nan, 2}, {1, 0.45, 1.8, nan, 2}}, 0.4, 0, Weak},
		{"sour", []Entry{{0, 0.2, 2.5, 4.5, 2}, {1, 0.2, 2.5, 4.8, 2}}, 0.2, 0, TooSour},
		{"sweet", []Entry{{0, 0.2, 2.5, 7.5, 2}, {1, 0.2, 2.5, nan, 2}}, 0.2, 0, TooSweet},
		{"old days do not count", []Entry{{0, 0.9, 9, nan, 2}, {1, 0.2, 2.5, nan, 2}, {2, 0.2, 2.5, nan, 2}, {3, 0.2, 2.5, nan, 2}}, 0.2, 0, 0},
	}
	for _, tt := range tests {
		a := Advise(tt.log, tt.wanted)
		if math.Abs(a.Change-tt.change) > 1e-12 || a.Reasons != tt.reasons {
			t.Errorf("%s: %+v, want a change of %g for %b", tt.name, a, tt.change, tt.reasons)
		}
	}
	if a := Advise([]Entry{{0, nan, 3, 6, 2}}, 0.2); a.Days != 0 || a.Change != 0 {
		t.Errorf("without a drain: %+v", a)
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
			log = append(log, Entry{day.Day(d), max(0, 1-use/given), nan, nan, nan})
			a := Advise(log[max(0, len(log)-1):], wanted) // as the last day says
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
	names := []string{DayName, "out", "ec", "ph", "feed"}
	for i, r := range rows {
		for k, v := range strings.Split(r, "|") {
			m[Path(i+1, names[k])] = v
		}
	}
	return func(path string) string { return m[path] }
}

func TestRead(t *testing.T) {
	get := form("2027-06-03|20 %|2,6|6.1|2.0", "||||", "2027-06-02|15|x||25", "yesterday|96|3||2", "|18|||")
	log, slips := Read(get)
	if len(log) != 4 || Rows(get) != 5 {
		t.Fatalf("%d entries, %d rows: %+v", len(log), Rows(get), log)
	}
	want := []Entry{
		{day.Of(2027, 6, 2), 0.15, nan, nan, nan},
		{day.Of(2027, 6, 3), 0.20, 2.6, 6.1, 2.0},
		{day.Of(2027, 6, 3), nan, 3, nan, 2},
		{day.Of(2027, 6, 3), 0.18, nan, nan, nan},
	}
	same := func(a, b float64) bool { return a == b || a != a && b != b }
	for i, e := range log {
		if w := want[i]; e.Day != w.Day || !same(e.Out, w.Out) || !same(e.EC, w.EC) || !same(e.PH, w.PH) || !same(e.Feed, w.Feed) {
			t.Errorf("entry %d is %+v, want %+v", i, e, w)
		}
	}
	var at []string
	for _, s := range slips {
		at = append(at, s.Path+" "+s.Problem)
	}
	if got, want := strings.Join(at, "; "), "log.3.ec must be a number, such as 12.5; log.3.feed must be from 0 to 20; log.4.day must be a date such as 2027-06-30; log.4.out must be from 0 to 95"; got != want {
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
		log, slips := Read(get)
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
		if a := Advise(log, 0.2); math.IsNaN(a.Change) || math.Abs(a.Change) > Most {
			t.Fatalf("%+v", a)
		}
		if _, err := csv.NewReader(strings.NewReader(CSV(get))).ReadAll(); err != nil {
			t.Fatalf("%v: %s", err, strconv.Quote(CSV(get)))
		}
	})
}
