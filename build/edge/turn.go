package edge

import (
	"net/http"
	"strconv"

	"evenrow/build/queue"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/page"
	"evenrow/wasm/shown/sheet"
)

// Work is counted in milliseconds of a processor of our day, roughly: what it
// is, only the queue has to know, and nothing that is answered depends on it.
const (
	light = 100    // what a plan of a few hundred plants takes
	most  = 20_000 // nobody waits for more than this; a browser gives up soon after
)

// Turns is a queue for plans, of so many at a time.
//
// A machine works best with one turn fewer than it has processors: files, and
// the plans that a client has already, then find one free.
func Turns(n int) *queue.Queue { return queue.New(n, light, most) }

// pageWork is about what the page of a plan takes.
func pageWork(p *plan.Plan) int { return 2 * answerWork(p) }

// proposal is how much work of package work a proposal may take here: what most do, and about
// as long as the page of its plan. The planner, on a device of one's own, searches for longer.
const proposal = 1_000_000

// startWork is about what the five questions take, and the page of their plan once it is asked for.
func startWork(s *page.Asking) int {
	if !s.Ready {
		return 1
	}
	plants := 0
	for _, c := range s.Answers.Crops {
		plants += c.Plants
	}
	return proposal/50_000 + 2*(5+min(plants, plan.MaxPlants)/8)
}

// answerWork is about what the answer for a plan takes.
func answerWork(p *plan.Plan) int {
	plants := 0
	for i := range p.Rows {
		plants += p.Rows[i].Plants
	}
	return 5 + plants/8
}

// sheet works a plan out, and the explorations named, and lets others have their
// turn meanwhile. When the plan has lost its turn, it does not return.
func (q *question) sheet(p *plan.Plan, also ...sheet.Exploration) *sheet.Sheet {
	s := sheet.AnswerFor(p, func() bool { return !q.turn.Pause(1) })
	if s == nil {
		panic(gone{})
	}
	for _, which := range also {
		if !s.Explore(which) {
			panic(gone{})
		}
	}
	return s
}

// pause lets others have their turn. When the plan has lost its own, it does not
// return.
func (q *question) pause() {
	if !q.turn.Pause(1) {
		panic(gone{})
	}
}

// A gone is thrown when the client has left before its plan was worked out, or
// others have kept it waiting for too long.
type gone struct{}

// later is a page that says when to come again, which nobody reads when the
// client has left. wait is in the queue's units.
func (q *question) later(wait int) reply {
	seconds := max(1, wait/1000)
	why := "More plans are being worked out here than there is room for. Reload this page in " + strconv.Itoa(seconds) + " s"
	if q.r.Method == http.MethodPost {
		why += ", and what you sent is sent again"
	}
	r := q.refuse(http.StatusServiceUnavailable, "Evenrow is busy", why+". Or use the planner, which works it out on your own device.")
	r.later = seconds
	return r
}
