// Package edge answers with plan pages: a plan as a page that works without
// scripts, as a table of parts, as a file and as a picture.
//
// It holds one handler for every host. The program that serves the site on this
// machine gives it the site's files too; at the edge of a network the platform
// has them, and only plans reach this package. The same plan gives the same
// bytes on both.
//
// It keeps nothing: no plan, no visitor, no log and no cookie.
package edge

import (
	"crypto/sha256"
	"encoding/hex"
	"net/http"
	"runtime"
	"slices"
	"strings"

	"evenrow/build/policy"
	"evenrow/build/shell"
	"evenrow/wasm/plan"
	"evenrow/wasm/sheet"
)

// Options are what hosts differ in.
type Options struct {
	// Origin is the address of the host, such as "https://example.org", where
	// previews are looked for. When it is empty each request says it.
	Origin string

	// Fault is told of a fault of the program and where it was; nil when
	// nobody listens. It is told nothing of the plan.
	Fault func(fault any, stack []byte)

	// Pack compresses the answers for plans; nil where the host does.
	Pack func(http.Handler) http.Handler
}

// New returns a handler that answers for plans, and hands everything else to
// files. When files is nil there is nothing else.
func New(files http.Handler, s *shell.Shell, o Options) http.Handler {
	h := &handler{files: files, shell: s, Options: o, work: make(chan struct{}, runtime.GOMAXPROCS(0))}
	h.plans = http.HandlerFunc(h.route)
	if o.Pack != nil {
		h.plans = o.Pack(h.plans)
	}
	return h
}

type handler struct {
	plans http.Handler // for the routes
	files http.Handler // for everything else; may be nil
	shell *shell.Shell
	Options
	// work is full when as many plans are worked out as the machine has
	// processors: more at once take more memory and no less time.
	work chan struct{}
}

// A route is one address that plans are served at.
type route struct {
	path    string
	methods []string
	answer  func(*question) reply
}

var (
	links = []string{http.MethodGet, http.MethodHead}
	forms = []string{http.MethodGet, http.MethodHead, http.MethodPost}
)

// routes is every address. What comes after a "?" is the plan.
var routes = [...]route{
	{"/" + shell.Address, forms, (*question).page},
	{"/" + shell.Address + ".csv", links, ofLink(table)},
	{"/" + shell.Address + ".json", links, ofLink(file)},
	{"/" + shell.Address + ".ics", links, ofLink(calendar)},
	{"/" + shell.Address + ".svg", links, ofLink(picture)},
}

// Paths is every path that a plan is served at: what a platform has to send
// here.
func Paths() []string {
	var paths []string
	for i := range routes {
		paths = append(paths, routes[i].path)
	}
	return paths
}

// A question is one request about a plan.
type question struct {
	*handler
	r *http.Request
}

// A reply is the answer to one, whole.
type reply struct {
	status int
	kind   string // its content type
	name   string // of the file that it should be saved as; empty when it is looked at
	body   string
}

func (h *handler) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	if h.files == nil || slices.Contains(Paths(), r.URL.Path) {
		h.plans.ServeHTTP(w, r)
		return
	}
	h.files.ServeHTTP(w, r)
}

// route answers for a plan, or that there is none at the address.
func (h *handler) route(w http.ResponseWriter, r *http.Request) {
	for i := range routes {
		if routes[i].path == r.URL.Path {
			h.answer(w, r, &routes[i])
			return
		}
	}
	h.send(w, r, (&question{h, r}).refuse(http.StatusNotFound, "There is no page at this address", "The address may be mistyped, or the page has moved."))
}

func (h *handler) answer(w http.ResponseWriter, r *http.Request, to *route) {
	q := &question{h, r}
	if !slices.Contains(to.methods, r.Method) {
		w.Header().Set("Allow", strings.Join(to.methods, ", "))
		h.send(w, r, q.refuse(http.StatusMethodNotAllowed, "This cannot be done here", "This address answers "+strings.Join(to.methods, ", ")+" and nothing else."))
		return
	}
	h.send(w, r, h.guarded(q, to))
}

// guarded is what the route answers, or a page that admits a fault.
func (h *handler) guarded(q *question, to *route) (out reply) {
	defer func() {
		if fault := recover(); fault != nil {
			if _, left := fault.(gone); !left && h.Fault != nil {
				stack := make([]byte, 16<<10)
				h.Fault(fault, stack[:runtime.Stack(stack, false)])
			}
			out = q.refuse(http.StatusInternalServerError, "Evenrow has a fault", "It could not work this plan out, and the plan is not to blame. Change it a little, or use the planner, which works it out on your own device.")
		}
	}()
	return to.answer(q)
}

// A gone is thrown when the client has left before its plan's turn came.
type gone struct{}

// sheet works a plan out, when it is its turn, and the explorations named.
func (q *question) sheet(p *plan.Plan, also ...sheet.Exploration) *sheet.Sheet {
	select {
	case q.work <- struct{}{}:
	case <-q.r.Context().Done():
		panic(gone{})
	}
	defer func() { <-q.work }()
	s := sheet.Answer(p)
	for _, which := range also {
		s.Explore(which)
	}
	return s
}

// send sends a reply, or only that the client has it already.
func (h *handler) send(w http.ResponseWriter, r *http.Request, out reply) {
	to := w.Header()
	for _, one := range policy.Headers {
		to.Set(one[0], one[1])
	}
	to.Set("Content-Type", out.kind)
	to.Set("Vary", "Accept-Encoding") // whoever passes it on compresses it
	switch {
	case r.Method == http.MethodPost || out.status >= http.StatusBadRequest:
		to.Set("Cache-Control", "no-store")
	default:
		to.Set("Cache-Control", policy.AskFirst)
		sum := sha256.Sum256([]byte(out.body))
		tag := `"` + hex.EncodeToString(sum[:16]) + `"`
		to.Set("ETag", tag)
		if matches(r.Header.Values("If-None-Match"), tag) {
			to.Del("Content-Type")
			w.WriteHeader(http.StatusNotModified)
			return
		}
	}
	if out.name != "" && out.status == http.StatusOK {
		to.Set("Content-Disposition", `attachment; filename="`+out.name+`"`)
	}
	w.WriteHeader(out.status)
	if r.Method != http.MethodHead {
		w.Write([]byte(out.body))
	}
}

// matches reports whether a client that has these has the tag. A host on the
// way may have weakened it by compressing.
func matches(lines []string, tag string) bool {
	for _, line := range lines {
		for one := range strings.SplitSeq(line, ",") {
			one = strings.TrimPrefix(strings.TrimSpace(one), "W/")
			if one == tag || one == "*" {
				return true
			}
		}
	}
	return false
}

// origin is where this host is, as far as it can be known; empty otherwise.
func (q *question) origin() string {
	if q.Origin != "" {
		return q.Origin
	}
	scheme, host := q.r.URL.Scheme, q.r.URL.Host
	if host == "" {
		scheme, host = "http", q.r.Host
		if q.r.TLS != nil {
			scheme = "https"
		}
	}
	strange := strings.ContainsFunc(host, func(c rune) bool {
		return !(c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || strings.ContainsRune(".-:[]", c))
	})
	if strange || host == "" || len(host) > 255 || scheme != "http" && scheme != "https" {
		return ""
	}
	return scheme + "://" + host
}
