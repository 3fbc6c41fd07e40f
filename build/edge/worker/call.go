//go:build js

package main

import (
	"context"
	"net/http"
	"strings"
	"syscall/js"

	"evenrow/build/edge"
)

// A call is one request on its way. Its goroutine works only while the script
// is inside begin or proceed on behalf of the same request: a platform takes it
// amiss when one request does anything for another. In between the script gives
// the event loop to whatever else there is.
type call struct {
	id   int
	work chan struct{} // the script lets the goroutine work
	rest chan struct{} // the goroutine lets the script go on
	end  context.CancelFunc
	out  *held // the answer, when it is whole
}

// calls are those under way, by the script's numbers.
var calls = map[int]*call{}

// turns are the turns of all calls. Plans are worked out one at a time: there
// is one processor.
var turns = edge.Turns(1).Share(slice, func(ctx context.Context) {
	c := ctx.Value(key{}).(*call)
	c.rest <- struct{}{}
	<-c.work
})

// slice is how long the script has to wait, in the queue's units.
const slice = 4

type key struct{}

// begin begins to answer a request. It returns the answer when there is one
// already, and undefined when the script has to proceed.
func begin(h http.Handler, id js.Value, r *http.Request) any {
	ctx, end := context.WithCancel(context.Background())
	c := &call{id: id.Int(), work: make(chan struct{}), rest: make(chan struct{}), end: end}
	calls[c.id] = c
	r = r.WithContext(context.WithValue(ctx, key{}, c))
	go func() {
		out := &held{header: http.Header{}, status: http.StatusOK}
		h.ServeHTTP(out, r)
		c.out = out
		close(c.rest)
	}()
	return c.rested()
}

// proceed goes on with a request for a while. gone says that the client has
// left: then what is under way ends.
func proceed(id js.Value, gone bool) any {
	c := calls[id.Int()]
	if c == nil {
		return js.Null() // the script must not ask; it is told that there is none
	}
	if gone {
		c.end()
	}
	c.work <- struct{}{}
	return c.rested()
}

// rested waits until the goroutine rests, and returns the answer or undefined.
func (c *call) rested() any {
	<-c.rest
	if c.out == nil {
		return js.Undefined()
	}
	c.end()
	delete(calls, c.id)
	return c.out.value()
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

func (h *held) WriteString(s string) (int, error) {
	h.body = append(h.body, s...)
	return len(s), nil
}

// value is the answer as the script takes it: status, headers as lines of a
// name, a colon and a value, and the body, which is null when there is none. Each
// value that goes over to the script costs as much as a good line of a page.
func (h *held) value() js.Value {
	var headers strings.Builder
	for name, values := range h.header {
		for _, value := range values {
			headers.WriteString(name + ":" + value + "\n")
		}
	}
	body := js.Null()
	if len(h.body) > 0 {
		body = bytesClass.New(len(h.body))
		js.CopyBytesToJS(body, h.body)
	}
	return arrayClass.New(h.status, headers.String(), body)
}

var arrayClass, bytesClass = js.Global().Get("Array"), js.Global().Get("Uint8Array")
