package site

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"maps"
	"slices"
)

// What stands in the service worker's script until the site is built.
const (
	filesMark   = "__FILES__"   // the files that it keeps, each with its hash
	versionMark = "__VERSION__" // the hash over them
)

// offline puts the service worker. Its version is a hash over the whole site,
// so that files of two versions never mix; its list is all files, but itself,
// which the browser keeps, and the page that says a page is missing. It keeps
// no file whose content has another hash than the one that stands there.
func (b *builder) offline() {
	script := b.minified(offlineFile, "site/"+offlineFile, b.read(offlineFile))
	b.bundle.Script += len(script)

	kept := map[string]string{}
	all := sha256.New()
	for _, name := range slices.Sorted(maps.Keys(b.bundle.Files)) {
		content := sum(b.bundle.Files[name])
		all.Write([]byte(name + "\x00" + content))
		if name != missingPage {
			kept[name] = content
		}
	}
	list, err := json.Marshal(kept)
	if err != nil {
		panic(err) // strings are always written
	}
	for mark, text := range map[string][]byte{
		filesMark:   list,
		versionMark: []byte(hex.EncodeToString(all.Sum(nil)[:8])),
	} {
		if bytes.Count(script, []byte(mark)) != 1 {
			b.report.Add("site/"+offlineFile, 0, "must hold "+mark+" once")
		}
		script = bytes.ReplaceAll(script, []byte(mark), text)
	}
	b.put("offline.js", script)
}
