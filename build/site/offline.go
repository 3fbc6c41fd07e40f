package site

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"maps"
	"slices"
)

// CachePrefix begins the name of every cache of this site, so that the service
// worker deletes no others: sites may share an origin.
const CachePrefix = "evenrow-"

// offline puts the service worker, which is told, in a constant BUNDLE before
// its own text, the name of its cache and the addresses of all files that it
// keeps. The name holds a hash over the whole site, so that files of two
// versions never mix.
func (b *builder) offline() {
	own := b.read(offlineFile)
	small := b.minified(offlineFile, "site/"+offlineFile, own)
	b.bundle.Script += len(small)

	kept := []string{"./"}
	sum := sha256.New()
	for _, name := range slices.Sorted(maps.Keys(b.bundle.Files)) {
		content := sha256.Sum256(b.bundle.Files[name])
		sum.Write([]byte(name))
		sum.Write([]byte{0})
		sum.Write(content[:])
		if name != "index.html" && name != "404.html" {
			kept = append(kept, name)
		}
	}
	list, err := json.Marshal(struct {
		Cache  string   `json:"cache"`
		Prefix string   `json:"prefix"`
		Files  []string `json:"files"`
	}{CachePrefix + hex.EncodeToString(sum.Sum(nil)[:8]), CachePrefix, kept})
	if err != nil {
		panic(err) // strings are always written
	}
	// Not minified together, so that the name stays as the script knows it.
	b.put("offline.js", bytes.Join([][]byte{[]byte("const BUNDLE="), list, []byte(";\n"), small}, nil))
}
