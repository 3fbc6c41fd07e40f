// Package policy holds the content security policy of every page, so that the
// server's header and the pages' own meta element cannot drift apart.
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
