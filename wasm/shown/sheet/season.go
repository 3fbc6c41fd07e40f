package sheet

import (
	"evenrow/wasm/year/demand"
	"evenrow/wasm/year/season"
)

// year dates the plantings, and works out what follows from their dates.
func (s *Sheet) year() {
	s.Season = season.Of(s.Plan)
	s.Demand = demand.Of(s.Plan, s.Season)
	s.Shots = timing(s, s.Demand)
	s.Season.Add(s.Shots.Tasks(len(s.Layout.Zones)))
}
