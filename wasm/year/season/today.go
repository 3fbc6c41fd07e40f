package season

import (
	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/numeric"
)

// A Stand is where a day lies beside the season.
type Stand uint8

const (
	Nowhere  Stand  = iota // there is no season, or nobody knows the day
	NotBegun               // before the first task
	Running                // between the first and the last
	Over                   // after it
	Stands   = iota        // how many there are
)

// Stand says where a day lies.
func (s *Season) Stand(on day.Day) Stand {
	switch {
	case on <= 0 || len(s.Tasks) == 0:
		return Nowhere
	case on < s.First:
		return NotBegun
	case on > s.Last:
		return Over
	}
	return Running
}

// Turn returns by how many years the season should move to be the one that is
// under way on a day, or the next: the fewest after which it is not over, whole
// years earlier where one is. It is 0 where it stays.
func (s *Season) Turn(on day.Day) (years int) {
	if stand := s.Stand(on); stand == Nowhere || stand == Running {
		return 0
	}
	years = on.Year() - s.Last.Year()
	for s.Last.Years(years) < on {
		years++
	}
	for s.Last.Years(years-1) >= on {
		years--
	}
	return years
}

// A Due is a task on one of its days.
type Due struct {
	*Task
	On day.Day // the first of this time's days
}

const week = 7 // days

// Week returns what is to be done in the seven days from a day on, what has begun
// before and is not finished counted in; and what was to be finished in the seven
// days before, but for what comes again every week: nobody knows here whether it
// was. Both are in the order of their days.
func (s *Season) Week(on day.Day) (now, late []Due) {
	for i := range s.Tasks {
		t := &s.Tasks[i]
		for n := range t.Times {
			at := t.Day + day.Day(n*t.Every)
			end := at + day.Day(t.Days-1)
			switch {
			case at < on+week && end >= on:
				now = append(now, Due{t, at})
			case end < on && end >= on-week && (t.Every > week || t.Times == 1):
				late = append(late, Due{t, at})
			}
		}
	}
	for _, list := range [...][]Due{now, late} {
		numeric.Sort(len(list), func(i, j int) bool {
			a, b := &list[i], &list[j]
			if a.On != b.On {
				return a.On < b.On
			}
			if a.Kind != b.Kind {
				return a.Kind.turn() < b.Kind.turn()
			}
			return a.Planting < b.Planting
		}, func(i, j int) { list[i], list[j] = list[j], list[i] })
	}
	return now, late
}

// Next returns the first task after the week from a day on; nil where none comes.
func (s *Season) Next(on day.Day) (next *Due) {
	for i := range s.Tasks {
		t := &s.Tasks[i]
		for n := range t.Times {
			if at := t.Day + day.Day(n*t.Every); at >= on+week && (next == nil || at < next.On) {
				next = &Due{t, at}
			}
		}
	}
	return next
}

// MovedYears are the years from the first day to the last of the season as it
// will be, moved by so many.
func (s *Season) MovedYears(years int) (from, to int) {
	return s.First.Years(years).Year(), s.Last.Years(years).Year()
}
