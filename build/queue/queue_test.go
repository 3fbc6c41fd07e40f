package queue

import (
	"context"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"
	"testing"
)

// entered waits until so many are in the queue.
func entered(q *Queue, n int) {
	for {
		q.mu.Lock()
		have := len(q.all)
		q.mu.Unlock()
		if have >= n {
			return
		}
		runtime.Gosched()
	}
}

// Light work goes before heavy work, and what weighs the same in the order in
// which it came.
func TestTheLightestGoesFirst(t *testing.T) {
	q := New(1, 10, 1e6)
	first, _ := q.Enter(context.Background(), 5)
	var order []int
	var mu sync.Mutex
	var all sync.WaitGroup
	for i, work := range []int{900, 3, 45, 9, 901, 41, 1} {
		all.Go(func() {
			turn, _ := q.Enter(context.Background(), work)
			mu.Lock()
			order = append(order, work)
			mu.Unlock()
			turn.Leave()
		})
		entered(q, i+2)
	}
	first.Leave()
	all.Wait()
	if want := []int{3, 9, 1, 45, 41, 900, 901}; !slices.Equal(order, want) {
		t.Errorf("the order is %v, want %v", order, want)
	}
}

// Light work does not wait until heavy work pauses, and from then on has the turn
// alone; what is as heavy waits.
func TestLightWorkHasItsTurnAtOnce(t *testing.T) {
	for name, yield := range map[string]func(context.Context){"asleep": nil, "awake": func(context.Context) { runtime.Gosched() }} {
		q := New(1, 10, 1e6)
		if yield != nil {
			q.Share(1, yield)
		}
		heavy, _ := q.Enter(context.Background(), 1000)
		ctx, leave := context.WithCancel(context.Background())
		var as sync.WaitGroup
		as.Go(func() { q.Enter(ctx, 1000) })
		entered(q, 2)
		light, _ := q.Enter(context.Background(), 5) // for ever, where it waits
		if had := having(q); had != 2 {
			t.Errorf("%s: %d have a turn, want the heavy and the light one", name, had)
		}
		var paused atomic.Bool
		as.Go(func() {
			heavy.Pause(1)
			paused.Store(true)
			heavy.Leave()
		})
		for having(q) > 1 {
			runtime.Gosched()
		}
		if paused.Load() {
			t.Errorf("%s: heavy work goes on beside light work", name)
		}
		leave()
		light.Leave()
		as.Wait()
	}
}

// having is how many have a turn.
func having(q *Queue) (n int) {
	q.mu.Lock()
	defer q.mu.Unlock()
	for _, t := range q.all {
		if t.has {
			n++
		}
	}
	return n
}

// Work that was thought to be light makes way for light work once it is heavy,
// and goes on afterwards.
func TestWorkThatGrowsMakesWay(t *testing.T) {
	q := New(1, 10, 1e6)
	heavy, _ := q.Enter(context.Background(), 1)
	told := make(chan string, 2)
	go func() {
		light, _ := q.Enter(context.Background(), 5)
		told <- "light"
		light.Leave()
	}()
	entered(q, 2)
	if !heavy.Pause(1) || len(told) > 0 {
		t.Error("work that is as light as another made way for it")
	}
	if !heavy.Pause(30) {
		t.Error("the work is not wanted any more")
	}
	told <- "heavy"
	heavy.Leave()
	if first := <-told; first != "light" {
		t.Error("heavy work did not make way")
	}
	<-told
}

// Who would wait too long is told so at once; light work waits for light work
// only and is let in.
func TestWhoWouldWaitTooLongIsTurnedAway(t *testing.T) {
	q := New(2, 10, 1000)
	for range 2 {
		q.Enter(context.Background(), 1000)
	}
	ctx, cancel := context.WithCancel(context.Background())
	var waiting sync.WaitGroup
	waiting.Go(func() { q.Enter(ctx, 1000) })
	entered(q, 3)
	if turn, wait := q.Enter(ctx, 1000); turn != nil || wait != 1500 {
		t.Errorf("3,000 before two turns are a wait of %d, want 1500", wait)
	}
	if turn, _ := q.Enter(ctx, 5); turn == nil {
		t.Error("light work is turned away")
	} else {
		turn.Leave()
	}
	cancel()
	waiting.Wait()
	if turn, wait := q.Enter(ctx, 5); turn != nil || wait != 0 {
		t.Error("who has left has a turn")
	}
	if len(q.all) != 2 {
		t.Errorf("%d are in the queue, want 2", len(q.all))
	}
}

// Who leaves in the middle of the work does no more of it, and blocks nobody.
func TestWhoLeavesIsNotWorkedFor(t *testing.T) {
	q := New(1, 10, 1e6)
	ctx, cancel := context.WithCancel(context.Background())
	turn, _ := q.Enter(ctx, 1000)
	if !turn.Pause(5) {
		t.Error("the work is not wanted")
	}
	cancel()
	if turn.Pause(5) {
		t.Error("the work is wanted by nobody and goes on")
	}
	turn.Leave()
	if other, _ := q.Enter(context.Background(), 1000); other == nil {
		t.Error("the turn was not given back")
	}
}

// However many come, leave and make way, no more than so many and one have a
// turn, and everyone gets one.
func TestTurnsAtOnce(t *testing.T) {
	for name, yield := range map[string]func(context.Context){"asleep": nil, "awake": func(context.Context) { runtime.Gosched() }} {
		q := New(3, 4, 1e9)
		if yield != nil {
			q.Share(2, yield)
		}
		var now, did atomic.Int32
		var all sync.WaitGroup
		for i := range 200 {
			all.Go(func() {
				ctx, cancel := context.WithCancel(context.Background())
				defer cancel()
				turn, _ := q.Enter(ctx, i%23)
				defer turn.Leave()
				for range i % 37 {
					if n := now.Add(1); n > 4 {
						t.Errorf("%s: %d have a turn", name, n)
					}
					runtime.Gosched()
					now.Add(-1)
					if !turn.Pause(1) {
						return
					}
					if i%19 == 0 {
						cancel()
					}
				}
				did.Add(1)
			})
		}
		all.Wait()
		if len(q.all) > 0 || did.Load() < 150 {
			t.Errorf("%s: %d did their work, %d are left", name, did.Load(), len(q.all))
		}
	}
}

// Whatever shares the processor runs whenever so much was done, and no oftener.
func TestOthersRunNowAndThen(t *testing.T) {
	yields := 0
	q := New(1, 10, 1000).Share(4, func(context.Context) { yields++ })
	turn, _ := q.Enter(context.Background(), 100)
	for range 41 {
		turn.Pause(1)
	}
	if yields != 10 {
		t.Errorf("in 41 units others ran %d times, want 10", yields)
	}
}

// Work was said to be less than it is: who has waited while twice as much was done
// for others as anybody is let in for is told so, and also who had begun.
func TestWhoHasWaitedTooLongIsTurnedAway(t *testing.T) {
	for name, yield := range map[string]func(context.Context){"asleep": nil, "awake": func(context.Context) { runtime.Gosched() }} {
		q := New(1, 10, 500)
		if yield != nil {
			q.Share(1e9, yield)
		}
		type result struct {
			turn *Turn
			wait int
		}
		come := func(work int) chan result {
			told := make(chan result, 1)
			q.mu.Lock()
			n := len(q.all)
			q.mu.Unlock()
			go func() {
				turn, wait := q.Enter(context.Background(), work)
				told <- result{turn, wait}
			}()
			entered(q, n+1)
			return told
		}
		first, _ := q.Enter(context.Background(), 1)
		told := come(900)
		for range 100 {
			first.Pause(10)
		}
		if q.Waiting() != 1 {
			t.Errorf("%s: who has waited for 1000 is turned away, and 1000 is bearable", name)
		}
		first.Pause(1)
		first.Leave()
		if got := <-told; got.turn != nil || got.wait != 500 {
			t.Errorf("%s: who has waited for 1001 has a turn, or is told %d", name, got.wait)
			got.turn.Leave()
		}

		heavy := (<-come(900)).turn
		light := come(5)
		wanted := make(chan bool)
		go func() { wanted <- heavy.Pause(30) }() // makes way
		for having(q) > 1 {
			runtime.Gosched()
		}
		for range 112 {
			has := (<-light).turn
			light = come(5)
			has.Pause(9)
			has.Leave()
		}
		(<-light).turn.Leave()
		if <-wanted {
			t.Errorf("%s: who was made to wait for 1008 goes on", name)
			heavy.Leave()
		}
		if len(q.all) != 0 {
			t.Errorf("%s: %d are in the queue", name, len(q.all))
		}
	}
}
