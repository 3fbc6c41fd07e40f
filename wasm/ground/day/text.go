package day

import (
	"strconv"

	"evenrow/wasm/ground/words"
)

// ISO returns the day as ISO 8601 has it, "2027-05-12". Days outside [First]
// to [Last] have a year of more digits or a sign.
func (d Day) ISO() string {
	y, m, dom := d.Date()
	b := make([]byte, 0, 12)
	if y < 0 {
		b = append(b, '-')
		y = -y
	}
	for limit := 1000; limit > 1 && y < limit; limit /= 10 {
		b = append(b, '0')
	}
	b = strconv.AppendInt(b, int64(y), 10)
	b = append(b, '-', byte('0'+m/10), byte('0'+m%10), '-', byte('0'+dom/10), byte('0'+dom%10))
	return string(b)
}

// Parse returns the day that ISO 8601 writes as text, "2027-05-12": four
// digits, two and two. It reports false for anything else, and for dates that
// do not exist.
func Parse(text string) (Day, bool) {
	if len(text) != 10 || text[4] != '-' || text[7] != '-' {
		return 0, false
	}
	y, ok1 := digits(text[:4])
	m, ok2 := digits(text[5:7])
	dom, ok3 := digits(text[8:])
	if !ok1 || !ok2 || !ok3 || m < 1 || m > 12 || dom < 1 || dom > InMonth(y, m) {
		return 0, false
	}
	return Of(y, m, dom), true
}

// digits returns the number that text writes in decimal digits and nothing
// else.
func digits(text string) (n int, ok bool) {
	for _, c := range []byte(text) {
		if c < '0' || c > '9' {
			return 0, false
		}
		n = n*10 + int(c-'0')
	}
	return n, true
}

// months are the names by themselves, for a heading or a scale; dates how a day
// of each is written, where some languages bend the name or put it first.
var (
	months = [...]words.Text{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}
	short  = [...]words.Text{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"}
	dates  = [...]words.Text{
		"{day} January", "{day} February", "{day} March", "{day} April", "{day} May", "{day} June",
		"{day} July", "{day} August", "{day} September", "{day} October", "{day} November", "{day} December",
	}
)

var (
	weekdays = [...]words.Text{"Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"}
	briefly  = [...]words.Text{
		"Mon {date}", "Tue {date}", "Wed {date}", "Thu {date}", "Fri {date}", "Sat {date}", "Sun {date}",
	}
)

// MonthName returns the name of a month from 1 to 12.
func MonthName(month int) string { return words.Say(months[month-1]) }

// MonthShort returns the name of a month from 1 to 12 for a narrow place, "Jan".
func MonthShort(month int) string { return words.Say(short[month-1]) }

// WeekdayName returns the name of the day of the week, "Wednesday".
func (d Day) WeekdayName() string { return words.Say(weekdays[d.Weekday()]) }

// Words returns the day as people write it, "12 May 2027".
func (d Day) Words() string {
	return words.Say("{date} {year}", d.Short(), words.N(d.Year()))
}

// Short returns the day without its year, "12 May".
func (d Day) Short() string {
	_, m, dom := d.Date()
	return words.Say(dates[m-1], words.N(dom))
}

// InWeek returns the day without its year, with that of the week: "Wed 12 May".
func (d Day) InWeek() string { return words.Say(briefly[d.Weekday()], d.Short()) }
