package day

import "strings"

// A Moment is a day with the time of its clock. The zero value is none: a
// calculation that knows no clock is told what day it is, or is not.
type Moment struct {
	Day    Day
	Second int  // after midnight
	Timed  bool // the time is known
}

// Known reports whether it is a day at all.
func (m Moment) Known() bool { return m.Day > 0 }

// ParseMoment reads a day, with the time or without: "2027-07-15T14:05",
// "2027-07-15". What is no such text, or a day before 1970-01-02, is none.
func ParseMoment(text string) (m Moment) {
	date, clock, timed := strings.Cut(text, "T")
	d, ok := Parse(date)
	if !ok || d <= 0 {
		return Moment{}
	}
	m.Day = d
	if !timed {
		return m
	}
	hours, minutes, _ := strings.Cut(clock, ":")
	h, ok1 := digits(hours)
	min, ok2 := digits(minutes)
	if len(hours) != 2 || len(minutes) != 2 || !ok1 || !ok2 || h > 23 || min > 59 {
		return Moment{}
	}
	m.Second, m.Timed = 3600*h+60*min, true
	return m
}

// Years returns the same date so many years later, or earlier where n is
// negative; 28 February for a 29th that the year does not have.
func (d Day) Years(n int) Day {
	y, m, dom := d.Date()
	return Of(y+n, m, min(dom, InMonth(y+n, m)))
}
