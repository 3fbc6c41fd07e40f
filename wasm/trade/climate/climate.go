// Package climate turns the twelve monthly means of a place into days: the
// usual high and low of each, and those of a cool, a hot and a record-hot day
// at that time of the year.
package climate

import "evenrow/wasm/ground/day"

// A Kind is how warm a day is for its time of the year.
type Kind int

const (
	Cool Kind = iota
	Typical
	Hot
	Record
	Kinds = iota
)

// String is what the page calls the day: "a hot day".
func (k Kind) String() string {
	return [...]string{"a cool day", "a typical day", "a hot day", "a record-hot day"}[k]
}

// offsets are added to the high and the low of a typical day, in °C. Fine
// weather warms the day more than the night, so highs go further than lows; dull
// weather narrows the gap from above. Common practice, no source: in temperate
// places about one day in ten is warmer than 6 °C above the mean high of its
// month, one in ten cooler than 6 °C below it, and records lie some 11 °C above.
var offsets = [Kinds]struct{ high, low float64 }{
	Cool:    {-6, -2},
	Typical: {0, 0},
	Hot:     {6, 3},
	Record:  {11, 5},
}

// Offsets returns what a kind of day adds to the high and the low of a typical
// one, in °C.
func Offsets(k Kind) (high, low float64) { return offsets[k].high, offsets[k].low }

// A Climate is a place's year. Make one with [New].
type Climate struct {
	high, low knots
}

// New returns the climate of twelve mean daily highs and lows in °C, from
// January on; each low at most its high.
func New(high, low [12]float64) *Climate {
	return &Climate{through(high), through(low)}
}

// At returns the high and the low in °C of a kind of day. The low is never
// above the high.
func (c *Climate) At(d day.Day, k Kind) (high, low float64) {
	at := season(d)
	high, low = c.high.at(at)+offsets[k].high, c.low.at(at)+offsets[k].low
	if low > high { // a cool day in a place whose nights are hardly cooler
		low = (high + low) / 2
		high = low
	}
	return high, low
}

// season returns how far a day is in the year, in months from 0 to 12: the
// middle of the 16 January is 0.5.
func season(d day.Day) float64 {
	y, m, dom := d.Date()
	return float64(m-1) + (float64(dom)-0.5)/float64(day.InMonth(y, m))
}
