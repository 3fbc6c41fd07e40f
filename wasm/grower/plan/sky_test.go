package plan

import (
	"strings"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
)

// own is a form that asks for twelve months of its own.
func ownMonths(table string) Draft {
	d := DraftOf(Default())
	d.Set("sky.climate", "own")
	d.Set(TableName, table)
	d.Set(ActionName, FillMonths)
	return d
}

// lines makes a table of twelve lines.
func lines(line string) string { return strings.Repeat(line+"\n", 12) }

func TestPastedMonths(t *testing.T) {
	for _, c := range []struct {
		name, table string
		high, low   float64 // of December
	}{
		{"plain", lines("21.5 10.25"), 21.5, 10.25},
		{"decimal commas and tabs", lines("21,5\t10,25"), 21.5, 10.25},
		{"semicolons, a heading and carriage returns", "Month;High;Low\r\n" + strings.ReplaceAll(lines("Dec;21,5;10,25\r"), "\r\r", "\r"), 21.5, 10.25},
		{"commas that divide", lines("21.5,-10.25"), 21.5, -10.25},
		{"degrees and true minus signs", lines("21.5°C −10.25°C"), 21.5, -10.25},
		{"low before high", lines("-3 4"), 4, -3},
		{"months by number", "1 9 3\n2 9 3\n3 9 3\n4 9 3\n5 9 3\n6 9 3\n7 9 3\n8 9 3\n9 9 3\n10 9 3\n11 9 3\n12 9 2\n", 9, 2},
		{"two lines", "high 1 2 3 4 5 6 7 8 9 10 11 12\nlow 0 0 0 0 0 0 0 0 0 0 0 -1", 12, -1},
		{"empty lines between", strings.ReplaceAll(lines("5 1"), "\n", "\n\n"), 5, 1},
	} {
		d := ownMonths(c.table)
		focus := d.Apply()
		p, errs := d.Read()
		if len(errs) > 0 || focus != "months.1" || d.Has(TableName) {
			t.Errorf("%s: %v, focus %q", c.name, errs, focus)
			continue
		}
		if m := p.Months[11]; m.High != c.high || m.Low != c.low {
			t.Errorf("%s: December is %+v, want %g and %g", c.name, m, c.high, c.low)
		}
		if high, low := p.Year(); high[11] != c.high || low[11] != c.low {
			t.Errorf("%s: the year ends at %g and %g", c.name, high[11], low[11])
		}
	}
}

func TestATableThatCannotBeReadStays(t *testing.T) {
	for _, c := range []struct{ name, table, problem string }{
		{"eleven lines", strings.TrimSuffix(lines("5 1"), "5 1\n"), "must have twelve lines with numbers, one for each month, not 11"},
		{"one number", "5\n" + lines("5 1"), "must have a high and a low in each line: line 1 has 1 number"},
		{"words", "no numbers here", "must have twelve lines with numbers, one for each month, not 0"},
	} {
		d := ownMonths(c.table)
		d.Apply()
		_, errs := d.Read()
		if len(errs) != 1 || errs[0].Path != TableName || clause("The pasted table", errs[0].Text) != c.problem {
			t.Errorf("%s: %v, want %q", c.name, errs, c.problem)
		}
		if d.Get(TableName) != c.table {
			t.Errorf("%s: %q is left of it", c.name, d.Get(TableName))
		}
		// It stays through changes of other things, without more ado.
		d = ParseDraft(d.Encode())
		d.Apply()
		if _, errs := d.Read(); len(errs) > 0 || d.Get(TableName) != c.table {
			t.Errorf("%s: later %v, and %q is left", c.name, errs, d.Get(TableName))
		}
	}
}

func TestTwelveMonthsStartAsTheSketch(t *testing.T) {
	for _, units := range []string{"metric", "us"} {
		d := DraftOf(Default())
		d.Set(UnitsWas, "metric")
		d.Set("units", units)
		d.Set("sky.climate", "own")
		d.Apply()
		p, errs := d.Read()
		high, low := Default().Year()
		if len(errs) > 0 || len(p.Months) != 12 {
			t.Fatalf("%v, %d months", errs, len(p.Months))
		}
		for i, m := range p.Months {
			if unit.Text(unit.Temperature, unit.Metric, m.High) != unit.Text(unit.Temperature, unit.Metric, high[i]) ||
				unit.Text(unit.Temperature, unit.Metric, m.Low) != unit.Text(unit.Temperature, unit.Metric, low[i]) {
				t.Errorf("%s: month %d is %+v, want %g and %g", units, i+1, m, high[i], low[i])
			}
		}
		// What was typed outlives another climate in between.
		d.Set("months.3.high", "17")
		d.Set("sky.climate", "coast")
		d.Apply()
		d.Set("sky.climate", "own")
		d.Apply()
		if got := d.Get("months.3.high"); got != "17" {
			t.Errorf("%s: March was 17 and is %s", units, got)
		}
	}
}

func TestTheSouthHasTheSketchHalfAYearOn(t *testing.T) {
	p := Default()
	north, _ := p.Year()
	p.Sky.Latitude = -35
	south, _ := p.Year()
	for i := range north {
		if south[i] != north[(i+6)%12] {
			t.Fatalf("month %d: %g in the south, %v in the north", i+1, south[i], north)
		}
	}
}

// Days of change in 2027, counted on a calendar.
func TestClock(t *testing.T) {
	for _, c := range []struct {
		summer int
		d      string
		want   float64 // h ahead
	}{
		{NoSummer, "2027-07-01", 1},
		{MarchOctober, "2027-03-27", 1},
		{MarchOctober, "2027-03-28", 2},
		{MarchOctober, "2027-10-30", 2},
		{MarchOctober, "2027-10-31", 1},
		{MarchNov, "2027-03-13", 1},
		{MarchNov, "2027-03-14", 2},
		{MarchNov, "2027-11-06", 2},
		{MarchNov, "2027-11-07", 1},
		{OctoberApril, "2027-04-03", 2},
		{OctoberApril, "2027-04-04", 1},
		{OctoberApril, "2027-10-02", 1},
		{OctoberApril, "2027-10-03", 2},
		{OctoberApril, "2028-01-01", 2},
		{OwnSummer, "2027-06-01", 2},
		{OwnSummer, "2028-05-14", 1},
		{OwnSummer, "2028-05-15", 2},
		{OwnSummer, "2028-09-01", 1},
	} {
		s := Default().Sky
		s.Summer = c.summer
		s.SummerFrom, s.SummerTo = isoDay(2027, 5, 15), isoDay(2027, 9, 1)
		d, _ := day.Parse(c.d)
		if got := s.Clock(d) / 3600; got != c.want {
			t.Errorf("rule %d on %s: %g h ahead, want %g", c.summer, c.d, got, c.want)
		}
	}
}

func TestSetClock(t *testing.T) {
	for _, c := range []struct {
		name, changes  string
		offset, summer string // as typed; empty when refused
	}{
		{"central Europe", "2027-01-01 60\n2027-03-28 120\n2027-10-31 60\n2028-03-26 120", "1", "march-october"},
		{"from a day in summer", "2027-06-01 120\n2027-10-31 60\n2028-03-26 120\n", "1", "march-october"},
		{"the west of North America", "2027-01-01 -480\n2027-03-14 -420\n2027-11-07 -480", "-8", "march-november"},
		{"the south of Australia", "2027-01-01 630\n2027-04-04 570\n2027-10-03 630", "9.5", "october-april"},
		{"no change", "2027-01-01 345", "5.75", "none"},
		{"a line twice", "2027-01-01 60\n2027-02-01 60", "1", "none"},
		{"days of no rule", "2027-01-01 120\n2027-03-26 180\n2027-10-29 120", "2", "own"},
		{"half an hour of summer time", "2027-01-01 660\n2027-04-04 630\n2027-10-03 660", "", ""},
		{"one change for ever", "2027-01-01 60\n2027-03-28 120", "", ""},
		{"nothing", "", "", ""},
		{"no day", "2027-02-30 60", "", ""},
		{"out of order", "2027-03-28 60\n2027-01-01 120\n2027-10-31 60", "", ""},
		{"no number", "2027-01-01 x", "", ""},
	} {
		d := DraftOf(Default())
		before := d.Encode()
		ok := d.SetClock(c.changes)
		if ok != (c.offset != "") {
			t.Errorf("%s: %t", c.name, ok)
			continue
		}
		if !ok {
			if d.Encode() != before {
				t.Errorf("%s: refused, and changed the draft", c.name)
			}
			continue
		}
		p, errs := d.Read()
		if len(errs) > 0 || d.Get("sky.offset") != c.offset || d.Get("sky.summer") != c.summer {
			t.Errorf("%s: %v, offset %q and summer %q, want %q and %q", c.name, errs, d.Get("sky.offset"), d.Get("sky.summer"), c.offset, c.summer)
		}
		if c.summer == "own" && (day.Day(p.Sky.SummerFrom).ISO() != "2027-03-26" || day.Day(p.Sky.SummerTo).ISO() != "2027-10-29") {
			t.Errorf("%s: from %s to %s", c.name, day.Day(p.Sky.SummerFrom).ISO(), day.Day(p.Sky.SummerTo).ISO())
		}
	}
}

func TestQuartersOfAnHour(t *testing.T) {
	d := DraftOf(Default())
	d.Set("sky.offset", "5,75")
	if _, errs := d.Read(); len(errs) > 0 {
		t.Error(errs)
	}
	d.Set("sky.offset", "5.7")
	if _, errs := d.Read(); len(errs) != 1 || errs[0].Text != "Sun and weather: UTC offset in winter must be in whole quarters of an hour, such as 5.75." {
		t.Error(errs)
	}
}

func FuzzMonthsAndClock(f *testing.F) {
	f.Add(lines("21,5\t10,25"), "2027-01-01 60\n2027-03-28 120\n2027-10-31 60")
	f.Add("1 2 3 4 5 6 7 8 9 10 11 12\n1 2 3 4 5 6 7 8 9 10 11 12", "2027-01-01 -180")
	f.Add("1e400 5\n", "2027-01-01 99999999999999999999")
	f.Add("", "0000-01-01 60\n0000-01-02 0\n0000-10-01 60") // days that no plan can hold
	f.Add("", "2199-01-01 0\n2199-03-02 60\n2200-10-01 0")
	f.Fuzz(func(t *testing.T, table, clock string) {
		d := ownMonths(table)
		read := d.Apply() == "months.1"
		if read == d.Has(TableName) {
			t.Fatalf("read: %t, and %q is left", read, d.Get(TableName))
		}
		before := d.Encode()
		if ok := d.SetClock(clock); !ok && d.Encode() != before {
			t.Fatalf("%q was refused and changed the draft", clock)
		}
		p, errs := d.Read()
		if len(p.Months) != 12 {
			t.Fatalf("%d months", len(p.Months))
		}
		for _, e := range errs { // a clock that was taken is a clock that is in range
			if strings.HasPrefix(e.Path, "sky.") && e.Path != "sky.climate" {
				t.Fatalf("%q gives %v", clock, e)
			}
		}
	})
}
