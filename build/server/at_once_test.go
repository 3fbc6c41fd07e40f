package server

import (
	"compress/gzip"
	"io"
	"net/http"
	"net/http/httptest"
	"strconv"
	"strings"
	"sync"
	"testing"
)

// Answers that are packed at once, by writers that are used again, hold what
// was written to each.
func TestPackingAtOnce(t *testing.T) {
	h := Packing(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		io.WriteString(w, strings.Repeat(r.URL.Path+"\n", 2000))
	}))
	var all sync.WaitGroup
	for k := range 8 {
		all.Go(func() {
			for i := range 20 {
				r := httptest.NewRequest("GET", "/"+strconv.Itoa(k)+"/"+strconv.Itoa(i), nil)
				r.Header.Set("Accept-Encoding", "gzip")
				w := httptest.NewRecorder()
				h.ServeHTTP(w, r)
				in, err := gzip.NewReader(w.Body)
				if err != nil {
					t.Error(err)
					return
				}
				if got, err := io.ReadAll(in); err != nil || string(got) != strings.Repeat(r.URL.Path+"\n", 2000) {
					t.Errorf("%s got %d bytes of another answer, %v", r.URL.Path, len(got), err)
				}
			}
		})
	}
	all.Wait()
}
