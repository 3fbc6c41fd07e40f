package site

import "html/template"

// A Page is what site/templates/base.html is given: the frame around every
// page. It is embedded in [Index] and [Guide], so that a template reads its
// fields directly: {{.Title}}, {{.Root}}.
//
// Addresses are relative, so that the site works in any folder of any host.
// All pages stand side by side in the site's root: the tool is index.html, the
// list of guides guides.html, and the guide in content/guides/pump-curve.md
// pump-curve.html, so that "pump-curve#reading" of a field leads to
// "pump-curve.html#reading".
type Page struct {
	Title   string // of the page, without the product's name
	Summary string // one sentence, for the description
	Root    string // from this page to the site's root: "./"; "/" for the page that says a page is missing
	Policy  string // content of the content security policy's meta element

	Style    string // address of the style
	Script   string // address of the page's script, an ES module; empty for a page without scripts
	Early    string // address of the script that runs before the tool's own page is drawn, a classic script
	Worker   string // address of the worker's script, a classic script
	Program  string // address of the WebAssembly program
	Sum      string // SHA-256 of the program, in base64
	Offline  string // address of the service worker
	Manifest string // address of the web manifest
	Icon     string // address of the icon, SVG
	Plain    string // address of the page of a plan that works without scripts; empty when the host has none

	Nav    []Link // the pages worth a link on every page, in order
	Guides []Link // every guide, in order
}

// A Link leads to another page.
type Link struct {
	Title   string
	Summary string
	Href    string
	Here    bool // it is the page itself
}

// An Index is what site/templates/index.html is given: the tool's own page.
type Index struct {
	Page

	// Fragments are those of the default plan, worked out, by the id of the
	// element that holds each.
	Fragments map[string]template.HTML

	// Longest is how many letters the name of a plan may have.
	Longest int

	// Jobs are the screens, of which the page holds one.
	Jobs []Job

	// Cautions is every caution, by name. In Fragments each element with
	// data-caution="NAME" is filled already; the script fills those that come
	// later.
	Cautions []Caution
}

// A Caution is a warning that stands beside whatever it concerns.
type Caution struct {
	Name  string        // such as "electricity"
	Inner template.HTML // what stands in its box: hazard, text and source
}

// A Guide is what site/templates/guide.html is given. The list of guides and
// the page that says a page is missing are shown by the same template.
type Guide struct {
	Page
	Name     string        // such as "pump-curve"; empty for a page that is no guide
	Body     template.HTML // without the title, which the template prints as h1
	Contents []Link        // the second-rank headings
	Sources  []string
	Before   *Link // neighbours in the order of guides; nil at the ends
	After    *Link
}
