//go:build js

package main

import (
	"bytes"
	"io"
	"net/http"
	"net/url"
	"strings"
	"syscall/js"
)

// request is the request that the script has read:
//
//	method, scheme, host, path, query: text; the path without escapes
//	headers: lines of a name, a colon and a value
//	body: bytes, or null
func request(v js.Value) *http.Request {
	text := func(name string) string { return v.Get(name).String() }
	r := &http.Request{
		Method: text("method"),
		URL:    &url.URL{Scheme: text("scheme"), Host: text("host"), Path: text("path"), RawQuery: text("query")},
		Host:   text("host"),
		Header: http.Header{},
		Body:   http.NoBody,
	}
	for line := range strings.SplitSeq(text("headers"), "\n") {
		if name, value, ok := strings.Cut(line, ":"); ok {
			r.Header.Add(name, value)
		}
	}
	if from := v.Get("body"); !from.IsNull() {
		body := make([]byte, from.Length())
		js.CopyBytesToGo(body, from)
		r.Body, r.ContentLength = io.NopCloser(bytes.NewReader(body)), int64(len(body))
	}
	return r
}
