// Package queue gives work its turn on the processors: light work before heavy
// work, no more at a time than there is room for, and none that would wait too
// long.
//
// Work is counted in units that its owner chooses, such as milliseconds. How
// much a piece will take is a guess. One that takes more is heavier from then
// on, and makes way, at its next pause, for what is lighter.
package queue

import (
	"context"
	"math/bits"
	"slices"
	"sync"
)

// A Queue hands out turns. Of two that wait the lighter goes first, and of two
// that weigh the same the one that came first.
//
// Who is lighter than one that has a turn does not wait for that one to pause: he
// has a turn at once, which is one too many, until the heaviest pauses and gives
// up its own.
type Queue struct {
	light int // work up to this is light: all of it weighs the same
	most  int // work that may stand before one who comes

	// yield lets others run who share the processor with the caller, and
	// returns some time later. When it is nil, those who wait sleep.
	yield func(context.Context)
	often int // work that is done between two of them

	mu    sync.Mutex
	turns int     // how many may be had at once, but for the one too many
	done  int     // the work that was done, for all there ever were
	all   []*Turn // that are had or waited for, in the order in which they came
}

// A Turn is one piece of work, which has a processor or waits for one.
type Turn struct {
	q      *Queue
	ctx    context.Context
	guess  int           // the work that it was said to be
	done   int           // the work that was done
	since  int           // of that, since others who share the processor could run
	came   int           // the work that was done for others until it came
	has    bool          // a processor
	late   bool          // so much was done for others since that it is turned away
	wakeUp chan struct{} // holds something when it has been given one, or is turned away
}

// New returns a queue of so many turns at a time. Work up to light is not
// weighed; whoever would wait for more than most, shared among all turns, is
// turned away.
func New(turns, light, most int) *Queue { return &Queue{turns: turns, light: light, most: most} }

// Share makes the queue one of work that shares a processor with everything
// else: yield lets that run, and returns some time later. It is called whenever
// so much work was done, and by those who wait, who otherwise sleep.
func (q *Queue) Share(often int, yield func(context.Context)) *Queue {
	q.often, q.yield = often, yield
	return q
}

// Enter waits for a turn to do so much work. It returns nil when it got none:
// because ctx has ended, and wait is 0, or because so much stands before it, or
// came before it since, that it should come again later, and wait is how much
// that is. Who has a turn leaves it with [Turn.Leave].
func (q *Queue) Enter(ctx context.Context, work int) (t *Turn, wait int) {
	t = &Turn{q: q, ctx: ctx, guess: work, wakeUp: make(chan struct{}, 1)}
	q.mu.Lock()
	if wait = q.before(t); wait > q.most {
		q.mu.Unlock()
		return nil, wait
	}
	t.came = q.done
	q.all = append(q.all, t)
	q.hand()
	q.mu.Unlock()
	switch {
	case t.wait():
		return t, 0
	case t.late:
		return nil, q.most
	}
	return nil, 0
}

// Waiting is how many wait for a turn.
func (q *Queue) Waiting() int {
	q.mu.Lock()
	defer q.mu.Unlock()
	n := 0
	for _, t := range q.all {
		if !t.has {
			n++
		}
	}
	return n
}

// Pause says that so much work was done since the last pause. It lets lighter
// work go first, and with a yield everything else that shares the processor. It
// reports whether the work goes on: not when it is wanted no more, nor when others
// have kept it waiting for more than anybody waits for.
func (t *Turn) Pause(work int) bool {
	t.q.mu.Lock()
	t.done += work
	t.q.done += work
	t.q.dismiss()
	had, heaviest := t.q.had()
	if next := t.q.next(); had > t.q.turns && heaviest == t || next != nil && t.q.weight(next) < t.q.weight(t) {
		t.has = false
		t.q.hand()
	}
	t.q.mu.Unlock()
	if t.since += work; t.q.yield != nil && t.since >= t.q.often {
		t.since = 0
		t.q.yield(t.ctx)
	}
	return t.wait()
}

// Leave gives the turn to the next.
func (t *Turn) Leave() {
	t.q.mu.Lock()
	defer t.q.mu.Unlock()
	t.leave()
}

func (t *Turn) leave() {
	if i := slices.Index(t.q.all, t); i >= 0 {
		t.q.all = slices.Delete(t.q.all, i, i+1)
	}
	t.has = false
	t.q.hand()
}

// wait returns when t has a turn, and whether it goes on.
func (t *Turn) wait() bool {
	for t.ctx.Err() == nil {
		t.q.mu.Lock()
		has, late := t.has, t.late
		t.q.mu.Unlock()
		switch {
		case late:
			return false
		case has:
			return true
		case t.q.yield != nil:
			t.q.yield(t.ctx)
		default:
			select {
			case <-t.wakeUp:
			case <-t.ctx.Done():
			}
		}
	}
	t.Leave()
	return false
}

// overdue is how many times most anybody waits. What stands before one who comes
// is a guess, and lighter work comes after it; without an end, whoever is
// waited for would be gone, and is not always known to be.
const overdue = 2

// dismiss turns those away who have waited too long.
func (q *Queue) dismiss() {
	q.all = slices.DeleteFunc(q.all, func(t *Turn) bool {
		t.late = !t.has && (q.done-t.came-t.done)/q.turns > overdue*q.most
		if t.late {
			t.wake()
		}
		return t.late
	})
}

// wake has t look whether anything has changed for it.
func (t *Turn) wake() {
	select {
	case t.wakeUp <- struct{}{}:
	default:
	}
}

// hand gives the turns that nobody has to those who are next, and one too many to
// who is lighter than one that has a turn.
func (q *Queue) hand() {
	for {
		t := q.next()
		if t == nil {
			return
		}
		had, heaviest := q.had()
		if had > q.turns || had == q.turns && q.weight(t) >= q.weight(heaviest) {
			return
		}
		t.has = true
		t.wake()
	}
}

// had is how many have a turn, and the heaviest of them, the last that came of
// those that weigh the same; nil when nobody has one.
func (q *Queue) had() (n int, heaviest *Turn) {
	for _, t := range q.all {
		if t.has {
			n++
			if heaviest == nil || q.weight(t) >= q.weight(heaviest) {
				heaviest = t
			}
		}
	}
	return n, heaviest
}

// next is the lightest that waits; nil when nobody does.
func (q *Queue) next() *Turn {
	var first *Turn
	for _, t := range q.all {
		if !t.has && (first == nil || q.weight(t) < q.weight(first)) {
			first = t
		}
	}
	return first
}

// weight is how often the light work must be doubled to be no less than the
// work that t is. What differs by less is not worth a change of turns.
func (q *Queue) weight(t *Turn) int { return bits.Len(uint(max(t.guess, t.done) / q.light)) }

// before is the work that is to be done before t would have a turn.
func (q *Queue) before(t *Turn) int {
	sum := 0
	for _, other := range q.all {
		if q.weight(other) <= q.weight(t) {
			sum += max(other.guess-other.done, 0)
		}
	}
	return sum / q.turns
}
