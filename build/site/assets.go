package site

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"encoding/json"
	"io/fs"
	"path"
	"slices"
	"strings"

	"evenrow/build/policy"
	"evenrow/build/server"
	"evenrow/build/shell"
)

// Scripts that are no module of the page.
const (
	earlyFile   = "js/early.js"   // runs before the page is drawn, a classic script
	workerFile  = "js/worker.js"  // joined with Go's glue, a classic script
	offlineFile = "js/offline.js" // the service worker, at the root because it serves the root
)

// notice keeps the name of the glue's authors in the minified file.
const notice = "/*! The first part is wasm_exec.js: Copyright 2018 The Go Authors, BSD-style licence. */\n"

// hashed puts a file among the assets, with the hash of its content in its
// name, and returns its path.
func (b *builder) hashed(name string, content []byte) string {
	ext := path.Ext(name)
	hashed := server.Assets + strings.TrimSuffix(name, ext) + "-" + hash(content) + ext
	b.put(hashed, content)
	return hashed
}

// hash is enough of a hash to tell any two versions of a site apart.
func hash(content []byte) string {
	sum := sha256.Sum256(content)
	return hex.EncodeToString(sum[:8])
}

// sum is the whole hash, as scripts compare it.
func sum(content []byte) string {
	sum := sha256.Sum256(content)
	return base64.StdEncoding.EncodeToString(sum[:])
}

// assets puts everything but the pages and returns a frame with their
// addresses.
func (b *builder) assets() Page {
	b.bundle.Program = b.hashed("planner.wasm", b.Program)
	frame := Page{
		Root:     "./",
		Policy:   policy.Meta,
		Style:    b.style(),
		Early:    b.early(),
		Worker:   b.worker(),
		Program:  b.bundle.Program,
		Sum:      sum(b.Program),
		Offline:  "offline.js",
		Manifest: "manifest.webmanifest",
		Icon:     "icons/icon.svg",
	}
	frame.Script = b.script()
	if b.Answered {
		frame.Plain = shell.Address
	}
	b.icons(frame.Icon)
	b.manifest(frame.Manifest)
	return frame
}

// style joins the styles, in the order of their names.
func (b *builder) style() string {
	names, _ := fs.Glob(b.Site, "css/*.css")
	if len(names) == 0 {
		b.report.Add("site/css", 0, "holds no styles")
	}
	var all bytes.Buffer
	for _, name := range names {
		all.Write(b.minified(name, "site/"+name, b.read(name)))
	}
	b.bundle.Style = all.Len()
	return b.hashed("style.css", all.Bytes())
}

// early puts the script that runs before the page is drawn.
func (b *builder) early() string {
	content := b.minified(earlyFile, "site/"+earlyFile, b.read(earlyFile))
	b.bundle.Script += len(content)
	return b.hashed("early.js", content)
}

// worker joins Go's glue and the worker's own script into one file: a worker
// that loaded the glue by itself would need a policy of its own.
func (b *builder) worker() string {
	own := b.read(workerFile)
	b.bundle.Script += len(b.minified(workerFile, "site/"+workerFile, own))
	joined := slices.Concat([]byte(notice), b.Glue, []byte("\n"), own)
	return b.hashed("worker.js", b.minified("worker.js", "site/"+workerFile, joined))
}

// icons puts the pictures of the site. They keep their names, because a
// device keeps the address of an icon for long.
func (b *builder) icons(first string) {
	names, _ := fs.Glob(b.Site, "icons/*")
	for _, name := range names {
		if _, ok := server.Type(name); !ok {
			b.report.Add("site/"+name, 0, "is of a kind that the server does not know")
		}
		b.put(name, b.minified(name, "site/"+name, b.read(name)))
	}
	if _, ok := b.bundle.Files[first]; !ok {
		b.report.Add("site/"+first, 0, "is missing")
	}
}

// manifest puts the web manifest, whose pictures and pages must be there.
func (b *builder) manifest(name string) {
	content := b.read(name)
	if content == nil {
		return
	}
	var m struct {
		Start string `json:"start_url"`
		Icons []struct {
			Src string `json:"src"`
		} `json:"icons"`
	}
	if err := json.Unmarshal(content, &m); err != nil {
		b.report.Add("site/"+name, 0, "is no web manifest: "+err.Error())
		return
	}
	if m.Start != "./" && m.Start != "." {
		b.report.Add("site/"+name, 0, `start_url must be "./", so that the site works in any folder`)
	}
	if len(m.Icons) == 0 {
		b.report.Add("site/"+name, 0, "names no icons")
	}
	for _, icon := range m.Icons {
		if _, ok := b.bundle.Files[path.Clean(icon.Src)]; !ok {
			b.report.Add("site/"+name, 0, "names the icon "+icon.Src+", which is missing")
		}
	}
	b.put(name, b.minified(name, "site/"+name, content))
}
