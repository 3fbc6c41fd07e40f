package site

import (
	"bytes"
	"path"

	"github.com/tdewolff/minify/v2"
	"github.com/tdewolff/minify/v2/css"
	"github.com/tdewolff/minify/v2/html"
	"github.com/tdewolff/minify/v2/js"
	"github.com/tdewolff/minify/v2/json"
	"github.com/tdewolff/minify/v2/svg"
)

// kinds is the content type under which each kind of file is minified.
var kinds = map[string]string{
	".css":         "text/css",
	".html":        "text/html",
	".js":          "text/javascript",
	".json":        "application/json",
	".svg":         "image/svg+xml",
	".webmanifest": "application/json",
}

// minifier leaves out what a browser does not need. It keeps end tags, quotes
// and default attributes: they cost few bytes once compressed, and leave the
// page as its author wrote it for whoever reads the source.
var minifier = func() *minify.M {
	m := minify.New()
	m.Add("text/html", &html.Minifier{KeepDocumentTags: true, KeepEndTags: true, KeepQuotes: true, KeepDefaultAttrVals: true})
	m.AddFunc("text/css", css.Minify)
	m.AddFunc("text/javascript", js.Minify)
	m.AddFunc("application/json", json.Minify)
	m.AddFunc("image/svg+xml", svg.Minify)
	return m
}()

// minified is content, minified as the kind of file that name is. A file that
// cannot be read as its kind is reported under the name its author knows.
func (b *builder) minified(name, author string, content []byte) []byte {
	kind, ok := kinds[path.Ext(name)]
	if !ok {
		return content
	}
	small, err := minifier.Bytes(kind, bytes.Clone(content)) // it writes over its input
	if err != nil {
		b.report.Add(author, 0, "cannot be minified: "+err.Error())
		return content
	}
	return small
}
