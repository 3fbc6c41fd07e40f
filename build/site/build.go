// Package site makes the finished site from the guides, the templates, styles
// and scripts, and the WebAssembly program.
//
// It writes nothing, asks no clock and reads no environment: the same input
// gives the same bytes.
package site

import (
	"io/fs"

	"evenrow/build/guide"
	"evenrow/build/problem"
	"evenrow/build/shell"
)

// A Source is everything that a site is made from.
type Source struct {
	Content fs.FS  // the folder content/
	Site    fs.FS  // the folder site/
	Program []byte // wasm/cmd/planner, compiled
	Glue    []byte // wasm_exec.js of the Go that compiled it
	Tool    Tool

	// Answered is whether the host also answers with plan pages, as package
	// edge does. A static host does not.
	Answered bool
}

// A Tool is what the pages take from the calculation.
type Tool struct {
	// Start returns the fragments of the default plan, worked out, by the id
	// of the element of index.html that holds each.
	Start func() map[string]string

	// Longest is how many letters the name of a plan may have.
	Longest int

	// Jobs are the screens about a plan, in their order.
	Jobs []Job

	// Guides computes the blocks of the guides.
	Guides guide.Tools

	// Names is every guide and caution that the calculation's own
	// declarations lead to.
	Names []Name

	// IsPlan reports whether a fragment of an address is a plan, or a job, and no place
	// on the page; nil when none is.
	IsPlan func(fragment string) bool
}

// A Name is a guide or caution that a declaration leads to.
type Name struct {
	From    string // where it is declared, such as "field rows.spacing"
	Guide   string // name of a guide, with "#" and a heading when it leads to one; may be empty
	Caution string // may be empty
}

// Files is a finished site: what each path, such as "assets/page-1a2b3c4d.js",
// holds.
type Files map[string][]byte

// A Bundle is a finished site and what is worth measuring in it.
type Bundle struct {
	Files   Files
	Program string       // path of the WebAssembly program
	Script  int          // bytes of the scripts written by hand, minified
	Style   int          // bytes of the style, minified
	Shell   *shell.Shell // of the plan pages; nil for a static host
}

// Build makes the site. It goes on after a problem, so that the error joins
// every [problem.Problem] in the site, sorted by file and line; the bundle is
// then nil.
func Build(src Source) (*Bundle, error) {
	var report problem.List
	b := &builder{Source: src, report: &report, bundle: &Bundle{Files: Files{}}}

	frame := b.assets()
	cautions := guide.Cautions(src.Content, &report)
	guides := guide.Read(src.Content, cautions, src.Tool.Guides, &report)
	b.render(frame, guides, cautions)
	b.check(guides, cautions)
	b.offline()

	if err := report.Err(); err != nil {
		return nil, err
	}
	return b.bundle, nil
}

// A builder is a site on its way.
type builder struct {
	Source
	report *problem.List
	bundle *Bundle
	pages  []page
}

// A page is one finished page and the file that its author would mend.
type page struct {
	name string // "index.html"
	file string // "site/templates/index.html"
	body []byte
}

// put adds a file. Two of one name would be a fault of the builder.
func (b *builder) put(name string, content []byte) {
	if _, ok := b.bundle.Files[name]; ok {
		panic("two files are called " + name)
	}
	b.bundle.Files[name] = content
}

// read returns a file of the folder site/, or reports that it is missing.
func (b *builder) read(name string) []byte {
	content, err := fs.ReadFile(b.Site, name)
	if err != nil {
		b.report.Add("site/"+name, 0, "is missing or cannot be read")
	}
	return content
}
