package sheet

// An Exploration is one thing about a plan that takes many solutions, or that
// comes after the answer, and can wait until the answer is on the screen.
type Exploration int

// In the order in which they are worked out: what is looked at most comes
// first, what takes longest last.
const (
	Season       Exploration = iota // the year: calendar, water, timer
	Flushing                        // ends opened one after another
	Looping                         // zones and rings
	Starting                        // the first minutes of a shot, and the last
	Faulting                        // wear, dirt, leaks
	Carrying                        // how much more of everything
	Searching                       // cheaper designs
	Chancing                        // emitters that differ
	Explorations = iota             // how many there are
)

// Prompt are the explorations that take no longer than the answer, by and
// large: a page that is made at once, without a program of its own, has these.
var Prompt = []Exploration{Season, Flushing, Looping}

var explore = [Explorations]func(*Sheet){
	Season:    (*Sheet).year,
	Flushing:  func(s *Sheet) { s.Flush = flushed(s) },
	Looping:   func(s *Sheet) { s.Zoning, s.Loop = zoned(s), looped(s) },
	Starting:  func(s *Sheet) { s.Startup = started(s) },
	Faulting:  func(s *Sheet) { s.Faults = faulted(s) },
	Carrying:  func(s *Sheet) { s.Headroom = rooms(s) },
	Searching: func(s *Sheet) { s.Designs = searched(s) },
	Chancing:  func(s *Sheet) { s.Chance = chanced(s) },
}

// Explore adds what one exploration finds. Until then, and where there is
// nothing to say, its part of the sheet is nil. Where it takes more work than is
// done for one, Left says so. The result is false, and the sheet of no use, once
// nobody waits any more.
func (s *Sheet) Explore(which Exploration) bool { return s.ExploreWithin(exploring, which) }

// ExploreWithin is [Sheet.Explore] with so many units of work.
func (s *Sheet) ExploreWithin(units int, which Exploration) bool {
	s.spendFrom(units)
	s.Left[which] = !s.meter().Within(func() { explore[which](s) })
	return !s.meter().Gone()
}
