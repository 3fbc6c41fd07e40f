package edge

import (
	"context"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"evenrow/build/server"
	"evenrow/build/shell"
	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
)

// busy is a handler that works out nothing more for long: its one turn is taken.
func busy(t *testing.T) *handler {
	t.Helper()
	b, err := real()
	if err != nil {
		t.Fatal(err)
	}
	h := New(nil, b.Shell, Options{Version: "a test", Queue: Turns(1)}).(*handler)
	h.Queue.Enter(context.Background(), 0)
	return h
}

// own is the link to a plan that is no example.
func own() string {
	p := plan.Examples()[2].Plan.Clone()
	p.Name = "My balcony"
	return carry.Link(p)
}

// What a client has is known again before any work.
func TestNothingIsWorkedOutForAPlanThatTheClientHas(t *testing.T) {
	for _, path := range Paths() {
		for _, query := range []string{"", own(), own() + "&from=chat", "name=Mine&rows.1.plants=3"} {
			if path != "/plan" && strings.Contains(query, "name=") {
				continue
			}
			target := path + "?" + query
			tag := ask(t, "GET", target, "").Header().Get("ETag")
			ctx, cancel := context.WithTimeout(context.Background(), 2*time.Second)
			r := httptest.NewRequest("GET", target, nil).WithContext(ctx)
			r.Header.Set("If-None-Match", tag)
			w := httptest.NewRecorder()
			busy(t).ServeHTTP(w, r)
			cancel()
			if w.Code != 304 || w.Body.Len() > 0 || w.Header().Get("ETag") != tag {
				t.Errorf("%s: %d with %d bytes and the tag %s, want 304 and %s", target, w.Code, w.Body.Len(), w.Header().Get("ETag"), tag)
			}
		}
	}
}

// Whatever changes the bytes changes the tag, and what does not, does not.
func TestATagIsOfEverythingThatMakesTheAnswer(t *testing.T) {
	b, err := real()
	if err != nil {
		t.Fatal(err)
	}
	tag := func(h http.Handler, target string) string {
		w := httptest.NewRecorder()
		h.ServeHTTP(w, httptest.NewRequest("GET", target, nil))
		return w.Header().Get("ETag")
	}
	other := *b.Shell
	other.Refusal += " "
	spoken := shell.Shell{Plan: b.Shell.Plan, Refusal: b.Shell.Refusal, Cautions: map[string]string{"dust": "Mind the dust."}}
	first := tag(host(), "/plan?"+own())
	seen := map[string]string{first: "the plan itself"}
	for what, got := range map[string]string{
		"another program": tag(New(nil, b.Shell, Options{Version: "another"}), "/plan?"+own()),
		"another frame":   tag(New(nil, &other, Options{Version: "a test"}), "/plan?"+own()),
		"another caution": tag(New(nil, &spoken, Options{Version: "a test"}), "/plan?"+own()),
		"another address": tag(host(), "/plan.json?"+own()),
		"another host":    tag(host(), "http://other.example/plan?"+own()),
		"another plan":    tag(host(), "/plan"),
		"a form":          tag(host(), "/plan?name=My+balcony"),
		"another form":    tag(host(), "/plan?name=My%20balcony"),
	} {
		if got == "" || seen[got] != "" {
			t.Errorf("%s has the tag %q, as has %s", what, got, seen[got])
		}
		seen[got] = what
	}
	if got := tag(New(nil, b.Shell, Options{}), "/plan"); got != "" {
		t.Errorf("a program of no version gives the tag %s", got)
	}
	if plain, link := tag(host(), "/plan"), tag(host(), "/plan?"+carry.Link(plan.Default())); plain != link {
		t.Errorf("the same page has the tags %s and %s", plain, link)
	}
}

// A plan is its reader's own: caches that others share may keep the examples,
// which every page leads to, and nothing else.
func TestOnlyExamplesMayBeShared(t *testing.T) {
	example := carry.Link(plan.Examples()[1].Plan)
	for _, tt := range []struct {
		method, target, body, want string
	}{
		{"GET", "/plan", "", "no-cache"},
		{"GET", "/plan?" + example, "", "no-cache"},
		{"GET", "/plan.svg?" + example, "", "no-cache"},
		{"HEAD", "/plan.json?" + example, "", "no-cache"},
		{"GET", "/plan?" + example + "&from=me", "", "private, no-cache"},
		{"GET", "/plan?from=me", "", "private, no-cache"},
		{"GET", "/plan?" + own(), "", "private, no-cache"},
		{"GET", "/plan.csv?" + own(), "", "private, no-cache"},
		{"GET", "/plan?name=Mine", "", "private, no-cache"},
		{"POST", "/plan", "name=Mine", "no-store"},
		{"GET", "/plan?place.length=far", "", "no-store"},
		{"GET", "/plan?1zz", "", "no-store"},
	} {
		if got := ask(t, tt.method, tt.target, tt.body).Header().Get("Cache-Control"); got != tt.want {
			t.Errorf("%s %.60s: %q, want %q", tt.method, tt.target, got, tt.want)
		}
	}
}

// Through the compressing handler, too, and nothing is compressed for it.
func TestACompressedPlanIsKnownAgain(t *testing.T) {
	h := server.Packing(host())
	get := func(has string) *httptest.ResponseRecorder {
		r := httptest.NewRequest("GET", "/plan.json?"+own(), nil)
		r.Header.Set("Accept-Encoding", "gzip")
		if has != "" {
			r.Header.Set("If-None-Match", has)
		}
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		return w
	}
	first := get("")
	tag := first.Header().Get("ETag")
	again := get(tag)
	if first.Header().Get("Content-Encoding") != "gzip" || !strings.HasSuffix(tag, `-gzip"`) ||
		again.Code != 304 || again.Body.Len() > 0 || again.Header().Get("Content-Encoding") != "" || again.Header().Get("ETag") != tag {
		t.Errorf("%v, then %d with %d bytes, %v", first.Header(), again.Code, again.Body.Len(), again.Header())
	}
}
