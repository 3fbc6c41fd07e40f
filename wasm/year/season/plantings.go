package season

import (
	"math"
	"slices"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
)

// reference is the temperature in °C that the days in the plug of the table of
// crops are meant for.
const reference = 25

// Tied plants are first tied up some days after planting out, when they begin
// to lean (common practice, no source).
const tying = 7

// tiedFrom is the height in m from which a crop is trained up.
const tiedFrom = 1.0

// plantings dates every planting: those that the plan lists, and one for each
// crop of the rows that it does not list.
func (s *Season) plantings(p *plan.Plan) {
	listed, seen := make([]bool, len(catalogue.Crops)), make([]bool, len(catalogue.Crops)) // by crop
	for i := range p.Plantings {
		listed[p.Plantings[i].Crop] = true
	}
	for i := range p.Rows {
		crop := p.Rows[i].Crop
		if listed[crop] || seen[crop] {
			continue
		}
		seen[crop] = true
		s.add(p, Planting{Record: -1, Crop: crop, Rows: rowsOf(p, crop, 0, 0), Mode: p.Season.Mode}, p.Season.Date)
	}
	for i := range p.Plantings {
		l := &p.Plantings[i]
		mode, date := l.Mode-1, l.Date
		if l.Mode == plan.AsSeason {
			mode, date = p.Season.Mode, p.Season.Date
		}
		for turn := range l.Times {
			s.add(p, Planting{Record: i, Turn: turn, Crop: l.Crop, Rows: rowsOf(p, l.Crop, l.From, l.To), Mode: mode}, date)
		}
	}
}

// rowsOf returns the rows that a planting stands in; from and to count from 1.
func rowsOf(p *plan.Plan, crop, from, to int) []int {
	var rows []int
	for i := range p.Rows {
		if from == 0 && p.Rows[i].Crop == crop || from > 0 && i+1 >= from && i+1 <= max(from, to) {
			rows = append(rows, i)
		}
	}
	return rows
}

// add dates a planting. date is what its mode counts from, save the frost.
func (s *Season) add(p *plan.Plan, g Planting, date int) {
	for i := range s.Plantings {
		if s.Plantings[i].Crop == g.Crop {
			g.Number++
		}
	}
	for _, r := range g.Rows {
		g.Plants += p.Rows[r].Plants
	}
	after := g.stages(p)
	at := day.Day(date)
	switch g.Mode {
	case plan.FromSowing:
	case plan.FromHarvest:
		at -= after[Harvest]
	case plan.FromPlanting:
		at -= after[Slab]
	default:
		at = day.Day(p.Season.LastFrost+p.Season.After) - after[Slab]
	}
	if g.Record >= 0 {
		at += day.Day(g.Turn * p.Plantings[g.Record].Every)
	}
	for i := range g.Dates {
		g.Dates[i] = at + after[i]
	}
	g.cut(p)
	s.Plantings = append(s.Plantings, g)
}

// stages returns how many days after sowing each stage comes, and notes what
// it learns about the crop.
func (g *Planting) stages(p *plan.Plan) (after [Stages]day.Day) {
	whole := func(t catalogue.Trait) day.Day { return day.Day(math.Round(p.Trait(g.Crop, t))) }
	if plug := whole(catalogue.InPlug); plug > 0 {
		here, how := p.Emergence(g.Crop, p.Season.Seedbed)
		usual, _ := p.Emergence(g.Crop, reference)
		switch how {
		case catalogue.Dead:
			g.Sprouts = Dead
		case catalogue.Untested:
			g.Sprouts = Untested
		}
		after[Emerge] = day.Day(math.Ceil(here))
		// What the seed takes longer, or less, the plug stands longer or less.
		after[Block] = max(plug+after[Emerge]-day.Day(math.Ceil(usual)), after[Emerge]+1)
	}
	after[Slab] = after[Block] + whole(catalogue.InBlock)
	after[Train] = after[Slab]
	after[Harvest] = after[Slab] + max(whole(catalogue.Wait), 1)
	if g.Tied = p.Trait(g.Crop, catalogue.Height) >= tiedFrom; g.Tied {
		after[Train] = min(after[Slab]+tying, after[Harvest])
	}
	after[End] = after[Harvest] + max(day.Day(math.Round(7*p.Trait(g.Crop, catalogue.Picking))), 1)
	return after
}

// cut ends a planting that frost would kill: as a rule when the rows are
// cleared so that the system can be drained before the frost, with the frost
// itself where it is planted later than that, and before it begins where it is
// planted out in the time of frost.
func (g *Planting) cut(p *plan.Plan) {
	last, first, ok := Frosts(p, g.Dates[Slab])
	if !ok || p.Season.Shelter == plan.Heated || !Tender(p, g.Crop) {
		return
	}
	end := Cleared(first)
	switch out := g.Dates[Slab]; {
	case out >= first || out == last:
		end = out
	case out >= end:
		end = first
	}
	if g.Killed = end <= g.Dates[Harvest]; g.Killed || end < g.Dates[End] {
		g.Cut = int(g.Dates[End] - end)
		g.Dates[End] = end
	}
}

// Tender reports whether frost kills a crop.
func Tender(p *plan.Plan, crop int) bool { return p.Trait(crop, catalogue.Least) > 0 }

// Grows reports whether the planting stands in a row for any time: no tasks and
// no water are counted for one that does not.
func (g *Planting) Grows() bool { return len(g.Rows) > 0 && g.Dates[End] > g.Dates[Slab] }

// In reports whether the planting stands in a row.
func (g *Planting) In(row int) bool { return slices.Contains(g.Rows, row) }
