package fault

import (
	"math"

	"evenrow/wasm/works/layout"
)

// Legible is the least change in Pa that shows on an ordinary gauge: half of
// one of its marks (common practice, no source).
const Legible = 5e3

// Metered is the least change of the flow, as a share, that shows on a meter
// (common practice, no source).
const Metered = 0.05

// A Sign is what a sudden fault is noticed by, the easiest first.
type Sign uint8

const (
	NobodyShort Sign   = iota // no plant lacks its water
	OnGauge                   // at the supply; of a tank, which a gauge beside it does not show, at the header
	OnMeter                   // of the flow
	OnFoot                    // only by walking the rows
	Signs       = iota        // how many there are
)

// A Cleaning is how the loss at which the filter is to be cleaned goes with the
// dirt that takes the first emitter out of its range.
type Cleaning uint8

const (
	NoMatter  Cleaning = iota // no filter, or dirt takes none out of its range, or one is without any dirt
	InTime                    // that loss comes first, and two gauges show it
	Unread                    // it comes first, and two gauges differ by too little to be read
	TooLate                   // the emitter fails before
	Cleanings = iota          // how many there are
)

// Across is the head in m that is lost between the two sides of the filter.
func (r *Reading) Across() float64 { return r.Before - r.After }

// Harmed counts the plants that a fault leaves without their water.
func (s *Sudden) Harmed() int { return s.Cut + s.Dry + s.Below + s.Above }

// Hidden says whether plants lack water and no gauge shows it.
func (s *Sudden) Hidden() bool { return s.Sign == OnMeter || s.Sign == OnFoot }

// tell says of all that was found how it can be told.
func (f *Faults) tell(l *layout.Layout) {
	pressure := l.Network.Water.PressureHead
	for i := range f.Sudden {
		s := &f.Sudden[i]
		s.Sign = s.sign(pressure(s.moved(l.Curve == nil)))
		for k := range l.Plants {
			if l.ZoneOf(l.Plants[k].Row) == s.Zone {
				s.Plants++
			}
		}
	}
	for i := range f.Slow {
		if s := &f.Slow[i]; s.Kind == Dirt && f.Due != nil && !s.Already && !s.Never {
			f.Clean = cleaning(l.Network.Water.HeadOf(l.Plan.Filter.Fouling) < s.Amount, pressure(f.Due.Across()))
		}
	}
}

// moved returns by how many metres the gauge moves that a fault moves most.
func (s *Sudden) moved(tank bool) float64 {
	if tank {
		return math.Abs(s.Now.Header - s.Was.Header)
	}
	return max(math.Abs(s.Now.After-s.Was.After), math.Abs(s.Now.Before-s.Was.Before))
}

// sign says what a fault is noticed by that moves a gauge by so many Pa.
func (s *Sudden) sign(moved float64) Sign {
	switch {
	case s.Harmed() == 0:
		return NobodyShort
	case moved >= Legible:
		return OnGauge
	case math.Abs(s.Now.Flow-s.Was.Flow) >= Metered*s.Was.Flow:
		return OnMeter
	}
	return OnFoot
}

// cleaning judges the loss at which the filter is to be cleaned: whether it comes
// before the dirt that an emitter does not bear, and by how many Pa the gauges
// then differ.
func cleaning(before bool, across float64) Cleaning {
	switch {
	case !before:
		return TooLate
	case across < Legible:
		return Unread
	}
	return InTime
}
