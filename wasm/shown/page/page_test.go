package page

import (
	"html"
	"net/url"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/sheet"
)

// fragment returns the content of a place, and whether the reply has it.
func fragment(r Reply, id string) (string, bool) {
	i := slices.IndexFunc(r.Fragments, func(f block.Fragment) bool { return f.ID == id })
	if i < 0 {
		return "", false
	}
	return r.Fragments[i].HTML, true
}

var (
	tags  = regexp.MustCompile(`<(input|select|option|/select)\b[^>]*>`)
	pairs = regexp.MustCompile(`([a-z-]+)="([^"]*)"`)
)

// filled reads a form as a browser does that sends it.
func filled(form string) url.Values {
	data := url.Values{}
	list := ""
	for _, tag := range tags.FindAllString(form, -1) {
		at := map[string]string{}
		for _, m := range pairs.FindAllStringSubmatch(tag, -1) {
			at[m[1]] = html.UnescapeString(m[2])
		}
		switch {
		case strings.HasPrefix(tag, "<select"):
			list = at["name"]
		case strings.HasPrefix(tag, "<option") && strings.Contains(tag, " selected"):
			data.Add(list, at["value"])
		case strings.HasPrefix(tag, "<input") && (at["type"] != "radio" && at["type"] != "checkbox" || strings.Contains(tag, " checked")):
			data.Add(at["name"], at["value"])
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

// start is the form of the default plan.
func start(t *testing.T) url.Values {
	t.Helper()
	form, ok := fragment(new(Session).Open(""), "ask")
	if !ok {
		t.Fatal("the page has no form")
	}
	return filled(form)
}

// The form as it is drawn, sent back as it is, is the same plan.
func TestFormReadsBackAsThePlanThatItShows(t *testing.T) {
	for _, e := range plan.Examples() {
		first := new(Session).whole(e.Plan, first())
		form, _ := fragment(first, "ask")
		data := filled(form)
		for name, values := range data {
			if len(values) != 1 {
				t.Errorf("%s: %s stands %d times in the form", e.Key, name, len(values))
			}
		}
		again := new(Session).Answer(data.Encode())
		if len(again.Errors) > 0 {
			t.Errorf("%s: %v", e.Key, again.Errors)
		}
		if again.Link != first.Link {
			t.Errorf("%s: the form reads as %s\nwant %s", e.Key, again.Link, first.Link)
		}
		if _, sent := fragment(again, "ask"); sent {
			t.Errorf("%s: the form is sent again, though nothing in it changed", e.Key)
		}
	}
}

func TestErrorKeepsWhatWasTypedAndTheLastAnswer(t *testing.T) {
	data := start(t)
	data.Set("place.length", "12 <b>")
	data.Set("rows.2.spacing", "99")
	r := new(Session).Answer(data.Encode())
	var paths []string
	for _, e := range r.Errors {
		paths = append(paths, e.Path)
	}
	if want := []string{"place.length", "rows.2.spacing"}; !slices.Equal(paths, want) {
		t.Fatalf("errors at %v, want %v", paths, want)
	}
	if r.Link != "" {
		t.Error("a plan with errors has a link")
	}
	for _, f := range r.Fragments {
		if !slices.Contains([]string{"errors", "stale", "always", "ask"}, f.ID) && !strings.HasPrefix(f.ID, "s-") && !strings.HasPrefix(f.ID, "o-") {
			t.Errorf("%s changes although there are errors", f.ID)
		}
	}
	// Neither the foot of the page nor the answer passes for one to this form.
	if foot, _ := fragment(r, "always"); !strings.Contains(foot, "2 things to put right:") || !strings.Contains(foot, "Place: length along the rows must be in m or ft") || strings.Contains(foot, "Yes") {
		t.Errorf("at the foot stands %q", foot)
	}
	if stale, _ := fragment(r, "stale"); !strings.Contains(stale, "the last good plan, not to what the form holds now") {
		t.Errorf("above the answer stands %q", stale)
	}
	data.Set("place.length", "12")
	data.Set("rows.2.spacing", "0.333")
	mended := new(Session).Answer(data.Encode())
	if foot, _ := fragment(mended, "always"); !strings.Contains(foot, "Yes, if what is assumed is so.") {
		t.Errorf("mended, at the foot stands %q", foot)
	}
	if stale, sent := fragment(mended, "stale"); !sent || stale != "" {
		t.Errorf("mended, above the answer stands %q", stale)
	}
	data.Set("place.length", "12 <b>")
	data.Set("rows.2.spacing", "99")
	list, _ := fragment(r, "errors")
	for _, want := range []string{`href="#f-place.length"`, `href="#f-rows.2.spacing"`} {
		if !strings.Contains(list, want) {
			t.Errorf("the errors lack %s:\n%s", want, list)
		}
	}
	for _, e := range r.Errors {
		if !strings.HasPrefix(Sentence(e), e.Text) {
			t.Errorf("below its field the error reads %q", Sentence(e))
		}
	}

	// Another change of the form sends it again, with all of that in it.
	data.Set("supply.kind", "gravity")
	form, sent := fragment(new(Session).Answer(data.Encode()), "ask")
	if !sent {
		t.Fatal("the form is not sent although it shows other fields")
	}
	back := filled(form)
	for _, path := range []string{"place.length", "rows.2.spacing"} {
		if back.Get(path) != data.Get(path) {
			t.Errorf("%s was typed as %q and came back as %q", path, data.Get(path), back.Get(path))
		}
		if !strings.Contains(form, `id="f-`+path+`" name="`+path+`" aria-describedby="h-`+path+` e-`+path+`" aria-invalid="true"`) {
			t.Errorf("%s is not marked as wrong", path)
		}
	}
	// What is not shown is kept.
	for _, path := range []string{"points.1.head", "points.4.flow"} {
		if back.Get(path) != data.Get(path) {
			t.Errorf("the hidden %s was %q and is now %q", path, data.Get(path), back.Get(path))
		}
	}
}

// A text that is too long is refused where it stands: the form is not drawn
// again, or with all that was typed, and the answer stays.
func TestATextThatIsTooLongSpoilsNothingElse(t *testing.T) {
	long := strings.Repeat("1 January\t-2,5\t3\n", 73<<10/17)
	for _, path := range []string{"place.length", "name", plan.TableName} {
		data := start(t)
		data.Set("sky.climate", "own")
		data.Set("rows.2.plants", "17")
		data = inJob(t, data, "grow")
		before := len(data)
		data.Set(path, long)
		r := new(Session).Answer(data.Encode())
		if form, drawn := fragment(r, "ask"); drawn {
			t.Fatalf("%s: the form is drawn again: %.200s", path, form)
		}
		if len(r.Errors) != 1 || r.Errors[0].Path != path || !strings.Contains(r.Errors[0].Text, "must be at most 4 kB, not 73 kB") {
			t.Errorf("%s: %.300v", path, r.Errors)
		}
		if said := Sentence(r.Errors[0]); len(said) > 400 {
			t.Errorf("%s: %d letters to read: %.300s", path, len(said), said)
		}
		if r.Link != "" {
			t.Errorf("%s: there is a plan", path)
		}
		data.Set(plan.ActionName, "add-row")
		form, _ := fragment(new(Session).Answer(data.Encode()), "ask")
		back := filled(form)
		if back.Get("rows.2.plants") != "17" || back.Get("rows.5.plants") != back.Get("rows.4.plants") || len(back) < before {
			t.Errorf("%s: with one row more %d fields are filled, of %d", path, len(back), before)
		}
		if path != plan.TableName && back.Get(path) != long || path == plan.TableName && !strings.Contains(form, "1 January\t-2,5\t3\n1 January") {
			t.Errorf("%s: the text is gone", path)
		}
	}
}

func TestActionsChangeTheForm(t *testing.T) {
	data := start(t)
	data.Set("rows.2.spacing", "0.4")
	data.Set("action", "copy-row.2")
	r := new(Session).Answer(data.Encode())
	if r.Focus != "s-rows.3" {
		t.Errorf("the focus goes to %q, want s-rows.3", r.Focus)
	}
	form, sent := fragment(r, "ask")
	if !sent {
		t.Fatal("the form is not sent again")
	}
	if got := filled(form).Get("rows.3.spacing"); got != "0.4" {
		t.Errorf("the copied row has the spacing %q, want 0.4", got)
	}
	if !strings.Contains(form, `id="`+r.Focus+`"`) {
		t.Error("the place for the focus is not in the form")
	}
	if r.At != "answer/rows/rows.3" || !strings.Contains(form, `id="g-rows" data-group="rows" open`) {
		t.Errorf("%s is in sight, and the group of the row is not open", r.At)
	}
}

// A long part that is open stays so when what the answer rests on has come, and is
// named once.
func TestAnOpenPartStaysOpen(t *testing.T) {
	data := start(t)
	data.Set("action", "show.plants-1")
	var s Session
	r := s.Answer(data.Encode())
	if html, _ := fragment(r, "rows"); !strings.Contains(html, `id="plants-1"`) || r.Focus != "plants-1" {
		t.Fatalf("the plants of row 1 are not drawn, the focus goes to %q", r.Focus)
	}
	asked, _ := fragment(r, "ask")
	open := regexp.MustCompile(`name="open" value="([^"]*)"`)
	if is := open.FindStringSubmatch(asked); len(is) != 2 || is[1] != " rows" {
		t.Errorf("%q is open", is)
	}
	data.Del("action")
	data.Set("open", " rows")
	data.Set(StepName, stepOf(sheet.Turning))
	if html, sent := fragment(new(Session).Rest(data.Encode()), "rows"); !sent || !strings.Contains(html, `id="plants-1"`) {
		t.Error("the plants of row 1 are gone when what the answer rests on is known")
	}
	data.Set("action", "show.plants-2")
	asked, _ = fragment(s.Answer(data.Encode()), "ask")
	if is := open.FindStringSubmatch(asked); len(is) != 2 || is[1] != " rows" {
		t.Errorf("%q is open", is)
	}
}

// What is asked of the plan where there is none yet opens nothing.
func TestActionsBeforeAPlan(t *testing.T) {
	for _, action := range []string{"add-row", "copy-row.1", "remove-row.1", "add-emitter"} {
		if r := new(Session).Answer("at=start&action=" + action); r.At != "start" {
			t.Errorf("%s leads to %q", action, r.At)
		}
	}
}

func TestSwitchOfUnitsConvertsTheForm(t *testing.T) {
	data := start(t)
	data.Set("place.width", "5 or so")
	data.Set("units", "us")
	r := new(Session).Answer(data.Encode())
	form, sent := fragment(r, "ask")
	if !sent {
		t.Fatal("the form is not sent again")
	}
	back := filled(form)
	if got := back.Get("place.length"); got != "39.37" { // 12/0.3048
		t.Errorf("12 m became %q ft", got)
	}
	if got := back.Get("place.width"); got != "5 or so" {
		t.Errorf("what is no number became %q", got)
	}
	if !strings.Contains(form, ", in feet</span>") {
		t.Error("the labels do not say the new units")
	}
}

func TestHostileNamesAreEscaped(t *testing.T) {
	const hostile = `<img src=x onerror=alert(1)>"'&`
	data := start(t)
	data.Set("name", hostile)
	data.Set("supply.kind", "mains") // so that the form is drawn again
	r := new(Session).Answer(data.Encode())
	if len(r.Errors) > 0 {
		t.Fatal(r.Errors)
	}
	if r.Title != hostile {
		t.Errorf("the title is %q, want the name as it is: it is text, not markup", r.Title)
	}
	shown := 0
	for _, f := range r.Fragments {
		if strings.Contains(f.HTML, "<img") || strings.Contains(f.HTML, `x onerror=alert(1)>"`) {
			t.Errorf("%s holds the name as markup", f.ID)
		}
		shown += strings.Count(f.HTML, "&lt;img src=x onerror=alert(1)&gt;&#34;&#39;&amp;")
	}
	if shown < 2 {
		t.Errorf("the name is shown %d times, want it in the form and in the answer", shown)
	}
	// A choice that is none is kept as text too.
	data.Set("header.feed", hostile)
	data.Set("supply.kind", "gravity")
	form, _ := fragment(new(Session).Answer(data.Encode()), "ask")
	if strings.Contains(form, "<img") {
		t.Error("the form holds a choice as markup")
	}
}

func TestLinksOpenAndDamagedOnesOnlySaySo(t *testing.T) {
	data := start(t)
	data.Set("rows.1.plants", "7")
	sent := new(Session).Answer(data.Encode())
	r := new(Session).Open(sent.Link)
	if r.Link != sent.Link || len(r.Errors) > 0 {
		t.Errorf("the link %s opens as %s", sent.Link, r.Link)
	}
	form, _ := fragment(r, "ask")
	if got := filled(form).Get("rows.1.plants"); got != "7" {
		t.Errorf("the opened plan has %s plants in row 1, want 7", got)
	}
	for _, damaged := range []string{"#1", sent.Link[:len(sent.Link)/2], "#9" + sent.Link[2:], "#<script>", "#told"} {
		r := new(Session).Open(damaged)
		if len(r.Fragments) != 1 || r.Fragments[0].ID != "message" || r.Link != "" {
			t.Errorf("Open(%q) changes the page", damaged)
		}
		text := r.Fragments[0].HTML
		if !strings.Contains(text, "is still here") || strings.Contains(text, "<script") {
			t.Errorf("Open(%q) says %s", damaged, text)
		}
	}
	if r := new(Session).Open("#"); r.Link != link(plan.Default()) {
		t.Error("an address without a plan does not open the default")
	}
}

func TestFilesAreNamedInPlainLetters(t *testing.T) {
	for plan, want := range map[string]string{
		"":                    "plan.json",
		"ÄÖ":                  "plan.json",
		"Tunnel A to Z, 2026": "tunnel-a-to-z-2026.json",
		"[@`{ 0/9:":           "0-9.json",
		"ROWS ÉTÉ":            "rows-t.json",
	} {
		if got := FileName(plan); got != want {
			t.Errorf("FileName(%q) is %q, want %q", plan, got, want)
		}
	}
}

func TestFilesAreSavedAndOpened(t *testing.T) {
	data := start(t)
	data.Set("name", "Zoë's plot no. 2")
	saved := Save(data.Encode())
	if saved.FileName != "zo-s-plot-no-2.json" || saved.File == "" {
		t.Fatalf("saved as %q, %d bytes", saved.FileName, len(saved.File))
	}
	if r := new(Session).OpenFile(saved.File); r.Link != new(Session).Answer(data.Encode()).Link {
		t.Error("the file does not open as the plan that was saved")
	}
	for _, bad := range []string{"", "{", `{"rows": 5}`, "[]"} {
		r := new(Session).OpenFile(bad)
		if len(r.Fragments) != 1 || r.Fragments[0].ID != "message" {
			t.Errorf("OpenFile(%q) changes the page", bad)
		}
	}
	data.Set("place.length", "")
	if r := Save(data.Encode()); r.File != "" || len(r.Errors) != 1 {
		t.Error("a plan with errors is saved")
	}
}

// What can wait is asked for afterwards, and is what a worked-out plan says.
func TestRestFollows(t *testing.T) {
	data := start(t)
	data.Set("runs.1.rise", "2")
	r := new(Session).Answer(data.Encode())
	if r.More != int(sheet.Turning)+1 || !slices.Contains(r.Owed, "headroom") || slices.Contains(r.Owed, "flush") {
		t.Errorf("%d is announced, and %v owed", r.More, r.Owed)
	}
	if _, sent := fragment(r, "headroom"); sent {
		t.Error("the answer waits for the headroom")
	}
	var s Session
	var rest Reply
	for next := r.More; next > 0; {
		data.Set(StepName, strconv.Itoa(next))
		step := s.Rest(data.Encode())
		if step.More != 0 && step.More <= next {
			t.Fatalf("after step %d comes %d", next, step.More)
		}
		next = step.More
		rest.Fragments = append(rest.Fragments, step.Fragments...)
	}
	for _, id := range []string{"crops", "headroom"} {
		if html, sent := fragment(rest, id); !sent || html == "" {
			t.Errorf("no %s afterwards", id)
		}
	}
	if _, sent := fragment(rest, "flush"); sent {
		t.Error("what belongs to another job is told")
	}
	data.Set("runs.1.rise", "two")
	if r := s.Rest(data.Encode()); len(r.Fragments) != 0 {
		t.Errorf("of a plan with an error %d fragments are told", len(r.Fragments))
	}
	if job, _ := fragment(Start(), "job"); !strings.Contains(job, `id="d-headroom"`) {
		t.Error("the first page has no headroom")
	}
}

// The script sends the clock of the device; the form shows what came of it.
func TestTheClockOfTheDevice(t *testing.T) {
	data := start(t)
	data = inJob(t, data, "grow")
	data.Set("action", plan.SetClock)
	data.Set(plan.ClockName, "2027-01-01 -480\n2027-03-14 -420\n2027-11-07 -480")
	r := new(Session).Answer(data.Encode())
	ask, drawn := fragment(r, "ask")
	if !drawn || !strings.Contains(ask, `name="sky.offset" aria-describedby="h-sky.offset e-sky.offset" value="-8"`) || !strings.Contains(ask, `<option value="march-november" selected`) {
		t.Error("the form does not show the clock that was sent")
	}
	if !strings.HasPrefix(r.Announce, "The clock is set. ") {
		t.Errorf("read aloud: %q", r.Announce)
	}
	if len(r.Errors) > 0 || r.Link == "" {
		t.Errorf("%v", r.Errors)
	}
}

// Where labels give many units, the form says that one may be typed, and takes
// what it shows there.
func TestTheFormSaysThatAUnitMayBeTyped(t *testing.T) {
	for _, tt := range []struct{ kind, path, typed string }{
		{"pump-power", "supply.power", "1/2 hp"},
		{"pump-two", "supply.max-flow", "800 L/h"},
		{"mains", "supply.tap-flow", "200 gal/h"},
		{"pump-two", "filter.rated", "1.2 m³/h"},
		{"mains", "emitters.1.flow", "1/2 gal/h"},
	} {
		data := start(t)
		if section, _, _ := strings.Cut(tt.path, "."); section != "supply" {
			data = inJob(t, data, "build")
		}
		data.Set("supply.kind", tt.kind)
		data.Del("shape")
		data.Set(tt.path, tt.typed)
		r := new(Session).Answer(data.Encode())
		ask, _ := fragment(r, "ask")
		_, hint, _ := strings.Cut(ask, `id="h-`+tt.path+`">`)
		hint, _, _ = strings.Cut(hint, "</p>")
		if len(r.Errors) > 0 || !strings.Contains(hint, "A unit may be typed after it: ") || !strings.Contains(hint, tt.typed) {
			t.Errorf("%s: %v, and its hint is %q", tt.path, r.Errors, hint)
		}
	}
}

// One choice turns the emitter of a plan that stands into another kind, without
// an error on the way, and back.
func TestTurningAnEmitterIsNoTrap(t *testing.T) {
	data := inJob(t, start(t), "build")
	for _, kind := range []string{"plain", "compensating", "plain"} {
		data.Set("emitters.1.kind", kind)
		r := new(Session).Answer(data.Encode())
		if len(r.Errors) > 0 || r.Link == "" {
			t.Fatalf("turned to %s: %v", kind, r.Errors)
		}
		ask, drawn := fragment(r, "ask")
		if !drawn {
			t.Fatal("the form is not drawn again")
		}
		data = filled(ask)
		if got, want := data.Get("emitters.1.exponent"), map[string]string{"plain": "0.5", "compensating": "0"}[kind]; got != want {
			t.Errorf("turned to %s the exponent is %q, want %s", kind, got, want)
		}
	}
}

// What stood in the form for a moment, such as the 1 of 1/2, is no plan that an
// error falls back to: that is the one that the grower left standing.
func TestErrorsFallBackToThePlanThatStood(t *testing.T) {
	data := start(t)
	data.Set("runs.1.rise", "2")
	stood := new(Session).Answer(data.Encode())
	data.Set("runs.1.rise", "9") // typed on the way to 9x
	passing := new(Session).Answer(data.Encode())
	data.Set("runs.1.rise", "9x")
	data.Set(GoodName, stood.Link)
	r := new(Session).Answer(data.Encode())
	if len(r.Errors) != 1 || r.Link != "" {
		t.Fatalf("%v, link %q", r.Errors, r.Link)
	}
	for _, id := range []string{"answer", "share"} {
		got, sent := fragment(r, id)
		want, _ := fragment(stood, id)
		if other, _ := fragment(passing, id); !sent || got != want || got == other {
			t.Errorf("%s is not that of the plan that stood", id)
		}
	}
	for id, want := range map[string]string{"errors": "1 thing to put right", "stale": "the last good plan", "always": "1 thing to put right:"} {
		n := 0
		for _, f := range r.Fragments {
			if f.ID == id {
				n++
			}
		}
		if html, _ := fragment(r, id); n != 1 || !strings.Contains(html, want) {
			t.Errorf("%s stands %d times: %s", id, n, html)
		}
	}
	// What can wait is of that plan too.
	var s Session
	data.Set(StepName, stepOf(sheet.Season))
	data.Set(plan.AtName, "water")
	got, sent := fragment(s.Rest(data.Encode()), "timer")
	data.Set("runs.1.rise", "2")
	data.Del(GoodName)
	if want, _ := fragment(new(Session).Rest(data.Encode()), "timer"); !sent || got != want {
		t.Error("what is explored is not of the plan that stood")
	}
	// Before anything was left standing, that is the plan that everyone starts from.
	data.Set("runs.1.rise", "9x")
	data.Set(GoodName, "")
	data.Set(plan.AtName, "answer")
	data.Del(StepName)
	got, _ = fragment(new(Session).Answer(data.Encode()), "answer")
	_, got, _ = strings.Cut(got, "</strong>") // what it rests on is told later
	if job, _ := fragment(Start(), "job"); got == "" || !strings.Contains(job, got) {
		t.Error("an error in the first field does not fall back to the example")
	}
}

// A link that cannot be read leaves the example, and says that it is one.
func TestAnExampleIsNotTakenForTheLink(t *testing.T) {
	r := new(Session).OpenFirst("#1zz")
	for id, want := range map[string]string{"message": "cannot be opened", "stale": "an example, not the plan that you opened", "always": "an example, not the plan"} {
		if html, _ := fragment(r, id); !strings.Contains(html, want) || strings.Contains(html, "is still here") {
			t.Errorf("%s reads %q", id, html)
		}
	}
	good := new(Session).OpenFirst(link(plan.Default()))
	if stale, sent := fragment(good, "stale"); !sent || stale != "" || good.Link != link(plan.Default()) {
		t.Errorf("of a good link it says %q", stale)
	}
}

// A line of the list is found from any job, and so is where the steps take it.
func TestALineIsFoundFromAnyJob(t *testing.T) {
	for to, job := range map[string]string{"line-3": "buy", "take-3": "build"} {
		for _, from := range []string{"answer", "buy", "build", "why"} {
			d := plan.DraftOf(plan.Default())
			d.Set(plan.AtName, from)
			d.Set(plan.ActionName, plan.GoTo+to)
			if m := Apply(&d); m.Focus() != to || m.At.Job != job {
				t.Errorf("from %s to %s: %q in %s", from, to, m.Focus(), m.At.Job)
			}
		}
	}
}
