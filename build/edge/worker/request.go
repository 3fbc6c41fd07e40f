//go:build js

package main

import (
	"bytes"
	"io"
	"net/http"
	"net/url"
	"syscall/js"
)

// request is the request that the script has read:
//
//	method, scheme, host, path, query: text; the path without escapes
//	headers: names and values, one after another
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
	headers := v.Get("headers")
	for i := 0; i+1 < headers.Length(); i += 2 {
		r.Header.Add(headers.Index(i).String(), headers.Index(i+1).String())
	}
	if from := v.Get("body"); !from.IsNull() {
		body := make([]byte, from.Length())
		js.CopyBytesToGo(body, from)
		r.Body, r.ContentLength = io.NopCloser(bytes.NewReader(body)), int64(len(body))
	}
	return r
}
