package page

import (
	"encoding/csv"
	"math"
	"net/url"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/watering"
)

// noted adds rows of the log to a form: date, drain, EC, pH, EC of the feed,
// weather, shots, minutes of one.
func noted(data url.Values, rows ...string) url.Values {
	names := []string{"day", "out", "ec", "ph", "feed", "sky", "shots", "minutes"}
	for i, r := range rows {
		for k, v := range strings.Split(r, "|") {
			data.Set("log."+string(rune('1'+i))+"."+names[k], v)
		}
	}
	return data
}

func TestFeedbackSaysTheNextSetting(t *testing.T) {
	var s Session
	data := noted(start(t), "2027-07-12|40|2.8|6|2", "2027-07-13|40|2.8|6|2")
	r := s.Feedback(data.Encode())
	if _, sent := fragment(r, "log"); sent {
		t.Error("the log is sent again although its rows are the same")
	}
	advice, _ := fragment(r, "advice")
	// Derived: 0.6/0.8 is a quarter less, of which 15 % in one day; the card has
	// 55 minutes then, of which 46.75 are left: in shots of five, 50.
	for _, want := range []string{"Give 9\u00a0% less on a typical day: ", ", 50\u00a0min in all, instead of 11 shots of 5\u00a0min, assumed from the card.", "40\u00a0% drained, and 20\u00a0% should", "not in one day", "No weather is noted, so a typical day is assumed.", "<svg", "<table>"} {
		if !strings.Contains(advice, want) || !strings.Contains(advice, "The rest of the card, written anew from 14 July on: plants are counted to take up ") {
			t.Errorf("the advice lacks %q:\n%s", want, advice)
		}
	}
	if !strings.HasPrefix(r.Announce, "Give 9") || r.Link != "" || r.More != 0 {
		t.Errorf("announced %q", r.Announce)
	}

	// Errors in the plan leave the advice, without the card.
	data.Set("place.length", "long")
	if advice, _ := fragment(s.Feedback(data.Encode()), "advice"); !strings.Contains(advice, "Give 15\u00a0% less on a typical day.") {
		t.Errorf("with an error in the plan:\n%s", advice)
	}
	data = noted(start(t), "2027-07-12|<b>|2.8|6|2")
	advice, _ = fragment(s.Feedback(data.Encode()), "advice")
	if !strings.Contains(advice, `href="#f-log.1.out"`) || strings.Contains(advice, "<b>") {
		t.Errorf("a slip: %s", advice)
	}
}

// What is advised, in minutes of the day, and the shots.
var inAll = regexp.MustCompile(`(\d+)\x{a0}min(?: (\d+)\x{a0}s)? in all, instead`)

// minutesOf adds up settings such as "4 shots of 7 min and 8 of 6 min".
func minutesOf(t *testing.T, words string) (shots int, long float64) {
	t.Helper()
	for _, m := range regexp.MustCompile(`(\d+)(?: shots?)? of (\d+)\x{a0}min`).FindAllStringSubmatch(words, -1) {
		n, _ := strconv.Atoi(m[1])
		each, _ := strconv.ParseFloat(m[2], 64)
		shots, long = shots+n, long+float64(n)*each
	}
	return shots, long
}

// 5 % drained in a heat wave: no less than the card has for a hot day, in no
// more shots than the timer holds, and more where that was given already.
func TestFivePerCentInAHeatWave(t *testing.T) {
	var s Session
	say := func(data url.Values) (advice, hint string) {
		r := s.Feedback(data.Encode())
		hint, _ = fragment(r, "log-set-1")
		return r.Announce, hint
	}
	// The card's own column, 30 days before the longest heat.
	_, hint := say(noted(start(t), "15.7.|5||||hot"))
	shots, card := minutesOf(t, hint)
	if !strings.HasPrefix(hint, "Assumed from the card for a hot day: ") || shots != 11 || card < 60 {
		t.Fatalf("the card is not proposed: %q", hint)
	}
	for _, c := range []struct {
		row   string
		least float64
	}{
		{"15.7.|5||||hot", 1.15 * card},            // as the card has it
		{"15.7.|5||||hot|11|5", card},              // as on a typical day
		{"15.7.|5||||hot|6|2", card},               // far less
		{"15.7.|5||||hot|12|8", 1.15 * 96},         // more than the card
		{"15.7.|5||||hot|11|", card},               // half told
		{"2027-07-15|0||||hot|11|5", card},         // nothing drained
		{"15.7.|5||||", 1.15 * 53},                 // no weather: a typical day
		{"15.7.|0||||dull|4|4", 34},                // no less than a dull day's
		{"15 July|5|3.9||2|hot|12|6", 1.05 * card}, // salt: more has to drain
	} {
		advice, _ := say(noted(start(t), c.row))
		m := inAll.FindStringSubmatch(advice)
		if m == nil {
			t.Errorf("%s: %q", c.row, advice)
			continue
		}
		given, _ := strconv.ParseFloat(m[1], 64)
		n, long := minutesOf(t, strings.Split(advice, ", instead")[0])
		if given < c.least-1e-9 || n > 12 || n < 1 || long != given {
			t.Errorf("%s: %d shots, %g min, want at least %g in at most 12: %q", c.row, n, given, c.least, advice)
		}
		// Not more at once than a sixth and what whole minutes add, but for the card.
		if most := max(card, 1.15*96+12); given > most {
			t.Errorf("%s: %g min: %q", c.row, given, advice)
		}
	}
	// The timer's own steps.
	data := noted(start(t), "15.7.|5||||hot|8|7")
	data.Set("timer.programmes", "8")
	data.Set("timer.step", "120")
	advice, _ := say(data)
	if n, long := minutesOf(t, strings.Split(advice, ", instead")[0]); n > 8 || math.Mod(long, 2) != 0 || !strings.Contains(advice, "holds 8 start times") {
		t.Errorf("eight start times, steps of two minutes: %q", advice)
	}
	// What drains well is left, and what drains much is cut.
	for row, want := range map[string]string{"15.7.|30||||hot": "Leave the timer as it was on a hot day.", "15.7.|50||||hot|12|6": "less on a hot day: ", "15.7.|20||||typical|11|5": "Leave the timer as it was on a typical day."} {
		if advice, _ := say(noted(start(t), row)); !strings.Contains(advice, want) {
			t.Errorf("%s: %q, want %q", row, advice, want)
		}
	}
	// Only days of the same weather are looked at.
	if advice, _ := say(noted(start(t), "14.7.|5||||hot|12|7", "15.7.|20||||typical|11|5")); !strings.HasPrefix(advice, "Leave") {
		t.Errorf("a hot day counts for a typical one: %q", advice)
	}
}

// Shots are called longer than before only where they are; what no day can hold is
// an error at its box, or not gone by where only the number was typed, and no
// more is advised than fits between the first and the last shot: some 12 h on 15 July
// at 47° N, from 1.5 h after sunrise to 1.5 h before sunset.
func TestTheLogStaysWithinTheDay(t *testing.T) {
	var s Session
	for _, c := range []struct{ row, want, not, path string }{
		{"15 July|95||||hot|12|7", "12 shots of 6\u00a0min", "so the shots are longer", ""},
		{"15 July|5||||hot|12|6", "longer than is best", "no more fits", ""},
		{"15 July|5||||hot|12|90", "", "1242", "log.1.minutes"},
		{"15 July|5||||hot|999|", "Give 15\u00a0% more on a hot day.", "start times", ""},
		{"|5||||hot|24|90", "", "2484", "log.1.minutes"},
		{"15 July|5||||hot|12|58", "Leave the timer as it was on a hot day: no more fits between", "Give", ""},
		{"15 July|5||||hot|12|60", "Leave the timer as it was on a hot day: no more fits between", "Give", ""},
		{"15 July|95||||hot|12|50", "less on a hot day", "so the shots are longer", ""},
	} {
		r := s.Feedback(noted(start(t), c.row).Encode())
		advice, _ := fragment(r, "advice")
		path := ""
		if len(r.Errors) > 0 {
			path = r.Errors[0].Path
		}
		if !strings.Contains(advice, c.want) || strings.Contains(advice, c.not) || path != c.path || len(r.Errors) > 1 {
			t.Errorf("%s: %v\n%.700s", c.row, r.Errors, advice)
		}
	}
}

// Dates as people write them, by the plan's units; a wrong one is marked at its
// box and read aloud. A log of old has neither weather nor timer.
func TestDatesOfTheLog(t *testing.T) {
	var s Session
	hintOn := func(units, date string) string {
		data := noted(start(t), date+"|5||||hot")
		data.Set("units", units)
		r := s.Feedback(data.Encode())
		if len(r.Errors) > 0 {
			t.Errorf("%s in %s: %v", date, units, r.Errors)
		}
		advice, _ := fragment(r, "advice")
		_, log, _ := strings.Cut(advice, "The log</caption>")
		return regexp.MustCompile(`<th scope="row">([^<]*)`).FindStringSubmatch(log)[1]
	}
	for _, c := range [][3]string{{"metric", "15.7.", "15 July 2027"}, {"metric", "15/7/2027", "15 July 2027"}, {"metric", "15 July", "15 July 2027"}, {"metric", "Jul 15", "15 July 2027"}, {"metric", "2027-07-15", "15 July 2027"},
		{"us", "7/15", "15 July 2027"}, {"metric", "5/7/2027", "5 July 2027"}, {"us", "5/7/2027", "7 May 2027"}} {
		if got := hintOn(c[0], c[1]); got != c[2] {
			t.Errorf("%s in %s is read as %s, want %s", c[1], c[0], got, c[2])
		}
	}
	r := s.Feedback(noted(start(t), "31.6.|5").Encode())
	if len(r.Errors) != 1 || r.Errors[0].Path != "log.1.day" || !strings.HasPrefix(r.Announce, "Day 1: date must be a date that exists") {
		t.Errorf("a wrong date: %v, announced %q", r.Errors, r.Announce)
	}
	if advice, _ := fragment(r, "advice"); !strings.Contains(advice, "Note the drain of a few days") || strings.Contains(advice, "Give ") {
		t.Errorf("a drain of a day that nobody knows is judged: %s", advice)
	}
	log, _ := fragment(Start(), "log")
	for _, want := range []string{`id="e-log.1.day" hidden`, `aria-describedby="e-log.1.day"`, `<select id="f-log.1.sky"`, `id="f-log.1.shots"`, `id="log-set-1"`} {
		if !strings.Contains(log, want) {
			t.Errorf("the log lacks %s", want)
		}
	}
	// What a device has kept from before.
	data := noted(start(t), "2027-07-12|40|2.8|6|2", "2027-07-13|40|2.8|6|2")
	for name := range data {
		if strings.HasSuffix(name, ".sky") || strings.HasSuffix(name, ".shots") || strings.HasSuffix(name, ".minutes") {
			data.Del(name)
		}
	}
	data.Set(plan.ActionName, watering.LogOpen)
	r = s.Feedback(data.Encode())
	log, _ = fragment(r, "log")
	if back := filled(log); back.Get("log.2.day") != "2027-07-13" || back.Get("log.2.feed") != "2" || back.Get("log.2.sky") != "" || len(r.Errors) != 0 || r.Announce != "" {
		t.Errorf("an old log: %v %v", filled(log), r.Errors)
	}
}

func TestLogKeepsWhatIsTyped(t *testing.T) {
	var s Session
	data := noted(start(t), "2027-07-12|40|2.8|6|2", "|||x\"<|", "2027-07-14|30|||")
	press := func(action string) url.Values {
		data.Set(plan.ActionName, action)
		html, sent := fragment(s.Feedback(data.Encode()), "log")
		if !sent {
			t.Fatalf("%s: the log is not sent", action)
		}
		return filled(html)
	}
	back := press(watering.LogOpen)
	for name, v := range data {
		if strings.HasPrefix(name, "log.") && back.Get(name) != v[0] {
			t.Errorf("%s was %q and came back as %q", name, v[0], back.Get(name))
		}
	}
	if back.Has("log.4.day") {
		t.Error("a row more than there is")
	}
	back = press(watering.LogAdd)
	if !back.Has("log.4.day") || back.Has("log.5.day") || back.Get("log.3.out") != "30" {
		t.Errorf("one row more: %v", back)
	}
	back = press(watering.LogRemove + "2")
	if back.Get("log.2.out") != "30" || back.Get("log.1.out") != "40" || back.Get("log.3.out") != "" {
		t.Errorf("without row 2: %v", back)
	}
	press(watering.LogRemove + "999")
	press(watering.LogRemove + "-1")

	data.Set(plan.ActionName, watering.LogCSV)
	r := s.Feedback(data.Encode())
	rows, err := csv.NewReader(strings.NewReader(r.File)).ReadAll()
	if err != nil || len(rows) != 4 || rows[2][3] != `x"<` || r.FileName != "drain.csv" || len(r.Fragments) != 0 {
		t.Errorf("%v: %q as %s", err, r.File, r.FileName)
	}
}

// Whatever stands in the form, the log is answered, with no number that is
// none and nothing typed as markup.
func FuzzFeedback(f *testing.F) {
	f.Add("log.1.out=40&log.2.day=2027-07-12&action=log-add", "log-remove.1")
	f.Add("timer.drain=0&timer.kind=cycle&log.60.feed=1e9&log.1.out=0", "log-open")
	f.Add("log.1.out=<b>&rows.1.plants=x&log.0.out=3&log.61.out=3", "log-csv")
	f.Fuzz(func(t *testing.T, form, action string) {
		var s Session
		r := s.Feedback(form + "&rows.1.plants=3&" + plan.ActionName + "=" + url.QueryEscape(action))
		for _, part := range r.Fragments {
			if strings.Contains(part.HTML, "NaN") || strings.Contains(part.HTML, "Inf") && !strings.Contains(form, "Inf") || strings.Contains(part.HTML, "<b>") {
				t.Fatalf("%q: %s", form, part.HTML)
			}
		}
	})
}
