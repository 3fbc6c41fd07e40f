package site

import (
	"bytes"
	"io/fs"
	"maps"
	"path"
	"regexp"
	"slices"
	"strings"

	"github.com/tdewolff/parse/v2"
	"github.com/tdewolff/parse/v2/js"
)

// script joins the page's script and the modules that it imports into one
// module, each behind those that it imports, and returns its address. A reader
// with little signal asks for one file instead of a dozen, and every name in it
// can be made short.
func (b *builder) script() string {
	j := joiner{builder: b, names: map[string]names{}}
	j.module("page.js", nil)
	j.check()
	const page = "js/page.js"
	joined := b.minified(page, "site/"+page, []byte("(() => {\n"+j.out.String()+"})();\n"))
	b.bundle.Script += len(joined)

	files, _ := fs.Glob(b.Site, "js/*.js")
	for _, file := range files {
		if _, done := j.names[path.Base(file)]; !done && file != earlyFile && file != workerFile && file != offlineFile {
			b.report.Add("site/"+file, 0, "is imported by no script")
		}
	}
	return b.hashed("page.js", joined)
}

// A joiner writes modules one behind another, as one piece of script.
type joiner struct {
	*builder
	out   bytes.Buffer
	names map[string]names // by module, such as "page.js"
}

// names are those by which a module and the others could mistake each other.
type names struct {
	own      []string          // declared outside its functions
	free     []string          // used, and declared nowhere in it
	exported []string          // of its own
	imported map[string]string // by name: from which module
}

// The forms in which modules may import and export: each at the start of a line.
var (
	importLine = regexp.MustCompile(`(?m)^import (?:\{([\w, ]*)\} from )?"\./([\w.-]+\.js)";`)
	exportWord = regexp.MustCompile(`(?m)^export ((?:async )?function|const|let|class) (\w+)`)
	otherLine  = regexp.MustCompile(`(?m)^(?:import|export)\b.*`)
)

// module writes a module, and those that it imports before it. from is by which
// modules it is imported.
func (j *joiner) module(name string, from []string) {
	if _, done := j.names[name]; done {
		return
	}
	file := "site/js/" + name
	if slices.Contains(from, name) {
		j.report.Add(file, 0, "imports itself, by way of "+strings.Join(from, ", "))
		return
	}
	n := names{imported: map[string]string{}}
	content := j.read("js/" + name)
	content = importLine.ReplaceAllFunc(content, func(line []byte) []byte {
		part := importLine.FindSubmatch(line)
		j.module(string(part[2]), append(from, name))
		for _, name := range strings.FieldsFunc(string(part[1]), func(r rune) bool { return r == ',' || r == ' ' }) {
			n.imported[name] = string(part[2])
		}
		return nil
	})
	content = exportWord.ReplaceAllFunc(content, func(start []byte) []byte {
		part := exportWord.FindSubmatch(start)
		n.exported = append(n.exported, string(part[2]))
		return bytes.TrimPrefix(start, []byte("export "))
	})
	if other := otherLine.Find(content); other != nil {
		j.report.Add(file, 0, "cannot be joined with the others for the line "+strings.TrimSpace(string(other)))
	} else if tree, err := js.Parse(parse.NewInputBytes(bytes.Clone(content)), js.Options{}); err != nil {
		j.report.Add(file, 0, "cannot be read: "+err.Error())
	} else {
		for _, v := range tree.Declared {
			n.own = append(n.own, string(v.Data))
		}
		for _, v := range tree.Undeclared {
			n.free = append(n.free, string(v.Data))
		}
	}
	j.names[name] = n
	j.out.Write(content)
	j.out.WriteByte('\n')
}

// check reports what would mean something else in one piece than in modules.
func (j *joiner) check() {
	owner := map[string]string{} // by name: the module that declares it
	modules := slices.Sorted(maps.Keys(j.names))
	for _, module := range modules {
		for _, name := range j.names[module].own {
			if other := owner[name]; other != "" {
				j.report.Add("site/js/"+module, 0, "declares "+name+", as "+other+" does")
			}
			owner[name] = module
		}
	}
	for _, module := range modules {
		n := j.names[module]
		for name, from := range n.imported {
			if !slices.Contains(j.names[from].exported, name) {
				j.report.Add("site/js/"+module, 0, "imports "+name+", which "+from+" does not export")
			}
		}
		for _, name := range n.free {
			if other := owner[name]; other != "" && n.imported[name] == "" {
				j.report.Add("site/js/"+module, 0, "uses "+name+", which is also a name in "+other)
			}
		}
	}
}
