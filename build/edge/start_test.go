package edge

import (
	"html"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/propose"
)

var (
	box     = regexp.MustCompile(`<input[^>]*>`)
	itsName = regexp.MustCompile(`\bname="?([^" >]+)`)
	itsText = regexp.MustCompile(`\bvalue=(?:"([^"]*)"|([^ >]+))`)
	good    = regexp.MustCompile(`name="?good"? value="?([^" >]+)`)
)

// sent is what a browser would send of a page's form, but for what is chosen from a list.
func sent(page string) url.Values {
	_, form, _ := strings.Cut(page, `<form`)
	data := url.Values{}
	for _, one := range box.FindAllString(form, -1) {
		name, text := itsName.FindStringSubmatch(one), itsText.FindStringSubmatch(one)
		if name == nil || strings.Contains(one, "radio") && !strings.Contains(one, "checked") {
			continue
		}
		if text == nil {
			data.Set(name[1], "")
		} else {
			data.Set(name[1], html.UnescapeString(text[1]+text[2]))
		}
	}
	return data
}

var fiveAnswers = url.Values{"units": {"metric"}, "ask.crop.1": {"tomato"}, "ask.plants.1": {"20"}, "ask.medium": {"bucket"}, "ask.length": {"9"},
	"ask.width": {"4"}, "ask.supply": {"mains"}, "ask.distance": {"8"}}

// Without scripts the five questions are a form, empty at first, and lead to the page of the plan
// that is proposed for the answers, which says what was assumed.
func TestTheFiveQuestions(t *testing.T) {
	w := ask(t, "GET", "/plan?/start", "")
	data := sent(w.Body.String())
	if w.Code != 200 || !strings.Contains(w.Body.String(), ">Five questions</h1>") || !strings.Contains(w.Body.String(), "What drives the water?") || data.Get("ask.length") != "" || !data.Has("ask.tank-height") {
		t.Fatalf("%d, %v: %.300s", w.Code, data, w.Body)
	}
	// Whatever is missing is said, beside what was answered.
	data.Set("ask.length", "9")
	w = ask(t, "POST", "/plan", data.Encode())
	if w.Code != 422 || !strings.Contains(w.Body.String(), "must not be empty") && !strings.Contains(w.Body.String(), "is missing") || sent(w.Body.String()).Get("ask.length") != "9" {
		t.Fatalf("%d: %.3000s", w.Code, w.Body)
	}
	for name, v := range fiveAnswers {
		data[name] = v
	}
	w = ask(t, "POST", "/plan", data.Encode())
	page := w.Body.String()
	link := good.FindStringSubmatch(page)
	if w.Code != 200 || link == nil || !strings.Contains(page, ">Answer</h1>") || !strings.Contains(page, "The dates are assumed") {
		t.Fatalf("%d: %.3000s", w.Code, page)
	}
	p, err := carry.ReadLink(link[1])
	a, _, _ := propose.Read(plan.ParseDraft(data.Encode()))
	want, _ := propose.Of(work.New(proposal, nil), a, propose.Known{})
	if err != nil || carry.Link(p) != carry.Link(want) {
		t.Errorf("%v\n%+v, want\n%+v", err, p, want)
	}
	// Back at the questions its answers stand there, and what is typed in the plan stays.
	p.Place.Path = 0.95
	p.SetOrigin(plan.FieldNamed("place", "path"), 0, plan.Typed)
	data = sent(ask(t, "GET", "/plan?"+carry.Link(p)+"/start", "").Body.String())
	if data.Get("ask.length") != "9" || data.Get("ask.plants.1") != "20" {
		t.Errorf("back at the questions: %v", data)
	}
	data.Set("ask.crop.1", "tomato")
	data.Set("ask.plants.1", "12")
	page = ask(t, "POST", "/plan", data.Encode()).Body.String()
	if link = good.FindStringSubmatch(page); link == nil {
		t.Fatalf("%.3000s", page)
	}
	if q, err := carry.ReadLink(link[1]); err != nil || q.Place.Path != 0.95 || !strings.Contains(page, "As you had it before") {
		t.Errorf("%v, the path is %v", err, q.Place.Path)
	}
}

// Another line of crops, and other units, are buttons of the questions as well.
func TestButtonsOfTheQuestions(t *testing.T) {
	data := sent(ask(t, "GET", "/plan?/start", "").Body.String())
	data.Set(plan.ActionName, "ask-more")
	page := ask(t, "POST", "/plan", data.Encode()).Body.String()
	if more := sent(page); !more.Has("ask.plants.2") || !strings.Contains(page, ">Five questions</h1>") {
		t.Errorf("%v", more)
	}
	data.Set(plan.ActionName, plan.GoTo+"start")
	data.Set(plan.AtName, "answer")
	data.Set("ask.length", "abc")
	if w := ask(t, "POST", "/plan", data.Encode()); w.Code != 422 || !strings.Contains(w.Body.String(), "must be a number") {
		t.Errorf("%d: %.300s", w.Code, w.Body)
	}
}

// The search for a proposal ends at its bound, and the page says so.
func TestAProposalIsBounded(t *testing.T) {
	data := url.Values{plan.AtName: {"start"}}
	for name, v := range fiveAnswers {
		data[name] = v
	}
	for name, v := range map[string]string{"ask.plants.1": "3000", "ask.length": "60", "ask.width": "60", "ask.static": "1", "ask.tap-flow": "20"} {
		data.Set(name, v)
	}
	w := ask(t, "POST", "/plan", data.Encode())
	if w.Code != 200 || !strings.Contains(w.Body.String(), "The search for tubing and zones ended before all were compared.") {
		t.Errorf("%d: %.3000s", w.Code, w.Body)
	}
}
