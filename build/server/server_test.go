package server

import (
	"compress/gzip"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"
)

var files = map[string][]byte{
	"index.html":            []byte("<h1>Plan</h1>"),
	"404.html":              []byte("<h1>No such page</h1>"),
	"offline.js":            []byte("self"),
	"site.webmanifest":      []byte("{}"),
	"guides/index.html":     []byte("<h1>Guides</h1>"),
	"guides/pump.html":      []byte("<h1>Pump</h1>"),
	"assets/page-1a2b.js":   []byte("export {}"),
	"assets/style-1a2b.css": []byte("@layer a"),
	"assets/icon-1a2b.svg":  []byte("<svg/>"),
	"assets/p-1a2b.wasm":    []byte("\x00asm"),
}

func ask(method, target string, header ...string) *httptest.ResponseRecorder {
	r := httptest.NewRequest(method, target, nil)
	for i := 0; i < len(header); i += 2 {
		r.Header.Set(header[i], header[i+1])
	}
	w := httptest.NewRecorder()
	New(files).ServeHTTP(w, r)
	return w
}

func TestAnswers(t *testing.T) {
	tests := []struct {
		name, method, target string
		status               int
		contentType, cache   string
		body                 string
	}{
		{"the root", "GET", "/", 200, "text/html; charset=utf-8", "no-cache", "<h1>Plan</h1>"},
		{"a plan in the query", "GET", "/?plan=abc", 200, "text/html; charset=utf-8", "no-cache", "<h1>Plan</h1>"},
		{"a folder", "GET", "/guides/", 200, "text/html; charset=utf-8", "no-cache", "<h1>Guides</h1>"},
		{"a page", "GET", "/guides/pump.html", 200, "text/html; charset=utf-8", "no-cache", "<h1>Pump</h1>"},
		{"head has no body", "HEAD", "/guides/pump.html", 200, "text/html; charset=utf-8", "no-cache", ""},
		{"the service worker is asked for each time", "GET", "/offline.js", 200, "text/javascript; charset=utf-8", "no-cache", "self"},
		{"the manifest", "GET", "/site.webmanifest", 200, "application/manifest+json", "no-cache", "{}"},
		{"a hashed script is kept", "GET", "/assets/page-1a2b.js", 200, "text/javascript; charset=utf-8", "public, max-age=31536000, immutable", "export {}"},
		{"a hashed style", "GET", "/assets/style-1a2b.css", 200, "text/css; charset=utf-8", "public, max-age=31536000, immutable", "@layer a"},
		{"a picture", "GET", "/assets/icon-1a2b.svg", 200, "image/svg+xml", "public, max-age=31536000, immutable", "<svg/>"},
		{"WebAssembly", "GET", "/assets/p-1a2b.wasm", 200, "application/wasm", "public, max-age=31536000, immutable", "\x00asm"},
		{"a page that is missing", "GET", "/guides/none.html", 404, "text/html; charset=utf-8", "no-cache", "<h1>No such page</h1>"},
		{"a folder that is missing", "GET", "/none/", 404, "text/html; charset=utf-8", "no-cache", "<h1>No such page</h1>"},
		{"a page is no folder", "GET", "/guides/pump.html/", 404, "text/html; charset=utf-8", "no-cache", "<h1>No such page</h1>"},
		{"a missing page by head", "HEAD", "/none", 404, "text/html; charset=utf-8", "no-cache", ""},
		{"a hashed file that is gone is not kept", "GET", "/assets/page-0000.js", 404, "text/html; charset=utf-8", "no-cache", "<h1>No such page</h1>"},
		{"dots lead nowhere", "GET", "/guides/../../../index.html", 200, "text/html; charset=utf-8", "no-cache", "<h1>Plan</h1>"},
		{"nothing can be posted", "POST", "/", 405, "text/plain; charset=utf-8", "no-cache", "This site only answers GET and HEAD.\n"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			w := ask(tt.method, tt.target)
			if w.Code != tt.status || w.Body.String() != tt.body {
				t.Errorf("%s %s: %d %q, want %d %q", tt.method, tt.target, w.Code, w.Body, tt.status, tt.body)
			}
			if got := w.Header().Get("Content-Type"); got != tt.contentType {
				t.Errorf("%s %s: content type %q, want %q", tt.method, tt.target, got, tt.contentType)
			}
			if got := w.Header().Get("Cache-Control"); got != tt.cache {
				t.Errorf("%s %s: cache control %q, want %q", tt.method, tt.target, got, tt.cache)
			}
		})
	}
}

func TestEveryAnswerIsClosed(t *testing.T) {
	for _, target := range []string{"/", "/assets/page-1a2b.js", "/none"} {
		h := ask("GET", target).Header()
		for name, want := range map[string]string{
			"X-Content-Type-Options":       "nosniff",
			"Referrer-Policy":              "no-referrer",
			"Cross-Origin-Opener-Policy":   "same-origin",
			"Cross-Origin-Resource-Policy": "same-origin",
		} {
			if got := h.Get(name); got != want {
				t.Errorf("%s: %s is %q, want %q", target, name, got, want)
			}
		}
		csp := h.Get("Content-Security-Policy")
		for _, want := range []string{
			"default-src 'none'", "script-src 'self' 'wasm-unsafe-eval'", "style-src 'self'", "connect-src 'self'",
			"frame-ancestors 'none'", "base-uri 'none'", "require-trusted-types-for 'script'", "trusted-types evenrow",
		} {
			if !strings.Contains(csp, want) {
				t.Errorf("%s: the policy lacks %s: %s", target, want, csp)
			}
		}
		if strings.Contains(csp, "'unsafe-inline'") || strings.Contains(csp, "'unsafe-eval'") || strings.Contains(csp, "http") {
			t.Errorf("%s: the policy is open: %s", target, csp)
		}
	}
}

func TestAFolderWithoutItsSlashIsRedirected(t *testing.T) {
	w := ask("GET", "/guides")
	if w.Code != 301 || w.Header().Get("Location") != "guides/" {
		t.Errorf("%d to %q, want 301 to guides/", w.Code, w.Header().Get("Location"))
	}
	// Two slashes at the start must not become an address of another site.
	w = ask("GET", "//guides")
	if got := w.Header().Get("Location"); w.Code == 301 && strings.HasPrefix(got, "/") {
		t.Errorf("redirected to %q", got)
	}
}

func TestAnUnchangedFileIsNotSentAgain(t *testing.T) {
	tag := ask("GET", "/").Header().Get("ETag")
	if tag == "" || tag == ask("GET", "/guides/").Header().Get("ETag") {
		t.Fatalf("entity tag %q is empty or shared", tag)
	}
	w := ask("GET", "/", "If-None-Match", tag)
	if w.Code != http.StatusNotModified || w.Body.Len() != 0 {
		t.Errorf("%d with %d bytes, want 304 with none", w.Code, w.Body.Len())
	}
}

func TestMissingPageWithoutATemplate(t *testing.T) {
	w := httptest.NewRecorder()
	New(nil).ServeHTTP(w, httptest.NewRequest("GET", "/none", nil))
	if w.Code != 404 || w.Body.String() != "There is no page at this address.\n" {
		t.Errorf("%d %q", w.Code, w.Body)
	}
}

// A file is sent in the smallest form that the client takes, each with a tag of
// its own, and unpacks to the file.
func TestFilesAreSentPacked(t *testing.T) {
	whole := strings.Repeat("<p>every plant gets the same water</p>", 40)
	s := New(map[string][]byte{"page.html": []byte(whole), "small.txt": []byte("a"), "icon.png": []byte(whole)})
	tags := map[string]bool{}
	for _, tt := range []struct{ name, accept, coding, vary string }{
		{"page.html", "", "", "Accept-Encoding"},
		{"page.html", "gzip, deflate, br, zstd", "br", "Accept-Encoding"},
		{"page.html", "gzip", "gzip", "Accept-Encoding"},
		{"page.html", "br;q=0, *", "gzip", "Accept-Encoding"},
		{"page.html", "*;q=0", "", "Accept-Encoding"},
		{"page.html", "BR ; q=0.5", "br", "Accept-Encoding"},
		{"page.html", "compress", "", "Accept-Encoding"},
		{"small.txt", "br, gzip", "", ""}, // packed, it would be larger
		{"icon.png", "br, gzip", "", ""},
	} {
		r := httptest.NewRequest("GET", "/"+tt.name, nil)
		r.Header.Set("Accept-Encoding", tt.accept)
		w := httptest.NewRecorder()
		s.ServeHTTP(w, r)
		if got := w.Header().Get("Content-Encoding"); got != tt.coding || w.Header().Get("Vary") != tt.vary {
			t.Errorf("%s for %q is coded %q and varies by %q, want %q", tt.name, tt.accept, got, w.Header().Get("Vary"), tt.coding)
		}
		body := io.Reader(w.Body)
		switch tt.coding {
		case "br":
			body = brotli.NewReader(body)
		case "gzip":
			z, err := gzip.NewReader(body)
			if err != nil {
				t.Fatal(err)
			}
			body = z
		}
		if got, err := io.ReadAll(body); err != nil || tt.name != "small.txt" && string(got) != whole {
			t.Errorf("%s for %q unpacks to %d bytes, %v", tt.name, tt.accept, len(got), err)
		}
		if tag := w.Header().Get("ETag"); tt.name == "page.html" {
			tags[tag] = true
			r.Header.Set("If-None-Match", tag)
			again := httptest.NewRecorder()
			if s.ServeHTTP(again, r); again.Code != http.StatusNotModified {
				t.Errorf("%s for %q and %s: %d, want 304", tt.name, tt.accept, tag, again.Code)
			}
		}
	}
	if len(tags) != 3 {
		t.Errorf("three forms of a page have the tags %v", tags)
	}
}

// What is made for each request is compressed too, under a tag of its own by
// which it is known again.
func TestWhatIsMadeIsPacked(t *testing.T) {
	whole := strings.Repeat("every plant gets the same water\n", 40)
	h := Packing(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("ETag", `"abc"`)
		if strings.Contains(strings.Join(r.Header.Values("If-None-Match"), ","), `"abc"`) {
			w.WriteHeader(http.StatusNotModified)
			return
		}
		if r.Method == http.MethodPost {
			w.WriteHeader(http.StatusUnprocessableEntity)
		}
		io.WriteString(w, whole)
	}))
	for _, tt := range []struct {
		method, accept, has string
		status              int
		coding, tag         string
	}{
		{"GET", "br, gzip", "", 200, "gzip", `"abc-gzip"`},
		{"POST", "gzip", "", 422, "gzip", `"abc-gzip"`},
		{"GET", "br", "", 200, "", `"abc"`},
		{"GET", "", `"abc"`, 304, "", `"abc"`},
		{"GET", "gzip", `"abc-gzip"`, 304, "", `"abc-gzip"`},
		{"GET", "gzip", `"abd-gzip"`, 200, "gzip", `"abc-gzip"`},
	} {
		r := httptest.NewRequest(tt.method, "/", nil)
		r.Header.Set("Accept-Encoding", tt.accept)
		if tt.has != "" {
			r.Header.Set("If-None-Match", tt.has)
		}
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		if w.Code != tt.status || w.Header().Get("Content-Encoding") != tt.coding || w.Header().Get("ETag") != tt.tag {
			t.Errorf("%+v: %d, %v", tt, w.Code, w.Header())
		}
		body := io.Reader(w.Body)
		if tt.coding == "gzip" {
			z, err := gzip.NewReader(body)
			if err != nil {
				t.Fatal(err)
			}
			body = z
		}
		if got, err := io.ReadAll(body); err != nil || tt.status != 304 && string(got) != whole {
			t.Errorf("%+v: unpacks to %d bytes, %v", tt, len(got), err)
		}
	}
}

// Who takes its time to receive an answer holds up nothing in the handler.
func TestNothingIsSentBeforeItIsPacked(t *testing.T) {
	for _, accept := range []string{"gzip", "identity"} {
		w := httptest.NewRecorder()
		h := Packing(http.HandlerFunc(func(to http.ResponseWriter, _ *http.Request) {
			to.WriteHeader(http.StatusUnprocessableEntity)
			io.WriteString(to, strings.Repeat("plan ", 1<<20))
			if w.Body.Len() > 0 {
				t.Errorf("%s: %d bytes are sent already", accept, w.Body.Len())
			}
		}))
		r := httptest.NewRequest("GET", "/", nil)
		r.Header.Set("Accept-Encoding", accept)
		h.ServeHTTP(w, r)
		if w.Code != 422 || w.Body.Len() == 0 {
			t.Errorf("%s: %d, %d bytes", accept, w.Code, w.Body.Len())
		}
	}
}
