package local

import "runtime"

// Aside does work on a thread of its own, which makes way whenever any other
// thread of the machine has something to do, and returns when it is done. Work that
// takes long then holds up nobody who is quickly answered, also where there are fewer
// processors than there is to do.
//
// Where a system cannot have that of one thread, the work is done as any other.
func Aside(work func()) {
	done := make(chan struct{})
	go func() {
		defer close(done)
		// A thread that was asked to make way may not take that back. One that is never
		// let go ends here, with what it did.
		runtime.LockOSThread()
		makeWay()
		work()
	}()
	<-done
}
