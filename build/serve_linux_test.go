package main

import (
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"strconv"
	"syscall"
	"testing"
	"time"
)

// last says whether a thread of this process makes way to every other, as package
// local has it do.
func last(t *testing.T) bool {
	threads, err := os.ReadDir("/proc/self/task")
	if err != nil {
		t.Fatal(err)
	}
	for _, thread := range threads {
		id, _ := strconv.Atoi(thread.Name())
		// It may have ended. The system call returns 20 less how much it makes way, see getpriority(2).
		if left, err := syscall.Getpriority(syscall.PRIO_PROCESS, id); err == nil && 20-left == 19 {
			return true
		}
	}
	return false
}

// A heavy plan is worked out on a thread that comes last. Files would wait for it else.
func TestTheHostWorksHeavyPlansOutOnAThreadThatComesLast(t *testing.T) {
	b := built(t, true)
	h, err := host(b.Files, b.Shell, "", io.Discard)
	if err != nil {
		t.Fatal(err)
	}
	if last(t) {
		t.Fatal("a thread comes last before anything is asked")
	}
	answered := make(chan int)
	go func() {
		w := httptest.NewRecorder()
		h.ServeHTTP(w, httptest.NewRequest("GET", "/plan?rows.1.plants=300&rows.2.plants=300", nil))
		answered <- w.Code
	}()
	seen := false
	for {
		select {
		case code := <-answered:
			if code != http.StatusOK || !seen {
				t.Errorf("%d; a thread that came last was seen: %v", code, seen)
			}
			return
		case <-time.After(time.Millisecond): // only how often it is looked at
			seen = seen || last(t)
		}
	}
}
