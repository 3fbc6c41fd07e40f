package local

import (
	"runtime"
	"sync"
	"syscall"
	"testing"
)

// nice is how much the calling thread makes way: 0 as a rule, 19 for whoever comes
// last. The system call returns 20 less that, see getpriority(2).
func nice(t *testing.T) int {
	left, err := syscall.Getpriority(syscall.PRIO_PROCESS, syscall.Gettid())
	if err != nil {
		t.Fatal(err)
	}
	return 20 - left
}

// What is done aside makes way, also much of it at once; whoever asked for it does
// not, and no thread is left over that does.
func TestAsideAtOnce(t *testing.T) {
	runtime.LockOSThread()
	defer runtime.UnlockOSThread()
	before := nice(t)
	var all sync.WaitGroup
	for range 8 {
		all.Go(func() {
			within := before
			Aside(func() { within = nice(t) })
			if within != 19 {
				t.Errorf("the work has %d, and the others %d", within, before)
			}
		})
	}
	all.Wait()
	if after := nice(t); after != before {
		t.Errorf("%d before, %d after", before, after)
	}
	for range 50 {
		all.Go(func() {
			runtime.LockOSThread()
			defer runtime.UnlockOSThread()
			if here := nice(t); here != before {
				t.Errorf("another thread has %d", here)
			}
		})
	}
	all.Wait()
}
