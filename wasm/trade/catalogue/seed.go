package catalogue

import "evenrow/wasm/ground/source"

// SowingSpare is for how many plants one seed more is sown, in a plug of its own,
// since not every seed comes up: common practice, no source.
const SowingSpare = 10

// A Sprouting says how sure a number of days to emergence is.
type Sprouting uint8

const (
	Tested   Sprouting = iota // at a tested temperature, or between two
	Untested                  // beyond those that were tested: the days are those at the nearest
	Dead                      // no seed came up at this temperature or beyond it: the days are those at the nearest at which some did
	Bought                    // not raised from seed as a rule
)

// seedTemps are the temperatures in °C that seeds were tested at: 50, 59, 68,
// 77, 86 and 95 °F.
var seedTemps = [...]float64{10, 15, 20, 25, 30, 35}

// Days to emergence, sown 12 mm deep, at [seedTemps].
const (
	none     = -1 // none came up
	untested = 0
)

// A seed is one row of the table of emergence.
type seed struct {
	days [len(seedTemps)]int8
	from source.Ref
}

var harrington = source.Ref{Work: "Harrington and Minges, Vegetable Seed Germination (1954), as given in Knott's Handbook (1997)", At: "days to emergence, sown 12 mm deep"}

// Rows of the table of emergence, by the crop's seed.
const (
	noSeed = iota
	tomatoSeed
	pepperSeed
	cucumberSeed
	aubergineSeed
	melonSeed
	beanSeed
	lettuceSeed
	spinachSeed
	basilSeed
	kaleSeed
	herbSeed
)

var seeds = [...]seed{
	tomatoSeed:    {[...]int8{43, 14, 8, 6, 6, 9}, harrington},
	pepperSeed:    {[...]int8{none, 25, 13, 8, 8, 9}, harrington},
	cucumberSeed:  {[...]int8{none, 13, 6, 4, 3, 3}, harrington},
	aubergineSeed: {[...]int8{untested, untested, 13, 8, 5, untested}, harrington},
	melonSeed:     {[...]int8{untested, untested, 8, 4, 3, untested}, harrington},
	beanSeed:      {[...]int8{none, 16, 11, 8, 6, 6}, harrington}, // another printing has none at 35 °C
	lettuceSeed:   {[...]int8{7, 4, 3, 2, 3, none}, harrington},
	spinachSeed:   {[...]int8{12, 7, 6, 5, 6, none}, harrington},
	basilSeed:     {[...]int8{untested, untested, 7, 6, untested, untested}, source.Ref{Work: fao589, At: "appendix 1: 6 to 7 days at 20 to 25 °C"}},
	kaleSeed:      {[...]int8{untested, untested, 7, 6, 5, untested}, source.Ref{Work: "Oregon State University, table of germination temperatures", At: "as reproduced: 5 to 7 days at 16 to 29 °C"}},
	herbSeed:      {[...]int8{untested, untested, 14, 12, untested, untested}, source.Ref{Standing: source.Memory}},
}

// SeedRef returns where the crop's days to emergence come from; empty when the
// table has none.
func (c *Crop) SeedRef() source.Ref { return seeds[c.seed].from }

// Emergence returns the days from sowing to emergence in a medium of temp °C,
// at least 1, and how sure they are.
//
// At tested temperatures they are those of the table. Between two the speed of
// emergence, one over the days, runs straight, and where no seed came up the
// speed is nothing; so a temperature a little above a dead one gives many days
// rather than few.
func (c *Crop) Emergence(temp float64) (days float64, how Sprouting) {
	s := &seeds[c.seed]
	first, last := -1, -1
	for i, d := range s.days {
		if d > 0 {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	if first < 0 {
		return 0, Bought
	}
	nearest, beyond := first, first-1
	if temp > seedTemps[last] {
		nearest, beyond = last, last+1
	}
	if inside := temp >= seedTemps[first] && temp <= seedTemps[last]; !inside {
		days = float64(s.days[nearest])
		if beyond < 0 || beyond >= len(seedTemps) || s.days[beyond] == untested {
			return days, Untested
		}
		// Towards a dead temperature.
		left := (temp - seedTemps[beyond]) / (seedTemps[nearest] - seedTemps[beyond])
		if !(left > 0.02) { // 50 times as long, or longer
			return days, Dead
		}
		return days / left, Tested
	}
	for i := first; i < last; i++ {
		if a, b := seedTemps[i], seedTemps[i+1]; temp <= b {
			part := (temp - a) / (b - a)
			return 1 / ((1-part)/float64(s.days[i]) + part/float64(s.days[i+1])), Tested
		}
	}
	return float64(s.days[last]), Tested
}

// Tested returns the days at each tested temperature, 0 where none were tested
// and -1 where no seed came up, and the temperatures in °C.
func (c *Crop) Tested() (temps []float64, days []int8) { return seedTemps[:], seeds[c.seed].days[:] }
