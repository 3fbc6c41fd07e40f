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
	filesMark   = "__FILES__"   // the addresses of all files that it keeps
	versionMark = "__VERSION__" // the hash over them
)

// offline puts the service worker. Its version is a hash over the whole site,
// so that files of two versions never mix; its list is all files, but itself,
// which the browser keeps, and the page that says a page is missing.
func (b *builder) offline() {
	script := b.minified(offlineFile, "site/"+offlineFile, b.read(offlineFile))
	b.bundle.Script += len(script)

	var kept []string
	sum := sha256.New()
	for _, name := range slices.Sorted(maps.Keys(b.bundle.Files)) {
		content := sha256.Sum256(b.bundle.Files[name])
		sum.Write([]byte(name))
		sum.Write([]byte{0})
		sum.Write(content[:])
		if name != missingPage {
			kept = append(kept, name)
		}
	}
	list, err := json.Marshal(kept)
	if err != nil {
		panic(err) // strings are always written
	}
	for mark, text := range map[string][]byte{
		filesMark:   list,
		versionMark: []byte(hex.EncodeToString(sum.Sum(nil)[:8])),
	} {
		if bytes.Count(script, []byte(mark)) != 1 {
			b.report.Add("site/"+offlineFile, 0, "must hold "+mark+" once")
		}
		script = bytes.ReplaceAll(script, []byte(mark), text)
	}
	b.put("offline.js", script)
}
