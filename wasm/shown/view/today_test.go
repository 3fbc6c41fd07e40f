package view

import (
	"fmt"
	"html"
	"math"
	"regexp"
	"strings"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/year/season"
	"evenrow/wasm/year/shots"
)

// on draws the sections about a day, as plain words.
func on(t *testing.T, s *sheet.Sheet, now string) map[string]string {
	t.Helper()
	s.Now = day.ParseMoment(now)
	all := map[string]string{}
	for _, f := range Explored(s, sheet.Season, nil) {
		if f.ID == "today" || f.ID == "week" || f.ID == "stopped" {
			whole(t, f.ID, f.HTML)
			text := regexp.MustCompile(`<[^>]*>`).ReplaceAllString(f.HTML, " ")
			all[f.ID] = strings.Join(strings.Fields(strings.ReplaceAll(html.UnescapeString(text), "\u00a0", " ")), " ") + "\n" + f.HTML
		}
	}
	return all
}

func worked(p *plan.Plan) *sheet.Sheet {
	s := sheet.Answer(p)
	s.Explore(sheet.Season)
	return s
}

// What a day means, by hand from the dates of the example: the first seed on
// 4 April 2027, plants out on 15 May, the last task on 24 September.
func TestADayIsTold(t *testing.T) {
	s := worked(plan.Default())
	for _, c := range []struct {
		now, id  string
		has, not string
	}{
		{"", "today", "This page does not know what day it is.", "Today"},
		{"", "week", "This page does not know what day it is.", "Today"},
		{"nonsense", "today", "This page does not know what day it is.", "Today"},
		{"2027-07-30", "stopped", "This page does not know what time it is.", "until"},
		{"2027-04-03", "today", "Today is 3 April 2027. The season begins on 4 April 2027: Sow: ", "Move the season"},
		{"2027-04-04", "today", "Today, 4 April 2027, nothing has to be watered. The next change is on 15 May: ", "Move the season"},
		{"2027-09-24", "today", "nothing has to be watered. The timer is not changed any more this season.", "Move the season"},
		{"2027-09-25", "today", "The season ended on 24 September 2027. Move the season to 2028", "next change"},
		{"2027-09-25", "week", `value="season-to.2028"`, "season-to.2027"},
		{"2029-11-01", "today", `value="season-to.2030"`, "The season begins"},
		{"2026-05-20", "today", `The season begins on 4 April 2027`, "season-to.2027"},
		{"2026-05-20", "today", `value="season-to.2026"`, "ended"},
		{"2026-11-30", "today", `The season begins on 4 April 2027`, "Move the season"},
		{"2027-05-15", "week", "Sat 15 May Plant out: sweet pepper, 60 plants", "Remove plants"},
		{"2027-05-15", "week", "Sat 15 May Set the timer: ", "Nothing has to be done"},
		{"2027-05-16", "week", "Of the last seven days, if it is not done yet: Fri 14 May Expand slabs", "not know"},
		{"2027-04-13", "week", "Nothing has to be done this week. Next: ", "From today"},
		{"2027-07-30T03:00", "stopped", "If the pump stops now, at 03:00, ", "not know"},
		{"2027-09-24T03:00", "stopped", "Nothing stands in the rows today.", "until"},
	} {
		if got := on(t, s, c.now)[c.id]; !strings.Contains(got, c.has) || strings.Contains(got, c.not) {
			t.Errorf("%q, %s: want %q and not %q:\n%s", c.now, c.id, c.has, c.not, got)
		}
	}
	two := plan.Default()
	two.Rows[3].Zone = 2
	if got := on(t, worked(two), "2027-07-30")["today"]; !strings.Contains(got, "Zone 1") || !strings.Contains(got, "Zone 2") {
		t.Errorf("two zones: %s", got)
	}
	// A season from October to May lies in two years.
	south := plan.Default()
	south.Season.LastFrost, south.Season.FirstFrost = int(day.Of(2027, 9, 20)), int(day.Of(2028, 5, 30))
	south.Sky.Latitude = -35
	south.Season.Start = int(day.Of(2027, 6, 1))
	if got := on(t, worked(south), "2028-08-20")["today"]; !strings.Contains(got, "Move the season to 2028 and 2029") || !strings.Contains(got, `value="season-to.2028"`) {
		t.Errorf("south of the equator: %s", got)
	}
	tap := plan.Default()
	tap.Supply.Kind, tap.Supply.Static, tap.Supply.TapFlow, tap.Supply.Regulator = plan.Mains, 3e5, 20.0/6e4, 0
	if got := on(t, worked(tap), "2027-07-30T14:05")["today"]; !strings.Contains(got, "If the water stops now, at 14:05") {
		t.Errorf("a tap: %s", got)
	}
}

var stops = regexp.MustCompile(`at (\S+), .* easy to take up (until|for) (.*?) in typical weather, (until|for) (.*?) if it is hot and (until|for) (.*?) if it is dull\.`)

// What is said of today is the line of the card that holds the day, and the water
// lasts as long as it takes to be used up: counted here by five seconds, at the
// use of the hour about noon by day and 0.15 of that at night, from a medium that
// one shot is missing in.
func TestTodayIsTheCardsLine(t *testing.T) {
	s := worked(plan.Default())
	days := 0
	for d := s.Season.First - 20; d <= s.Season.Last+20; d += 3 {
		clock := fmt.Sprintf("%02d:%02d", (int(d)*7)%24, (int(d)*13)%60)
		told := on(t, s, d.ISO()+"T"+clock)
		var l *shots.Line
		for i := range s.Shots.Lines {
			if k := &s.Shots.Lines[i]; k.From <= d && d < k.From+day.Day(k.Days) {
				l = k
			}
		}
		if stand := s.Season.Stand(d); stand != season.Running || l == nil {
			if strings.Contains(told["today"], "If it is hot") {
				t.Fatalf("on %s: %s", d.ISO(), told["today"])
			}
			continue
		}
		days++
		shot := func(sky shots.Sky) string {
			set := &l.Sets[sky].Zones[0]
			return fmt.Sprintf("%d × %g min", len(set.Shots), set.Shots[0].For/60)
		}
		want := fmt.Sprintf("Today, %s: %s. If it is hot, %s; if it is dull, %s.", d.Words(), shot(shots.Typical), shot(shots.Hot), shot(shots.Dull))
		if !strings.HasPrefix(told["today"], strings.ReplaceAll(want, "\u00a0", " ")) {
			t.Fatalf("on %s: %q is not\n%s", d.ISO(), want, told["today"])
		}
		for _, at := range l.Sets[shots.Typical].Zones[0].Shots {
			if !strings.Contains(told["today"], unit.Clock(unit.Metric, at.At)) {
				t.Fatalf("on %s: the shot at %g s is not in %s", d.ISO(), at.At, told["today"])
			}
		}
		m := stops.FindStringSubmatch(told["stopped"])
		if m == nil || m[1] != clock {
			t.Fatalf("on %s at %s: %s", d.ISO(), clock, told["stopped"])
		}
		if !strings.Contains(told["today"], m[0]) {
			t.Fatalf("on %s: today and stopped do not say the same:\n%s\n%s", d.ISO(), told["today"], told["stopped"])
		}
		// Whoever suffers first on a hot day is named.
		now := float64(s.Now.Second)
		least, bed := math.Inf(1), (*shots.Bed)(nil)
		for i := range l.Beds {
			if long := emptied(l, &l.Beds[i], shots.Hot, now); long < least-60 {
				least, bed = long, &l.Beds[i]
			}
		}
		for k, sky := range []shots.Sky{shots.Typical, shots.Hot, shots.Dull} {
			long := emptied(l, bed, sky, now)
			word, said := m[2+2*k], m[3+2*k]
			if word == "for" {
				if now+long < 48*3600-120 {
					t.Fatalf("on %s at %s under sky %d: for %s, counted %g h", d.ISO(), clock, sky, said, long/3600)
				}
				continue
			}
			var h, min int
			fmt.Sscanf(said, "%d:%d", &h, &min)
			end := float64(h*3600 + min*60)
			if strings.Contains(said, "tomorrow") {
				end += 86400
			}
			// Half a minute of the clock, and a count that is five seconds of the day off
			// at each sunrise and sunset, of which the night makes more than half a minute.
			if math.Abs(end-now-long) > 180 {
				t.Fatalf("on %s at %s under sky %d: until %s, counted %g h from then", d.ISO(), clock, sky, said, long/3600)
			}
		}
	}
	if days < 35 {
		t.Errorf("only %d days", days)
	}
}

// emptied is how long a bed lasts from a time on, in s, counted by five seconds.
func emptied(l *shots.Line, b *shots.Bed, sky shots.Sky, at float64) float64 {
	// The share of the day's sun in the minute about noon, by its altitude.
	noon, half := (l.Lit.Rise+l.Lit.Set)/2, (l.Lit.Set-l.Lit.Rise)/2
	sum := 0.0
	sine := func(s float64) float64 {
		return math.Cos((s-noon)*2*math.Pi/86400) - math.Cos(half*2*math.Pi/86400)
	}
	for s := l.Lit.Rise + 30; s < l.Lit.Set; s += 60 {
		sum += sine(s) * 60
	}
	rate := b.Use[sky] * sine(noon) / sum
	left := b.Easy - b.Use[sky]/float64(len(l.Sets[sky].Zones[0].Shots))
	long := 0.0
	for ; left > 0 && long < 3*86400; long += 5 {
		clock := math.Mod(at+long, 86400)
		if clock >= l.Lit.Rise && clock < l.Lit.Set {
			left -= rate * 5
		} else {
			left -= 0.15 * rate * 5
		}
	}
	return long
}

// The card of the season is folded as long as what the timer is set to today stands
// above it, and only then.
func TestTheCardIsFoldedInItsSeason(t *testing.T) {
	s := worked(plan.Default())
	screen := &Screen{Job: JobNamed("water"), Sheet: s}
	screen.Done[sheet.Season] = true
	for now, folded := range map[string]bool{"": false, "2027-05-14": false, "2027-05-15": true, "2027-07-15": true, "2027-09-23": false} {
		s.Now = day.ParseMoment(now)
		html := screen.Whole().HTML
		if !strings.Contains(html, `id="h-timer"`) || strings.Contains(html, `<details class="fold" id="d-timer">`) != folded {
			t.Errorf("%q: want it folded: %v", now, folded)
		}
		if want := "15\u00a0May to 22\u00a0Sep<"; folded && !strings.Contains(html, want) {
			t.Errorf("%q: its line lacks %q", now, want)
		}
	}
}
