package server

import (
	"bytes"
	"compress/gzip"
	"net/http"
	"strings"
	"sync"
)

// Packing compresses by gzip what h makes for each request, for clients that
// take it. The files of a site are packed by [New] and need none of this.
//
// It sends nothing before h has returned, so that a client that takes its time
// holds up nothing in h.
//
// The tag of a compressed answer is that of the answer with "-gzip" after it.
func Packing(h http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		p := &packing{ResponseWriter: w, packs: r.Method != http.MethodHead && accepts(r.Header.Values("Accept-Encoding"), "gzip")}
		defer p.end()
		if tags, has := r.Header["If-None-Match"]; has && p.packs {
			asked := r.Clone(r.Context())
			for _, line := range tags {
				asked.Header.Add("If-None-Match", strings.ReplaceAll(line, mark, `"`))
			}
			r = asked
		}
		h.ServeHTTP(p, r)
	})
}

const mark = `-gzip"`

// writers are reused: each holds 800 kB.
var writers = sync.Pool{New: func() any { return gzip.NewWriter(nil) }}

// A packing is a response that is compressed before it is sent.
type packing struct {
	http.ResponseWriter
	packs  bool
	status int
	body   bytes.Buffer // what is to be sent
	to     *gzip.Writer // nil while nothing is compressed
}

func (p *packing) WriteHeader(status int) {
	p.status = status
	h := p.Header()
	if !p.packs {
		return
	}
	if tag := h.Get("ETag"); tag != "" {
		h.Set("ETag", strings.TrimSuffix(tag, `"`)+mark)
	}
	if status != http.StatusNotModified && status != http.StatusNoContent {
		h.Set("Content-Encoding", "gzip")
		p.to = writers.Get().(*gzip.Writer)
		p.to.Reset(&p.body)
	}
}

func (p *packing) Write(b []byte) (int, error) {
	if p.status == 0 {
		p.WriteHeader(http.StatusOK)
	}
	if p.to != nil {
		return p.to.Write(b)
	}
	return p.body.Write(b)
}

// end sends it all.
func (p *packing) end() {
	if p.to != nil {
		p.to.Close()
		writers.Put(p.to)
	}
	if p.status != 0 {
		p.ResponseWriter.WriteHeader(p.status)
	}
	p.ResponseWriter.Write(p.body.Bytes())
}
