package sheet

import (
	"evenrow/wasm/year/season"
	"evenrow/wasm/year/shots"
)

// A Today is what the day on which a sheet is looked at means for it.
type Today struct {
	Stand season.Stand
	Years int          // by how many the season should move; 0 where it stays
	Line  *shots.Line  // of the card; nil where nothing stands in the rows that day, or there is no card
	Next  *season.Task // the next change of the timer; nil where none comes
}

// Waters says whether the timer waters something that day.
func (t *Today) Waters() bool {
	return t.Line != nil && len(t.Line.Sets[shots.Hot].Zones) > 0
}

// WatersToday says so of the day of a sheet.
func (s *Sheet) WatersToday() bool {
	t := s.Today()
	return t.Waters()
}

// Today says so, of a sheet whose season was explored.
func (s *Sheet) Today() (t Today) {
	if s.Season == nil || !s.Now.Known() {
		return t
	}
	on := s.Now.Day
	t.Stand, t.Years = s.Season.Stand(on), s.Season.Turn(on)
	t.Line = s.Shots.On(on)
	for i := range s.Season.Tasks {
		if k := &s.Season.Tasks[i]; k.Kind == season.Resetting && k.Day > on {
			t.Next = k
			break
		}
	}
	return t
}
