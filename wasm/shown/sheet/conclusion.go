package sheet

import (
	"math"

	"evenrow/wasm/works/limit"
)

// A Conclusion is what the designs that serve come to.
type Conclusion uint8

const (
	NoneServes       Conclusion = iota // there are none
	SoughtPump                         // the pump is sought: each takes one of its own
	AnotherRegulator                   // some serve with a regulator set anew, and none as the supply stands
	AnotherSupply                      // each needs another supply
	NoneCheaper                        // the answer is Yes, and none that the supply carries costs less than the plan
	SomeCheaper                        // the answer is Yes, and one of them costs less
	SomeServes                         // the answer is not Yes, and the supply carries one with which it is
	Conclusions      = iota            // how many there are
)

// Concluded returns what the designs of a plan come to; NoneServes too where they
// were not looked for.
func (s *Sheet) Concluded() Conclusion {
	if s.Designs == nil || len(s.Designs.Best) == 0 {
		return NoneServes
	}
	switch b := &s.Designs.Best[0]; {
	case s.Wanted != nil:
		return SoughtPump
	case b.Regulator > 0:
		return AnotherRegulator
	case !b.Present:
		return AnotherSupply
	case s.Verdict != Yes:
		return SomeServes
	case DearerBy(s.Designs.Now, b.Cost) >= 0:
		return NoneCheaper
	}
	return SomeCheaper
}

// AllCompared says whether nothing cheaper was missed: the search for designs came
// to its end, and so did that for fixes.
func (s *Sheet) AllCompared() bool { return !s.Designs.Cut && !s.Untried }

// Carried says whether the supply that stands carries a design, by itself or
// behind a regulator set anew.
func (b *Best) Carried() bool { return b.Present || b.Regulator > 0 }

// ByItself says whether water falls far enough for a design without a pump.
func (b *Best) ByItself() bool { return b.Head < 0 && !b.Carried() }

// A Barrier is why no design serves.
type Barrier uint8

const (
	OtherEmitters Barrier = iota // all that were worked out as a whole water rows together that have different emitters
	CutShort                     // the search ended before all were compared
	Forbidden                    // the limits of Designs.Forbids: every one fails them
	NoneCompared                 // none was looked at: no tubing has a price for some part
	AllUnequal                   // worked out emitter by emitter, none gave the answer Yes
	OneOrAnother                 // no limit alone forbids it
	Barriers      = iota         // how many there are
)

// Barrier returns why no design serves, and which limit most of them fail: of as
// many the one that stands first.
func (d *Designs) Barrier() (why Barrier, most limit.Limit) {
	for l, n := range d.Failures {
		if n > d.Failures[most] {
			most = limit.Limit(l)
		}
	}
	switch {
	case d.Unlike > 0 && d.Unlike == d.Unequal:
		why = OtherEmitters
	case d.Cut:
		why = CutShort
	case d.Forbids != 0:
		why = Forbidden
	case d.Counted == 0:
		why = NoneCompared
	case d.Unequal > 0:
		why = AllUnequal
	default:
		why = OneOrAnother
	}
	return why, most
}

// DearerBy returns how much more a cost is than another, now; negative where it
// is less. Both are printed in hundredths, and this is the difference of what is
// printed.
func DearerBy(now, cost float64) float64 {
	return (math.Round(cost*100) - math.Round(now*100)) / 100
}
