// Package policy holds the content security policy of every page and the
// headers that every answer carries, so that the server, the program at the
// edge and the pages' own meta element cannot drift apart.
package policy

// TrustedTypes are the names of the policies through which the page's scripts may
// set markup and script addresses: all of them, and the first script to start the worker.
const TrustedTypes = "evenrow evenrow-worker"

// own lets a page load only what comes from its own site, and WebAssembly; no
// script, style or frame from elsewhere, no inline script and no inline style.
const own = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; worker-src 'self'; connect-src 'self'; " +
	"style-src 'self'; img-src 'self' data:; manifest-src 'self'; base-uri 'none'; " +
	"require-trusted-types-for 'script'; trusted-types " + TrustedTypes

// The policy as a page carries it in its head. A page of the site sends no
// form, whatever is pressed and whether its scripts run or not; a plan page
// sends its form to its own host, and says so.
const (
	Meta     = own + "; form-action 'none'"
	PlanMeta = own + "; form-action 'self'"
)

// Headers is what every answer of every server carries, name and value, but
// those for plans, which carry PlanHeaders.
var (
	Headers     = headers(Meta)
	PlanHeaders = headers(PlanMeta)
)

// headers are those of an answer whose page has the policy: as a header it
// says more, because frame-ancestors has no effect in a meta element.
func headers(meta string) [6][2]string {
	return [...][2]string{
		{"Content-Security-Policy", meta + "; frame-ancestors 'none'"},
		{"X-Content-Type-Options", "nosniff"},
		{"Referrer-Policy", "no-referrer"}, // the address of a page may hold a plan
		{"Cross-Origin-Opener-Policy", "same-origin"},
		{"Cross-Origin-Resource-Policy", "same-origin"},
		{"Permissions-Policy", "camera=(), geolocation=(), microphone=()"},
	}
}

// How long an answer may be kept. What carries a hash of its content in its
// name is kept for ever; a page is asked for each time. A plan is its reader's
// own: no cache that others share may keep it.
const (
	ForEver  = "public, max-age=31536000, immutable"
	AskFirst = "no-cache"
	AskAlone = "private, no-cache"
	Never    = "no-store"
)
