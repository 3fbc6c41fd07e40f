package drain

import (
	"math"
	"strconv"
	"strings"

	"evenrow/wasm/ground/csv"
	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
)

// A Column is one box of the log's form.
type Column struct {
	Name  string // in form data
	Label words.Text
	Unit  string // may be empty
	at    func(*Entry) *float64
	low   float64
	high  float64
	per   float64 // of the number typed in one of the value
}

// Columns are the boxes of a row, after its date.
var Columns = []Column{
	{"out", "Drain", "%", func(e *Entry) *float64 { return &e.Out }, 0, MostOut, 100},
	{"ec", "EC of the drain", "mS/cm", func(e *Entry) *float64 { return &e.EC }, 0, MostEC, 1},
	{"ph", "pH of the drain", "", func(e *Entry) *float64 { return &e.PH }, LeastPH, MostPH, 1},
	{"feed", "EC of the feed", "mS/cm", func(e *Entry) *float64 { return &e.Feed }, 0, MostEC, 1},
	{"shots", "Shots", "", func(e *Entry) *float64 { return &e.Shots }, 1, 1000, 1},
	{"minutes", "Length of a shot", "min", func(e *Entry) *float64 { return &e.Long }, 1, MostLong, 1.0 / 60},
}

// MaxRows is how many days a log holds.
const MaxRows = 60

// DayName and SkyName are the names of the date's box and of the choice of the
// weather in form data.
const (
	DayName = "day"
	SkyName = "sky"
)

// Names returns the names of all boxes of a row.
func Names() []string {
	names := []string{DayName, SkyName}
	for i := range Columns {
		names = append(names, Columns[i].Name)
	}
	return names
}

// Path is the name of a box in form data; rows count from 1.
func Path(row int, name string) string { return "log." + strconv.Itoa(row) + "." + name }

// Rows returns how many rows form data has, up to [MaxRows]: get returns what
// was typed in a box.
func Rows(get func(path string) string) int {
	n := 0
	for row := 1; row <= MaxRows; row++ {
		if !Blank(get, row) {
			n = row
		}
	}
	return n
}

// Blank reports whether nothing was typed in a row.
func Blank(get func(path string) string, row int) bool {
	for _, name := range Names() {
		if get(Path(row, name)) != "" {
			return false
		}
	}
	return true
}

// A Slip is a box that cannot be read.
type Slip struct {
	Path    string
	Problem *words.Remark // about the name of the box
}

// Read returns what the rows hold, in the order of their days, those without a
// date where they stand, and the boxes that cannot be read. Such a box counts as
// not measured, and a row whose date cannot be read is left out: whose drain it
// is to be judged by, nobody knows. Dates are read as in [day.Read]: monthFirst where people write
// the month first, near for those without a year.
func Read(get func(path string) string, monthFirst bool, near day.Day) (log []Entry, slips []Slip) {
	for row := 1; row <= Rows(get); row++ {
		if Blank(get, row) {
			continue
		}
		e := Entry{Row: row, Sky: SkyOf(get(Path(row, SkyName)))}
		if len(log) > 0 {
			e.Day = log[len(log)-1].Day
		}
		dated := true
		if typed := strings.TrimSpace(get(Path(row, DayName))); typed != "" {
			var d day.Day
			if d, dated = day.Read(typed, monthFirst, near); dated {
				e.Day = d
			} else {
				slips = append(slips, Slip{Path(row, DayName), words.About("{field} must be a date that exists, such as 15 July or 2027-07-15.")})
			}
		}
		for i := range Columns {
			c := &Columns[i]
			at := c.at(&e)
			*at = math.NaN()
			typed := get(Path(row, c.Name))
			if strings.TrimSpace(typed) == "" {
				continue
			}
			v, problem := unit.ParseNumber(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(typed), c.Unit)))
			if problem == nil && !(v/c.per >= c.low && v/c.per <= c.high) {
				problem = words.About("{field} must be from {low} to {high}.", number(c.low*c.per), number(c.high*c.per))
			}
			if problem != nil {
				slips = append(slips, Slip{Path(row, c.Name), problem})
				continue
			}
			*at = v / c.per
		}
		if e.Shots*e.Long > MostRun {
			slips = append(slips, Slip{Path(row, "minutes"), words.About("{field} must be less: so many shots of that length take more than half a day.")})
			e.Long = math.NaN()
		}
		if !dated {
			continue
		}
		// By day; a row typed later stays behind those of its day.
		k := len(log)
		log = append(log, e)
		for ; k > 0 && log[k-1].Day > e.Day; k-- {
			log[k] = log[k-1]
		}
		log[k] = e
	}
	return log, slips
}

func number(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }

// CSV returns what was typed as a table, its first line the names of the columns.
func CSV(get func(path string) string) string {
	var t csv.Table
	names := []string{words.Say("Date")}
	for _, c := range Columns {
		name := words.Say(c.Label)
		if c.Unit != "" {
			name = words.Say("{label} ({unit})", name, c.Unit)
		}
		names = append(names, name)
	}
	t.Row(append(names, words.Say("Weather"))...)
	for row := 1; row <= Rows(get); row++ {
		if Blank(get, row) {
			continue
		}
		cells := []string{get(Path(row, DayName))}
		for _, c := range Columns {
			cells = append(cells, get(Path(row, c.Name)))
		}
		t.Row(append(cells, get(Path(row, SkyName)))...)
	}
	return t.String()
}
