package plan

import (
	"evenrow/wasm/ground/day"
	"evenrow/wasm/trade/catalogue"
)

// Summer time, the values of Sky.Summer: when clocks are an hour ahead.
const (
	NoSummer     = iota
	MarchOctober // last Sunday of March to last Sunday of October
	MarchNov     // second Sunday of March to first Sunday of November
	OctoberApril // first Sunday of October to first Sunday of April
	OwnSummer    // between two dates of every year
)

// OwnClimate is the Sky.Climate of twelve months that were typed. 0 is the first
// of catalogue.Climates, and greater ones are one more than an index of them.
const OwnClimate = 1

// A Sky is where the place is, what the clock there says, what covers it and
// what weather it has.
type Sky struct {
	Latitude   float64 // degrees, north positive
	Longitude  float64 // degrees, east positive
	Offset     float64 // s that the clock is ahead of universal time, in winter
	Summer     int
	SummerFrom int     // OwnSummer: a date, of which the year does not matter
	SummerTo   int     // OwnSummer: the first day without it
	Cover      float64 // share of the sun's radiation that reaches the plants
	Climate    int     // OwnClimate, or a sketch
	Humidity   float64 // mean over the season, a share of one; Unset when not known
	Wind       float64 // mean over the season in m/s at 2 m; Unset when not known
	Sunshine   float64 // hours of sunshine over daylight hours; Unset when not known
	Height     float64 // m above the sea
	Adjust     float64 // measured use of water over that worked out, from the day Since on
	Since      int     // a date; [Always] for all days
	Before     float64 // the same until then
}

// Always is the Sky.Since of a correction that holds on all days.
var Always = firstDate

// Corrected reports whether the water that plants are counted to take up changes by a reading of
// the drain, on a day that lies in a season perhaps.
func (s *Sky) Corrected() bool { return s.Since != Always && s.Adjust != s.Before }

// AdjustOn is the measured use of water over that worked out, as it is counted on a day.
func (s *Sky) AdjustOn(d day.Day) float64 {
	if int(d) < s.Since {
		return s.Before
	}
	return s.Adjust
}

// A Month is the usual weather of one.
type Month struct {
	High, Low float64 // °C, means of the daily highest and lowest
}

// Known reports whether more than temperatures is known of the weather.
func (s *Sky) Known() bool { return s.Humidity != Unset || s.Wind != Unset || s.Sunshine != Unset }

// Year returns the mean daily highs and lows of the twelve months in °C.
// Sketches are for the north, and half a year on in the south.
func (p *Plan) Year() (high, low [12]float64) {
	if p.Sky.Climate == OwnClimate {
		for i := range min(12, len(p.Months)) {
			high[i], low[i] = p.Months[i].High, p.Months[i].Low
		}
		return high, low
	}
	c := &catalogue.Climates[max(0, p.Sky.Climate-1)]
	for i := range high {
		k := i
		if p.Sky.Latitude < 0 {
			k = (i + 6) % 12
		}
		high[i], low[i] = float64(c.High[k]), float64(c.Low[k])
	}
	return high, low
}

// Clock returns how many seconds the clock of the place is ahead of universal
// time on a day, from the morning on.
func (s *Sky) Clock(d day.Day) float64 {
	if s.summer(d) {
		return s.Offset + 3600
	}
	return s.Offset
}

// summer reports whether a day has summer time. The day of the change to it
// has, that of the change back has not.
func (s *Sky) summer(d day.Day) bool {
	from, to, ok := s.SummerOf(d.Year())
	if !ok {
		return false
	}
	if from < to {
		return from <= d && d < to
	}
	return d >= from || d < to
}

// SummerOf returns the days in a year on which clocks change to summer time
// and back. South of the equator the second comes first. ok is false where
// clocks never change.
func (s *Sky) SummerOf(year int) (from, to day.Day, ok bool) {
	const sunday = 6
	switch s.Summer {
	case MarchOctober:
		return day.Nth(year, 3, sunday, 5), day.Nth(year, 10, sunday, 5), true
	case MarchNov:
		return day.Nth(year, 3, sunday, 2), day.Nth(year, 11, sunday, 1), true
	case OctoberApril:
		return day.Nth(year, 10, sunday, 1), day.Nth(year, 4, sunday, 1), true
	case OwnSummer:
		_, m, dom := day.Day(s.SummerFrom).Date()
		from = day.Of(year, m, dom)
		_, m, dom = day.Day(s.SummerTo).Date()
		to = day.Of(year, m, dom)
		return from, to, from != to
	}
	return 0, 0, false
}
