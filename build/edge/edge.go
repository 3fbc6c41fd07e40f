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
	"cmp"
	"io"
	"net/http"
	"path"
	"runtime"
	"slices"
	"strconv"
	"strings"

	"evenrow/build/policy"
	"evenrow/build/queue"
	"evenrow/build/shell"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/form"
	"evenrow/wasm/shown/page"
)

// Options are what hosts differ in.
type Options struct {
	// Origin is the address of the host, such as "https://example.org", where
	// previews are looked for. When it is empty each request says it.
	Origin string

	// Version names the program. Whoever changes the program changes it: a
	// client that has an answer of one version asks again with another. When it
	// is empty no answer is known again.
	Version string

	// Queue gives plans their turns: see [Work] for its units. When it is nil,
	// [Turns] makes one.
	Queue *queue.Queue

	// Aside does heavy work, such as that whatever is light is not held up by it, and
	// returns when it is done. It is nil where there is but one thread.
	Aside func(work func())

	// Fault is told of a fault of the program and where it was; nil when
	// nobody listens. It is told nothing of the plan.
	Fault func(fault any, stack []byte)

	// Pack compresses the answers for plans, and sends nothing before the handler
	// has returned: to compress is work too and has its turn, to send has none.
	// It is nil where the host does it.
	Pack func(http.Handler) http.Handler
}

// New returns a handler that answers for plans, and hands everything else to
// files. When files is nil there is nothing else.
func New(files http.Handler, s *shell.Shell, o Options) http.Handler {
	h := &handler{files: files, shell: s, examples: exampleLinks(), offered: form.Examples(examples()), Options: o}
	if o.Queue == nil {
		h.Queue = Turns(max(1, runtime.GOMAXPROCS(0)-1))
	}
	if o.Version != "" {
		h.version = version(o.Version, s)
	}
	h.plans = http.HandlerFunc(h.route)
	if o.Pack != nil {
		h.plans = o.Pack(h.plans)
	}
	return h
}

type handler struct {
	plans    http.Handler // for the routes
	files    http.Handler // for everything else; may be nil
	shell    *shell.Shell
	version  string          // of everything that answers are made of; empty when unknown
	examples map[string]bool // the links that every page hands out
	offered  string          // what stands on every page about them
	Options
}

// A route is one address that plans are served at.
type route struct {
	path    string
	methods []string
	answer  func(*question, *asked) reply
	work    func(*plan.Plan) int // that it takes, in the queue's units; nil for next to none
}

var (
	links = []string{http.MethodGet, http.MethodHead}
	forms = []string{http.MethodGet, http.MethodHead, http.MethodPost}
)

// routes is every address. What comes after a "?" is the plan.
var routes = [...]route{
	{"/" + shell.Address, forms, (*question).page, pageWork},
	{"/" + shell.Address + ".csv", links, table(page.PartsFile), answerWork},
	{"/" + shell.Address + "-cuts.csv", links, table(page.CutsFile), answerWork},
	{"/" + shell.Address + "-marks.csv", links, table(page.MarksFile), answerWork},
	{"/" + shell.Address + ".json", links, file, nil},
	{"/" + shell.Address + ".ics", links, calendar, answerWork},
	{"/" + shell.Address + ".svg", links, picture, answerWork},
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
	r    *http.Request
	turn *queue.Turn // nil while there is none
}

// A reply is the answer to one, whole.
type reply struct {
	status int
	kind   string // its content type
	name   string // of the file that it should be saved as; empty when it is looked at
	body   string
	tag    string // by which it is known again; empty when it is not
	keep   string // how long it may be kept; empty for not at all
	later  int    // after how many seconds to ask again; 0 when nothing is said of it
}

func (h *handler) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	if h.files == nil || slices.Contains(Paths(), clean(r.URL.Path)) {
		h.plans.ServeHTTP(w, r)
		return
	}
	h.files.ServeHTTP(w, r)
}

// clean is a path as the files' handler and the script at the edge read it: two
// slashes are one, and dots lead up. A slash at its end stays.
func clean(p string) string {
	short := path.Clean("/" + p)
	if strings.HasSuffix(p, "/") && short != "/" {
		short += "/"
	}
	return short
}

// route answers for a plan, or that there is none at the address.
func (h *handler) route(w http.ResponseWriter, r *http.Request) {
	q, at := &question{handler: h, r: r}, clean(r.URL.Path)
	for i := range routes {
		if routes[i].path == at {
			q.answer(w, &routes[i])
			return
		}
	}
	q.send(w, q.refuse(http.StatusNotFound, "There is no page at this address", "The address may be mistyped, or the page has moved."))
}

func (q *question) answer(w http.ResponseWriter, to *route) {
	if !slices.Contains(to.methods, q.r.Method) {
		w.Header().Set("Allow", strings.Join(to.methods, ", "))
		q.send(w, q.refuse(http.StatusMethodNotAllowed, "This cannot be done here", "This address answers "+strings.Join(to.methods, ", ")+" and nothing else."))
		return
	}
	out := q.guarded(func() reply { return q.reply(to) })
	if q.Pack != nil {
		defer q.leave()
	} else {
		q.leave()
	}
	q.send(w, out)
}

// leave leaves the turn, if there is one.
func (q *question) leave() {
	if q.turn != nil {
		q.turn.Leave()
	}
}

// guarded is what is answered, or a page that admits a fault.
func (q *question) guarded(answer func() reply) (out reply) {
	defer func() {
		if fault := recover(); fault != nil {
			if _, none := fault.(gone); none {
				out = q.later(most)
				return
			}
			if q.Fault != nil {
				stack := make([]byte, 16<<10)
				q.Fault(fault, stack[:runtime.Stack(stack, false)])
			}
			out = q.refuse(http.StatusInternalServerError, "Evenrow has a fault", "It could not work this plan out, and the plan is not to blame. Change it a little, or use the planner, which works it out on your own device.")
		}
	}()
	return answer()
}

// reply is what the route answers.
func (q *question) reply(to *route) (out reply) {
	a, refusal, ok := q.read(to)
	if !ok {
		return refusal
	}
	tag, keep := q.kept(to, a)
	if tag != "" && matches(q.r.Header.Values("If-None-Match"), tag) {
		return reply{status: http.StatusNotModified, tag: tag, keep: keep}
	}
	work := 0
	if to.work != nil {
		if work = to.work(a.shown()); a.start != nil {
			work = startWork(a.start)
		}
		turn, wait := q.Queue.Enter(q.r.Context(), work)
		if turn == nil {
			return q.later(wait)
		}
		q.turn = turn
	}
	if work > light && q.Aside != nil {
		// What it throws there, nobody would catch here.
		q.Aside(func() { out = q.guarded(func() reply { return to.answer(q, a) }) })
	} else {
		out = to.answer(q, a)
	}
	if out.status == http.StatusOK {
		out.tag, out.keep = tag, keep
	}
	return out
}

// send sends a reply, or only that the client has it already.
func (q *question) send(w http.ResponseWriter, out reply) {
	to := w.Header()
	for _, one := range policy.PlanHeaders {
		to.Set(one[0], one[1])
	}
	to.Set("Vary", "Accept-Encoding") // whoever passes it on compresses it
	to.Set("Cache-Control", cmp.Or(out.keep, policy.Never))
	if out.tag != "" {
		to.Set("ETag", out.tag)
	}
	if out.kind != "" {
		to.Set("Content-Type", out.kind)
	}
	if out.later > 0 {
		to.Set("Retry-After", strconv.Itoa(out.later))
	}
	if out.name != "" {
		to.Set("Content-Disposition", `attachment; filename="`+out.name+`"`)
	}
	w.WriteHeader(out.status)
	if q.r.Method != http.MethodHead && out.body != "" {
		io.WriteString(w, out.body)
	}
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
