package sheet

import "evenrow/wasm/season"

// year dates the plantings, and works out what follows from their dates.
func (s *Sheet) year() {
	s.Season = season.Of(s.Plan)
}
