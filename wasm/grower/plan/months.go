package plan

import (
	"strconv"
	"strings"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
)

// Names in form data for a table of months that was pasted. It is no field:
// the action FillMonths of [Draft.Apply] turns it into the months.
const (
	TableName  = "months-table"
	FillMonths = "fill-months"
)

// fillMonths puts the pasted table into the months and reports whether it
// could. A table that cannot be read stays as it was pasted, and [Draft.Read]
// says why.
func (d *Draft) fillMonths() bool {
	rows, problem := readTable(d.values[TableName])
	if problem != nil {
		d.table = problem
		return false
	}
	high, low := FieldNamed("months", "high"), FieldNamed("months", "low")
	for i, r := range rows {
		d.Set(Path(high, i), r[0])
		d.Set(Path(low, i), r[1])
	}
	h := d.history()
	h.set(high, []Origin{LookedUp})
	h.set(low, []Origin{LookedUp})
	d.settle(&h)
	delete(d.values, TableName)
	return true
}

// tableProblem says what is wrong with the pasted table.
func (d *Draft) tableProblem() *words.Remark {
	pasted := d.values[TableName]
	if tooLong(pasted) == nil {
		return d.table
	}
	return words.About("{field} must be at most {most} kB, not {n} kB: paste the means of twelve months, not every day.", words.N(MaxTyped>>10), kilobytes(pasted))
}

// startMonths types the first sketch where twelve months are asked for and
// none is there yet.
func (d *Draft) startMonths() {
	s := SectionNamed("months")
	if d.values["sky.climate"] != "own" || d.Records(s) > 0 {
		return
	}
	p := Default()
	p.Units = d.system("units")
	high, low := p.Year()
	s.Resize(p, 12)
	for i := range p.Months {
		p.Months[i] = Month{high[i], low[i]}
	}
	d.put(s, p)
	h := d.history()
	for _, f := range s.Fields() {
		h.set(f, []Origin{Assumed})
	}
	d.settle(&h)
}

// readTable reads twelve lines, each with a high and a low, after the name of
// the month or without. Two lines of twelve numbers each are taken too. Columns
// are divided by tabs, spaces or semicolons; a comma is a decimal comma, unless
// points show that it divides. The two may come in either order. Lines without
// numbers, such as headings, are passed over.
//
// The problem is about the table's name.
func readTable(text string) (rows [][2]string, problem *words.Remark) {
	var lines [][]string
	for _, line := range strings.Split(text, "\n") {
		if strings.Contains(line, ".") {
			line = strings.ReplaceAll(line, ",", " ")
		}
		var numbers []string
		for _, word := range strings.FieldsFunc(line, func(r rune) bool { return r == ' ' || r == '\t' || r == ';' || r == '\r' || r == '\u00a0' }) {
			word = strings.TrimRight(word, "°CFcf")
			if _, bad := unit.ParseNumber(word); bad == nil {
				numbers = append(numbers, word)
			}
		}
		if len(numbers) > 0 {
			lines = append(lines, numbers)
		}
	}
	if len(lines) == 2 && len(lines[0]) == 12 && len(lines[1]) == 12 {
		for i := range 12 {
			rows = append(rows, [2]string{lines[0][i], lines[1][i]})
		}
	} else {
		for i, n := range lines {
			if len(n) == 3 && n[0] == strconv.Itoa(i+1) {
				n = n[1:] // the number of the month
			}
			if len(n) != 2 {
				return nil, words.About("{field} must have a high and a low in each line: line {line} has {n} {n|number|numbers}.", words.N(i+1), words.N(len(n)))
			}
			rows = append(rows, [2]string{n[0], n[1]})
		}
	}
	if len(rows) != 12 {
		return nil, words.About("{field} must have twelve lines with numbers, one for each month, not {n}.", words.N(len(rows)))
	}
	lower := 0
	for _, r := range rows {
		a, _ := unit.ParseNumber(r[0])
		b, _ := unit.ParseNumber(r[1])
		if a < b {
			lower++
		}
	}
	if lower == 12 {
		for i := range rows {
			rows[i][0], rows[i][1] = rows[i][1], rows[i][0]
		}
	}
	return rows, nil
}

// SetClock, as an action, is the button that sets the clock of the place by
// that of the device.
const SetClock = "set-clock"

// SetClock types the clock of a place into the draft, from the changes of its
// offset: lines "2027-03-28 120", a day and how many minutes the clock is ahead
// of universal time from that day on, in order; the first is the state before
// any change. It reports whether the fields of the plan can hold such a clock:
// one that stands still, or is an hour ahead between two days of the year. When
// they cannot, or a line cannot be read, nothing is changed.
func (d *Draft) SetClock(changes string) bool {
	type change struct {
		day     day.Day
		minutes int
	}
	var list []change
	for _, line := range strings.Split(changes, "\n") {
		line = strings.TrimSpace(line)
		if line == "" {
			continue
		}
		date, minutes, _ := strings.Cut(line, " ")
		at, ok := day.Parse(date)
		m, err := strconv.Atoi(strings.TrimSpace(minutes))
		if !ok || err != nil || m%15 != 0 || m < -12*60 || m > 15*60 || len(list) > 0 && at <= list[len(list)-1].day {
			return false
		}
		if n := len(list); n == 0 || list[n-1].minutes != m {
			list = append(list, change{at, m})
		}
	}
	if len(list) == 0 {
		return false
	}
	low := list[0].minutes
	for _, c := range list {
		low = min(low, c.minutes)
	}
	s := Sky{Offset: float64(low) * 60}
	if len(list) > 1 {
		for i, c := range list {
			if c.minutes != low && c.minutes != low+60 {
				return false
			}
			if i == 0 {
				continue
			}
			if c.minutes > low {
				s.SummerFrom = int(c.day)
			} else {
				s.SummerTo = int(c.day)
			}
		}
		// Both, and days that the fields can hold.
		if min(s.SummerFrom, s.SummerTo) < firstDate || max(s.SummerFrom, s.SummerTo) > lastDate {
			return false
		}
		// A rule that gives every one of the days, else the days themselves.
		for s.Summer = MarchOctober; s.Summer < OwnSummer; s.Summer++ {
			fits := true
			for _, c := range list[1:] {
				from, to, _ := s.SummerOf(c.day.Year())
				fits = fits && (c.minutes > low && c.day == from || c.minutes == low && c.day == to)
			}
			if fits {
				break
			}
		}
	}
	p := Plan{Sky: s}
	for _, name := range []string{"offset", "summer", "summer-from", "summer-to"} {
		if f := FieldNamed("sky", name); f.Type != Date || s.Summer == OwnSummer {
			d.Set(Path(f, 0), f.Typed(&p, 0))
		}
	}
	return true
}
