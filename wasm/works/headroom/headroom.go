// Package headroom finds how much more a system can carry before the answer
// to its plan is no longer yes: more plants, longer rows, more rise, a dirtier
// filter.
package headroom

import (
	"math"

	"evenrow/wasm/grower/plan"
)

// A Kind is what there may be more of.
type Kind uint8

const (
	Plants  Kind   = iota // plants, one more in each row in turn
	InRow                 // plants in one row
	Rise                  // rise of the lead
	Fouling               // loss of the filter when it is cleaned
	Kinds   = iota        // how many there are
)

// tolerance is the share of a room, as its inverse, that is not looked into.
const tolerance = 32

// Steps of what is not counted in plants.
const (
	riseStep    = 0.1 // m
	foulingStep = 1e3 // Pa
)

// A Room is how much more there may be of one thing.
type Room struct {
	Kind  Kind
	Row   int // from 0, of InRow
	Most  int // the answer is yes with so many steps more
	Fails int // and not with so many: one more, or a few where there is much room
	Why   End // there is no more
}

// A Limit is what ends a room.
type Limit uint8

const (
	Unsaid  Limit = iota // the test says no, and has not said why
	Judged               // the test says no, for a reason
	Refused              // the form does not take more
	Enough               // more is not looked for: thrice as many plants, or 400; as many again in one row
)

// An End is why there is no more room.
type End struct {
	Limit  Limit
	Reason int // of Judged: a number of whoever judges
}

// An Answer is what a test says of a plan.
type Answer struct {
	Yes   bool
	Why   End     // if not yes: Judged, or Unsaid
	Slack float64 // how far the answer is from turning, in any measure: more is better. It only guides the search.
}

// large is how many plants, times zones, make a plan of which only some rooms
// are searched, because a test takes long and a reader waits for it.
const large = 1000

// Of searches every kind of room of a plan of so many zones whose answer is
// yes. weakest is the row with the weakest emitter, the only one tried where
// there are many.
//
// Each room is bracketed by two plans, of which test says yes of the one and
// no of the other. They are one step apart, or where there is much room as
// close as a thirty-second of it. More of anything is taken to make matters
// only worse; a yes beyond a no is not looked for.
func Of(p *plan.Plan, zones, weakest int, now Answer, test func(*plan.Plan) Answer) []Room {
	plants := 0
	for i := range p.Rows {
		plants += p.Rows[i].Plants
	}
	size := plants * zones
	rooms := []Room{{Kind: Plants}}
	if size <= 8*large {
		rooms = append(rooms, Room{Kind: Rise})
	}
	if size <= large && p.Filter.Present != 0 {
		rooms = append(rooms, Room{Kind: Fouling})
	}
	for i := range p.Rows {
		if size*len(p.Rows) <= 2*large || size <= large && i == weakest {
			rooms = append(rooms, Room{Kind: InRow, Row: i})
		}
	}
	for i := range rooms {
		most := math.MaxInt
		switch r := &rooms[i]; r.Kind {
		case Plants:
			most = min(3*plants, max(400, plants/4))
		case InRow:
			most = p.Rows[r.Row].Plants
		}
		rooms[i].search(p, most, now, test)
	}
	return rooms
}

// Plan returns p with n steps more.
func (r *Room) Plan(p *plan.Plan, n int) *plan.Plan {
	p = p.Clone()
	switch r.Kind {
	case Plants:
		for i := range p.Rows {
			p.Rows[i].Plants += (n + len(p.Rows) - 1 - i) / len(p.Rows)
		}
	case InRow:
		p.Rows[r.Row].Plants += n
	case Rise:
		p.Runs[len(p.Runs)-1].Rise += float64(n) * riseStep
	case Fouling:
		p.Filter.Fouling += float64(n) * foulingStep
	}
	return p
}

// Value returns the room in plants, m or Pa.
func (r *Room) Value() float64 {
	switch n := float64(r.Most); r.Kind {
	case Rise:
		return n * riseStep
	case Fouling:
		return n * foulingStep
	default:
		return n
	}
}

// refused returns the least number of steps that the form does not take, by
// halving: its limits are all upper ones for what there is more of.
func (r *Room) refused(p *plan.Plan) int {
	lo, hi := 0, 1<<12 // more than the form takes of anything
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; len(r.Plan(p, mid).Check()) == 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi
}

// search brackets the room: the most that is looked for first, then guided by
// straight lines through the slack, and every third time by halving.
func (r *Room) search(p *plan.Plan, most int, now Answer, test func(*plan.Plan) Answer) {
	lo, hi := 0, r.refused(p)
	r.Why = End{Limit: Refused}
	if most < hi {
		hi, r.Why = most+1, End{Limit: Enough}
	}
	atLo, atHi := now.Slack, 0.0
	n := hi - 1
	for try := 1; hi-lo > 1+lo/tolerance; try++ {
		if a := test(r.Plan(p, n)); a.Yes {
			lo, atLo = n, a.Slack
		} else {
			hi, atHi, r.Why = n, a.Slack, a.Why
		}
		n = lo + (hi-lo)/2
		if try%3 != 0 && atLo > atHi {
			n = min(max(lo+int(float64(hi-lo)*atLo/(atLo-atHi)), lo+1), hi-1)
		}
	}
	r.Most, r.Fails = lo, hi
}
