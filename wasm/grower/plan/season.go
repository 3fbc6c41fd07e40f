package plan

import "evenrow/wasm/ground/day"

// Ways to date a planting, the values of Season.Mode. Those of Planting.Mode
// are one more; 0 is [AsSeason].
const (
	FromFrost    = iota // back from planting out, which follows the last frost
	FromSowing          // forwards from sowing
	FromPlanting        // back from planting out
	FromHarvest         // back from the first harvest
)

// AsSeason is the Planting.Mode of a planting that is dated as the season is.
const AsSeason = 0

// What keeps frost out, the values of Season.Shelter.
const (
	OpenAir  = iota // nothing
	Unheated        // a tunnel or a greenhouse without heating
	Heated          // heating that holds what the crop needs
)

// A Season is when things happen. Dates are days since 1 January 1970, as in
// package day.
type Season struct {
	Mode       int
	Date       int     // of what Mode counts from; not for FromFrost
	Frost      int     // 0 the place has no frost, 1 it has
	LastFrost  int     // last of the cold half-year
	FirstFrost int     // the first after it, within a year
	After      int     // days from the last frost to planting out; may be negative
	Shelter    int     // what keeps frost out
	Seedbed    float64 // °C, of the medium that seeds come up in
	Places     int     // for blocks, where plants are raised; 0 for no limit
	Start      int     // the first day on which the system can be built
	Build      int     // days that it takes
	Flush      int     // days from one flushing to the next; 0 for the start and the end only
	Treat      int     // days from one treatment of the lines to the next; 0 for the end only
	Edition    int     // of the calendar file
}

// A Planting is one or more sowings of a crop. A crop of the rows without one
// is planted once, as the season says.
type Planting struct {
	Crop  int // index into catalogue.Crops
	From  int // first row, from 1; 0 for every row of that crop
	To    int // last row; 0 for From only
	Mode  int // AsSeason, or one more than FromFrost to FromHarvest
	Date  int // of what Mode counts from
	Times int // how often, one after another
	Every int // days from one to the next
}

// MaxPlantings is how many plantings a plan may list, MaxTimes how often one
// may be repeated.
const (
	MaxPlantings = 24
	MaxTimes     = 12
)

// firstDate and lastDate are the range of dates that a plan may hold.
var firstDate, lastDate = int(day.Of(2000, 1, 1)), int(day.Of(2199, 12, 31))

func isoDay(year, month, dom int) int { return int(day.Of(year, month, dom)) }
