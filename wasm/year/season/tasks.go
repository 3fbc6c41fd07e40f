package season

import (
	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/grower/plan"
)

// A TaskKind is what has to be done. Positions are permanent: calendars that
// people have saved know tasks by them.
type TaskKind int

const (
	Sowing    TaskKind = iota // for plants: sow into plugs
	Potting                   // set plugs into blocks
	Setting                   // plant out
	Tying                     // tie up and take side shoots, every week
	Picking                   // first harvest
	Clearing                  // clear the row
	Building                  // for the system: build it
	Leaks                     // fill it and look for leaks
	Cups                      // catch-can test
	Wetting                   // expand slabs with water
	Strength                  // EC and pH, every week
	Filter                    // look at the filter, every week
	Flushing                  // flush all ends
	Treating                  // treat the lines
	Storing                   // drain it and put it away
	Resetting                 // set the timer anew
	TaskKinds = iota          // how many there are
)

// ForPlants reports whether a task is for plants rather than for the system.
func (k TaskKind) ForPlants() bool { return k <= Clearing }

// turn is the place of a kind among those of one day: cups are caught when the
// ends have run clear, what lines are treated with is flushed out, and the timer
// is set for what has been planted out.
func (k TaskKind) turn() int {
	switch k {
	case Cups:
		return 2*int(Flushing) + 1
	case Treating:
		return 2*int(Flushing) - 1
	case Resetting:
		return 2*int(Setting) + 1
	}
	return 2 * int(k)
}

// A Task is something to do on a day, or again and again.
type Task struct {
	Kind     TaskKind
	Day      day.Day
	Days     int     // how long it takes, at least 1
	Every    int     // days to the next time; 0 for once
	Times    int     // how often in all, at least 1
	Planting int     // index into Season.Plantings; -1 for tasks that are for none
	Plants   int     // how many plants it is for
	Number   int     // which of its kind: 0 the first, 1 those between, 2 the last, for flushing and treating; for Resetting one more each time
	Timer    *Timing // Resetting: what it is set to; else nil
}

// Last returns the last day of the task's last time.
func (t *Task) Last() day.Day { return t.Day + day.Day((t.Times-1)*t.Every+t.Days-1) }

// Days before the first planting on which the system is filled and tested.
const ahead = 7

// tasks fills the list of tasks.
func (s *Season) tasks(p *plan.Plan) {
	add := func(k TaskKind, planting int, d day.Day) *Task {
		t := Task{Kind: k, Day: d, Days: 1, Times: 1, Planting: planting}
		if planting >= 0 {
			t.Plants = s.Plantings[planting].Plants
		}
		s.Tasks = append(s.Tasks, t)
		return &s.Tasks[len(s.Tasks)-1]
	}
	first, last := day.Day(0), day.Day(0)
	wetted := make([]bool, len(p.Rows))
	for _, i := range s.byPlanting() {
		g := &s.Plantings[i]
		if !g.Grows() {
			continue
		}
		if first == 0 {
			first = g.Dates[Slab]
		}
		last = max(last, g.Dates[End])
		if g.Dates[Sow] < g.Dates[Slab] {
			add(Sowing, i, g.Dates[Sow])
		}
		if g.Dates[Block] < g.Dates[Slab] {
			add(Potting, i, g.Dates[Block])
		}
		fresh := false
		for _, r := range g.Rows {
			fresh = fresh || !wetted[r]
			wetted[r] = true
		}
		if fresh {
			add(Wetting, i, g.Dates[Slab]-1)
		}
		add(Setting, i, g.Dates[Slab])
		if weeks := int(g.Dates[End]-g.Dates[Train]-1) / 7; g.Tied && weeks >= 0 && g.Dates[Train] < g.Dates[End] {
			t := add(Tying, i, g.Dates[Train])
			t.Every, t.Times = 7, weeks+1
		}
		if g.Dates[Harvest] < g.Dates[End] {
			add(Picking, i, g.Dates[Harvest])
		}
		add(Clearing, i, g.Dates[End])
	}
	if first == 0 {
		return
	}
	build := add(Building, -1, first-ahead-day.Day(p.Season.Build))
	build.Days = p.Season.Build
	add(Leaks, -1, first-ahead)
	add(Cups, -1, first-ahead)
	for _, k := range [...]TaskKind{Strength, Filter} {
		t := add(k, -1, first)
		t.Every, t.Times = 7, int(last-first)/7+1
	}
	add(Flushing, -1, first-ahead)
	s.again(add(Flushing, -1, first), p.Season.Flush, last)
	add(Flushing, -1, last).Number = 2
	s.again(add(Treating, -1, first), p.Season.Treat, last)
	add(Treating, -1, last).Number = 2
	add(Storing, -1, last+1)
	s.inTurn()
}

// Add puts further tasks among those of the season.
func (s *Season) Add(more []Task) {
	s.Tasks = append(s.Tasks, more...)
	s.inTurn()
}

// inTurn puts the tasks in order.
func (s *Season) inTurn() {
	list := s.Tasks
	numeric.Sort(len(list), func(i, j int) bool {
		a, b := &list[i], &list[j]
		if a.Day != b.Day {
			return a.Day < b.Day
		}
		if a.Kind != b.Kind {
			return a.Kind.turn() < b.Kind.turn()
		}
		return a.Planting < b.Planting
	}, func(i, j int) { list[i], list[j] = list[j], list[i] })
}

// again repeats the task at an interval from its day on, before last; it goes
// when there is no time for it.
func (s *Season) again(t *Task, every int, last day.Day) {
	t.Day += day.Day(every)
	if every == 0 || t.Day >= last {
		s.Tasks = s.Tasks[:len(s.Tasks)-1]
		return
	}
	t.Number, t.Every, t.Times = 1, every, int(last-1-t.Day)/every+1
}

// byPlanting returns the plantings by the day of planting out.
func (s *Season) byPlanting() []int {
	order := make([]int, len(s.Plantings))
	for i := range order {
		order[i] = i
	}
	numeric.Sort(len(order), func(i, j int) bool {
		a, b := s.Plantings[order[i]].Dates[Slab], s.Plantings[order[j]].Dates[Slab]
		return a < b || a == b && order[i] < order[j]
	}, func(i, j int) { order[i], order[j] = order[j], order[i] })
	return order
}
