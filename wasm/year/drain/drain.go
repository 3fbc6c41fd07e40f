// Package drain reads what a grower measures of the water that runs out of the
// medium, and says how much to give next.
package drain

import (
	"math"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/trade/dose"
)

// An Entry is what was measured on one day. What was not is NaN.
type Entry struct {
	Day  day.Day
	Out  float64 // drain as a share of what was given, of the whole day
	EC   float64 // mS/cm, of the drain
	PH   float64 // of the drain
	Feed float64 // mS/cm, EC of what was given

	Sky   Sky     // what the weather was
	Shots float64 // that the timer gave
	Long  float64 // s, of one of them
	Row   int     // of the form, from 1
}

// A Sky is the weather of a day, as the timer's card has it.
type Sky uint8

const (
	Untold Sky = iota // taken for Typical
	Dull
	Typical
	Hot
)

// SkyNames are the codes of the weather in form data.
var SkyNames = [...]string{Untold: "", Dull: "dull", Typical: "typical", Hot: "hot"}

// SkyOf returns the weather of a code; Untold for any other text.
func SkyOf(code string) Sky {
	for sky, name := range SkyNames {
		if name == code {
			return Sky(sky)
		}
	}
	return Untold
}

// Taken returns the weather that a day counts as.
func (s Sky) Taken() Sky {
	if s == Untold {
		return Typical
	}
	return s
}

// Limits of an Entry: what lies beyond is a slip of the pen or the meter.
const (
	MostOut = 0.95
	MostEC  = 20 // mS/cm
	LeastPH = 2
	MostPH  = 11

	MostLong = 4 * 60 * 60  // s
	MostRun  = 12 * 60 * 60 // s, of all shots of a day
)

// Figures that the advice goes by, from memory but where the comment says
// otherwise.
const (
	Usual = 0.3  // mS/cm that the drain is usually above the feed, at least
	High  = 1.0  // at most
	Salty = 1.5  // and from here salt builds up
	Sour  = 5.0  // pH of the drain below which roots suffer (common practice, no source)
	Sweet = 7.0  // pH above which iron and phosphorus are locked up (common practice, no source)
	Most  = 0.15 // most that the water is changed from one day to the next: 10 to 20 % (common practice, no source)
	Close = 0.05 // difference of drain shares that a tray and a jug do not show (common practice, no source)
	More  = 0.10 // further share to drain while salt is washed out (common practice, no source)
	Days  = 3    // that an advice looks back on
)

// A Reason is one thing that an advice goes by.
type Reason uint16

const (
	TooLittle Reason = 1 << iota // less drained than is wanted
	TooMuch                      // more drained
	SaltUp                       // drain more than Salty above the feed: more has to drain
	SaltHigh                     // between High and Salty above the feed
	Weak                         // the drain is weaker than the feed
	TooSour
	TooSweet
	Held    // the change is kept to Most
	Single  // there is one day only
	NoEC    // nothing is known of salt
	Nothing // no drain at all, which does not say how much is missing
)

// An Advice is what to do next on days of one weather, that of the last day on
// which the drain was measured.
type Advice struct {
	Days    int     // that it looks back on; 0 where no drain was measured, and then nothing else is known
	Last    *Entry  // the last of them
	Out     float64 // mean share that drained
	Run     float64 // s, that the timer gave on the last of them; NaN when not known
	Drains  float64 // share that would have drained in the mean, had each of them been given Run; Out where it is not known
	Wanted  float64 // share that is to drain, with what washes salt out
	Above   float64 // mS/cm, mean of the drain's EC above the feed's; NaN when not known
	PH      float64 // mean; NaN when not known
	Lasting float64 // Change without what washes salt out
	Change  float64 // of the water to give, as a share of that of the last day: 0.1 for a tenth more; 0 to leave it
	Reasons Reason
}

// Advise looks back on the last entries in which the drain was measured under
// the sky of the last of them. of returns the share that is to drain on the day
// of an entry, and for how many seconds the timer gave water, NaN when that is
// not known.
func Advise(log []Entry, of func(*Entry) (wanted, run float64)) Advice {
	a := Advice{Above: math.NaN(), PH: math.NaN(), Run: math.NaN()}
	var above, ph mean
	used := 0.0 // s, of what the timer gave
	for i := len(log) - 1; i >= 0 && a.Days < Days; i-- {
		e := &log[i]
		if math.IsNaN(e.Out) || a.Last != nil && e.Sky.Taken() != a.Last.Sky.Taken() {
			continue
		}
		wanted, run := of(e)
		if a.Last == nil {
			a.Last, a.Wanted, a.Run = e, wanted, run
		}
		a.Out += e.Out
		used += run * (1 - e.Out)
		a.Days++
		above.add(e.EC - e.Feed)
		ph.add(e.PH)
	}
	if a.Days == 0 {
		return a
	}
	a.Out /= float64(a.Days)
	if a.Drains = 1 - used/float64(a.Days)/a.Run; math.IsNaN(a.Drains) {
		a.Drains = a.Out
	}
	wanted := a.Wanted
	a.Above, a.PH = above.value(), ph.value()
	if a.Days == 1 {
		a.Reasons |= Single
	}
	switch {
	case math.IsNaN(a.Above):
		a.Reasons |= NoEC
	case a.Above > Salty:
		a.Reasons |= SaltUp
		a.Wanted = min(wanted+More, mostWanted)
	case a.Above > High:
		a.Reasons |= SaltHigh
	case a.Above < 0:
		a.Reasons |= Weak
	}
	if a.PH < Sour {
		a.Reasons |= TooSour
	}
	if a.PH > Sweet {
		a.Reasons |= TooSweet
	}
	a.Lasting, _ = a.change(wanted)
	change, why := a.change(a.Wanted)
	a.Change = change
	a.Reasons |= why
	return a
}

// change returns by how much to change the water so that a share drains, and why.
func (a *Advice) change(wanted float64) (change float64, why Reason) {
	switch off := a.Drains - wanted; {
	case off < -Close:
		why = TooLittle
	case off > Close:
		why = TooMuch
	default:
		return 0, 0
	}
	change = dose.Next(1, a.Drains, wanted) - 1
	if a.Out < nothing {
		change = Most
		why |= Nothing
	}
	if math.Abs(change) > Most {
		change = math.Copysign(Most, change)
		why |= Held
	}
	return change, why
}

// nothing is a share of drain that is none: a few drops in the tray.
const nothing = 0.005

// mostWanted is the most that is to drain while salt is washed out: our own choice.
const mostWanted = 0.6

// A mean leaves out what is NaN.
type mean struct {
	sum float64
	n   int
}

func (m *mean) add(v float64) {
	if v == v {
		m.sum += v
		m.n++
	}
}

func (m *mean) value() float64 {
	if m.n == 0 {
		return math.NaN()
	}
	return m.sum / float64(m.n)
}
