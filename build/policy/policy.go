// Package policy holds the content security policy of every page and the
// headers that every answer carries, so that the server, the program at the
// edge and the pages' own meta element cannot drift apart.
package policy

// TrustedTypes is the name of the one policy through which the page's scripts
// may set markup and script addresses.
const TrustedTypes = "evenrow"

// Meta is the policy as a page carries it in its head. It lets a page load
// only what comes from its own site, and WebAssembly; no script, style or
// frame from elsewhere, no inline script and no inline style.
const Meta = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; worker-src 'self'; connect-src 'self'; " +
	"style-src 'self'; img-src 'self' data:; manifest-src 'self'; base-uri 'none'; form-action 'self'; " +
	"require-trusted-types-for 'script'; trusted-types " + TrustedTypes

// Header is the policy as a server sends it: frame-ancestors has no effect in
// a meta element.
const Header = Meta + "; frame-ancestors 'none'"

// Headers is what every answer of every server carries, name and value.
var Headers = [...][2]string{
	{"Content-Security-Policy", Header},
	{"X-Content-Type-Options", "nosniff"},
	{"Referrer-Policy", "no-referrer"}, // the address of a page may hold a plan
	{"Cross-Origin-Opener-Policy", "same-origin"},
	{"Cross-Origin-Resource-Policy", "same-origin"},
	{"Permissions-Policy", "camera=(), geolocation=(), microphone=()"},
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
