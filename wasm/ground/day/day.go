// Package day counts days in the Gregorian calendar, which it carries on
// backwards without end. It knows no clock, no zone and no language but the
// names of months.
package day

// A Day is a number of whole days since 1 January 1970. A week, a season or a
// stage is a difference of two of them.
type Day int

// First and Last are the range of days that can be written as ISO 8601 with a
// year of four digits: 0000-01-01 and 9999-12-31. [Parse] returns no others.
const (
	First Day = -719528
	Last  Day = 2932896
)

// Days in 400, 100, 4 years and 1 year of the calendar, leap days counted.
const (
	in400 = 146097
	in100 = 36524
	in4   = 1461
	in1   = 365
)

// march is the first of March of the year 0, from which leap days come last
// in their year.
const march = First + 60

// Of returns the day of a date. month and dom may lie outside their usual
// range and carry over: month 13 is January of the next year, day 0 the last
// day of the month before. Year 0 is the year before year 1.
func Of(year, month, dom int) Day {
	y, m := floor(month-3, 12) // m counts from March
	y += year
	c, y := floor(y, 400)
	// From March on, the lengths 31 30 31 30 31 repeat each five months.
	days := c*in400 + y*in1 + y/4 - y/100 + (153*m+2)/5 + dom - 1
	return march + Day(days)
}

// Date returns the year, the month from 1 to 12 and the day of the month.
func (d Day) Date() (year, month, dom int) {
	c, n := floor(int(d-march), in400)
	h := min(n/in100, 3) // the last day of 400 years is a leap day
	n -= h * in100
	q := n / in4
	n -= q * in4
	y := min(n/in1, 3) // and so is the last of four
	n -= y * in1
	m := (5*n + 2) / 153
	dom = n - (153*m+2)/5 + 1
	year = c*400 + h*100 + q*4 + y
	if m >= 10 {
		return year + 1, m - 9, dom
	}
	return year, m + 3, dom
}

// floor returns the quotient of a and b, rounded down, and the rest, which is
// from 0 to b-1. b must be positive.
func floor(a, b int) (quotient, rest int) {
	quotient, rest = a/b, a%b
	if rest < 0 {
		quotient--
		rest += b
	}
	return quotient, rest
}

// Year returns the year that d lies in.
func (d Day) Year() int {
	y, _, _ := d.Date()
	return y
}

// OfYear returns the number of d in its year, from 1 to 365, or 366 in a leap
// year: the J of formulas about the sun.
func (d Day) OfYear() int { return int(d-Of(d.Year(), 1, 1)) + 1 }

// Weekday returns 0 for Monday to 6 for Sunday.
func (d Day) Weekday() int {
	_, w := floor(int(d)+3, 7) // 1 January 1970 was a Thursday
	return w
}

// Leap reports whether year has a 29 February.
func Leap(year int) bool { return year%4 == 0 && (year%100 != 0 || year%400 == 0) }

// InMonth returns how many days a month has, 28 to 31. month may carry over as
// in [Of].
func InMonth(year, month int) int { return int(Of(year, month+1, 1) - Of(year, month, 1)) }

// Nth returns the nth time of a weekday (0 for Monday) in a month, n from 1 to
// 4, or the last one when n is 5 or more.
func Nth(year, month, weekday, n int) Day {
	if n > 4 {
		last := Of(year, month+1, 0)
		_, back := floor(last.Weekday()-weekday, 7)
		return last - Day(back)
	}
	first := Of(year, month, 1)
	_, on := floor(weekday-first.Weekday(), 7)
	return first + Day(on+7*(n-1))
}
