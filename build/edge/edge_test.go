package edge

import (
	"context"
	"net/http"
	"net/http/httptest"
	"os"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"evenrow/build/policy"
	"evenrow/build/queue"
	"evenrow/build/server"
	"evenrow/build/site"
	"evenrow/build/tool"
	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
)

// real is the repository's own site around a program that does nothing.
var real = sync.OnceValues(func() (*site.Bundle, error) {
	return site.Build(site.Source{
		Content:  os.DirFS("../../content"),
		Site:     os.DirFS("../../site"),
		Program:  []byte("\x00asm"),
		Glue:     []byte("globalThis.Go = class {};"),
		Tool:     tool.New(),
		Answered: true,
	})
})

var host = sync.OnceValue(func() http.Handler {
	b, err := real()
	if err != nil {
		panic(err)
	}
	return New(server.New(b.Files), b.Shell, Options{Version: "a test", Fault: func(fault any, stack []byte) { panic(string(stack)) }})
})

// ask sends a request. A body is a form, and a header is a name and a value.
func ask(t testing.TB, method, target, body string, header ...string) *httptest.ResponseRecorder {
	t.Helper()
	r := httptest.NewRequest(method, target, strings.NewReader(body))
	if body != "" {
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	}
	for i := 0; i < len(header); i += 2 {
		r.Header.Set(header[i], header[i+1])
	}
	w := httptest.NewRecorder()
	host().ServeHTTP(w, r)
	return w
}

func TestWhatIsRefusedAndHow(t *testing.T) {
	link := carry.Link(plan.Default())
	form := plan.DraftOf(plan.Default()).Encode()
	long := strings.Repeat("x", plan.MaxForm+1)
	for _, tt := range []struct {
		name, method, target, body string
		header                     []string
		status                     int
		says                       string
	}{
		{"a damaged link", "GET", "/plan?1zz", "", nil, 400, "The link is damaged"},
		{"a damaged link to a table", "GET", "/plan.csv?1zz", "", nil, 400, "The link is damaged"},
		{"a link of a later version", "GET", "/plan?7abc", "", nil, 400, "newer Evenrow"},
		{"markup for a link", "GET", "/plan?<script>alert(1)</script>", "", nil, 400, "The link is damaged"},
		{"half a link", "GET", "/plan.svg?" + link[:len(link)/2], "", nil, 400, "The link is damaged"},
		{"a link that is too long", "GET", "/plan?1" + strings.Repeat("A", carry.MaxLink), "", nil, 414, "longer than the longest plan"},
		{"a form in an address that is too long", "GET", "/plan?name=" + strings.Repeat("A", carry.MaxLink), "", nil, 414, "at most 40 kB"},
		{"a body that is too long", "POST", "/plan", "name=" + long, nil, 413, "at most 96 kB"},
		{"a body that is no form", "POST", "/plan", "{}", []string{"Content-Type", "application/json"}, 415, "must be a form"},
		{"a body of no kind", "POST", "/plan", form, []string{"Content-Type", ""}, 415, "must be a form"},
		{"a method", "DELETE", "/plan", "", nil, 405, "answers GET, HEAD, POST"},
		{"a form for a table", "POST", "/plan.csv", form, nil, 405, "answers GET, HEAD and nothing"},
		{"a form with mistakes", "POST", "/plan", "place.length=-1", nil, 422, "1 thing to put right"},
		{"a form in an address with mistakes", "GET", "/plan?place.length=far", "", nil, 422, "must be a number"},
		{"too many rows", "POST", "/plan", "rows.61.plants=3", nil, 422, "must be from 1 to 60"},
		{"a page that is no plan's", "GET", "/plan/x", "", nil, 404, "There is no page"},
		{"a file that is no plan's", "POST", "/index.html", form, nil, 405, "only answers GET and HEAD"},
	} {
		w := ask(t, tt.method, tt.target, tt.body, tt.header...)
		if w.Code != tt.status || !strings.Contains(w.Body.String(), tt.says) {
			t.Errorf("%s: %d, want %d and %q in\n%.300s", tt.name, w.Code, tt.status, tt.says, w.Body)
		}
		if strings.Contains(w.Body.String(), "<script>alert") {
			t.Errorf("%s: what was sent comes back as markup", tt.name)
		}
		if w.Header().Get("ETag") != "" && tt.status != 404 {
			t.Errorf("%s: a refusal has a tag", tt.name)
		}
		if tt.status == 405 && w.Header().Get("Allow") == "" {
			t.Errorf("%s: it does not say what is allowed", tt.name)
		}
	}
}

// Every answer is closed in the same way, whoever gives it, and sets no cookie.
func TestEveryAnswerHasTheHeaders(t *testing.T) {
	for _, target := range []string{"/", "/guides.html", "/nowhere", "/plan", "/plan?1zz", "/plan.csv", "/plan.json", "/plan.ics", "/plan.svg"} {
		h := ask(t, "GET", target, "").Header()
		want := policy.Headers // only a plan page may send its form
		if strings.HasPrefix(target, "/plan") {
			want = policy.PlanHeaders
		}
		for _, one := range want {
			if got := h.Values(one[0]); !slices.Equal(got, []string{one[1]}) {
				t.Errorf("%s: %s is %q, want %q", target, one[0], got, one[1])
			}
		}
		if h.Get("Set-Cookie") != "" {
			t.Errorf("%s sets a cookie", target)
		}
	}
}

func TestAPlanThatTheClientHasIsNotSentAgain(t *testing.T) {
	link := carry.Link(plan.Examples()[1].Plan)
	for _, path := range Paths() {
		first := ask(t, "GET", path+"?"+link, "")
		tag := first.Header().Get("ETag")
		if len(tag) < 20 || tag[0] != '"' || tag == ask(t, "GET", path, "").Header().Get("ETag") {
			t.Errorf("%s has the tag %s, which is weak, or shared with another plan", path, tag)
		}
		for _, has := range []string{tag, `"x", ` + tag, "W/" + tag, "*"} {
			if w := ask(t, "GET", path+"?"+link, "", "If-None-Match", has); w.Code != 304 || w.Body.Len() > 0 || w.Header().Get("ETag") != tag {
				t.Errorf("%s for a client that has %s: %d with %d bytes", path, has, w.Code, w.Body.Len())
			}
		}
		if w := ask(t, "GET", path+"?"+link, "", "If-None-Match", `"x"`); w.Code != 200 {
			t.Errorf("%s for a client that has another: %d", path, w.Code)
		}
		if w := ask(t, "HEAD", path+"?"+link, ""); w.Code != 200 || w.Body.Len() > 0 || w.Header().Get("ETag") != tag {
			t.Errorf("HEAD %s: %d with %d bytes, tag %s", path, w.Code, w.Body.Len(), w.Header().Get("ETag"))
		}
		// Whoever passes an address on may add to it.
		if w := ask(t, "GET", path+"?"+link+"&from=chat", ""); w.Header().Get("ETag") != tag {
			t.Errorf("%s with an addition is not the same", path)
		}
	}
}

// A form with a mistake has no answer that anybody could have kept.
func TestAFormWithAMistakeIsNeverKnownAgain(t *testing.T) {
	if w := ask(t, "GET", "/plan?place.length=far", "", "If-None-Match", "*"); w.Code != 422 || w.Header().Get("ETag") != "" {
		t.Errorf("%d with the tag %q", w.Code, w.Header().Get("ETag"))
	}
}

func TestAFaultIsAdmitted(t *testing.T) {
	b, err := real()
	if err != nil {
		t.Fatal(err)
	}
	told := ""
	h := &handler{shell: b.Shell, Options: Options{Fault: func(fault any, stack []byte) { told = fault.(string) + string(stack) }}}
	w := httptest.NewRecorder()
	q := &question{handler: h, r: httptest.NewRequest("GET", "/plan", nil)}
	q.answer(w, &route{"/plan", links, func(*question, *asked) reply { panic("a leak") }, nil})
	if w.Code != 500 || !strings.Contains(w.Body.String(), "Evenrow has a fault") || strings.Contains(w.Body.String(), "a leak") {
		t.Errorf("%d %.300s", w.Code, w.Body)
	}
	if !strings.HasPrefix(told, "a leak") || !strings.Contains(told, "edge_test.go") {
		t.Errorf("told %q", told)
	}
}

// Nobody's plan is worked out for a client that has left while it waited.
func TestWhoLeavesIsNotWaitedFor(t *testing.T) {
	h := busy(t)
	h.Fault = func(fault any, _ []byte) { t.Errorf("a fault is told: %v", fault) }
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	w := httptest.NewRecorder()
	h.ServeHTTP(w, httptest.NewRequest("GET", "/plan", nil).WithContext(ctx))
	if strings.Contains(w.Body.String(), "Weakest emitter") {
		t.Error("the plan was worked out")
	}
}

// Where more is asked for than can be worked out soon, the rest is told when to
// come again, in words. Files, refusals and what a client has already do not
// wait.
func TestWhoWouldWaitTooLongIsToldToComeAgain(t *testing.T) {
	h := busy(t)
	h.files = http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) { w.WriteHeader(299) })
	ctx, cancel := context.WithCancel(context.Background())
	var all sync.WaitGroup
	for range 21 {
		all.Go(func() { h.Queue.Enter(ctx, most/20) })
	}
	defer all.Wait()
	defer cancel()
	for h.Queue.Waiting() < 21 {
		runtime.Gosched()
	}
	form := ""
	for i := range 20 {
		form += "rows." + strconv.Itoa(i+1) + ".plants=200&"
	}
	for _, method := range []string{"GET", "POST"} {
		r := httptest.NewRequest(method, "/plan", strings.NewReader(form))
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		if method == "GET" {
			r.URL.RawQuery = form
		}
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		text := w.Body.String()
		if w.Code != 503 || w.Header().Get("Retry-After") != "21" || w.Header().Get("Cache-Control") != "no-store" || w.Header().Get("ETag") != "" ||
			!strings.Contains(text, "Reload this page in 21 s") || strings.Contains(text, "is sent again") != (method == "POST") {
			t.Errorf("%s: %d, %v\n%.600s", method, w.Code, w.Header(), text)
		}
	}
	for target, status := range map[string]int{"/index.html": 299, "/plan?1zz": 400, "/plan.json": 200} {
		w := httptest.NewRecorder()
		h.ServeHTTP(w, httptest.NewRequest("GET", target, nil))
		if w.Code != status {
			t.Errorf("%s on a busy host: %d, want %d", target, w.Code, status)
		}
	}
}

// Nor does anybody wait until the host has forgotten them: who has waited for too
// long is told to come again, before the plan was begun and in the midst of it.
func TestWhoHasWaitedTooLongIsToldToComeAgain(t *testing.T) {
	b, err := real()
	if err != nil {
		t.Fatal(err)
	}
	h := New(nil, b.Shell, Options{Queue: Turns(1), Fault: func(fault any, _ []byte) { t.Errorf("a fault is told: %v", fault) }}).(*handler)
	has, _ := h.Queue.Enter(context.Background(), 0)
	before, within := httptest.NewRecorder(), httptest.NewRecorder()
	var all sync.WaitGroup
	all.Go(func() { h.ServeHTTP(before, httptest.NewRequest("GET", "/plan", nil)) })
	for h.Queue.Waiting() < 1 {
		runtime.Gosched()
	}
	has.Pause(2*most + 1)
	has.Leave()
	all.Wait()

	q := &question{handler: h, r: httptest.NewRequest("GET", "/plan", nil)}
	q.answer(within, &route{"/plan", links, func(q *question, _ *asked) reply {
		// Lighter plans come, and never all at once.
		q.turn.Pause(most / 2)
		other, _ := h.Queue.Enter(context.Background(), 0)
		var others sync.WaitGroup
		others.Go(func() {
			for h.Queue.Waiting() < 1 { // until the plan has made way
				runtime.Gosched()
			}
			other.Pause(2*most + 1)
			other.Leave()
		})
		defer others.Wait()
		q.pause()
		return reply{status: http.StatusOK}
	}, pageWork})
	for when, w := range map[string]*httptest.ResponseRecorder{"before": before, "within": within} {
		if w.Code != 503 || w.Header().Get("Retry-After") != "20" || !strings.Contains(w.Body.String(), "Reload this page in 20 s") {
			t.Errorf("%s: %d, %v\n%.300s", when, w.Code, w.Header(), w.Body)
		}
	}
}

// What takes long is worked out aside, and only that; a fault there is admitted as
// any other is.
func TestHeavyWorkIsDoneAside(t *testing.T) {
	b, err := real()
	if err != nil {
		t.Fatal(err)
	}
	aside, told := 0, 0
	h := New(nil, b.Shell, Options{
		Queue: Turns(1),
		Fault: func(any, []byte) { told++ },
		Aside: func(work func()) {
			aside++
			work()
			aside++
		},
	}).(*handler)
	heavy := "/plan?rows.1.plants=200&rows.2.plants=200"
	for _, c := range []struct {
		target        string
		status, aside int
	}{{"/plan", 200, 0}, {"/plan?1zz", 400, 0}, {heavy, 200, 2}} {
		aside = 0
		w := httptest.NewRecorder()
		h.ServeHTTP(w, httptest.NewRequest("GET", c.target, nil))
		if w.Code != c.status || aside != c.aside {
			t.Errorf("%s: %d, want %d; %d steps aside, want %d", c.target, w.Code, c.status, aside, c.aside)
		}
	}
	for _, thrown := range []any{"a leak", gone{}} {
		aside, told = 0, 0
		done := make(chan struct{})
		h.Aside = func(work func()) {
			aside++
			go func() {
				defer close(done)
				work()
			}()
			<-done
		}
		w := httptest.NewRecorder()
		q := &question{handler: h, r: httptest.NewRequest("GET", heavy, nil)}
		q.answer(w, &route{"/plan", forms, func(*question, *asked) reply { panic(thrown) }, pageWork})
		_, left := thrown.(gone)
		if want := map[bool]int{false: 500, true: 503}[left]; w.Code != want || aside != 1 || left == (told > 0) {
			t.Errorf("%v: %d, want %d; aside %d times, told of %d faults", thrown, w.Code, want, aside, told)
		}
	}
	if turn, _ := h.Queue.Enter(context.Background(), 0); turn == nil { // for ever, where a turn was kept
		t.Error("there is no turn")
	}
}

// To compress a page is work as well, and is done in its turn.
func TestAnAnswerIsPackedInItsTurn(t *testing.T) {
	b, err := real()
	if err != nil {
		t.Fatal(err)
	}
	q := Turns(1)
	packed := 0
	h := New(nil, b.Shell, Options{Queue: q, Pack: func(h http.Handler) http.Handler {
		return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
			h.ServeHTTP(writes{w, func() {
				packed++
				next := make(chan *queue.Turn, 1)
				go func() {
					turn, _ := q.Enter(context.Background(), 0)
					next <- turn
					turn.Leave()
				}()
				for q.Waiting() == 0 {
					if len(next) > 0 {
						t.Error("another has the turn while a page is packed")
						break
					}
					runtime.Gosched()
				}
			}}, r)
		})
	}})
	h.ServeHTTP(httptest.NewRecorder(), httptest.NewRequest("GET", "/plan", nil))
	if packed == 0 {
		t.Error("nothing is packed")
	}
	if turn, _ := q.Enter(context.Background(), 0); turn == nil { // for ever, where the turn was kept
		t.Error("there is no turn")
	}
}

// A writes has something done before it writes.
type writes struct {
	http.ResponseWriter
	do func()
}

func (w writes) Write(b []byte) (int, error) {
	w.do()
	return w.ResponseWriter.Write(b)
}

func TestWithoutFilesThereAreOnlyPlans(t *testing.T) {
	b, err := real()
	if err != nil {
		t.Fatal(err)
	}
	w := httptest.NewRecorder()
	New(nil, b.Shell, Options{}).ServeHTTP(w, httptest.NewRequest("GET", "/guides.html", nil))
	if w.Code != 404 || !strings.Contains(w.Body.String(), "There is no page at this address") {
		t.Errorf("%d %.300s", w.Code, w.Body)
	}
}

// Whatever is asked, the answer is no fault of ours.
func FuzzRequests(f *testing.F) {
	f.Add("GET", "/plan", carry.Link(plan.Default()), "", "")
	f.Add("POST", "/plan", "", "application/x-www-form-urlencoded", "rows.1.plants=3&action=add-row&good=1zz&units-was=us")
	f.Add("GET", "/plan", "units=us&place.length=1,000&supply.kind=gravity", "", "")
	f.Add("HEAD", "/plan.svg", "1oA", "", "")
	f.Add("PUT", "/plan.csv", "&&=", "a/b; c", "x")
	f.Add("GET", "/../plan.json", "%zz", "", "")
	f.Fuzz(func(t *testing.T, method, path, query, kind, body string) {
		r := httptest.NewRequest("GET", "/", strings.NewReader(body))
		r.Method, r.URL.Path, r.URL.RawQuery = method, path, query
		r.Header.Set("Content-Type", kind)
		r.Header.Set("If-None-Match", kind)
		r.Host = kind
		w := httptest.NewRecorder()
		host().ServeHTTP(w, r)
		if w.Code >= 500 {
			t.Errorf("%d", w.Code)
		}
		if slices.Contains(Paths(), path) && w.Code < 300 && method != "HEAD" && w.Body.Len() == 0 {
			t.Errorf("%d and nothing", w.Code)
		}
	})
}
