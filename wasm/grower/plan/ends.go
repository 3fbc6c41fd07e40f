package plan

import "evenrow/wasm/trade/ends"

// Places of the water path that have threads of their own, positions in Ends.
const (
	AtOutlet   = iota // what the grower has: tap, pump or tank
	AtTimer           // the timer's valve
	AtBackflow        // the backflow device
	AtFilter
	AtRegulator
	EndPlaces = iota // how many there are
)

// Ends are the threads of what stands between the supply and the tubing, and
// how the parts between them are chosen.
type Ends struct {
	In, Out  [EndPlaces]int // 0 for the usual one, else 1 more than an index into ends.All, of a thread; an outlet has no In
	Mixed    int            // 1 where adapters between NPT or hose threads and BSP can be had
	Shortest int            // 0 for the cheapest parts, 1 for the fewest
}

// A Fitting is a part that the grower has, or can have, beside those of the
// catalogue. It joins its two ends, either way round.
type Fitting struct {
	Name  string
	A, B  int     // indices into ends.All
	Price float64 // in any currency; 0 for one that is at hand
}

// MaxFittings is how many fittings of one's own a plan may hold.
const MaxFittings = 12

// EndOf is what stands at one of a plan's choices of threads, and whether the
// grower has chosen: else it is the usual one, which depends on the plan.
func EndOf(choice int) (e ends.End, chosen bool) {
	if choice <= 0 || choice > ends.Threads {
		return ends.End{}, false
	}
	return ends.All[choice-1], true
}
