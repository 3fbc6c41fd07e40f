// Package ical writes calendars of whole days as iCalendar files (RFC 5545),
// which every calendar program reads.
package ical

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"evenrow/wasm/ground/day"
)

// A Calendar is a file of events. Nothing in it depends on a clock: the same
// calendar is the same file.
type Calendar struct {
	Name    string  // as calendar programs show it (RFC 7986); may be empty
	Product string  // who wrote it, such as "-//Evenrow//Season//EN"
	Stamp   day.Day // the day that DTSTAMP gives, at 0 h UTC
	Edition int     // SEQUENCE of all events: higher in a file that replaces another
	Events  []Event
}

// An Event lasts whole days, and blocks none of them.
type Event struct {
	UID         string // the same in every edition, and in no other event
	First       day.Day
	Days        int // how long it lasts, at least 1
	Every       int // days to the next time; 0 for once
	Times       int // how often in all, with Every
	Summary     string
	Description string // may be empty
	Category    string // may be empty
	Alarm       int    // h before the first day begins at which it makes itself heard; 0 for never
}

// Write returns the calendar as a file in UTF-8. It has no zone and no
// person in it. An alarm rings by the clock of the device, whatever its zone.
func Write(c *Calendar) string {
	var b strings.Builder
	line(&b, "BEGIN:VCALENDAR")
	line(&b, "VERSION:2.0")
	line(&b, "PRODID:"+escape(c.Product))
	line(&b, "CALSCALE:GREGORIAN")
	if c.Name != "" {
		line(&b, "NAME:"+escape(c.Name))
	}
	for i := range c.Events {
		e := &c.Events[i]
		line(&b, "BEGIN:VEVENT")
		line(&b, "UID:"+escape(e.UID))
		line(&b, "DTSTAMP:"+date(c.Stamp)+"T000000Z")
		line(&b, "SEQUENCE:"+strconv.Itoa(c.Edition))
		line(&b, "DTSTART;VALUE=DATE:"+date(e.First))
		line(&b, "DTEND;VALUE=DATE:"+date(e.First+day.Day(max(e.Days, 1))))
		if e.Every > 0 && e.Times > 1 {
			line(&b, "RRULE:FREQ=DAILY;INTERVAL="+strconv.Itoa(e.Every)+";COUNT="+strconv.Itoa(e.Times))
		}
		line(&b, "SUMMARY:"+escape(e.Summary))
		if e.Description != "" {
			line(&b, "DESCRIPTION:"+escape(e.Description))
		}
		if e.Category != "" {
			line(&b, "CATEGORIES:"+escape(e.Category))
		}
		line(&b, "TRANSP:TRANSPARENT")
		if e.Alarm > 0 { // section 3.6.6; DESCRIPTION is required
			line(&b, "BEGIN:VALARM")
			line(&b, "ACTION:DISPLAY")
			line(&b, "DESCRIPTION:"+escape(e.Summary))
			line(&b, "TRIGGER:-PT"+strconv.Itoa(e.Alarm)+"H")
			line(&b, "END:VALARM")
		}
		line(&b, "END:VEVENT")
	}
	line(&b, "END:VCALENDAR")
	return b.String()
}

// date is a DATE (section 3.3.4): "20270512".
func date(d day.Day) string { return strings.ReplaceAll(d.ISO(), "-", "") }

// escape is a TEXT (section 3.3.11). Control characters other than a line feed
// have no place in one.
func escape(s string) string {
	var b strings.Builder
	for _, r := range s { // which turns bytes that are no text into U+FFFD
		switch {
		case r == '\\' || r == ';' || r == ',':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r == '\n':
			b.WriteString(`\n`)
		case r == '\t' || r >= ' ' && r != 0x7f:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// longest is how many octets a line may have without its end (section 3.1).
const longest = 75

// line appends a content line, folded between characters.
func line(b *strings.Builder, s string) {
	room := longest
	for len(s) > room {
		cut := room
		for !utf8.RuneStart(s[cut]) {
			cut--
		}
		b.WriteString(s[:cut])
		b.WriteString("\r\n ")
		s = s[cut:]
		room = longest - 1 // the space counts
	}
	b.WriteString(s)
	b.WriteString("\r\n")
}
