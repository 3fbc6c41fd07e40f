package page

import (
	"encoding/csv"
	"net/url"
	"strings"
	"testing"

	"evenrow/wasm/plan"
	"evenrow/wasm/view"
)

// noted adds rows of the log to a form: date, drain, EC, pH, EC of the feed.
func noted(data url.Values, rows ...string) url.Values {
	names := []string{"day", "out", "ec", "ph", "feed"}
	for i, r := range rows {
		for k, v := range strings.Split(r, "|") {
			data.Set("log."+string(rune('1'+i))+"."+names[k], v)
		}
	}
	return data
}

func TestFeedbackSaysTheNextSetting(t *testing.T) {
	var e Explorer
	data := noted(start(t), "2027-07-12|40|2.8|6|2", "2027-07-13|40|2.8|6|2")
	r := e.Feedback(data.Encode())
	if _, sent := fragment(r, "log"); sent {
		t.Error("the log is sent again although its rows are the same")
	}
	advice, _ := fragment(r, "advice")
	// Derived: 0.6/0.8 is a quarter less, of which 15 % in one day; the card has
	// 11 shots of 5 min then.
	for _, want := range []string{"Give 15\u00a0% less: 9 shots of 5\u00a0min instead of 11", "40\u00a0% drained, and 20\u00a0% should", "not in one day", "<svg", "<table>"} {
		if !strings.Contains(advice, want) {
			t.Errorf("the advice lacks %q:\n%s", want, advice)
		}
	}
	if !strings.HasPrefix(r.Announce, "Give 15") || r.Link != "" || r.More != 0 {
		t.Errorf("announced %q", r.Announce)
	}

	// Errors in the plan leave the advice, without the card.
	data.Set("place.length", "long")
	if advice, _ := fragment(e.Feedback(data.Encode()), "advice"); !strings.Contains(advice, "Give 15\u00a0% less.") {
		t.Errorf("with an error in the plan:\n%s", advice)
	}
	data = noted(start(t), "2027-07-12|<b>|2.8|6|2")
	advice, _ = fragment(e.Feedback(data.Encode()), "advice")
	if !strings.Contains(advice, `href="#f-log.1.out"`) || strings.Contains(advice, "<b>") {
		t.Errorf("a slip: %s", advice)
	}
}

func TestLogKeepsWhatIsTyped(t *testing.T) {
	var e Explorer
	data := noted(start(t), "2027-07-12|40|2.8|6|2", "|||x\"<|", "2027-07-14|30|||")
	press := func(action string) url.Values {
		data.Set(plan.ActionName, action)
		html, sent := fragment(e.Feedback(data.Encode()), "log")
		if !sent {
			t.Fatalf("%s: the log is not sent", action)
		}
		return filled(html)
	}
	back := press(view.LogOpen)
	for name, v := range data {
		if strings.HasPrefix(name, "log.") && back.Get(name) != v[0] {
			t.Errorf("%s was %q and came back as %q", name, v[0], back.Get(name))
		}
	}
	if back.Has("log.4.day") {
		t.Error("a row more than there is")
	}
	back = press(view.LogAdd)
	if !back.Has("log.4.day") || back.Has("log.5.day") || back.Get("log.3.out") != "30" {
		t.Errorf("one row more: %v", back)
	}
	back = press(view.LogRemove + "2")
	if back.Get("log.2.out") != "30" || back.Get("log.1.out") != "40" || back.Get("log.3.out") != "" {
		t.Errorf("without row 2: %v", back)
	}
	press(view.LogRemove + "999")
	press(view.LogRemove + "-1")

	data.Set(plan.ActionName, view.LogCSV)
	r := e.Feedback(data.Encode())
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
		var e Explorer
		r := e.Feedback(form + "&rows.1.plants=3&" + plan.ActionName + "=" + url.QueryEscape(action))
		for _, part := range r.Fragments {
			if strings.Contains(part.HTML, "NaN") || strings.Contains(part.HTML, "Inf") && !strings.Contains(form, "Inf") || strings.Contains(part.HTML, "<b>") {
				t.Fatalf("%q: %s", form, part.HTML)
			}
		}
	})
}
