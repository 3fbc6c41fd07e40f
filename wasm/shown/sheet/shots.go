package sheet

import (
	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/dose"
	"evenrow/wasm/trade/sun"
	"evenrow/wasm/year/demand"
	"evenrow/wasm/year/shots"
)

// timing works out the card of the timer from the calendar, the plants' thirst
// and the flows; nil where no water flows.
func timing(s *Sheet, thirst *demand.Demand) *shots.Card {
	if len(s.Zones) < len(s.Layout.Zones) || len(s.Zones) == 0 {
		return nil
	}
	sky := &s.Plan.Sky
	y := shots.Year{Plan: s.Plan, Season: s.Season, Flows: s.flows()}
	y.Most, _ = thirst.Most()
	of := make([]int, len(s.Season.Plantings)) // one more than the index into thirst
	for i := range thirst.Plantings {
		of[thirst.Plantings[i].Index] = i + 1
	}
	y.Use = func(planting int, d day.Day) (use [shots.Skies]float64) {
		if i := of[planting]; i > 0 {
			use = thirst.Use(i-1, d)
		}
		return use
	}
	y.Sun = func(d day.Day) dose.Sunlit {
		t := sun.OnClock(d, sky.Latitude, sky.Longitude, sky.Clock(d))
		// Where the sun does not cross the horizon its noon and the length of
		// the day tell enough.
		if t.Kind == sun.RisesAndSets {
			return dose.Of(t.Rise, t.Set)
		}
		return dose.Of(t.Noon-t.Length/2, t.Noon+t.Length/2)
	}
	return y.Card()
}

// Refill returns how often the plan's tank has to be filled, in the line of the
// card that takes most from it. Where some plants get no water it is not known
// what is taken, and a tap has no tank.
func (s *Sheet) Refill() shots.Refill {
	if !s.Shots.Ready() || s.Verdict == No || s.Plan.Supply.Kind == plan.Mains {
		return shots.Refill{}
	}
	given, _ := s.Shots.Thirstiest().Given()
	return shots.RefillOf(s.Plan.Supply.Tank, given)
}

// flows are what the plants of each row get while their zone is watered.
func (s *Sheet) flows() []shots.Flow {
	flows := make([]shots.Flow, len(s.Plan.Rows))
	plants := make([]float64, len(flows))
	for i := range s.Zones {
		z := &s.Zones[i]
		for k := range s.Layout.Plants {
			p := &s.Layout.Plants[k]
			if s.Layout.ZoneOf(p.Row) != z.Zone {
				continue
			}
			f, out := &flows[p.Row], z.Solution.Out[p.Node]
			if f.Zone == 0 || out < f.Least {
				f.Least = out
			}
			f.Zone = z.Zone
			f.Mean += out
			plants[p.Row]++
		}
	}
	for r := range flows {
		if plants[r] > 0 {
			flows[r].Mean /= plants[r]
		}
	}
	return flows
}
