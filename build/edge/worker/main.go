//go:build js

// Command worker is the plan pages as WebAssembly, for a host at the edge of a
// network that runs small programs beside its static files. worker.mjs starts
// it and sends it every request for a plan.
package main

import (
	"encoding/json"
	"net/http"
	"syscall/js"

	"github.com/syumai/workers"

	"evenrow/build/edge"
	"evenrow/build/shell"
)

func main() {
	var s shell.Shell
	if err := json.Unmarshal([]byte(js.Global().Get("context").Get("shell").String()), &s); err != nil {
		panic(err) // the builder has written it
	}
	workers.ServeNonBlock(whole{edge.New(nil, &s, edge.Options{})})
	workers.Ready()
	select {} // until the host ends it
}

// A whole hands each body over in one piece. The package's own way is a stream
// for each, at whose end the program ends too; so one program serves all
// requests, and the next one finds it started.
type whole struct{ http.Handler }

func (h whole) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	to, ok := w.(interface{ WriteRawJSBody(js.Value) })
	if !ok {
		panic("the response takes no body in one piece")
	}
	held := &held{header: w.Header(), status: http.StatusOK}
	h.Handler.ServeHTTP(held, r)
	w.WriteHeader(held.status)
	if len(held.body) == 0 {
		to.WriteRawJSBody(js.Null())
		return
	}
	body := js.Global().Get("Uint8Array").New(len(held.body))
	js.CopyBytesToJS(body, held.body)
	to.WriteRawJSBody(js.Global().Get("context").Call("passed", body))
}

// A held is a response that waits until it is whole.
type held struct {
	header http.Header
	status int
	body   []byte
}

func (h *held) Header() http.Header    { return h.header }
func (h *held) WriteHeader(status int) { h.status = status }
func (h *held) Write(b []byte) (int, error) {
	h.body = append(h.body, b...)
	return len(b), nil
}
