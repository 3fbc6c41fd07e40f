package day

import "strconv"

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

var months = [...]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}

var weekdays = [...]string{"Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"}

// MonthName returns the name of a month from 1 to 12.
func MonthName(month int) string { return months[month-1] }

// WeekdayName returns the name of the day of the week, "Wednesday".
func (d Day) WeekdayName() string { return weekdays[d.Weekday()] }

// Words returns the day as people write it, "12 May 2027".
func (d Day) Words() string { return d.Short() + " " + strconv.Itoa(d.Year()) }

// Short returns the day without its year, "12 May".
func (d Day) Short() string {
	_, m, dom := d.Date()
	return strconv.Itoa(dom) + " " + months[m-1]
}
