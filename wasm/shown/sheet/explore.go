package sheet

// An Exploration is one thing about a plan that takes many solutions, or that
// comes after the answer, and can wait until the answer is on the screen.
type Exploration int

// In the order in which they are worked out: what is looked at most comes
// first, what takes longest last.
const (
	Helping      Exploration = iota // what would help
	Turning                         // what the answer rests on
	Season                          // the year: calendar, water, timer
	Flushing                        // ends opened one after another
	Looping                         // zones and rings
	Starting                        // the first minutes of a shot, and the last
	Faulting                        // wear, dirt, leaks
	Carrying                        // how much more of everything
	Searching                       // cheaper designs
	Chancing                        // emitters that differ
	Explorations = iota             // how many there are
)

// explore is all that is declared of an exploration; what shows it are the
// sections of package view, and a part of the JSON in build/answer.
var explore = [Explorations]struct {
	name   string // in the JSON
	prompt bool   // takes no longer than the answer, by and large
	helped bool   // goes on from what would help
	find   func(*Sheet)
}{
	Helping:   {"fixes", true, true, func(*Sheet) {}},
	Turning:   {"rests-on", true, false, func(s *Sheet) { s.Rest = rests(s) }},
	Season:    {"season", true, false, (*Sheet).year},
	Flushing:  {"flushing", true, false, func(s *Sheet) { s.Flush = flushed(s) }},
	Looping:   {"zones-and-loops", true, true, func(s *Sheet) { s.Zoning, s.Loop = zoned(s), looped(s) }},
	Starting:  {"starts", false, false, func(s *Sheet) { s.Startup = started(s) }},
	Faulting:  {"faults", false, false, func(s *Sheet) { s.Faults = faulted(s) }},
	Carrying:  {"headroom", false, true, func(s *Sheet) { s.Headroom = rooms(s) }},
	Searching: {"designs", false, true, func(s *Sheet) { s.Designs = searched(s) }},
	Chancing:  {"chance", false, false, func(s *Sheet) { s.Chance = chanced(s) }},
}

// Name is what the JSON calls it.
func (e Exploration) Name() string { return explore[e].name }

// Idle says whether an exploration of the sheet would have nothing to look for.
func (s *Sheet) Idle(which Exploration) bool { return which == Helping && !s.helpless() }

// Prompt says whether it takes no longer than the answer, by and large.
func (e Exploration) Prompt() bool { return explore[e].prompt }

// Prompt returns the explorations that are: a page that is made at once,
// without a program of its own, has these.
func Prompt() []Exploration {
	var list []Exploration
	for e := range Exploration(Explorations) {
		if e.Prompt() {
			list = append(list, e)
		}
	}
	return list
}

// Explore adds what one exploration finds. Until then, and where there is
// nothing to say, its part of the sheet is nil. Where it takes more work than is
// done for one, Left says so. The result is false, and the sheet of no use, once
// nobody waits any more.
func (s *Sheet) Explore(which Exploration) bool { return s.ExploreWithin(exploring, which) }

// ExploreWithin is [Sheet.Explore] with so many units of work, besides those of what
// would help.
func (s *Sheet) ExploreWithin(units int, which Exploration) bool {
	if explore[which].helped && !s.help(fixing) {
		return false
	}
	s.spendFrom(units)
	s.Left[which] = !s.meter().Within(func() { explore[which].find(s) })
	return !s.meter().Gone()
}
