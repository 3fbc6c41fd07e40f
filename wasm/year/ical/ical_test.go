package ical

import (
	"strings"
	"testing"
	"unicode/utf8"

	"evenrow/wasm/ground/day"
)

const rfc = "RFC 5545 (Desruisseaux, 2009)"

func one(e Event) string {
	return Write(&Calendar{Product: "-//Evenrow//Test//EN", Stamp: day.Of(2026, 3, 1), Events: []Event{e}})
}

// unfold is section 3.1 read backwards.
func unfold(s string) []string {
	return strings.Split(strings.TrimSuffix(strings.ReplaceAll(s, "\r\n ", ""), "\r\n"), "\r\n")
}

func TestText(t *testing.T) {
	for _, c := range []struct{ id, value, want, at string }{
		{"IC-01", "Feed; check EC, pH \\ note\ndone: ok", `Feed\; check EC\, pH \\ note\ndone: ok`, "3.3.11"},
		{"IC-02", "Project XYZ Final Review\nConference Room - 3B\nCome Prepared.", `Project XYZ Final Review\nConference Room - 3B\nCome Prepared.`, "3.3.11, example"},
		{"", "a\rb\x00c\x7f\td\xff", "abc\td\uFFFD", "3.3.11: controls are no text"},
	} {
		if got := escape(c.value); got != c.want {
			t.Errorf("%s: %q is written %q, want %q (%s, %s)", c.id, c.value, got, c.want, rfc, c.at)
		}
	}
}

func TestWholeDays(t *testing.T) {
	for _, c := range []struct {
		id         string
		first      day.Day
		days       int
		start, end string
	}{
		{"IC-04", day.Of(2026, 5, 4), 1, "20260504", "20260505"}, // RFC 5545, 3.6.1
		{"IC-06", day.Of(2026, 12, 31), 1, "20261231", "20270101"},
		{"a leap day", day.Of(2028, 2, 28), 2, "20280228", "20280301"}, // derived
	} {
		lines := unfold(one(Event{UID: "u", First: c.first, Days: c.days, Summary: "s"}))
		for _, want := range []string{"DTSTART;VALUE=DATE:" + c.start, "DTEND;VALUE=DATE:" + c.end} {
			if !has(lines, want) {
				t.Errorf("%s: no line %s in %q", c.id, want, lines)
			}
		}
	}
}

func has(lines []string, want string) bool {
	for _, l := range lines {
		if l == want {
			return true
		}
	}
	return false
}

// IC-07: a line of 75 octets is not folded, one of 76 is (RFC 5545, 3.1).
func TestFolding(t *testing.T) {
	for _, c := range []struct {
		octets, lines int
	}{{74, 1}, {75, 1}, {76, 2}, {75 + 74, 2}, {75 + 74 + 1, 3}} {
		var b strings.Builder
		s := "SUMMARY:" + strings.Repeat("x", c.octets-8)
		line(&b, s)
		parts := strings.Split(strings.TrimSuffix(b.String(), "\r\n"), "\r\n")
		if len(parts) != c.lines {
			t.Errorf("%d octets take %d lines, want %d", c.octets, len(parts), c.lines)
		}
		if got := unfold(b.String()); len(got) != 1 || got[0] != s {
			t.Errorf("%d octets read back as %q", c.octets, got)
		}
	}
}

// IC-11: 60 copies of a letter of two octets, 8 + 120 octets in all (RFC 5545,
// 3.1, note). And letters of three and four octets at every offset.
func TestFoldingKeepsCharactersWhole(t *testing.T) {
	for _, letter := range []string{"é", "€", "🍅"} {
		for shift := range 12 {
			summary := strings.Repeat("a", shift) + strings.Repeat(letter, 60)
			file := one(Event{UID: "u", First: 0, Summary: summary})
			for _, l := range strings.Split(file, "\r\n") {
				if len(l) > 75 || !utf8.ValidString(l) {
					t.Errorf("%d octets in %q", len(l), l)
				}
			}
			if !has(unfold(file), "SUMMARY:"+summary) {
				t.Errorf("%d and %q do not unfold", shift, letter)
			}
		}
	}
}

// IC-08: every line ends in CR LF, the last one too (RFC 5545, 3.1). IC-10:
// what a calendar and an event must have (RFC 5545, 3.6 and 3.6.1).
func TestWhatMustBeThere(t *testing.T) {
	file := Write(&Calendar{Name: "Millrace; tunnel", Product: "-//Evenrow//Season//EN", Stamp: day.Of(2027, 3, 1), Edition: 3, Events: []Event{
		{UID: "a", First: day.Of(2027, 5, 15), Days: 1, Every: 7, Times: 21, Summary: "Measure", Description: "of the feed", Category: "System"},
		{UID: "b", First: day.Of(2027, 4, 24), Days: 14, Summary: "Build", Times: 1},
	}})
	if !strings.HasSuffix(file, "END:VCALENDAR\r\n") || strings.Count(file, "\n") != strings.Count(file, "\r\n") || strings.Count(file, "\r") != strings.Count(file, "\r\n") {
		t.Errorf("line ends in %q", file)
	}
	want := `BEGIN:VCALENDAR
VERSION:2.0
PRODID:-//Evenrow//Season//EN
CALSCALE:GREGORIAN
NAME:Millrace\; tunnel
BEGIN:VEVENT
UID:a
DTSTAMP:20270301T000000Z
SEQUENCE:3
DTSTART;VALUE=DATE:20270515
DTEND;VALUE=DATE:20270516
RRULE:FREQ=DAILY;INTERVAL=7;COUNT=21
SUMMARY:Measure
DESCRIPTION:of the feed
CATEGORIES:System
TRANSP:TRANSPARENT
END:VEVENT
BEGIN:VEVENT
UID:b
DTSTAMP:20270301T000000Z
SEQUENCE:3
DTSTART;VALUE=DATE:20270424
DTEND;VALUE=DATE:20270508
SUMMARY:Build
TRANSP:TRANSPARENT
END:VEVENT
END:VCALENDAR`
	if got := strings.Join(unfold(file), "\n"); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// Whatever is typed, the file stays one of whole lines, and reads back.
func FuzzSummary(f *testing.F) {
	f.Add("tomato, 30", 3)
	f.Add("a\r\nEND:VEVENT", 70)
	f.Fuzz(func(t *testing.T, s string, pad int) {
		s = strings.Repeat("x", ((pad%80)+80)%80) + s
		file := one(Event{UID: "u", First: 1, Summary: s})
		lines := unfold(file)
		if len(lines) != 4+9+1 {
			t.Fatalf("%d lines for %q: %q", len(lines), s, lines)
		}
		for _, l := range strings.Split(file, "\r\n") {
			if len(l) > 75 || !utf8.ValidString(l) {
				t.Fatalf("%d octets in %q", len(l), l)
			}
		}
		got := strings.NewReplacer(`\\`, `\`, `\;`, ";", `\,`, ",", `\n`, "\n").Replace(strings.TrimPrefix(lines[4+6], "SUMMARY:"))
		want := strings.Map(func(r rune) rune {
			if r != '\n' && r != '\t' && r < ' ' || r == 0x7f {
				return -1
			}
			return r
		}, s)
		if got != want {
			t.Fatalf("%q reads back as %q", want, got)
		}
	})
}
