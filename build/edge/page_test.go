package edge

import (
	"encoding/xml"
	"html"
	"net/url"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/tdewolff/parse/v2"
	lex "github.com/tdewolff/parse/v2/html"

	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/answer"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/view"
)

// An element is a start tag.
type element struct {
	tag  string
	attr map[string]string
}

// elements reads the start tags of a page in order, as any reader of markup
// does that runs no script.
func elements(page string) []element {
	var all []element
	l := lex.NewLexer(parse.NewInputString(page))
	for {
		switch kind, _ := l.Next(); kind {
		case lex.ErrorToken:
			return all
		case lex.StartTagToken:
			all = append(all, element{string(l.Text()), map[string]string{}})
		case lex.AttributeToken:
			all[len(all)-1].attr[string(l.AttrKey())] = html.UnescapeString(strings.Trim(string(l.AttrVal()), `"`))
		}
	}
}

// filled reads a form as a browser sends it.
func filled(page string) url.Values {
	data := url.Values{}
	list := ""
	for _, e := range elements(page) {
		_, checked := e.attr["checked"]
		_, selected := e.attr["selected"]
		switch {
		case e.tag == "select":
			list = e.attr["name"]
		case e.tag == "option" && selected:
			data.Add(list, e.attr["value"])
		case e.tag == "input" && (e.attr["type"] != "radio" && e.attr["type"] != "checkbox" || checked):
			data.Add(e.attr["name"], e.attr["value"])
		}
	}
	// What is not in sight is typed as well.
	rest, _ := url.ParseQuery(data.Get(plan.RestName))
	data.Del(plan.RestName)
	for name, values := range rest {
		data[name] = values
	}
	return data
}

var emptyBox = regexp.MustCompile(`data-caution=[^>]*></div>`)

// The page of every example is whole, and all that it names is there.
func TestPagesOfExamples(t *testing.T) {
	asked := map[string]bool{}
	for i := range len(plan.Examples()) * len(view.Jobs) {
		x, job := plan.Examples()[i/len(view.Jobs)], view.Jobs[i%len(view.Jobs)].ID
		link := carry.Link(x.Plan)
		w := ask(t, "GET", "/plan?"+link+"/"+job, "")
		page := w.Body.String()
		s := sheet.Answer(x.Plan)
		if w.Code != 200 || !strings.Contains(html.UnescapeString(page), sentence(s)) {
			t.Fatalf("%s: %d, without the answer %q", x.Key, w.Code, answer.Announce(s))
		}
		for _, l := range s.Parts {
			if job == "buy" && !strings.Contains(page, html.EscapeString(l.Name)) {
				t.Errorf("%s: the page lacks the part %s", x.Key, l.Name)
			}
		}
		ids := map[string]int{}
		tags := map[string]int{}
		for _, e := range elements(page) {
			tags[e.tag]++
			if id := e.attr["id"]; id != "" {
				ids[id]++
			}
		}
		if tags["script"] > 0 || tags["h1"] != 1 || tags["table"] < 1 || strings.Contains(page, "[[") {
			t.Errorf("%s, %s: %d scripts, %d h1, %d tables, or a place that nothing fills", x.Key, job, tags["script"], tags["h1"], tags["table"])
		}
		for id, n := range ids {
			if n > 1 {
				t.Errorf("%s: the id %s stands %d times", x.Key, id, n)
			}
		}
		if emptyBox.MatchString(page) || job == "answer" && strings.Count(page, "caution__title") < 2 {
			t.Errorf("%s: the boxes of cautions are empty", x.Key)
		}
		for _, e := range elements(page) {
			to := e.attr["href"]
			if e.tag == "form" {
				to = e.attr["action"]
			}
			at, place, _ := strings.Cut(to, "#")
			switch {
			case to == "" || e.attr["rel"] == "canonical":
			case at == "" && ids[place] == 0:
				t.Errorf("%s: leads to %s, which is not on the page", x.Key, to)
			case at == "" || asked[at]:
			default:
				asked[at] = true
				if w := ask(t, "GET", "/"+strings.TrimPrefix(at, "./"), ""); w.Code != 200 {
					t.Errorf("%s: leads to %s: %d", x.Key, to, w.Code)
				}
			}
		}
	}
	if len(asked) < 20 {
		t.Errorf("the pages lead to %d others only", len(asked))
	}
}

// A chat shows title, sentence and picture of a link, from the head of its page.
func TestPreviews(t *testing.T) {
	for _, x := range plan.Examples() {
		link := carry.Link(x.Plan)
		page := ask(t, "GET", "http://garden.example:8080/plan?"+link, "").Body.String()
		says := map[string]string{}
		title := ""
		for _, e := range elements(page) {
			if e.tag == "body" {
				break
			}
			if e.tag == "meta" {
				says[e.attr["property"]+e.attr["name"]] = e.attr["content"]
			}
			if e.tag == "link" && e.attr["rel"] == "canonical" {
				title = e.attr["href"]
			}
		}
		s := sheet.Answer(x.Plan)
		s.Explore(sheet.Turning)
		answer := answer.Announce(s)
		for name, want := range map[string]string{
			"description": answer, "og:description": answer, "og:title": x.Plan.Name, "og:type": "website",
			"og:url": "http://garden.example:8080/plan?" + link, "robots": "noindex",
		} {
			if says[name] != want {
				t.Errorf("%s: %s is %q, want %q", x.Key, name, says[name], want)
			}
		}
		if title != says["og:url"] {
			t.Errorf("%s: the page calls itself %s and %s", x.Key, title, says["og:url"])
		}
		picture := ask(t, "GET", says["og:image"], "")
		if kind := picture.Header().Get("Content-Type"); picture.Code != 200 || kind != says["og:image:type"] {
			t.Errorf("%s: the picture %s: %d, %s", x.Key, says["og:image"], picture.Code, kind)
		}
		if err := xml.Unmarshal(picture.Body.Bytes(), new(struct{ XMLName xml.Name })); err != nil {
			t.Errorf("%s: the picture: %v", x.Key, err)
		}
	}
}

// sentence is what the answer says behind its first words.
func sentence(s *sheet.Sheet) string {
	_, rest, _ := strings.Cut(answer.Announce(s), ". ")
	return rest
}

// A host name that is none must not get into pages that others may be shown.
func TestAStrangeHostIsLeftOut(t *testing.T) {
	h := host().(*handler)
	for name, want := range map[string]string{
		"garden.example":         "http://garden.example",
		"127.0.0.1:8080":         "http://127.0.0.1:8080",
		"[::1]:80":               "http://[::1]:80",
		`x"><script>`:            "",
		"a b":                    "",
		strings.Repeat("a", 300): "",
	} {
		r := requestTo(name)
		if got := (&question{handler: h, r: r}).origin(); got != want {
			t.Errorf("the host %q is called %q, want %q", name, got, want)
		}
	}
	fixed := *h
	fixed.Origin = "https://evenrow.example"
	if got := (&question{handler: &fixed, r: requestTo("other.example")}).origin(); got != "https://evenrow.example" {
		t.Errorf("a host with an address of its own is called %q", got)
	}
}

// The form of a page, sent back as it is, is the same plan.
func TestFormsReadBackAsThePlan(t *testing.T) {
	for _, x := range plan.Examples() {
		link := carry.Link(x.Plan)
		page := ask(t, "GET", "/plan?"+link, "").Body.String()
		again := ask(t, "POST", "/plan", filled(page).Encode())
		if again.Code != 200 || again.Body.String() != page {
			t.Errorf("%s: %d, and another page", x.Key, again.Code)
		}
		if again.Header().Get("Cache-Control") != "no-store" {
			t.Errorf("%s: what was sent may be stored", x.Key)
		}
	}
}

func TestMistakesStandBesideTheirFieldsAndNothingIsLost(t *testing.T) {
	first := ask(t, "GET", "/plan?"+carry.Link(plan.Examples()[1].Plan), "").Body.String()
	data := filled(first)
	data.Set("name", `Zoë's "plot"`)
	data.Set("place.length", "12 <b>")
	data.Set("rows.1.spacing", "99")
	data.Set("points.1.head", "kept")
	w := ask(t, "POST", "/plan", data.Encode())
	page := w.Body.String()
	back := filled(page)
	for _, name := range []string{"name", "place.length", "rows.1.spacing", "points.1.head", "good"} {
		if back.Get(name) != data.Get(name) {
			t.Errorf("%s was sent as %q and came back as %q", name, data.Get(name), back.Get(name))
		}
	}
	if w.Code != 422 || strings.Contains(page, "<b>12") || strings.Contains(page, "12 <b>") {
		t.Errorf("%d, or markup that was typed", w.Code)
	}
	for _, path := range []string{"place.length", "rows.1.spacing"} {
		beside := regexp.MustCompile(`<p class="field__error" id="e-` + regexp.QuoteMeta(path) + `">([^<]+)</p>`).FindStringSubmatch(page)
		if beside == nil || !strings.Contains(beside[1], "is kept as you typed it") || !strings.Contains(page, `href="#f-`+path+`"`) {
			t.Errorf("nothing is said beside %s: %q", path, beside)
		}
	}
	if !strings.Contains(page, "answer to the last good plan, not to what the form holds now") || !strings.Contains(page, sentence(sheet.Work(plan.Examples()[1].Plan))) {
		t.Error("the answer to the last good plan is not there")
	}
	data.Del("good")
	if page := ask(t, "POST", "/plan", data.Encode()).Body.String(); !strings.Contains(page, "answer to an example, not to your plan") {
		t.Error("an example's answer stands there without being called so")
	}
}

func TestButtonsChangeTheForm(t *testing.T) {
	rows := len(plan.Default().Rows)
	for action, want := range map[string]int{"add-row": rows + 1, "copy-row.2": rows + 1, "remove-row.1": rows - 1, "row-up.2": rows} {
		data := filled(ask(t, "GET", "/plan", "").Body.String())
		data.Set("rows.2.spacing", "0,41")
		data.Set("action", action)
		w := ask(t, "POST", "/plan", data.Encode())
		page := w.Body.String()
		n := strings.Count(page, ` id="s-rows.`)
		if w.Code != 200 || n != want || strings.Count(page, ` id="d-rows.`) != 1 {
			t.Errorf("%s: %d, %d rows, want %d", action, w.Code, n, want)
		}
		back := filled(page)
		typed := slices.ContainsFunc([]string{"1", "2", "3"}, func(i string) bool { return back.Get("rows."+i+".spacing") == "0,41" })
		if !typed {
			t.Errorf("%s: what was typed is lost", action)
		}
		if n := strings.Count(page, " autofocus>"); n != 1 {
			t.Errorf("%s: the focus goes to %d places", action, n)
		}
	}
	data := filled(ask(t, "GET", "/plan", "").Body.String())
	data.Set("units", "us")
	if back := filled(ask(t, "POST", "/plan", data.Encode()).Body.String()); back.Get("place.length") != "39.37" { // 12/0.3048
		t.Errorf("12 m became %q ft", back.Get("place.length"))
	}
}
