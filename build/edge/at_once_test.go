package edge

import (
	"context"
	"net/http"
	"net/http/httptest"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"

	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
)

// Requests that are answered at once get what each would get alone, whatever
// the others ask for, and although some clients leave before their turn.
func TestRequestsAtOnce(t *testing.T) {
	type request struct{ method, target, body string }
	var list []request
	for _, x := range plan.Examples() {
		if !slices.Contains([]string{"Millrace tunnel", "The wrong pump", "Balcony"}, x.Plan.Name) {
			continue // the larger ones go the same way, and the detector is slow
		}
		link := carry.Link(x.Plan)
		for _, path := range Paths() {
			list = append(list, request{"GET", path + "?" + link, ""})
		}
		list = append(list, request{"POST", "/plan", plan.DraftOf(x.Plan).Encode()})
	}
	if len(list) < 18 {
		t.Fatalf("only %d requests", len(list))
	}
	list = append(list, request{"GET", "/plan?1zz", ""}, request{"GET", "/", ""}, request{"DELETE", "/plan", ""})

	// A host that has enough to do says so, and is asked again.
	answered := func(q request) (status int, body string) {
		for {
			w := ask(t, q.method, q.target, q.body)
			if w.Code != http.StatusServiceUnavailable || w.Header().Get("Retry-After") == "" {
				return w.Code, w.Body.String()
			}
			runtime.Gosched()
		}
	}
	type result struct {
		status int
		body   string
	}
	alone := make([]result, len(list))
	for i, q := range list {
		status, body := answered(q)
		alone[i] = result{status, body}
	}

	var all sync.WaitGroup
	for k := range 4 {
		all.Go(func() {
			for i := range list {
				q := (i*(2*k+1) + k*7) % len(list) // everybody in an order of his own
				if status, body := answered(list[q]); status != alone[q].status || body != alone[q].body {
					t.Errorf("%s %s: %d and %d bytes among others, %d and %d bytes alone",
						list[q].method, list[q].target, status, len(body), alone[q].status, len(alone[q].body))
				}
			}
		})
	}
	all.Go(func() {
		for _, q := range list {
			ctx, leave := context.WithCancel(context.Background())
			leave()
			r := httptest.NewRequestWithContext(ctx, q.method, q.target, strings.NewReader(q.body))
			host().ServeHTTP(httptest.NewRecorder(), r)
		}
	})
	all.Wait()
}
