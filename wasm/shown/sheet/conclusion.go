package sheet

import (
	"math"

	"evenrow/wasm/grower/plan"
)

// A Conclusion is what the designs that serve come to.
type Conclusion uint8

const (
	NoneServes       Conclusion = iota // there are none
	UnknownPump                        // what the pump can drive is not known: only its power is
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
	case s.Plan.Supply.Kind == plan.PumpPower:
		return UnknownPump
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

// DearerBy returns how much more a cost is than another, now; negative where it
// is less. Both are printed in hundredths, and this is the difference of what is
// printed.
func DearerBy(now, cost float64) float64 {
	return (math.Round(cost*100) - math.Round(now*100)) / 100
}
