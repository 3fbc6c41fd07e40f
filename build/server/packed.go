package server

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"net/http"
	"path"
	"slices"
	"strconv"
	"strings"

	"github.com/andybalholm/brotli"
)

// A file is one file in every form in which it is sent, the smallest first and
// as it is last.
type file struct {
	kind  string // its content type
	forms []form
}

// A form is a file under one content coding.
type form struct {
	coding  string // "br", "gzip", or "" for none
	tag     string // strong: two codings of one file are not the same bytes
	content []byte
}

// quality is that of brotli. The best one takes seconds for the program, each
// time that the server starts; this one a third of a second, for 4 % more.
const quality = 9

// least is how many bytes a file must have to be worth packing.
const least = 200

// shut are the kinds that are compressed already.
var shut = []string{".png"}

func packed(name string, content []byte) file {
	f := file{}
	f.kind, _ = Type(name)
	sum := sha256.Sum256(content)
	tag := hex.EncodeToString(sum[:16])
	add := func(coding string, packed []byte) {
		if coding == "" || len(packed) < len(content) {
			f.forms = append(f.forms, form{coding, `"` + strings.TrimSuffix(tag+"-"+coding, "-") + `"`, packed})
		}
	}
	if len(content) > least && !slices.Contains(shut, path.Ext(name)) {
		var br, gz bytes.Buffer
		b := brotli.NewWriterLevel(&br, quality)
		b.Write(content) // a buffer takes everything
		b.Close()
		g, err := gzip.NewWriterLevel(&gz, gzip.BestCompression)
		if err != nil {
			panic(err) // the level is a constant
		}
		g.Write(content)
		g.Close()
		add("br", br.Bytes())
		add("gzip", gz.Bytes())
	}
	add("", content)
	return f
}

// choose returns the first form that the client takes, and says in the
// headers what was chosen and by what.
func (f *file) choose(h http.Header, r *http.Request) form {
	if len(f.forms) > 1 {
		h.Set("Vary", "Accept-Encoding")
	}
	for _, one := range f.forms {
		if one.coding != "" && accepts(r.Header.Values("Accept-Encoding"), one.coding) {
			h.Set("Content-Encoding", one.coding)
			return one
		}
	}
	return f.forms[len(f.forms)-1]
}

// accepts reports whether a client takes a coding (RFC 9110, section 12.5.3).
// Its preferences among those that it takes are not weighed.
func accepts(lines []string, coding string) bool {
	all := false
	for _, line := range lines {
		for item := range strings.SplitSeq(line, ",") {
			name, weight, _ := strings.Cut(item, ";")
			name = strings.ToLower(strings.TrimSpace(name))
			if name != coding && name != "*" {
				continue
			}
			q, has := strings.CutPrefix(strings.TrimSpace(weight), "q=")
			v, err := strconv.ParseFloat(q, 64)
			takes := !has || err != nil || v > 0
			if name == coding {
				return takes
			}
			all = takes
		}
	}
	return all
}
