package answer

import (
	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/year/season"
)

// A year is the calendar of a plan. Days are as ISO 8601 writes them.
type year struct {
	First     string     `json:"first"`
	Last      string     `json:"last"`
	Plantings []planting `json:"plantings"`
	Tasks     []task     `json:"tasks"`
	Conflicts []conflict `json:"conflicts"`
}

type planting struct {
	What    string `json:"what"`
	Rows    []int  `json:"rows"`
	Plants  int    `json:"plants"`
	Sow     string `json:"sow"`
	Emerge  string `json:"emerge"`
	Block   string `json:"block"`
	Slab    string `json:"plant_out"`
	Train   string `json:"tie_up"`
	Harvest string `json:"harvest"`
	End     string `json:"end"`
	Cut     int    `json:"cut_by_frost_days"`
	Killed  bool   `json:"killed_by_frost,omitempty"`
}

type task struct {
	Kind  string `json:"kind"`
	Day   string `json:"day"`
	Days  int    `json:"takes_days"`
	Every int    `json:"every_days,omitempty"`
	Times int    `json:"times"`
	What  string `json:"what"`
	How   string `json:"how"`
}

type conflict struct {
	Kind     string       `json:"kind"`
	Grave    bool         `json:"serious"`
	Planting string       `json:"planting,omitempty"`
	Other    string       `json:"other,omitempty"`
	Row      int          `json:"row,omitempty"`
	Count    int          `json:"count,omitempty"`
	Until    string       `json:"until,omitempty"`
	Loss     *lostHarvest `json:"harvest_lost,omitempty"` // of frost-before-harvest
}

// A lostHarvest is what would save a harvest from frost.
type lostHarvest struct {
	Drained bool `json:"system_drained_before"` // and the frost comes later
	Short   int  `json:"too_short_days,omitempty"`
	Least   int  `json:"sow_earlier_least_days,omitempty"`
	Most    int  `json:"sow_earlier_most_days,omitempty"`
}

var taskNames [season.TaskKinds]string = [...]string{
	season.Sowing: "sow", season.Potting: "block", season.Setting: "plant-out", season.Tying: "tie-up", season.Picking: "first-harvest", season.Clearing: "remove-plants",
	season.Building: "build", season.Leaks: "leak-test", season.Cups: "catch-can-test", season.Wetting: "wet-medium", season.Strength: "ec-and-ph", season.Filter: "filter",
	season.Flushing: "flush", season.Treating: "clean-lines", season.Storing: "store", season.Resetting: "set-timer",
}

var conflictNames [season.ConflictKinds]string = [...]string{
	season.NoRow: "no-row", season.DeadSeed: "dead-seed", season.FrostOut: "frost-at-planting", season.FrostKill: "frost-before-harvest", season.TwoInRow: "two-in-row",
	season.NotReady: "not-ready", season.NoPlace: "no-place", season.Freezing: "full-in-frost", season.LateStore: "stored-late", season.EarlyOpen: "early-in-the-open", season.Guessed: "untested-temperature", season.Ended: "ended-by-frost", season.Untold: "own-crop-untold",
}

// yearOf writes a season.
func yearOf(p *plan.Plan, s *season.Season) *year {
	if s == nil {
		return nil
	}
	y := &year{s.First.ISO(), s.Last.ISO(), []planting{}, []task{}, []conflict{}}
	for i := range s.Plantings {
		g := &s.Plantings[i]
		rows := []int{}
		for _, r := range g.Rows {
			rows = append(rows, r+1)
		}
		on := func(stage season.Stage) string { return g.Dates[stage].ISO() }
		y.Plantings = append(y.Plantings, planting{s.Name(p, i), rows, g.Plants, on(season.Sow), on(season.Emerge), on(season.Block),
			on(season.Slab), on(season.Train), on(season.Harvest), on(season.End), g.Cut, g.Killed})
	}
	for i := range s.Tasks {
		t := &s.Tasks[i]
		y.Tasks = append(y.Tasks, task{taskNames[t.Kind], t.Day.ISO(), t.Days, t.Every, t.Times, s.Title(p, t), s.How(p, t)})
	}
	for i := range s.Conflicts {
		c := &s.Conflicts[i]
		out := conflict{Kind: conflictNames[c.Kind], Grave: c.Kind < season.Notes, Count: c.Count}
		if c.Planting >= 0 {
			out.Planting = s.Name(p, c.Planting)
		}
		if c.Kind == season.TwoInRow {
			out.Other, out.Row = s.Name(p, c.Other), c.Row+1
		}
		if c.Kind == season.FrostKill {
			l := s.Loss(p, c)
			out.Loss = &lostHarvest{l.Drained, l.Short, l.Least, l.Most}
		}
		if c.Until != day.Day(0) {
			out.Until = c.Until.ISO()
		}
		y.Conflicts = append(y.Conflicts, out)
	}
	return y
}
