// Package server answers requests for the files of a finished site, with the
// headers that keep it closed to everything from elsewhere.
//
// It holds the files in memory and does no I/O, so that any runtime that
// speaks net/http can use it, on this machine or at the edge of a network.
package server

import (
	"bytes"
	"net/http"
	"path"
	"strings"
	"time"

	"evenrow/build/policy"
)

// Assets is the folder whose files carry a hash of their content in their
// names, so that a browser need never ask for one again.
const Assets = "assets/"

// types is the content type of each kind of file that the site has. Go's own
// table is not used: it asks the machine that it runs on.
var types = map[string]string{
	".css":         "text/css; charset=utf-8",
	".html":        "text/html; charset=utf-8",
	".js":          "text/javascript; charset=utf-8",
	".json":        "application/json",
	".png":         "image/png",
	".svg":         "image/svg+xml",
	".txt":         "text/plain; charset=utf-8",
	".wasm":        "application/wasm",
	".webmanifest": "application/manifest+json",
}

// Type is the content type of the file name. ok is false for a kind of file
// that the server does not know and would send as plain bytes.
func Type(name string) (contentType string, ok bool) {
	contentType, ok = types[path.Ext(name)]
	if !ok {
		contentType = "application/octet-stream"
	}
	return contentType, ok
}

// New returns a handler for files, which holds what each path such as
// "guides/index.html" consists of. A request for a folder is answered by its
// index.html. For a page that is missing the answer is 404.html, or a sentence
// when there is none.
//
// Each file is compressed here, once, and sent in the best form that the
// client takes.
func New(files map[string][]byte) http.Handler {
	s := &site{make(map[string]file, len(files))}
	for name, content := range files {
		s.files[name] = packed(name, content)
	}
	return s
}

type site struct {
	files map[string]file
}

func (s *site) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	h := w.Header()
	for _, one := range policy.Headers {
		h.Set(one[0], one[1])
	}
	h.Set("Cache-Control", policy.AskFirst)

	if r.Method != http.MethodGet && r.Method != http.MethodHead {
		h.Set("Allow", "GET, HEAD")
		http.Error(w, "This site only answers GET and HEAD.", http.StatusMethodNotAllowed)
		return
	}
	name := strings.TrimPrefix(path.Clean("/"+r.URL.Path), "/")
	folder := strings.HasSuffix(r.URL.Path, "/")
	switch {
	case name == "" || folder && s.has(path.Join(name, "index.html")):
		name = path.Join(name, "index.html")
	case folder:
		name = "" // "/page.html/" is not a page
	case s.has(name + "/index.html"):
		// Without the slash, the page's relative links would lead astray. The
		// target is relative too: "//elsewhere" as a path must not become one.
		w.Header().Set("Location", path.Base(name)+"/")
		w.WriteHeader(http.StatusMovedPermanently)
		return
	}
	f, ok := s.files[name]
	if !ok {
		s.missing(w, r)
		return
	}
	if strings.HasPrefix(name, Assets) {
		h.Set("Cache-Control", policy.ForEver)
	}
	body := f.choose(h, r)
	h.Set("Content-Type", f.kind)
	h.Set("ETag", body.tag)
	http.ServeContent(w, r, name, time.Time{}, bytes.NewReader(body.content))
}

func (s *site) has(name string) bool {
	_, ok := s.files[name]
	return ok
}

// missing says in words that there is no such page.
func (s *site) missing(w http.ResponseWriter, r *http.Request) {
	f, ok := s.files["404.html"]
	if !ok {
		http.Error(w, "There is no page at this address.", http.StatusNotFound)
		return
	}
	body := f.choose(w.Header(), r)
	w.Header().Set("Content-Type", f.kind)
	w.WriteHeader(http.StatusNotFound)
	if r.Method != http.MethodHead {
		w.Write(body.content)
	}
}
