// Package drain reads what a grower measures of the water that runs out of the
// medium, and says how much to give next.
package drain

import (
	"math"

	"evenrow/wasm/day"
	"evenrow/wasm/dose"
)

// An Entry is what was measured on one day. What was not is NaN.
type Entry struct {
	Day  day.Day
	Out  float64 // drain as a share of what was given, of the whole day
	EC   float64 // mS/cm, of the drain
	PH   float64 // of the drain
	Feed float64 // mS/cm, EC of what was given
}

// Limits of an Entry: what lies beyond is a slip of the pen or the meter.
const (
	MostOut = 0.95
	MostEC  = 20 // mS/cm
	LeastPH = 2
	MostPH  = 11
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

// An Advice is what to do next.
type Advice struct {
	Days    int     // that it looks back on; 0 where no drain was measured, and then nothing else is known
	Out     float64 // mean share that drained
	Wanted  float64 // share that is to drain, with what washes salt out
	Above   float64 // mS/cm, mean of the drain's EC above the feed's; NaN when not known
	PH      float64 // mean; NaN when not known
	Change  float64 // of the water to give, as a share: 0.1 for a tenth more; 0 to leave it
	Reasons Reason
}

// Advise looks back on the last entries in which the drain was measured.
// wanted is the share that is to drain.
func Advise(log []Entry, wanted float64) Advice {
	a := Advice{Wanted: wanted, Above: math.NaN(), PH: math.NaN()}
	var above, ph mean
	for i := len(log) - 1; i >= 0 && a.Days < Days; i-- {
		e := &log[i]
		if math.IsNaN(e.Out) {
			continue
		}
		a.Out += e.Out
		a.Days++
		above.add(e.EC - e.Feed)
		ph.add(e.PH)
	}
	if a.Days == 0 {
		return a
	}
	a.Out /= float64(a.Days)
	a.Above, a.PH = above.value(), ph.value()
	if a.Days == 1 {
		a.Reasons |= Single
	}
	switch {
	case math.IsNaN(a.Above):
		a.Reasons |= NoEC
	case a.Above > Salty:
		a.Reasons |= SaltUp
		a.Wanted = min(wanted+More, 0.6)
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
	switch off := a.Out - a.Wanted; {
	case off < -Close:
		a.Reasons |= TooLittle
	case off > Close:
		a.Reasons |= TooMuch
	default:
		return a
	}
	a.Change = dose.Next(1, a.Out, a.Wanted) - 1
	if a.Out < nothing {
		a.Change = Most
		a.Reasons |= Nothing
	}
	if math.Abs(a.Change) > Most {
		a.Change = math.Copysign(Most, a.Change)
		a.Reasons |= Held
	}
	return a
}

// nothing is a share of drain that is none: a few drops in the tray.
const nothing = 0.005

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
